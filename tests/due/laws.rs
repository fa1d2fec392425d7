//! Properties that hold for every holding, tested on random ones.

use std::collections::{BTreeMap, BTreeSet};

use combclear_domain::Quantity;
use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::fact::Fact;
use combclear_domain::facts::Overdrawn;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::event::StrikeOut;
use combclear_domain::journal::{Draft, Event};
use combclear_domain::questions::stock::Stock;
use combclear_testkit::entries::{Journal, draft, record, uuid_of};
use combclear_wording::due::{DueItem, DueReport};
use proptest::prelude::*;
use serde_json::json;

use super::making::{SPAN, day, journals};
use super::{due, leaflets};
use crate::some;

/// Due items from a day on, far ahead.
fn from(holding: &Holding, on: Day) -> DueReport {
    due(holding, on, on.plus(399), None)
}

fn by_key(report: &DueReport) -> BTreeMap<String, DueItem> {
    report.items().map(|item| (item.item.key.clone(), item.clone())).collect()
}

/// The balance of a lot straight from the drafts, as a second calculation.
fn sums(journal: &Journal, lot: &str, on: Day) -> (Quantity, Quantity, Quantity) {
    let mut sums = (Quantity::ZERO, Quantity::ZERO, Quantity::ZERO);
    for draft in journal.0.iter().filter(|draft| draft.on <= on) {
        match &draft.event {
            Event::LotAcquired(body) if body.lot.as_str() == lot => sums.0 = sums.0.plus(body.quantity),
            Event::Administration(body) => {
                for given in body.given.iter().filter(|given| given.lot.as_str() == lot) {
                    for _ in &given.colonies {
                        sums.1 = sums.1.plus(given.each);
                    }
                }
            }
            Event::Disposal(body) if body.lot.as_str() == lot => sums.2 = sums.2.plus(body.quantity),
            _ => {}
        }
    }
    sums
}

