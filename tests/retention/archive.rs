//! What is archived, and that no relevant answer depends on it.

use combclear_domain::Day;
use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::LotName;
use combclear_domain::facts::history::History;
use combclear_domain::facts::holding::{Holding, Refusal};
use combclear_domain::journal::archive::{Archives, Rest, digest};
use combclear_domain::journal::event::Archived;
use combclear_domain::journal::{Draft, Entry, Event, Hash};
use combclear_domain::questions::register::{Period, Register};
use combclear_domain::questions::retention::{ArchivePlan, LawNotRead, Retention};
use combclear_testkit::entries::read;
use combclear_testkit::files::demo;
use combclear_wording::Words;
use combclear_wording::refusals::Refused;
use combclear_wording::retention::held_back;
use proptest::prelude::*;
use serde_json::json;

use super::Book;
use crate::some;

fn plan(book: &Book, through: &str) -> ArchivePlan {
    let (leaflets, laws) = (combclear_leaflets::builtin().unwrap(), combclear_leaflets::laws().unwrap());
    let through: Day = through.parse().unwrap();
    ArchivePlan::of(&book.holding, leaflets, laws, through, through, LawNotRead::IsAnsweredFor)
}

/// A law that is known here second hand holds back, unless the keeper answers for it.
#[test]
fn what_only_a_law_known_second_hand_releases_goes_when_the_keeper_answers_for_it() {
    let mut book = Book::of("fr");
    book.buy("2014-01-10", "liquid", "L", 1);
    book.give("2014-08-20", &["L"]);
    let (leaflets, laws) = (combclear_leaflets::builtin().unwrap(), combclear_leaflets::laws().unwrap());
    for (through, by_law) in [("2019-12-31", false), ("2020-01-01", true)] {
        let through: Day = through.parse().unwrap();
        let plan = |not_read| ArchivePlan::of(&book.holding, leaflets, laws, through, through, not_read);
        let held = plan(LawNotRead::HoldsBack);
        assert_eq!((held.places.is_none(), held.held_back.len()), (true, usize::from(by_law)), "{through}");
        for held in &held.held_back {
            let why = held_back(Words::english(), &held.because);
            assert!(why.contains("the law of `fr` on this is known here only second hand"), "{why}");
        }
        let answered = plan(LawNotRead::IsAnsweredFor);
        assert_eq!((answered.places.is_some(), answered.held_back.is_empty()), (by_law, true), "{through}");
    }
}

/// The entry that moves the entries of the plan, sealed after all others.
fn step(book: &Book, plan: &ArchivePlan) -> Entry {
    let places = plan.places.clone().unwrap();
    let moved = book.entries.iter().filter(|entry| places.contains(entry.seq));
    let rests: Vec<Rest> = moved.map(|entry| Rest::of(book.holding.name(), entry)).collect();
    let event = Event::from(Archived {
        through: plan.through,
        entries: places.count(),
        places,
        digest: digest(&rests),
        file: Hash([7; 32]),
        contents: 0,
        law_checked: None,
    });
    let id = "00000000-0000-7000-8000-ffffffffffff".parse().unwrap();
    let draft = Draft::new(id, plan.through, "K".parse().unwrap(), event);
    let at = format!("{}T08:00:00.000Z", plan.through).parse().unwrap();
    Entry::seal(book.holding.name(), draft, at, book.holding.tip())
}

/// The journal as kept after archiving, folded again.
fn read_back(book: &Book, plan: &ArchivePlan, step: &Entry) -> Holding {
    let places = plan.places.clone().unwrap();
    let mut holding = Holding::new(book.holding.name().clone());
    let mut archives = Archives::default();
    for entry in &book.entries {
        let kept = if places.contains(entry.seq) { entry.without_body() } else { entry.clone() };
        if kept.is_in_archive() {
            archives.without_body(Rest::of(holding.name(), &kept));
        }
        let kept = Entry::from_json(&kept.to_json()).unwrap();
        holding.accept_sealed(&kept).unwrap_or_else(|refusal| panic!("{}: {refusal}", kept.seq));
    }
    assert!(holding.first_without_body().is_some());
    holding.accept_sealed(step).unwrap();
    assert_eq!(holding.first_without_body(), None);
    let Event::Archived(body) = &step.draft.event else { panic!() };
    archives.archived(step.seq, step.draft.id, body).unwrap();
    archives.end().unwrap();
    holding
}

