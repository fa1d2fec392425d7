//! Properties of what an answer names: the day on which everything may come out, and the entry that supplies missing facts.

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::sourced::Sourced;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ColonyName, RemovalNeed};
use combclear_domain::facts::history::{BroodSeen, Course, History, Stay};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::{Draft, Event};
use combclear_domain::questions::supering::FirstFree;
use combclear_domain::rules::leaflet::{Leaflet, Release, Says};
use combclear_testkit::entries::{Journal, draft, uuid_of};
use combclear_wording::Words;
use combclear_wording::supering::{MissingReport, SuperingReport};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::laws::verdicts;
use super::leaflets;
use super::making::day;
use super::plans::{journals, terms};
use super::stated::leaflet_of;
use crate::some;

proptest! {
    #![proptest_config(some(64))]

    #[test]
    fn a_correction_to_the_same_content_changes_no_answer(
        journal in journals(),
        chosen in prop::collection::vec(any::<prop::sample::Index>(), 4),
    ) {
        let before = journal.holding();
        for old in chosen.iter().map(|index| &journal.0[index.index(journal.0.len())]) {
            let id = uuid_of("the same").parse().unwrap();
            let same = Draft { id, ..old.clone() }.correcting(old.id, "nothing was wrong");
            let after = journal.and(same).holding();
            prop_assert_eq!(verdicts(&before), verdicts(&after), "{} of {}", old.kind().as_str(), old.on);
        }
    }

    #[test]
    fn taken_out_on_the_day_that_is_named_it_is_free_on_the_day_that_is_named(journal in journals(), on in 90..100_u16) {
        let holding = journal.holding();
        for colony in holding.colonies() {
            let history = History::of(&holding, leaflets(), colony);
            let answer = history.supering(day(on));
            let FirstFree::OnceOut { out, free } = answer.first_free() else { continue };
            prop_assert!(day(on) <= out && out <= free);
            let mut done = journal.clone();
            let mut number = 0;
            // Missing doses are given on their earliest days; medicines that bar supers come out on the day named.
            for course in history.courses_on(day(on)).filter(|course| bars(&history, course, day(on))) {
                for given in doses_that_are_missing(course, day(on)) {
                    number += 1;
                    // The days that are named assume the terms of the doses before.
                    let body = another_dose(&holding, course, colony);
                    done = done.and(draft(&format!("dose {number}"), given, "administration", &body));
                }
                if needs_to_come_out(course) {
                    number += 1;
                    let body = json!({ "administration": course.entry, "colonies": [colony] });
                    done = done.and(draft(&format!("out {number}"), out, "removal", &body));
                }
            }
            // If its lot was read later, the next dose may bring other terms.
            let Ok(then) = done.try_holding() else { continue };
            let history = History::of(&then, leaflets(), colony);
            prop_assert_eq!(history.may_be_supered(free), Verdict::Yes, "{} asked on {}: out {}, free {}, in {:?}", colony, day(on), out, free, &done);
            if free > out {
                prop_assert_ne!(history.may_be_supered(free.before()), Verdict::Yes, "{} asked on {}: out {}, free {}", colony, day(on), out, free);
            }
        }
    }

    #[test]
    fn what_is_read_after_the_dose_loosens_nothing_that_was_documented(
        journal in journals(),
        said in terms(),
        lot in any::<prop::sample::Index>(),
    ) {
        let before = journal.holding();
        let lots: Vec<_> = before.lots().cloned().collect();
        let lot = &lots[lot.index(lots.len())];
        let medicine = &before.lot(lot).unwrap().1.medicine;
        // A reading may replace an undocumented value, which can only ever have made a no.
        let undocumented = |leaflet: &Leaflet| leaflet.rules.iter().any(|rule| rule.confidence != Confidence::Document);
        if leaflet_of(&before, medicine).is_some_and(undocumented) {
            return Ok(());
        }
        // Stating a removal for a single dose contradicts its leaflet: the answer then covers both possibilities. Where a leaflet says
        // nothing of the removal, its carrier counted as in: that only ever made a no, and nothing documented is loosened.
        let mut said = said;
        let says_nothing = |leaflet: &Leaflet| !leaflet.rules.iter().any(|rule| matches!(rule.says, Says::Removal { .. }));
        if leaflet_of(&before, medicine).is_some_and(|leaflet| leaflet.release == Release::Single || says_nothing(leaflet)) {
            said.as_object_mut().unwrap().remove("removal");
        }
        // If supers may be on while it is in, a longer stay bars less than a wait after it: learning of a longer stay is no
        // loosening of a period.
        let may_be_on = |on: &str| on != "off";
        let learnt = said["supers_during"].as_str().is_some_and(may_be_on);
        let known = before.colonies().any(|colony| {
            let history = History::of(&before, leaflets(), colony);
            history.courses.iter().any(|course| course.terms.supers_during.known().is_some_and(|fact| may_be_on(fact.value.as_str())))
        });
        if learnt || known {
            // Nor is learning that it stays in until it is taken out.
            for field in ["stay_min_days", "stay_min_days_with_brood", "stay_max_days", "removal"] {
                said.as_object_mut().unwrap().remove(field);
            }
        }
        let body = json!({ "lot": lot, "terms": said });
        let Ok(after) = journal.and(draft("read afterwards", day(120), "leaflet_reading", &body)).try_holding() else { return Ok(()) };
        for (one, two) in verdicts(&before).iter().zip(&verdicts(&after)) {
            let loosened = (one.2, two.2) == (Verdict::No, Verdict::Yes);
            prop_assert!(!loosened, "{:?} became {:?}", one, two);
        }
    }

    #[test]
    fn every_unknown_names_an_entry_and_recording_it_removes_that_unknown(journal in journals(), on in 90..100_u16) {
        let holding = journal.holding();
        for colony in holding.colonies() {
            let report = SuperingReport::ask(Words::english(), &holding, leaflets(), colony, day(on));
            if report.in_brief.answer == Verdict::Unknown {
                prop_assert!(report.missing.iter().any(|missing| missing.decides), "{} on {}: nothing is named", colony, day(on));
            }
            for missing in report.missing.iter().filter(|missing| missing.decides) {
                let Some(done) = recorded(&journal, &holding, colony, missing, day(on)) else { continue };
                let then = done.try_holding();
                prop_assert!(then.is_ok(), "{} on {}: {:?} is refused: {:?}", colony, day(on), missing, then.err());
                let after = SuperingReport::ask(Words::english(), &then.unwrap(), leaflets(), colony, day(on));
                // Courses placed on one day, and lines of a course with other lots, are told by the same sentence.
                let same = |left: &MissingReport| {
                    let (left, missing) = (&left.remedy, &missing.remedy);
                    let asked = left.lots.iter().all(|lot| missing.lots.contains(lot));
                    asked && left.administration == missing.administration && left.corrects == missing.corrects && left.fields == missing.fields
                };
                let still = after.missing.iter().any(|left| left.fact == missing.fact && same(left));
                prop_assert!(!still, "{} on {}: {:?} is still missing in {:?}", colony, day(on), missing, &done);
            }
        }
    }

    #[test]
    fn no_day_is_named_where_what_it_depends_on_is_not_known(journal in journals(), on in 0..100_u16) {
        let holding = journal.holding();
        for colony in holding.colonies() {
            let history = History::of(&holding, leaflets(), colony);
            let answer = history.supering(day(on));
            if let FirstFree::OnceOut { .. } = answer.first_free() {
                for course in history.courses_on(day(on)).filter(|course| bars(&history, course, day(on)) && needs_to_come_out(course)) {
                    // A stay that is stated only without brood tells nothing of one with brood, which nobody may have looked for.
                    let seen = history.brood_for(course, day(on)).map(BroodSeen::state);
                    prop_assert!(course.terms.stay_min.least(seen).is_known(), "{} on {}: no least stay of {:?}", colony, day(on), course);
                    let doses = course.terms.doses.known().map(|fact| fact.value);
                    let lacking = doses.is_some_and(|doses| usize::from(doses.count) > course.doses_by(day(on)).count());
                    prop_assert!(!lacking || doses.unwrap().interval_min_days.is_some(), "{} on {}: no days between doses", colony, day(on));
                }
            }
        }
    }
}

