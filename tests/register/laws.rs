//! Properties that hold for every register, on random holdings with corrections and disposals.

use combclear_domain::basics::verdict::Verdict;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use combclear_domain::Quantity;
use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::history::History;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::{Draft, Entry, EntryId, Event, Kind};
use combclear_domain::questions::register::{Period, Register};
use combclear_testkit::entries::{Journal, WRITTEN, draft, take_in, uuid_of};
use proptest::prelude::*;
use serde_json::json;

use crate::some;
use crate::supering::leaflets;
use crate::supering::making::day;
use crate::supering::plans::journals;

/// A change to an entry after it was recorded.
#[derive(Debug, Clone)]
enum Afterthought {
    StrikeOut(prop::sample::Index),
    /// The same entry some days earlier or later.
    Redate(prop::sample::Index, i8),
    /// Another amount, if it has one.
    Recount(prop::sample::Index, u8),
    Dispose(prop::sample::Index, u8, u16),
}

fn afterthoughts() -> impl Strategy<Value = Vec<Afterthought>> {
    let entry = any::<prop::sample::Index>;
    let one = prop_oneof![
        entry().prop_map(Afterthought::StrikeOut),
        (entry(), -5..5_i8).prop_map(|(entry, days)| Afterthought::Redate(entry, days)),
        (entry(), 1..20_u8).prop_map(|(entry, amount)| Afterthought::Recount(entry, amount)),
        (entry(), 1..20_u8, 0..90_u16).prop_map(|(lot, amount, on)| Afterthought::Dispose(lot, amount, on)),
    ];
    prop::collection::vec(one, 0..12)
}

/// A journal with later changes; refused ones are left out.
fn corrected() -> impl Strategy<Value = (Holding, Vec<Entry>)> {
    (journals(), afterthoughts()).prop_map(|(journal, afterthoughts)| taken_in(&journal, &afterthoughts))
}

fn taken_in(journal: &Journal, afterthoughts: &[Afterthought]) -> (Holding, Vec<Entry>) {
    let mut holding = Holding::new("test".parse().unwrap());
    let mut entries = Vec::new();
    let mut take = |holding: &mut Holding, draft: Draft| entries.extend(take_in(holding, draft, WRITTEN));
    for draft in &journal.0 {
        take(&mut holding, draft.clone());
    }
    for (count, afterthought) in afterthoughts.iter().enumerate() {
        let id = format!("afterthought {count}");
        if let Some(draft) = written(&holding, &id, afterthought, &journal.0) {
            take(&mut holding, draft);
        }
    }
    (holding, entries)
}

fn written(holding: &Holding, id: &str, afterthought: &Afterthought, drafts: &[Draft]) -> Option<Draft> {
    let newest = |entry: &prop::sample::Index| {
        let draft = entry.get(drafts);
        holding.effective(draft.id).map(|record| (record.id, record.on, (record.event).clone()))
    };
    let correct = |of: EntryId, on: Day, event: Event| {
        let id = EntryId(uuid_of(id).parse().unwrap());
        Draft::new(id, on, "tester".parse().unwrap(), event).correcting(of, "a slip of the pen")
    };
    match afterthought {
        Afterthought::StrikeOut(entry) => {
            let (of, on, _) = newest(entry)?;
            let nothing = Event::from(combclear_domain::journal::event::StrikeOut {});
            Some(correct(of, on, nothing))
        }
        Afterthought::Redate(entry, days) => {
            let (of, on, event) = newest(entry)?;
            let by = u16::from(days.unsigned_abs());
            Some(correct(of, if *days < 0 { on.minus(by) } else { on.plus(by) }, event))
        }
        Afterthought::Recount(entry, amount) => {
            let (of, on, mut event) = newest(entry)?;
            let amount = Quantity::whole((*amount).into());
            match &mut event {
                Event::LotAcquired(body) => Arc::make_mut(body).quantity = amount,
                Event::Administration(body) => Arc::make_mut(body).given.first_mut()?.each = amount,
                Event::Disposal(body) => Arc::make_mut(body).quantity = amount,
                _ => return None,
            }
            Some(correct(of, on, event))
        }
        Afterthought::Dispose(lot, amount, on) => {
            let lots: Vec<_> = holding.lots().collect();
            let lot = (!lots.is_empty()).then(|| lot.get(&lots))?;
            let body = json!({ "lot": lot, "quantity": amount, "how_and_where": "taken back" });
            Some(draft(id, day(*on), "disposal", &body))
        }
    }
}