fn answers(holding: &Holding, from: Day) -> String {
    let leaflets = combclear_leaflets::builtin().unwrap();
    let of = |colony| History::of(holding, leaflets, colony).supering_ahead(from, 401);
    holding.colonies().map(|colony| format!("{colony} {:?}", of(colony))).collect::<Vec<_>>().join("\n")
}

/// The answer for the colony on every day from the first to this one.
fn verdicts(holding: &Holding, to: Day) -> Vec<Verdict> {
    let history = History::of(holding, combclear_leaflets::builtin().unwrap(), &"A".parse().unwrap());
    let first: Day = "2014-01-01".parse().unwrap();
    let days = u16::try_from(to.days_since(first)).unwrap();
    (0..days).map(|day| history.may_be_supered(first.plus(day))).collect()
}

/// The same without the archive step.
fn whole(book: &Book) -> Holding {
    let mut whole = Holding::new(book.holding.name().clone());
    for entry in &book.entries {
        whole.accept(entry).unwrap();
    }
    whole
}

fn register(holding: &Holding, from: &str, to: &str) -> Register {
    let period = Period::new(from.parse().unwrap(), to.parse().unwrap()).unwrap();
    Register::of(holding, combclear_leaflets::builtin().unwrap(), period, to.parse().unwrap())
}

/// Two old lots, one of them corrected, a recent one, and one that is not used up.
fn book() -> Book {
    let mut book = Book::of("gb");
    book.buy("2014-01-05", "strips", "OLD", 1);
    let given = book.give("2014-02-01", &["OLD"]);
    let out = book.take_out("2014-03-01", &given);
    let right = json!({ "administration": given, "colonies": ["A"] });
    book.write_with("2014-03-15", "removal", right, json!({ "corrects": out, "reason": "wrong day" }));
    book.buy("2015-01-05", "liquid", "SLIP", 1);
    let slip = book.give("2015-02-01", &["SLIP"]);
    book.write_with(
        "2015-02-02",
        "strike_out",
        json!({}),
        json!({ "corrects": slip, "reason": "not given" }),
    );
    book.give("2015-02-03", &["SLIP"]);
    book.buy("2016-01-05", "liquid", "LEFT", 3);
    book.give("2016-02-01", &["LEFT"]);
    book.buy("2025-01-05", "strips", "LATE", 1);
    book.give("2026-02-01", &["LATE"]);
    book
}

#[test]
fn whole_sets_go_from_the_day_after_their_last() {
    let book = book();
    // 15 March 2014 is the last use of OLD, 3 February 2015 that of SLIP; five years each (vectors.rs).
    for (through, places) in [
        ("2019-03-15", None),
        ("2019-03-16", Some("7-10")),
        ("2020-02-03", Some("7-10")),
        ("2020-02-04", Some("7-14")),
        ("2026-11-27", Some("7-14")),
    ] {
        let found = plan(&book, through).places.map(|places| places.to_string());
        assert_eq!(found.as_deref(), places, "{through}");
    }
}

/// German law counts from the making of the entry; a set that is not over is kept whatever rule decides.
#[test]
fn what_is_not_over_does_not_go_although_the_time_of_the_law_is_over() {
    let mut book = Book::of("de");
    book.buy("2016-01-01", "strips", "INSIDE", 1);
    book.give("2016-01-01", &["INSIDE"]);
    book.buy("2016-01-01", "liquid", "LEFT", 3);
    let plan = plan(&book, "2026-11-27");
    assert_eq!((plan.places, plan.held_back.len()), (None, 0));
    for lot in ["INSIDE", "LEFT"] {
        let set = book.set(lot, "2026-11-27");
        assert!(!set.could_go && !set.lots[0].still_runs.is_empty(), "{set:?}");
    }
}

