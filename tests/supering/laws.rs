//! Properties that hold for every holding, tested on random ones.

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ColonyName, RemovalNeed, SupersDuring};
use combclear_domain::facts::history::{Course, History, Stay, TermValue};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::event::StrikeOut;
use combclear_domain::journal::{Draft, Event, Kind};
use combclear_domain::questions::supering::{FirstFree, Outcome};
use combclear_testkit::entries::{Journal, draft, shuffled_within_days, uuid_of};
use combclear_wording::Words;
use combclear_wording::supering::SuperingReport;
use proptest::prelude::*;
use serde_json::{Value, json};

use super::leaflets;
use super::making::{colonies, day, days};
use super::order::depend;
use super::plans::{journals, terms};
use super::stated::{is_knowledge, stated};
use crate::some;

/// The verdict of every colony on every day.
pub(super) fn verdicts(holding: &Holding) -> Vec<(ColonyName, Day, Verdict)> {
    let of = |colony: ColonyName| {
        let history = History::of(holding, leaflets(), &colony);
        days().map(move |day| (colony.clone(), day, history.may_be_supered(day))).collect::<Vec<_>>()
    };
    colonies(holding).into_iter().flat_map(of).collect()
}

/// The first different answer of two holdings.
fn difference(one: &Holding, two: &Holding) -> Option<String> {
    let (one, two) = (verdicts(one), verdicts(two));
    let differ = one.iter().zip(&two).find(|(one, two)| one != two);
    differ
        .map(|(one, two)| format!("{one:?} against {two:?}"))
        .or((one.len() != two.len()).then(|| "other colonies".to_owned()))
}

/// The first yes that became a no, or no that became a yes.
fn flip(before: &Holding, after: &Holding) -> Option<String> {
    let (known, more) = (verdicts(before), verdicts(after));
    let flipped = |one: Verdict, two: Verdict| {
        matches!((one, two), (Verdict::Yes, Verdict::No) | (Verdict::No, Verdict::Yes))
    };
    let mut pairs = known.iter().zip(&more).filter(|(one, two)| flipped(one.2, two.2));
    let pair = pairs.find(|((colony, on, _), _)| !taken_out_perhaps_used_up(before, colony, *on));
    pair.map(|(one, two)| format!("{one:?} became {two:?}"))
}

/// Whether something was taken out by this day that may have been used up before, with nothing stated: the period then
/// counts from the removal until that is stated. `authority.toml` has a case for what is asked for.
fn taken_out_perhaps_used_up(holding: &Holding, colony: &ColonyName, on: Day) -> bool {
    History::of(holding, leaflets(), colony).courses.iter().any(|course| {
        let terms = &course.terms;
        let mut stays = [&terms.stay_min, &terms.stay_max].into_iter().flat_map(Stay::stated);
        let undecided = match terms.removal.known().map(|fact| fact.value) {
            None => !terms.nothing_stays(),
            Some(RemovalNeed::NotNeeded) => stays.next().is_none(),
            Some(RemovalNeed::Needed | RemovalNeed::NothingStays) => false,
        };
        undecided && course.out_by(on).is_some()
    })
}