proptest! {
    #![proptest_config(some(128))]

    #[test]
    fn acquired_is_given_and_disposed_of_and_left_and_what_the_journal_sums_to(journal in journals(), on in 0..SPAN + 30) {
        let holding = journal.holding();
        let report = Stock::of(&holding, leaflets(), day(on));
        prop_assert!(!report.lots.is_empty());
        for lot in &report.lots {
            let gone = lot.given.plus(lot.disposed);
            let said = serde_json::to_value(lot).unwrap();
            match lot.left() {
                Fact::Known(left) => {
                    prop_assert_eq!(gone.plus(left), lot.acquired);
                    prop_assert_eq!((&said["left"], &said["over"]), (&json!(left), &json!(null)));
                }
                Fact::NotKnown(Overdrawn { by }) => {
                    prop_assert_eq!(lot.acquired.plus(by), gone);
                    prop_assert_eq!((&said["left"], &said["over"]), (&json!(null), &json!(by)));
                    prop_assert!(!by.is_zero() && !lot.over_by.is_empty() && !lot.count_corrected.is_empty());
                }
            }
            prop_assert_eq!((lot.acquired, lot.given, lot.disposed), sums(&journal, lot.lot.as_str(), day(on)));
        }
    }

    #[test]
    fn what_is_prepared_to_be_disposed_of_empties_the_lot_once_it_is_completed(journal in journals(), on in 0..SPAN + 60) {
        let mut holding = journal.holding();
        // Later entries would take from the lot too.
        let last = journal.0.iter().map(|draft| draft.on).max().unwrap();
        let on = day(on).max(last);
        for disposal in Stock::of(&holding, leaflets(), on).dispose {
            let mut body = serde_json::to_value(&disposal.prepared.body).unwrap();
            prop_assert!(body["how_and_where"].is_null());
            body["how_and_where"] = json!("collection point");
            let made = draft(disposal.lot.as_str(), on, "disposal", &body);
            prop_assert!(record(&mut holding, &made).is_ok(), "{}", body);
        }
        let after = Stock::of(&holding, leaflets(), on);
        prop_assert!(after.dispose.is_empty(), "{:?}", after.dispose);
    }

    #[test]
    fn keys_name_one_item_each(journal in journals(), on in 0..SPAN + 60) {
        let report = from(&journal.holding(), day(on));
        let items: Vec<&DueItem> = report.items().collect();
        let keys: BTreeSet<&String> = items.iter().map(|item| &item.item.key).collect();
        let ids: BTreeSet<String> = items.iter().map(|item| item.item.uid.to_string()).collect();
        prop_assert_eq!((keys.len(), ids.len()), (items.len(), items.len()), "{:?}", items);
    }

    #[test]
    fn items_are_the_same_after_entries_on_other_colonies_and_lots(journal in journals(), on in 0..SPAN + 60) {
        let before = from(&journal.holding(), day(on));
        let mut holding = journal.holding();
        let others = [
            draft("Z apiary", day(0), "apiary_details", &json!({ "apiary": "Far" })),
            draft("Z1", day(0), "colony_established", &json!({ "colony": "Z1", "apiary": "Far", "medicines": "none" })),
            draft("Z count", day(1), "mite_count", &json!({ "colony": "Z1", "method": "wash", "mites": 1, "bees": 300 })),
            draft("Z seen", day(2), "inspection", &json!({ "colony": "Z1", "brood": "absent" })),
            draft("Z medicine", day(0), "medicine_described", &json!({ "medicine": "Z", "pack_name": "Z", "unit": "strip" })),
            draft("Z lot", day(0), "lot_acquired", &json!({ "lot": "Z", "medicine": "Z", "quantity": 9, "expiry": "2030-01-01" })),
        ];
        for other in &others {
            prop_assert!(record(&mut holding, other).is_ok());
        }
        prop_assert_eq!(by_key(&before), by_key(&from(&holding, day(on))));
    }

    #[test]
    fn the_sequence_of_an_item_never_falls_as_the_journal_grows_and_a_change_raises_it(journal in journals(), on in 0..SPAN + 30) {
        let on = day(on);
        let mut known: BTreeMap<String, DueItem> = BTreeMap::new();
        let mut holding = Holding::new("test".parse().unwrap());
        // The last third is struck out again, so that every date that moved must move back.
        let back = journal.0.len() / 3;
        let away = |index: usize, draft: &Draft| {
            let id = uuid_of(&format!("away {index}")).parse().unwrap();
            let nothing = Draft::new(id, day(SPAN), draft.recorded_by.clone(), Event::from(StrikeOut {}));
            nothing.correcting(draft.id, "by mistake")
        };
        let struck = journal.0.iter().rev().take(back).enumerate().map(|(index, draft)| away(index, draft));
        let all: Vec<Draft> = journal.0.iter().cloned().chain(struck).collect();
        for draft in &all {
            // What a struck-out entry carries cannot be struck out before what builds on it.
            if record(&mut holding, draft).is_err() {
                continue;
            }
            for (key, item) in by_key(&from(&holding, on)) {
                if let Some(before) = known.get(&key) {
                    prop_assert!(before.item.sequence <= item.item.sequence, "{} fell: {:?} {:?}", key, before, item);
                    let said = |due: &DueItem| {
                        let item = &due.item;
                        (item.from, item.by, item.colonies.clone(), due.text.clone())
                    };
                    let changed = said(before) != said(&item);
                    prop_assert!(!changed || before.item.sequence < item.item.sequence, "{:?} {:?}", before, item);
                }
                known.insert(key, item);
            }
        }
    }

    #[test]
    fn what_happened_after_the_day_does_not_bear(journal in journals(), on in 0..SPAN) {
        let on = day(on);
        let whole = journal.holding();
        let by_then = Journal(journal.0.iter().filter(|draft| draft.on <= on).cloned().collect()).holding();
        // A later dose with other terms would change what is known of its course; none is drawn here.
        prop_assert_eq!(by_key(&from(&whole, on)), by_key(&from(&by_then, on)));
        let (now, then) = (Stock::of(&whole, leaflets(), on), Stock::of(&by_then, leaflets(), on));
        prop_assert_eq!(now, then);
    }

    #[test]
    fn what_is_overdue_stands_first_and_every_visit_can_do_its_items(journal in journals(), on in 0..SPAN + 60) {
        let on = day(on);
        let report = from(&journal.holding(), on);
        let overdue: Vec<bool> = report.visits.iter().map(|visit| visit.overdue).collect();
        prop_assert!(overdue.windows(2).all(|pair| pair[0] || !pair[1]), "{:?}", overdue);
        for visit in &report.visits {
            prop_assert!(visit.by.zip(visit.from).is_none_or(|(by, from)| from <= by), "{:?}", visit);
            for DueItem { item, .. } in &visit.items {
                prop_assert_eq!(&item.apiary, &visit.apiary);
                prop_assert_eq!(item.overdue, item.by.is_some_and(|by| by < on));
                prop_assert_eq!(item.from.is_some() || visit.overdue, visit.from.is_some(), "{:?} in {:?}", item, visit);
                let fits = item.from <= visit.from && item.by.is_none_or(|by| visit.by.is_some_and(|last| last <= by));
                prop_assert!(visit.overdue || fits, "{:?} in {:?}", item, visit);
            }
        }
    }

    #[test]
    fn a_shorter_time_asked_about_gives_the_same_items_and_fewer_of_them(journal in journals(), on in 0..SPAN, days in 0..60_u16) {
        let holding = journal.holding();
        let on = day(on);
        let all = by_key(&from(&holding, on));
        let short = by_key(&due(&holding, on, on.plus(days), None));
        for (key, due) in &all {
            let item = &due.item;
            let first = item.from_without_brood.into_iter().chain(item.from).min();
            let within = item.overdue || first.is_none_or(|first| first <= on.plus(days));
            prop_assert_eq!(short.get(key), within.then_some(due));
        }
        prop_assert!(short.len() <= all.len());
    }
}