/// Whether a course alone keeps supers from a colony on a day.
fn bars(history: &History, course: &Course, on: Day) -> bool {
    let alone = History { courses: vec![course.clone()], ..history.clone() };
    alone.may_be_supered(on) != Verdict::Yes
}

fn needs_to_come_out(course: &Course) -> bool {
    let stays = [&course.terms.stay_min, &course.terms.stay_max_longest].into_iter().flat_map(Stay::stated);
    let when_is_known = stays.clone().next().is_some() && stays.clone().all(Sourced::is_documented);
    let need_not = |fact: &Sourced<RemovalNeed>| fact.value != RemovalNeed::Needed && fact.is_documented();
    let used_up_by_itself = when_is_known && course.terms.removal.known().is_some_and(need_not);
    course.out().is_none() && !course.terms.nothing_stays() && !used_up_by_itself
}

fn doses_that_are_missing(course: &Course, on: Day) -> Vec<Day> {
    let Some(doses) = course.terms.doses.known().map(|fact| fact.value) else { return Vec::new() };
    if !needs_to_come_out(course) {
        return Vec::new();
    }
    let given = course.doses_by(on).count();
    let mut last = course.doses_by(on).map(|dose| dose.on).max().unwrap();
    let mut missing = Vec::new();
    for _ in given..usize::from(doses.count) {
        last = last.plus(doses.interval_min_days.unwrap()).max(on);
        missing.push(last);
    }
    missing
}