/// If the leaflet has precedence over a stated period, the wait of a medicine without leaflet stays unknown, however long
/// ago it was given. Archiving the entry must not turn that into a yes.
#[test]
fn what_an_answer_still_turns_on_is_held_back() {
    let mut book = Book::of("us");
    book.buy("2014-01-01", "liquid", "UNKNOWN", 1);
    book.give("2014-01-01", &["UNKNOWN"]);
    let before = answers(&book.holding, "2026-11-27".parse().unwrap());
    assert!(before.contains("A [(2026-11-27, 2028-01-01, Unknown)]"), "{before}");
    let plan = plan(&book, "2026-11-27");
    assert_eq!(plan.places, None);
    let because = held_back(Words::english(), &plan.held_back[0].because);
    assert_eq!(because, "whether colony A may be supered depends on it");
}

#[test]
fn what_went_is_in_no_file_and_what_stays_is_as_it_was() {
    let mut book = book();
    let plan = plan(&book, "2026-11-27");
    let before = answers(&book.holding, plan.through);
    let late = register(&book.holding, "2016-01-01", "2026-11-27");
    let step = step(&book, &plan);
    let read_back = read_back(&book, &plan, &step);
    book.holding.accept_archived(&step).unwrap();
    for after in [&book.holding, &read_back] {
        assert_eq!(answers(after, plan.through), before);
        let lots: Vec<&str> = after.lots().map(LotName::as_str).collect();
        assert_eq!(lots, ["LATE", "LEFT"]);
        let again = register(after, "2016-01-01", "2026-11-27");
        assert_eq!(Register { entries: late.entries, head: late.head, ..again }, late);
        let old = register(after, "2014-01-01", "2014-12-31");
        assert_eq!((old.administrations.len(), old.corrections.len(), old.archived.len()), (0, 0, 1));
        assert_eq!((old.archived[0].entries, old.archived[0].file), (4, Hash([7; 32])));
        let (leaflets, laws) = (combclear_leaflets::builtin().unwrap(), combclear_leaflets::laws().unwrap());
        let kept = Retention::of(after, leaflets, laws, plan.through);
        let lots: Vec<&str> =
            kept.sets.iter().flat_map(|set| set.lots.iter().map(|lot| lot.lot.as_str())).collect();
        assert_eq!(lots, ["LEFT", "LATE"]);
        let again =
            ArchivePlan::of(after, leaflets, laws, plan.through, plan.through, LawNotRead::IsAnsweredFor);
        assert_eq!((again.places, again.sets), (None, vec![]));
    }
}

