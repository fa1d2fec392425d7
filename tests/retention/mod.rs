//! Retention under the built-in laws, and which entries belong together.
//!
//! Source of the days in `vectors.rs`: the retention vectors of the project's note on the statutes, derived there from the
//! published rules. The making of an entry counts by the latest civil date that its instant can have anywhere; here
//! everything is recorded at eight in the morning of its day.

mod archive;
mod laws;
mod sets;
mod vectors;

use combclear_domain::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Entry;
use combclear_domain::questions::retention::Retention;
use combclear_testkit::entries::{id, read, take_in};
use combclear_wording::Words;
use combclear_wording::retention::{KeepUntil, KeptSet, RetentionReport};
use serde_json::{Value, json};

/// A journal being written.
pub(super) struct Book {
    pub(super) holding: Holding,
    pub(super) entries: Vec<Entry>,
    written: usize,
}

impl Book {
    /// A holding in a jurisdiction with a colony `A` at an apiary, strips that stay until they are taken out, and a liquid of
    /// which nothing stays.
    pub(super) fn of(jurisdiction: &str) -> Book {
        let mut book =
            Book { holding: Holding::new("test".parse().unwrap()), entries: Vec::new(), written: 0 };
        let on = "2012-01-01";
        book.write(on, "holding_details", json!({ "keeper": "K", "jurisdiction": jurisdiction }));
        book.write(on, "apiary_details", json!({ "apiary": "East" }));
        for colony in ["A", "B"] {
            let body = json!({ "colony": colony, "apiary": "East", "medicines": "none" });
            book.write(on, "colony_established", body);
        }
        for (medicine, removal) in [("strips", "needed"), ("liquid", "nothing_stays")] {
            let terms = json!({ "removal": removal, "withdrawal_days": 0 });
            let body =
                json!({ "medicine": medicine, "pack_name": medicine, "unit": "piece", "terms": terms });
            book.write(on, "medicine_described", body);
        }
        book
    }

    /// Writes an entry down on its day and gives back its id.
    pub(super) fn write(&mut self, on: &str, kind: &str, body: Value) -> String {
        self.write_with(on, kind, body, json!({}))
    }

    #[expect(clippy::needless_pass_by_value, reason = "it is made where it is handed in")]
    pub(super) fn write_with(&mut self, on: &str, kind: &str, body: Value, more: Value) -> String {
        self.written += 1;
        let id = id(self.written).to_string();
        let mut entry = json!({ "id": id, "on": on, "recorded_by": "K", "kind": kind, "body": body });
        entry.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        let taken = take_in(&mut self.holding, read(&entry), &format!("{on}T08:00:00.000Z"));
        self.entries.push(taken.unwrap_or_else(|refusal| panic!("{refusal}")));
        id
    }

    /// Acquires a lot under its own name.
    pub(super) fn buy(&mut self, on: &str, medicine: &str, lot: &str, quantity: u32) -> String {
        self.write(on, "lot_acquired", json!({ "lot": lot, "medicine": medicine, "quantity": quantity }))
    }

    /// Gives one piece of each lot to the colony `A`.
    pub(super) fn give(&mut self, on: &str, lots: &[&str]) -> String {
        self.give_more(on, lots, json!({}))
    }

    #[expect(clippy::needless_pass_by_value, reason = "it is made where it is handed in")]
    pub(super) fn give_more(&mut self, on: &str, lots: &[&str], more: Value) -> String {
        let given: Vec<Value> =
            lots.iter().map(|lot| json!({ "lot": lot, "each": 1, "colonies": ["A"] })).collect();
        let mut body = json!({ "given": given, "withdrawal_days": 0 });
        body.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        self.write(on, "administration", body)
    }

    pub(super) fn take_out(&mut self, on: &str, administration: &str) -> String {
        self.write(on, "removal", json!({ "administration": administration, "colonies": ["A"] }))
    }

    pub(super) fn dispose(&mut self, on: &str, lot: &str, quantity: u32) -> String {
        let body = json!({ "lot": lot, "quantity": quantity, "how_and_where": "returned to the supplier" });
        self.write(on, "disposal", body)
    }

    pub(super) fn report(&self, on: &str) -> RetentionReport {
        let leaflets = combclear_leaflets::builtin().unwrap();
        let laws = combclear_leaflets::laws().unwrap();
        let answer = Retention::of(&self.holding, leaflets, laws, on.parse().unwrap());
        RetentionReport::of(Words::english(), answer)
    }

    /// The set of a lot.
    pub(super) fn set(&self, lot: &str, on: &str) -> KeptSet {
        let report = self.report(on);
        let of = |set: &&KeptSet| set.lots.iter().any(|kept| kept.lot.lot.as_str() == lot);
        report.sets.iter().find(of).unwrap_or_else(|| panic!("no set of {lot}")).clone()
    }
}

/// The day, which must be certain but for a law that was not read in its own text.
#[track_caller]
pub(super) fn until(keep: &KeepUntil) -> String {
    match keep {
        KeepUntil::Until { day, .. } => day.to_string(),
        KeepUntil::AtLeast { day, because, .. } if because.iter().all(|why| is_law_not_read(why)) => {
            day.to_string()
        }
        other => panic!("{other:?}"),
    }
}

/// Whether a reason is that the law was not read in its own text.
pub(super) fn is_law_not_read(why: &str) -> bool {
    why.contains("is known here only")
}

/// The least day, and why it is not certain, whatever the law is known from.
#[track_caller]
pub(super) fn at_least(keep: &KeepUntil) -> (String, Vec<String>) {
    match keep {
        KeepUntil::AtLeast { day, because, .. } => {
            let others = because.iter().filter(|why| !is_law_not_read(why));
            (day.to_string(), others.cloned().collect())
        }
        other => panic!("{other:?}"),
    }
}

/// The day, certain or at the least; none if it is not known.
pub(super) fn day_of(keep: &KeepUntil) -> Option<Day> {
    match keep {
        KeepUntil::Until { day, .. } | KeepUntil::AtLeast { day, .. } => Some(*day),
        KeepUntil::NotKnown { .. } => None,
    }
}

/// Whether the second is at least as long as the first. What is not known is kept for good.
pub(super) fn is_no_shorter(first: &KeepUntil, second: &KeepUntil) -> bool {
    day_of(first).zip(day_of(second)).is_none_or(|(first, second)| first <= second)
}
