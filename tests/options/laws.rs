//! Properties that hold for every holding, tested on random ones.

use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::topic::Topic;
use combclear_domain::basics::verdict::Verdict;
use std::collections::BTreeMap;

use combclear_domain::Quantity;
use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::history::History;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Kind;

use combclear_domain::basics::words::ColonyName;
use combclear_domain::questions::options::{Ask, Because, Board, Condition, Span, State, Usability, WhatIf};
use combclear_testkit::entries::{draft, shuffled_within_days, uuid_of};
use combclear_wording::options::{OptionsReport, StartReport};
use proptest::prelude::*;
use serde_json::json;

use super::knowledge::{depend, is_knowledge, leans, moved_meanwhile, one_by_one};
use super::making::{Journal, SPAN, day, invented};
use super::plans::{journals, told};
use super::{apiary_report, colony_report, leaflets};
use crate::some;

pub(super) fn asked(from: Day, to: Day, as_of: Day, what_if: &WhatIf) -> Ask {
    Ask { span: Span::new(from, to).unwrap(), as_of, what_if: what_if.clone() }
}

fn what_if() -> impl Strategy<Value = WhatIf> {
    let told = json!([{}, {}, { "power": "mains" }, { "access": "on_foot", "ground": "dry" }, { "ground": "flooded" }]);
    (0..5_usize, prop::option::of(0..200_u16)).prop_map(move |(which, until)| {
        let mut assumed = told[which].clone();
        if let Some(until) = until {
            assumed["until"] = json!(day(until));
        }
        serde_json::from_value(assumed).unwrap()
    })
}

/// The answer of every option on every start day, and whether it would be usable in a usual year.
type Answers = Vec<BTreeMap<Day, (Usability, Option<bool>)>>;

fn answers(holding: &Holding, colony: &ColonyName, ask: &Ask) -> Answers {
    let board = Board::of_colony(holding, leaflets(), ask, colony);
    let judged = board.judge(colony);
    assert_eq!(judged.len(), invented().len(), "one option for each leaflet");
    let by_day = |of: &combclear_domain::questions::options::Judged<'_>| {
        let each = of.days.iter().flat_map(|days| {
            let span = Span::new(days.from, days.to).unwrap();
            span.days().map(move |day| (day, (days.answer, days.in_a_usual_year)))
        });
        each.collect()
    };
    judged.iter().map(by_day).collect()
}

/// Every condition of every option.
fn conditions(holding: &Holding, colony: &ColonyName, ask: &Ask) -> Vec<Vec<Condition>> {
    let board = Board::of_colony(holding, leaflets(), ask, colony);
    board.judge(colony).iter().map(|judged| judged.conditions().cloned().collect()).collect()
}

pub(super) fn colonies(journal: &Journal) -> impl Iterator<Item = ColonyName> {
    journal.colonies.iter().map(|name| name.parse().unwrap())
}

/// The first condition that changed from met to broken, or the reverse.
fn flip(before: &[Vec<Condition>], after: &[Vec<Condition>], span: Span) -> Option<String> {
    for ((leaflet, before), after) in invented().iter().zip(before).zip(after) {
        for (one, two) in before.iter().zip(after) {
            assert_eq!(one.about, two.about, "the conditions stay the same");
            for day in span.days().filter(|_| one.binds) {
                let (one_run, two_run) = (one.on(day).unwrap(), two.on(day).unwrap());
                let pair = (one_run.state, two_run.state);
                let flipped = matches!(pair, (State::Met, State::Broken) | (State::Broken, State::Met));
                if flipped {
                    let (was, is) = (&one_run.because, &two_run.because);
                    return Some(format!("{} {} on {day}: {was:?} became {is:?}", leaflet.id, one.about));
                }
            }
        }
    }
    None
}

/// The rank of an answer; usable first.
fn place(answer: Usability) -> u8 {
    match answer {
        Usability::Usable => 0,
        Usability::Unknown => 1,
        Usability::RuledOut => 2,
    }
}