#[test]
fn an_archived_entry_comes_by_no_other_way_and_stays() {
    let mut book = book();
    let plan = plan(&book, "2026-11-27");
    let step = step(&book, &plan);
    let refused = book.holding.clone().accept(&step).unwrap_err();
    assert_eq!(refused.pointer, "/kind");
    // A sealed `archived` entry is accepted only if the bodies are already gone.
    let refused = book.holding.clone().accept_sealed(&step).unwrap_err();
    assert!(said(&refused).contains("still complete here"), "{refused}");
    let mut body = match &step.draft.event {
        Event::Archived(body) => (**body).clone(),
        _ => panic!(),
    };
    let (name, tip) = (book.holding.name().clone(), book.holding.tip());
    let reseal = |body: &Archived| {
        let draft = Draft { event: body.clone().into(), ..step.draft.clone() };
        let draft = Draft { body: draft.event.to_body().into(), ..draft };
        Entry::seal(&name, draft, step.recorded_at, tip)
    };
    for (places, words) in [
        ("7-9", "one corrects the other"),
        ("7", "names what it introduced"),
        ("7-10,15", "names what it introduced"),
        ("900", "not all of the places"),
        ("1-18446744073709551615", "not all of the places"),
    ] {
        body.places = places.parse().unwrap();
        body.entries = body.places.count();
        let refused = book.holding.clone().accept_archived(&reseal(&body)).unwrap_err();
        assert!(said(&refused).contains(words), "{places}: {refused}");
    }
    body.entries = 2;
    assert_eq!(book.holding.clone().accept_archived(&reseal(&body)).unwrap_err().pointer, "/body/entries");
    book.holding.accept_archived(&step).unwrap();
    let moved = book.entries[6].draft.id.to_string();
    let strike = |of: &str| {
        let entry = json!({ "id": "00000000-0000-7000-8000-fffffffffffe", "on": "2026-11-27", "recorded_by": "K",
            "kind": "strike_out", "body": {}, "corrects": of, "reason": "why" });
        Entry::seal(book.holding.name(), read(&entry), step.recorded_at, book.holding.tip())
    };
    for (of, words) in [
        (moved.as_str(), "was moved into an archive"),
        (&step.draft.id.to_string(), "which cannot be undone"),
    ] {
        let refused = book.holding.clone().accept(&strike(of)).unwrap_err();
        assert!(said(&refused).contains(words), "{refused}");
    }
    // A second time it is refused.
    let again = reseal(&match &step.draft.event {
        Event::Archived(body) => (**body).clone(),
        _ => panic!(),
    });
    let again = Draft { id: "00000000-0000-7000-8000-fffffffffffd".parse().unwrap(), ..again.draft };
    let again = Entry::seal(book.holding.name(), again, step.recorded_at, book.holding.tip());
    let refused = book.holding.clone().accept_archived(&again).unwrap_err();
    assert!(said(&refused).contains("has already been moved"), "{refused}");
}

fn said(refusal: &Refusal) -> String {
    Refused::of(Words::english(), refusal).message
}

/// Five years after their last use, the first lots of the demo may be archived (`tests/cli/retention.rs`).
#[test]
fn the_demo_answers_the_same_in_2031_before_and_after() {
    let mut book = Book { holding: Holding::new("demo".parse().unwrap()), entries: demo(), written: 0 };
    for entry in &book.entries {
        book.holding.accept(entry).unwrap();
    }
    let plan = plan(&book, "2031-07-01");
    let going = plan.places.as_ref().unwrap().count();
    assert!(going > 10, "{going}");
    let before = answers(&book.holding, plan.through);
    let step = step(&book, &plan);
    let read_back = read_back(&book, &plan, &step);
    book.holding.accept_archived(&step).unwrap();
    assert_eq!(answers(&book.holding, plan.through), before);
    assert_eq!(answers(&read_back, plan.through), before);
}

/// A carrier that need not come out is used up after 400 days, the longest stay that can be stated, and then its period runs; strips
/// given within 400 days before a flow bar supers until that flow is over.
#[test]
fn a_day_long_after_the_last_entry_of_a_course_in_an_archive_is_no_yes_where_the_whole_record_says_no() {
    let terms = |more: serde_json::Value| {
        let mut terms = json!({ "supers_during": "off", "wait_after_removal_days": 0, "withdrawal_days": 0 });
        terms.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        json!({ "medicine": "m", "pack_name": "m", "unit": "piece", "terms": terms })
    };
    let used_up = terms(json!({ "removal": "not_needed", "stay_min_days": 400, "stay_max_days": 400,
        "withdrawal_days": 400, "flow_before_days": 0 }));
    let before_flow = terms(json!({ "removal": "needed", "stay_min_days": 1, "flow_before_days": 400 }));
    for (medicine, withdrawal, comes_out, barred) in
        [(used_up, 400, false, "2016-04-01"), (before_flow, 0, true, "2015-07-01")]
    {
        let mut book = Book::of("gb");
        book.write("2014-01-01", "medicine_described", medicine);
        let flow = json!({ "apiary": "East", "forage": "lime", "stage": "seen", "from": "2015-03-20",
            "to": "2015-07-31" });
        book.write("2015-08-01", "nectar_flow", flow);
        book.buy("2014-01-02", "m", "L", 1);
        let given = book.give_more("2014-02-01", &["L"], json!({ "withdrawal_days": withdrawal }));
        if comes_out {
            book.take_out("2014-03-01", &given);
        }
        let barred: Day = barred.parse().unwrap();
        let verdict = |holding: &Holding| {
            let history = History::of(holding, combclear_leaflets::builtin().unwrap(), &"A".parse().unwrap());
            history.may_be_supered(barred)
        };
        assert_eq!(verdict(&book.holding), Verdict::No, "{barred}");
        let plan = plan(&book, "2026-11-27");
        assert!(plan.places.is_some(), "{barred}: {:?}", plan.held_back);
        book.holding.accept_archived(&step(&book, &plan)).unwrap();
        assert_eq!(verdict(&book.holding), Verdict::Unknown, "{barred}");
    }
}