proptest! {
    #![proptest_config(some(96))]

    #[test]
    fn the_verdict_with_grounds_is_the_verdict_without_and_the_sum_of_its_grounds(journal in journals()) {
        let holding = journal.holding();
        for colony in colonies(&holding) {
            let history = History::of(&holding, leaflets(), &colony);
            for day in days().chain([Day::FIRST, Day::LAST]) {
                let answer = history.supering(day);
                let sum = answer.grounds.iter().fold(Verdict::Yes, |sum, ground| sum.and(ground.verdict()));
                prop_assert_eq!(answer.verdict, sum, "{} on {}: the sum", &colony, day);
                prop_assert_eq!(answer.verdict, history.may_be_supered(day), "{} on {}: the bare verdict", &colony, day);
            }
        }
    }

    #[test]
    fn the_days_ahead_say_what_each_day_says(journal in journals(), start in 0..90_u16, length in 0..200_u16) {
        let holding = journal.holding();
        for colony in colonies(&holding) {
            let history = History::of(&holding, leaflets(), &colony);
            let spans = history.supering_ahead(day(start), length);
            let mut expected = day(start);
            for pair in spans.windows(2) {
                prop_assert_ne!(pair[0].2, pair[1].2, "neighbours are joined");
            }
            for (from, to, verdict) in spans {
                prop_assert_eq!(from, expected, "no day is left out");
                let mut each = from;
                while each <= to {
                    prop_assert_eq!(history.may_be_supered(each), verdict, "{} on {}", &colony, each);
                    each = each.next();
                }
                expected = each;
            }
            prop_assert_eq!(expected, day(start + length));
        }
    }

    #[test]
    fn an_inspection_changes_no_answer(journal in journals(), on in 0..90_u16, brood in 0..3_usize) {
        let holding = journal.holding();
        let before = verdicts(&holding);
        let brood = ["absent", "lowest", "present"][brood];
        for colony in ["A0", "A1", "A2"] {
            let body = json!({ "colony": colony, "brood": brood });
            let Ok(after) = journal.and(draft("seen", day(on), "inspection", &body)).try_holding() else { continue };
            prop_assert_eq!(&before, &verdicts(&after));
        }
    }

    #[test]
    fn what_is_read_for_the_first_time_turns_no_yes_into_a_no_and_no_no_into_a_yes(
        journal in journals(),
        said in terms(),
        lot in any::<prop::sample::Index>(),
        on in 0..90_u16,
    ) {
        let holding = journal.holding();
        let lots: Vec<_> = holding.lots().cloned().collect();
        let lot = &lots[lot.index(lots.len())];
        let medicine = &holding.lot(lot).unwrap().1.medicine;
        let mut known = journal.clone();
        for (field, value) in said.as_object().unwrap() {
            let before = known.holding();
            if stated(&known, &before, medicine).contains(field.as_str()) {
                continue;
            }
            let body = json!({ "lot": lot, "terms": { field: value } });
            let Ok(after) = known.and(draft(field, day(on), "leaflet_reading", &body)).try_holding() else { continue };
            prop_assert_eq!(flip(&before, &after), None, "{} = {} of {}", field, value, lot);
            known = known.and(draft(field, day(on), "leaflet_reading", &body));
        }
    }

    #[test]
    fn what_is_declared_for_the_first_time_turns_no_yes_into_a_no_and_no_no_into_a_yes(
        journal in journals(),
        said in terms(),
        medicine in any::<prop::sample::Index>(),
    ) {
        let before = journal.holding();
        let described: Vec<&Draft> = journal.0.iter().filter(|draft| draft.kind() == Kind::MedicineDescribed).collect();
        let old = described[medicine.index(described.len())];
        let body: Value = serde_json::from_str(&old.body).unwrap();
        let medicine = body["medicine"].as_str().unwrap().parse().unwrap();
        let known = stated(&journal, &before, &medicine);
        for (field, value) in said.as_object().unwrap() {
            if known.contains(field.as_str()) {
                continue;
            }
            let mut body = body.clone();
            body["terms"][field] = value.clone();
            let new = draft("declared", old.on, "medicine_described", &body).correcting(old.id, "more was read");
            let Ok(after) = journal.and(new).try_holding() else { continue };
            prop_assert_eq!(flip(&before, &after), None, "{} = {} of {}", field, value, &body["medicine"]);
        }
    }

    #[test]
    fn the_order_of_recording_within_a_day_does_not_matter(
        journal in journals(),
        keys in prop::collection::vec(any::<u16>(), 64),
    ) {
        let shuffled = Journal(shuffled_within_days(&journal.0, &keys, depend));
        let one = journal.holding();
        let Ok(two) = shuffled.try_holding() else { return Err(TestCaseError::reject("depends on the order")) };
        prop_assert_eq!(difference(&one, &two), None, "{:?}", &shuffled);
    }

    #[test]
    fn what_happened_after_a_day_does_not_bear_on_it(journal in journals(), asked in prop::collection::vec(0..90_u16, 3)) {
        let whole = journal.holding();
        for on in asked.into_iter().map(day) {
            let by_then = Journal(journal.0.iter().filter(|draft| draft.on <= on || is_knowledge(draft.kind())).cloned().collect());
            let part = by_then.holding();
            for colony in part.colonies() {
                let then = History::of(&part, leaflets(), colony);
                let now = History::of(&whole, leaflets(), colony);
                // What is read of the lot of a later dose is knowledge of the course; so is a removal of what was said
                // to be out.
                let dosed_later = |course: &Course| course.doses.iter().any(|dose| dose.on > on);
                let said_out = |course: &Course| {
                    let of = |known: &&Course| known.entry == course.entry && known.came_by == course.came_by;
                    let now_in = now.courses.iter().find(of).is_some_and(|course| course.out_by(on).is_none());
                    course.out_by(on).is_some() && now_in
                };
                if then.courses.iter().any(said_out) {
                    continue;
                }
                if now.courses.iter().any(|course| course.placed <= on && dosed_later(course)) {
                    continue;
                }
                prop_assert_eq!(then.may_be_supered(on), now.may_be_supered(on), "{} on {}", colony, on);
            }
        }
    }

    #[test]
    fn striking_an_entry_out_and_recording_it_anew_changes_no_answer(
        journal in journals(),
        chosen in prop::collection::vec(any::<prop::sample::Index>(), 4),
    ) {
        let before = journal.holding();
        // An entry that another of its day depends on would end up after that one.
        let alone = |old: &&Draft| {
            let mut others = journal.0.iter().filter(|other| other.on == old.on && other.id != old.id);
            !others.any(|other| depend(old, other))
        };
        let alone: Vec<&Draft> = journal.0.iter().filter(alone).collect();
        for old in chosen.iter().filter(|_| !alone.is_empty()).map(|index| alone[index.index(alone.len())]) {
            let id = |word: &str| uuid_of(word).parse().unwrap();
            let nothing = Event::from(StrikeOut {});
            let away = Draft::new(id("away"), day(120), old.recorded_by.clone(), nothing);
            let away = away.correcting(old.id, "by mistake");
            let anew = Draft { id: id("anew"), ..old.clone() };
            let Ok(after) = journal.and(away).and(anew).try_holding() else { continue };
            prop_assert_eq!(difference(&before, &after), None, "{} of {}", old.kind().as_str(), old.on);
        }
    }

    #[test]
    fn a_yes_rests_on_documents_and_speaks_of_every_course(journal in journals(), asked in prop::collection::vec(0..130_u16, 12)) {
        let holding = journal.holding();
        for colony in colonies(&holding) {
            let history = History::of(&holding, leaflets(), &colony);
            for on in asked.iter().map(|ahead| day(*ahead)) {
                let report = SuperingReport::ask(Words::english(), &holding, leaflets(), &colony, on);
                if report.in_brief.answer != Verdict::Yes {
                    continue;
                }
                let deciding: Vec<_> = report.grounds.iter().filter(|ground| ground.decides).collect();
                prop_assert!(!deciding.is_empty(), "{} on {}: a yes without a ground", &colony, on);
                for ground in &deciding {
                    prop_assert_eq!(ground.outcome, Outcome::Met);
                    let shown = ground.course.is_none() || !ground.values.is_empty();
                    prop_assert!(shown, "{} on {}: {} shows no value", &colony, on, ground.about);
                    let documented = ground.values.iter().all(|value| value.confidence == Confidence::Document);
                    prop_assert!(documented, "{} on {}: {:?}", &colony, on, &ground.values);
                }
                for course in history.courses_on(on) {
                    let spoken_of = |entry| deciding.iter().any(|ground| ground.course.as_ref().is_some_and(|of| of.administration == entry));
                    prop_assert!(spoken_of(course.entry), "{} on {}: nothing on the course of {}", &colony, on, course.placed);
                    prop_assert!(may_carry_a_yes(course, on), "{} on {}: {:?}", &colony, on, course);
                }
            }
        }
    }

    #[test]
    fn the_first_free_day_on_record_is_the_first_day_of_a_yes(journal in journals()) {
        let holding = journal.holding();
        for colony in colonies(&holding) {
            let history = History::of(&holding, leaflets(), &colony);
            // From the last entry on nothing more happens, so that what is on record must come true.
            for on in (90..135).map(day) {
                let answer = history.supering(on);
                match answer.first_free() {
                    FirstFree::OnRecord(free) => {
                        prop_assert_eq!(history.may_be_supered(free), Verdict::Yes, "{} asked on {}, free on {}", &colony, on, free);
                        if free > on {
                            prop_assert_ne!(history.may_be_supered(free.before()), Verdict::Yes, "{} asked on {}", &colony, on);
                        }
                        prop_assert_eq!(answer.verdict == Verdict::Yes, free <= on);
                    }
                    FirstFree::OnceOut { out, free } => {
                        prop_assert_ne!(answer.verdict, Verdict::Yes);
                        prop_assert!(on <= out && out <= free);
                    }
                    FirstFree::NotKnown => prop_assert_ne!(answer.verdict, Verdict::Yes),
                }
            }
        }
    }
}