/// A dose like the last one of a course.
fn another_dose(holding: &Holding, course: &Course, colony: &ColonyName) -> Value {
    let last = &holding.entry(course.doses.last().unwrap().entry).unwrap().event;
    let mut body: Value = serde_json::from_str(&last.to_body()).unwrap();
    let lot = body["given"][0]["lot"].clone();
    body["given"] = json!([{ "lot": lot, "each": 1, "colonies": [colony] }]);
    body["continues"] = json!(course.entry);
    body
}

/// The journal with the missing fact recorded as asked; `None` if only a person can know it.
fn recorded(
    journal: &Journal,
    holding: &Holding,
    colony: &ColonyName,
    missing: &MissingReport,
    on: Day,
) -> Option<Journal> {
    match missing.remedy.kind.as_str() {
        "leaflet_reading" if missing.remedy.corrects.is_none() => {
            let mut done = journal.clone();
            for (number, lot) in missing.remedy.lots.iter().enumerate() {
                let mut terms = json!({});
                for field in &missing.remedy.fields {
                    terms[*field] = value_of(field);
                }
                done = done.and(draft(
                    &format!("read {number}"),
                    on,
                    "leaflet_reading",
                    &json!({ "lot": lot, "terms": terms }),
                ));
            }
            assert!(!missing.remedy.lots.is_empty() && !missing.remedy.fields.is_empty(), "{missing:?}");
            Some(done)
        }
        "removal" => {
            let body =
                json!({ "administration": missing.remedy.administration.unwrap(), "colonies": [colony] });
            Some(journal.and(draft("found", on, "removal", &body)))
        }
        "holding_details" => {
            let body = json!({ "keeper": "tester", "jurisdiction": "zz" });
            Some(journal.and(draft(
                "details after all",
                "2025-01-01".parse().unwrap(),
                "holding_details",
                &body,
            )))
        }
        // It came into the record later: only a person can know whether it existed before.
        "colony_established" | "colony_split" if missing.fact.contains("was not on record before") => {
            let old = holding.entry(missing.remedy.corrects.unwrap())?;
            let body: Value = serde_json::from_str(&old.event.to_body()).unwrap();
            let new = draft("earlier", on, missing.remedy.kind.as_str(), &body)
                .correcting(old.id, "it was here before");
            Some(journal.and(new)).filter(|done| done.try_holding().is_ok())
        }
        kind @ ("colony_split" | "colony_united") => {
            let old = holding.entry(missing.remedy.corrects.unwrap())?;
            let mut body: Value = serde_json::from_str(&old.event.to_body()).unwrap();
            body["strips"] = json!(if kind == "colony_split" { "stayed" } else { "taken_out" });
            let new = draft("where they went", old.on, kind, &body).correcting(old.id, "asked");
            // With a time of day, which such a correction leaves out here, it would be another event.
            Some(journal.and(new)).filter(|done| old.at.is_none() && done.try_holding().is_ok())
        }
        "colony_established" => {
            let old = holding.entry(missing.remedy.corrects?)?;
            let Event::ColonyEstablished(body) = &old.event else { panic!("{missing:?} corrects {old:?}") };
            let mut body: Value = serde_json::to_value(&**body).unwrap();
            body["medicines"] = json!("none");
            let new = draft("asked", old.on, "colony_established", &body).correcting(old.id, "asked");
            Some(journal.and(new))
        }
        // Contradicting statements: the one with `nothing_stays` is corrected to a carrier.
        "leaflet_reading" | "prescription" | "medicine_described" => {
            let old = holding.entry(missing.remedy.corrects?)?;
            let mut body: Value = serde_json::from_str(&old.event.to_body()).unwrap();
            body["terms"]["removal"] = json!("needed");
            let new =
                draft("read again", old.on, old.event.kind().as_str(), &body).correcting(old.id, "misread");
            Some(journal.and(new))
        }
        "nectar_flow" => {
            let from = missing.remedy.from.unwrap();
            let next = Day::new(from.year() + 1, 4, 20).unwrap();
            let body = json!({ "apiary": "East", "forage": "sycamore", "stage": "expected", "from": next, "to": next.plus(20) });
            Some(journal.and(draft("flow", on, "nectar_flow", &body)))
        }
        other => panic!("nobody tried to record {other}: {missing:?}"),
    }
}

/// A possible value of a leaflet.
fn value_of(field: &str) -> Value {
    match field {
        "supers_during" => json!("off"),
        "removal" => json!("needed"),
        "withdrawal_days" | "wait_after_removal_days" | "flow_before_days" => json!(0),
        "stay_min_days" => json!(14),
        "stay_max_days" => json!(60),
        other => panic!("{other} is no field of terms"),
    }
}