proptest! {
    #![proptest_config(some(48))]

    #[test]
    fn supering_is_the_same_before_and_after_on_every_day_from_then_on(
        uses in prop::collection::vec((0..4500_u16, 0..3_usize, any::<bool>(), 0..120_u16), 1..12),
        jurisdiction in prop::sample::select(vec!["gb", "ni", "de", "ie", "ch"]),
        through in 3000..4700_u16,
    ) {
        let start: Day = "2014-01-01".parse().unwrap();
        let mut happens: Vec<(u16, usize, bool, u16)> = uses;
        happens.sort_unstable();
        let mut book = Book::of(jurisdiction);
        let mut recorded: Vec<(Day, usize, bool, Option<u16>)> = Vec::new();
        for (on, kind, out, stay) in happens {
            recorded.push((start.plus(on), kind, out, Some(stay)));
        }
        for (number, (on, kind, out, stay)) in recorded.into_iter().enumerate() {
            let (lot, quantity) = (format!("L{number}"), if kind == 2 { 2 } else { 1 });
            let medicine = if kind == 0 { "liquid" } else { "strips" };
            book.buy(&on.to_string(), medicine, &lot, quantity);
            let given = book.give(&on.to_string(), &[&lot]);
            if medicine == "strips" && out {
                book.take_out(&on.plus(stay.unwrap()).to_string(), &given);
            }
            if quantity == 2 && out {
                book.dispose(&on.plus(1).to_string(), &lot, 1);
            }
        }
        let through = start.plus(through);
        let plan = plan(&book, &through.to_string());
        for held in &plan.held_back {
            let because = held_back(Words::english(), &held.because);
            let runs = because.contains("(removal)") || because.contains("the retention period may still move");
            prop_assert!(runs || because.starts_with("whether colony A may be supered"), "{:?}", held);
        }
        if plan.places.is_some() {
            let before = answers(&book.holding, through);
            let step = step(&book, &plan);
            let read_back = read_back(&book, &plan, &step);
            book.holding.accept_archived(&step).unwrap();
            prop_assert_eq!(answers(&book.holding, through), before.clone());
            prop_assert_eq!(answers(&read_back, through), before);
            // A day before may be answered less surely than with the archive, never otherwise.
            let whole = whole(&book);
            for after in [&book.holding, &read_back] {
                let verdicts = verdicts(after, through).into_iter().zip(verdicts(&whole, through));
                for (on, (without, with)) in verdicts.enumerate() {
                    prop_assert!(without == with || without == Verdict::Unknown, "{}: {:?}", on, with);
                }
            }
            for after in [&book.holding, &read_back] {
                let report = register(after, "2012-01-01", "2027-06-01");
                let given = report.administrations.iter().map(|row| &row.medicine.medicine);
                let out = report.removals.iter().map(|row| &row.medicine.medicine);
                prop_assert!(given.chain(out).all(Fact::is_known));
            }
        }
    }
}
