//! The copies of journals on a phone, and what the page tells it to do.

use std::collections::BTreeMap;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::{Day, Instant};
use combclear_wording::Words;
use combclear_wording::reports::rules;
use serde::Deserialize;
use serde_json::json;
use serde_json::value::RawValue;

use crate::{Answer, Copy};

/// Every holding of which there is a copy.
#[derive(Default)]
pub struct Phone {
    copies: BTreeMap<HoldingName, Copy>,
}

/// What the page tells it to do.
#[derive(Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum Task<'t> {
    /// Take in what follows in the journal of a holding.
    TakeIn {
        holding: HoldingName,
        /// As the service sent it.
        #[serde(borrow)]
        page: Page<'t>,
    },
    /// Answer from now on as if these were recorded, which were not sent yet, and no others.
    Expect {
        holding: HoldingName,
        /// What is recorded together stands together.
        #[serde(borrow)]
        batches: Vec<Vec<&'t RawValue>>,
        now: Instant,
        language: String,
    },
    /// Say by which leaflets and laws it answers.
    Rules {},
    /// Forget a holding.
    Forget { holding: HoldingName },
    /// Answer what the service would be asked by this path, and this body if there is one.
    Answer { path: String, body: Option<String>, now: Instant, today: Day, language: String },
}

/// A part of the journal.
#[derive(Deserialize)]
struct Page<'t> {
    #[serde(borrow)]
    items: Vec<&'t RawValue>,
}

impl Phone {
    /// Does a task, and says in JSON what came of it. A task that cannot be read changes nothing.
    pub fn do_as_told(&mut self, task: &str) -> String {
        let done = match serde_json::from_str::<Task<'_>>(task) {
            Ok(Task::TakeIn { holding, page }) => {
                let copy = self.copies.entry(holding).or_insert_with_key(Copy::new);
                match page.items.into_iter().try_for_each(|entry| copy.take_in(entry.get())) {
                    Ok(()) => json!({ "tip": copy.tip() }),
                    // What it has does not come before what the service has: the journal there is another.
                    Err(fault) => json!({ "broken": fault }),
                }
            }
            Ok(Task::Expect { holding, batches, now, language }) => {
                let copy = self.copies.entry(holding).or_insert_with_key(Copy::new);
                json!({ "refused": copy.expect(Words::of_language(&language), &batches, now) })
            }
            Ok(Task::Rules {}) => match (combclear_leaflets::builtin(), combclear_leaflets::laws()) {
                (Ok(leaflets), Ok(laws)) => json!({ "rules": rules(leaflets, laws) }),
                // A test keeps them free of faults.
                _ => json!({}),
            },
            Ok(Task::Forget { holding }) => {
                self.copies.remove(&holding);
                json!({})
            }
            Ok(Task::Answer { path, body, now, today, language }) => {
                let answer = Answer::to(
                    &self.copies,
                    Words::of_language(&language),
                    &path,
                    body.as_deref(),
                    (today, now),
                );
                return serde_json::to_string(&answer).unwrap_or_default();
            }
            Err(fault) => json!({ "fault": fault.to_string() }),
        };
        done.to_string()
    }
}