fn whole(holding: &Holding) -> Register {
    Register::of(holding, leaflets(), Period::new(Day::FIRST, Day::LAST).unwrap(), Day::LAST)
}

/// The standing entries, neither corrected nor struck out, derived from the journal alone.
fn standing(entries: &[Entry]) -> Vec<&Entry> {
    let gone: BTreeSet<EntryId> = entries
        .iter()
        .filter_map(|entry| entry.draft.correction.as_ref())
        .map(|correction| correction.of)
        .collect();
    let stands = |entry: &&Entry| !gone.contains(&entry.draft.id) && entry.draft.kind() != Kind::StrikeOut;
    entries.iter().filter(stands).collect()
}

proptest! {
    #![proptest_config(some(128))]

    #[test]
    fn every_medicine_given_is_known_by_its_lot((holding, _) in corrected()) {
        let report = whole(&holding);
        let rows = report.administrations.iter().map(|row| &row.medicine);
        let rows = rows.chain(report.removals.iter().map(|row| &row.medicine));
        let rows = rows.chain(report.disposals.iter().map(|row| &row.medicine)).map(|part| &part.medicine);
        for medicine in rows.chain(report.totals.iter().map(|total| &total.medicine.medicine)) {
            prop_assert!(medicine.is_known(), "{:?}", medicine);
        }
        for colony in holding.colonies() {
            for course in History::of(&holding, leaflets(), colony).courses {
                prop_assert!(course.medicine.is_known(), "{} {:?}", colony, course);
            }
        }
    }

    #[test]
    fn every_standing_entry_of_the_register_appears_exactly_once((holding, entries) in corrected()) {
        let report = whole(&holding);
        let mut shown: Vec<EntryId> = report.acquisitions.iter().map(|row| row.written.entry).collect();
        shown.extend(report.administrations.iter().map(|row| row.written.entry));
        shown.extend(report.removals.iter().map(|row| row.written.entry));
        shown.extend(report.disposals.iter().map(|row| row.written.entry));
        shown.extend(report.prescriptions.iter().map(|row| row.written.entry));
        let kinds = [Kind::LotAcquired, Kind::Administration, Kind::Removal, Kind::Disposal, Kind::Prescription];
        let mut wanted: Vec<EntryId> = standing(&entries)
            .into_iter()
            .filter(|entry| kinds.contains(&entry.draft.kind()))
            .map(|entry| entry.draft.id)
            .collect();
        shown.sort();
        wanted.sort();
        prop_assert_eq!(shown, wanted);
    }

    #[test]
    fn the_totals_of_the_register_are_those_of_the_journal((holding, entries) in corrected()) {
        let mut sums: BTreeMap<String, [u64; 3]> = BTreeMap::new();
        let mut add = |lot: String, place: usize, amount: Quantity| {
            sums.entry(lot).or_default()[place] += amount.thousandths();
        };
        for entry in standing(&entries) {
            match &entry.draft.event {
                Event::LotAcquired(body) => add(body.lot.to_string(), 0, body.quantity),
                Event::Administration(body) => {
                    for part in &body.given {
                        for _ in &part.colonies {
                            add(part.lot.to_string(), 1, part.each);
                        }
                    }
                }
                Event::Disposal(body) => add(body.lot.to_string(), 2, body.quantity),
                _ => {}
            }
        }
        let report = whole(&holding);
        let shown: BTreeMap<String, [u64; 3]> = report
            .totals
            .iter()
            .map(|total| {
                let amounts = [total.acquired, total.given, total.disposed].map(Quantity::thousandths);
                (total.lot.to_string(), amounts)
            })
            .collect();
        prop_assert_eq!(shown, sums);
    }

    #[test]
    fn a_correction_never_loses_the_old_value((holding, entries) in corrected()) {
        let report = whole(&holding);
        let of_the_register = |kind: Kind| {
            use Kind::{Administration, Disposal, HoldingDetails, LeafletReading, LotAcquired, MedicineDescribed};
            use Kind::{Prescription, Removal};
            let kinds = [Administration, Disposal, HoldingDetails, LeafletReading, LotAcquired, MedicineDescribed];
            kinds.contains(&kind) || [Prescription, Removal].contains(&kind)
        };
        for entry in &entries {
            let Some(correction) = &entry.draft.correction else { continue };
            let old = entries.iter().find(|old| old.draft.id == correction.of).unwrap();
            if !of_the_register(old.draft.kind()) {
                continue;
            }
            let rows: Vec<_> =
                report.corrections.iter().filter(|row| row.written.entry == entry.draft.id).collect();
            prop_assert_eq!(rows.len(), 1);
            let row = rows[0];
            prop_assert_eq!(&row.reason, &correction.reason);
            if old.draft.on != entry.draft.on || row.struck_out {
                let was = row.changes.iter().find(|change| change.field == "on").and_then(|change| change.was.clone());
                prop_assert_eq!(was, Some(old.draft.on.to_string()));
            }
            let amount = |event: &Event| match event {
                Event::LotAcquired(body) => Some(("quantity", body.quantity)),
                Event::Disposal(body) => Some(("quantity", body.quantity)),
                Event::Administration(body) => Some(("given/0/each", body.given[0].each)),
                _ => None,
            };
            let (was, now) = (amount(&old.draft.event), amount(&entry.draft.event));
            if let Some((field, was)) = was.filter(|was| Some(*was) != now) {
                let shown = row.changes.iter().find(|change| change.field == field).and_then(|change| change.was.clone());
                prop_assert_eq!(shown, Some(was.to_string()));
            }
        }
    }

    #[test]
    fn the_registers_of_two_times_that_meet_are_the_register_of_both((holding, _) in corrected(), cut in 0..120_u16) {
        let of = |from: Day, to: Day| {
            let report = Register::of(&holding, leaflets(), Period::new(from, to).unwrap(), Day::LAST);
            report.administrations.into_iter().filter(|row| !row.earlier).collect::<Vec<_>>()
        };
        let parts = [of(Day::FIRST, day(cut)), of(day(cut).next(), Day::LAST)].concat();
        prop_assert_eq!(parts, of(Day::FIRST, Day::LAST));
    }

    /// For a colony with one course and nothing else relevant, the register frees nothing that supering does not.
    #[test]
    fn what_the_register_calls_free_may_be_supered((holding, _) in corrected()) {
        for row in whole(&holding).administrations {
            for part in &row.courses {
                let Some(free) = part.first_free_day else { continue };
                for colony in &part.colonies {
                    let history = History::of(&holding, leaflets(), colony);
                    let alone = history.courses.len() == 1 && history.unknown_since.is_none();
                    if !alone || history.begun.is_none_or(|(begun, _)| free < begun) {
                        continue;
                    }
                    let on = free.max(part.came_on.unwrap_or(free));
                    if history.ended.is_some_and(|(ended, _)| ended <= on) {
                        continue;
                    }
                    prop_assert_eq!(history.may_be_supered(on), Verdict::Yes, "{} on {} by {:?}", colony, on, part);
                }
            }
        }
    }

    #[test]
    fn every_colony_of_an_administration_stands_in_exactly_one_of_its_fates((holding, _) in corrected()) {
        for row in whole(&holding).administrations {
            let mut given: Vec<_> = row.given.iter().flat_map(|part| part.colonies.clone()).collect();
            given.sort();
            given.dedup();
            let fates = row.courses.iter().filter(|course| course.came_by.is_none());
            let mut told: Vec<_> = fates.flat_map(|course| course.colonies.clone()).collect();
            told.sort();
            prop_assert_eq!(told, given);
        }
    }
}