/// Whether the documents on a course can support a yes, derived independently: either it is in and supers are documented to
/// be allowed; or it is out on record or documented to be used up, both periods are documented, and neither is running.
fn may_carry_a_yes(course: &Course, on: Day) -> bool {
    let terms = &course.terms;
    let allowed =
        terms.supers_during.known().filter(|fact| fact.is_documented() && fact.value != SupersDuring::Off);
    let documented =
        |value: &TermValue<u16>| value.known().filter(|fact| fact.is_documented()).map(|fact| fact.value);
    let last_dose = course.doses.iter().map(|dose| dose.on).filter(|dose| *dose <= on).max();
    let stays = [&terms.stay_min, &terms.stay_max_longest].into_iter().flat_map(Stay::stated);
    let longest = stays.clone().map(|fact| fact.value).max();
    let mut stays = stays;
    let stays_documented = stays.all(combclear_domain::basics::sourced::Sourced::is_documented);
    let need = terms.removal.known().filter(|fact| fact.is_documented()).map(|fact| fact.value);
    let used_up = match (need, longest) {
        (Some(RemovalNeed::NothingStays), _) => last_dose,
        (Some(RemovalNeed::NotNeeded), Some(days)) if stays_documented => {
            last_dose.map(|dose| dose.plus(days))
        }
        _ if terms.nothing_stays() => last_dose,
        _ => None,
    };
    let out = [used_up, course.out_by(on)].into_iter().flatten().filter(|out| *out <= on).min();
    let periods = documented(&terms.withdrawal).zip(documented(&terms.wait));
    match (out, allowed) {
        (None, Some(_)) => true,
        (Some(out), allowed) => periods.is_some_and(|(withdrawal, wait)| {
            let bars = if allowed.is_some() { wait } else { withdrawal.max(wait) };
            bars == 0 || on > out.plus(bars)
        }),
        (None, None) => false,
    }
}