proptest! {
    #![proptest_config(some(64))]

    #[test]
    fn a_day_of_a_span_gets_the_answer_of_the_question_about_that_day(
        journal in journals(),
        (from, length, as_of) in (0..220_u16, 0..40_u16, 0..200_u16),
        picked in prop::collection::vec(0..40_u16, 4),
        what_if in what_if(),
    ) {
        let holding = journal.holding();
        let ask = asked(day(from), day(from + length), day(as_of), &what_if);
        for colony in colonies(&journal).filter(|colony| !moved_meanwhile(&journal, colony, &ask)) {
            let whole = answers(&holding, &colony, &ask);
            for ahead in picked.iter().map(|ahead| ahead % (length + 1)).chain([0, length]) {
                let on = day(from + ahead);
                let alone = answers(&holding, &colony, &asked(on, on, day(as_of), &what_if));
                for ((whole, alone), leaflet) in whole.iter().zip(&alone).zip(invented()) {
                    prop_assert_eq!(whole[&on], alone[&on], "{} in {} on {}", leaflet.id, &colony, on);
                }
            }
        }
    }

    #[test]
    fn widening_the_span_changes_no_answer(
        journal in journals(),
        (from, length, as_of) in (40..220_u16, 0..20_u16, 0..200_u16),
        (before, after) in (0..40_u16, 0..40_u16),
    ) {
        let holding = journal.holding();
        let nothing = WhatIf::default();
        let narrow = asked(day(from), day(from + length), day(as_of), &nothing);
        let wide = asked(day(from - before), day(from + length + after), day(as_of), &nothing);
        for colony in colonies(&journal).filter(|colony| !moved_meanwhile(&journal, colony, &wide)) {
            let (narrow, wide) = (answers(&holding, &colony, &narrow), answers(&holding, &colony, &wide));
            for ((narrow, wide), leaflet) in narrow.iter().zip(&wide).zip(invented()) {
                prop_assert_eq!(narrow.len(), usize::from(length) + 1, "every day has an answer");
                prop_assert_eq!(wide.len(), usize::from(before + length + after) + 1, "every day has an answer");
                for (on, answer) in narrow {
                    prop_assert_eq!(answer, &wide[on], "{} in {} on {}", leaflet.id, &colony, on);
                }
            }
        }
    }

    #[test]
    fn what_is_learnt_turns_no_condition_from_met_to_broken_or_back(
        journal in journals(),
        told in prop::collection::vec(told(), 16),
        (from, length, as_of) in (0..180_u16, 0..40_u16, 60..200_u16),
    ) {
        let ask = asked(day(from), day(from + length), day(as_of), &WhatIf::default());
        let (mut known, mut before) = (journal.clone(), journal.holding());
        let said = |holding: &Holding| colonies(&journal).map(|colony| conditions(holding, &colony, &ask)).collect::<Vec<_>>();
        let mut said_before = said(&before);
        for (index, told) in told.iter().enumerate() {
            let Some(learnt) = journal.made(&format!("learnt {index}"), told) else { continue };
            for learnt in one_by_one(&learnt) {
                let more = known.and(learnt.clone());
                let Some(after) = more.try_holding().ok().filter(|_| is_knowledge(&known, &before, &learnt)) else { continue };
                let said_after = said(&after);
                for (one, two) in said_before.iter().zip(&said_after) {
                    prop_assert_eq!(flip(one, two, ask.span), None, "by {:?}\nafter {:?}", &learnt, &known);
                }
                (known, before, said_before) = (more, after, said_after);
            }
        }
    }

    #[test]
    fn the_order_of_recording_within_a_day_does_not_matter(
        mut journal in journals(),
        keys in prop::collection::vec(any::<u16>(), 64),
        (from, length) in (0..220_u16, 0..30_u16),
        crowded in 4..40_u16,
    ) {
        // Everything happens within a few days, so that there is something to shuffle.
        for draft in journal.drafts.iter_mut().filter(|draft| draft.on >= day(0)) {
            let ahead = u16::try_from(draft.on.days_since(day(0))).unwrap();
            draft.on = day(ahead - ahead % crowded + crowded);
        }
        let mut standing = journal.clone();
        standing.drafts.clear();
        for draft in &journal.drafts {
            if standing.and(draft.clone()).try_holding().is_ok() {
                standing = standing.and(draft.clone());
            }
        }
        let drafts = shuffled_within_days(&standing.drafts, &keys, depend);
        let shuffled = Journal { drafts, ..standing.clone() };
        let one = standing.holding();
        let Ok(two) = shuffled.try_holding() else { return Err(TestCaseError::reject("depends on the order")) };
        let ask = asked(day(from), day(from + length), day(from.max(SPAN + 40)), &WhatIf::default());
        for colony in colonies(&journal) {
            let (before, after) = (conditions(&one, &colony, &ask), conditions(&two, &colony, &ask));
            for ((before, after), leaflet) in before.iter().zip(&after).zip(invented()) {
                for (before, after) in before.iter().zip(after) {
                    for on in ask.span.days() {
                        let (before, after) = (before.on(on).unwrap(), after.on(on).unwrap());
                        let same = (before.state, before.expected) == (after.state, after.expected);
                        prop_assert!(same, "{} in {} on {}: {:?} {:?}\n{:?}", leaflet.id, &colony, on, before, after, &shuffled);
                    }
                }
            }
        }
    }

    #[test]
    fn what_nobody_read_in_a_document_makes_no_day_usable(journal in journals(), from in 0..200_u16) {
        let mut journal = journal;
        journal.drafts.retain(|draft| draft.kind() != Kind::LeafletReading);
        let holding = journal.holding();
        let ask = asked(day(from), day(from + 40), day(from.max(SPAN)), &WhatIf::default());
        for colony in colonies(&journal) {
            let answers = answers(&holding, &colony, &ask);
            let conditions = conditions(&holding, &colony, &ask);
            let history = History::of(&holding, leaflets(), &colony);
            for ((answers, conditions), leaflet) in answers.iter().zip(&conditions).zip(invented()) {
                let second_hand = leaflet.rules.iter().all(|rule| rule.confidence != Confidence::Document);
                for on in answers.iter().filter(|(_, (answer, _))| *answer == Usability::Usable && second_hand).map(|(on, _)| *on) {
                    let bounds = [Topic::Temperature, Topic::BroodNeed];
                    let bound = leaflet.rules.iter().find(|rule| bounds.contains(&rule.says.topic()));
                    prop_assert!(bound.is_none(), "{} on {}: {:?}", leaflet.id, on, bound);
                    prop_assert!(history.supers_on(on).is_none(), "{} on {} with supers on", leaflet.id, on);
                    let binding = conditions.iter().filter(|condition| condition.binds);
                    for run in binding.filter_map(|condition| condition.on(on)) {
                        prop_assert!(!leans(&run.because), "{} on {}: {:?}", leaflet.id, on, run);
                        let flow_ahead = matches!(run.because, Because::NoFlow { next: Some((next, _)) } if next <= on.plus(60));
                        prop_assert!(!flow_ahead, "{} on {}: {:?}", leaflet.id, on, run);
                    }
                }
            }
        }
    }

    #[test]
    fn an_apiary_gets_the_worst_answer_of_its_colonies_and_the_sum_of_their_doses(
        journal in journals(),
        (from, length, as_of) in (0..200_u16, 0..20_u16, 0..200_u16),
    ) {
        let holding = journal.holding();
        let ask = asked(day(from), day(from + length), day(as_of), &WhatIf::default());
        for apiary in holding.apiaries() {
            let report = apiary_report(&holding, apiary, &ask).unwrap();
            prop_assert_eq!(report.options.is_empty(), report.colonies.is_empty());
            let each: Vec<Answers> = report.colonies.iter().map(|colony| answers(&holding, colony, &ask)).collect();
            for option in &report.options {
                let index = invented().iter().position(|leaflet| leaflet.id == option.leaflet).unwrap();
                let mut best = Usability::RuledOut;
                for on in ask.span.days() {
                    let worst = each.iter().map(|answers| answers[index][&on].0).fold(Usability::Usable, Usability::and);
                    let range = option.days.iter().find(|days| days.from <= on && on <= days.to).unwrap();
                    prop_assert_eq!(range.answer, worst, "{} on {}", &option.leaflet, on);
                    best = Usability::on_one_of([best, worst]);
                }
                prop_assert_eq!(option.answer, best);
                for group in &option.colonies {
                    for colony in &group.colonies {
                        let of_it = report.colonies.iter().position(|known| known == colony).unwrap();
                        let best = Some(Usability::on_one_of(each[of_it][index].values().map(|(answer, _)| *answer)));
                        prop_assert_eq!(Some(group.answer), best, "{} in {}", &option.leaflet, colony);
                    }
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(some(24))]

    #[test]
    fn one_dose_for_an_apiary_is_the_sum_of_what_its_colonies_get(
        journal in journals(),
        (from, length, as_of) in (0..200_u16, 0..20_u16, 0..200_u16),
    ) {
        let holding = journal.holding();
        let ask = asked(day(from), day(from + length), day(as_of.max(from)), &WhatIf::default());
        let mut reports: BTreeMap<(ColonyName, Day), OptionsReport> = BTreeMap::new();
        for apiary in holding.apiaries() {
            let report = apiary_report(&holding, apiary, &ask).unwrap();
            for option in &report.options {
                let first = option.days.iter().find(|days| days.answer == option.answer && days.answer != Usability::RuledOut);
                let start = first.map_or(day(from), |days| days.from);
                let mut sum = Some(Quantity::ZERO);
                for colony in &report.colonies {
                    let alone = reports.entry((colony.clone(), start)).or_insert_with(|| {
                        let on_that_day = asked(start, start, ask.as_of, &WhatIf::default());
                        colony_report(&holding, colony, &on_that_day)
                    });
                    let of_it = alone.options.iter().find(|of| of.leaflet == option.leaflet).unwrap();
                    let dose = of_it.dose.dose.as_ref().map(|dose| &dose.portion);
                    sum = sum.zip(dose).map(|(sum, dose)| sum.plus(dose.each));
                    prop_assert!(dose.is_none_or(|dose| dose.unit == option.unit && dose.doses == option.doses));
                }
                prop_assert_eq!(option.one_dose, sum, "{} at {} from {}", &option.leaflet, apiary, start);
                prop_assert_eq!(option.not_counted.is_empty(), sum.is_some());
            }
        }
    }

    #[test]
    fn options_come_in_the_order_of_their_answers_and_the_same_to_the_byte_when_asked_again(
        journal in journals(),
        (from, length, as_of) in (0..200_u16, 0..10_u16, 0..200_u16),
    ) {
        let (one, two) = (journal.holding(), journal.holding());
        let ask = asked(day(from), day(from + length), day(as_of), &WhatIf::default());
        for colony in colonies(&journal).take(1) {
            let report = colony_report(&one, &colony, &ask);
            prop_assert_eq!(report.options.len(), invented().len());
            prop_assert!(report.options.is_sorted_by_key(|option| place(option.answer)));
            let again = colony_report(&two, &colony, &ask);
            prop_assert_eq!(serde_json::to_string(&report).unwrap(), serde_json::to_string(&again).unwrap());
        }
        for apiary in one.apiaries() {
            let report = apiary_report(&one, apiary, &ask).unwrap();
            prop_assert!(report.options.is_sorted_by_key(|option| place(option.answer)));
            let again = apiary_report(&two, apiary, &ask).unwrap();
            prop_assert_eq!(serde_json::to_string(&report).unwrap(), serde_json::to_string(&again).unwrap());
        }
    }
}

proptest! {
    #![proptest_config(some(64))]

    #[test]
    fn a_course_given_as_told_frees_the_hive_on_the_day_that_was_told(journal in journals(), ahead in 0..100_u16) {
        let mut journal = journal;
        journal.drafts.retain(|draft| draft.kind() != Kind::LeafletReading);
        let holding = journal.holding();
        let (on, as_of) = (day(SPAN + ahead), day(SPAN));
        for apiary in holding.apiaries() {
            let report = apiary_report(&holding, apiary, &asked(on, on, as_of, &WhatIf::default())).unwrap();
            for option in &report.options {
                let leaflet = invented().into_iter().find(|leaflet| leaflet.id == option.leaflet).unwrap();
                let documented = leaflet.rules.iter().all(|rule| rule.confidence == Confidence::Document);
                let lot = journal.lots.iter().find(|(_, of)| of.id == leaflet.id).filter(|_| documented);
                let (Some(start), Some((lot, _))) = (&option.start, lot) else { continue };
                let Some(free) = start.start.first_free_day else { continue };
                let colony = option.longest_for.as_ref().unwrap_or(&report.colonies[0]);
                let says = |holding: &Holding, on| History::of(holding, leaflets(), colony).may_be_supered(on);
                // An earlier medicine may bar supers for longer: the day stated is that of this course alone.
                if [free, free.before()].iter().any(|day| says(&holding, *day) != Verdict::Yes) {
                    continue;
                }
                let after = as_told(&journal, colony, lot, start).holding();
                prop_assert_eq!(says(&after, free), Verdict::Yes, "{} in {}: {:?}", leaflet.id, colony, start);
                if free > start.start.start {
                    prop_assert_ne!(says(&after, free.before()), Verdict::Yes, "{} in {}: {:?}", leaflet.id, colony, start);
                }
            }
        }
    }
}

/// The same entries, with a course given dose by dose and taken out as the start says.
fn as_told(journal: &Journal, colony: &ColonyName, lot: &str, start: &StartReport) -> Journal {
    let mut recorded = journal.clone();
    for (index, visit) in start.visits.iter().enumerate() {
        let from = visit.visit.from.expect("with a free day every visit has one");
        let word = format!("visit {index}");
        if visit.what.starts_with("take it out") {
            let body = json!({ "administration": uuid_of("visit 0"), "colonies": [colony] });
            recorded = recorded.and(draft(&word, start.start.out_from.unwrap(), "removal", &body));
            continue;
        }
        let first = (index > 0).then(|| uuid_of("visit 0"));
        let given = json!({ "lot": lot, "each": 1, "colonies": [colony] });
        let body = json!({ "given": [given], "continues": first });
        recorded = recorded.and(draft(&word, from, "administration", &body));
    }
    recorded
}
