//! A copy of the journal of a holding, and what was written down and not sent yet.

use combclear_domain::Instant;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::{Draft, Entry};
use combclear_wording::refusals::Refused;
use combclear_wording::{Words, unreadable};
use serde::Serialize;
use serde_json::value::RawValue;

/// A copy of the journal of a holding.
pub struct Copy {
    /// As the service has it.
    recorded: Holding,
    /// The same with the entries that were not sent yet, as far as they can be true.
    expected: Holding,
}

/// A batch of entries that the service will refuse, as far as can be told from here.
#[derive(Debug, Serialize)]
pub struct WillBeRefused {
    /// Its place among those that were not sent yet, from 0.
    batch: usize,
    /// Why.
    detail: String,
    /// What to do.
    help: String,
}

impl Copy {
    /// A copy without entries.
    #[must_use]
    pub fn new(holding: &HoldingName) -> Copy {
        let recorded = Holding::new(holding.clone());
        Copy { expected: recorded.clone(), recorded }
    }

    /// What questions are asked of.
    #[must_use]
    pub fn expected(&self) -> &Holding {
        &self.expected
    }

    /// The number of the last recorded entry that is here; 0 if there is none.
    #[must_use]
    pub fn tip(&self) -> u64 {
        self.recorded.tip().map_or(0, |(last, _)| last)
    }

    /// Takes in the next entry of the journal. Questions are answered with it once it is said anew what is expected.
    ///
    /// # Errors
    /// It is not the next one, or not an entry.
    pub fn take_in(&mut self, entry: &str) -> Result<(), String> {
        let entry = Entry::from_json(entry).map_err(|fault| format!("{fault:?}"))?;
        entry.follows(self.recorded.name(), self.recorded.tip()).map_err(|broken| broken.to_string())?;
        self.recorded.restore(&entry);
        Ok(())
    }

    /// Expects these batches of entries, and no others. Each is recorded as a whole or not at all. Returns those that will be refused;
    /// the others are expected without them.
    pub fn expect(&mut self, words: &Words, batches: &[Vec<&RawValue>], now: Instant) -> Vec<WillBeRefused> {
        self.expected = self.recorded.clone();
        let mut refused = Vec::new();
        for (batch, entries) in batches.iter().enumerate() {
            let mut with = self.expected.clone();
            let tried = entries.iter().try_for_each(|entry| self.add(&mut with, words, entry.get(), now));
            match tried {
                Ok(()) => self.expected = with,
                Err(Refused { message, help }) => {
                    refused.push(WillBeRefused { batch, detail: message, help });
                }
            }
        }
        refused
    }

    fn add(&self, with: &mut Holding, words: &Words, entry: &str, now: Instant) -> Result<(), Refused> {
        let no_entry = Refused { message: String::new(), help: String::new() };
        let draft = Draft::from_json(entry, None)
            .map_err(|faults| faults.first().map_or(no_entry, |fault| unreadable::entry(words, fault)))?;
        // What has arrived already is sent again, and recorded once.
        if self.recorded.entry(draft.id).is_some() {
            return Ok(());
        }
        with.record(draft, now).map(drop).map_err(|refusal| Refused::of(words, &refusal))
    }
}
