//! The supering answer, against a second reading of the rules that shares nothing with this code.
//!
//! `RULES.md` beside this file says how the answer is reached. `reading.py` was written from it alone, by somebody who had
//! not read the library. `holdings.py` makes the holdings: random ones, and every history of one leaflet within a small
//! calendar. Both programs answer, and no answer may differ.
//!
//! A few hundred random holdings are tried with the other tests. `COMBCLEAR_SECOND_READING=random:SEED:COUNT` or `=exhaustive` asks
//! for others; `.ci/run` asks for thousands and for all.

use std::thread;

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::facts::history::History;
use combclear_domain::facts::holding::{Holding, Record};
use combclear_domain::journal::Entry;
use combclear_domain::journal::entry::Envelope;
use combclear_domain::questions::supering::FirstFree;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_testkit::cases::leaflets_and;
use combclear_testkit::files::{python, root};
use serde_json::{Value, json};

const HOLDINGS: &str = "tests/second_reading/holdings.py";
const READING: &str = "tests/second_reading/reading.py";
/// Where the leaflets of both programs are.
const LEAFLETS: [&str; 2] = ["crates/leaflets", "tests/supering/leaflets"];
/// The recording time of the entries: after all events.
const RECORDED: &str = "2029-01-01T00:00:00.000Z";

#[test]
fn a_second_reading_of_the_rules_gives_the_same_answers() {
    let asked = std::env::var("COMBCLEAR_SECOND_READING").unwrap_or_else(|_| "random:1182:300".to_owned());
    let arguments: Vec<&str> = match asked.split(':').collect::<Vec<_>>().as_slice() {
        ["exhaustive"] => vec!["exhaustive"],
        ["random", seed, count] => vec!["random", "--seed", seed, "--count", count],
        other => panic!("COMBCLEAR_SECOND_READING is `random:SEED:COUNT` or `exhaustive`, not {other:?}"),
    };
    let made = python(HOLDINGS, &arguments, "");
    let holdings: Vec<Value> = made.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert!(holdings.len() >= 100, "only {} holdings", holdings.len());
    // Two halves at once: the second program is the slower one.
    let leaflets = leaflets_and(&[("tests/supering/leaflets/zz", "zz")]);
    let half = holdings.len().div_ceil(2);
    let held: Vec<Held> = thread::scope(|scope| {
        let halves: Vec<_> =
            holdings.chunks(half).map(|part| scope.spawn(|| hold(part, &leaflets))).collect();
        halves.into_iter().map(|half| half.join().unwrap()).collect()
    });
    let (answers, refused, entries) = held.iter().fold((0, 0, 0), |(answers, refused, entries), held| {
        (answers + held.answers, refused + held.refused, entries + held.entries)
    });
    // The shortest journal first.
    let mut differences: Vec<&Difference> = held.iter().flat_map(|held| &held.differences).collect();
    differences.sort_by_key(|difference| difference.entries.len());
    println!(
        "{} holdings, {entries} entries ({refused} more refused), {answers} answers, {} differences",
        holdings.len(),
        differences.len()
    );
    let shown: Vec<String> =
        differences.iter().take(3).map(|difference| shortest(difference, &leaflets).shown()).collect();
    assert!(
        differences.is_empty(),
        "{} of {answers} answers differ:\n{}",
        differences.len(),
        shown.join("\n")
    );
    assert!(entries > refused, "most entries were refused: nothing was tried");
}

/// Moves, splits without a place, and corrections of either must not hide a colony from its apiary.
#[test]
fn the_colonies_at_an_apiary_are_all_that_live_and_stand_there() {
    let made = python(HOLDINGS, &["random", "--seed", "7", "--count", "150"], "");
    let mut found = 0;
    for line in made.lines() {
        let line: Value = serde_json::from_str(line).unwrap();
        let (holding, taken, _) = recorded(line["entries"].as_array().unwrap());
        let mut days: Vec<Day> =
            taken.iter().map(|entry| entry["on"].as_str().unwrap().parse().unwrap()).collect();
        days.dedup();
        for on in days {
            for apiary in holding.apiaries() {
                let alive = holding.colonies().filter(|colony| holding.life(colony).lasts(on));
                let there: Vec<_> =
                    alive.filter(|colony| holding.apiary_of(colony, on) == Some(apiary)).collect();
                assert_eq!(
                    holding.colonies_at(apiary, on).collect::<Vec<_>>(),
                    there,
                    "{apiary} {on} {line}"
                );
                found += there.len();
            }
        }
    }
    assert!(found > 1_000, "only {found} colonies stood anywhere");
}

/// A refused entry must leave nothing behind, even if it is a correction.
#[test]
fn an_entry_that_is_taken_back_leaves_the_holding_as_it_was() {
    let made = python(HOLDINGS, &["random", "--seed", "9", "--count", "100"], "");
    let mut taken_back = 0;
    for line in made.lines() {
        let line: Value = serde_json::from_str(line).unwrap();
        let (_, entries, _) = recorded(line["entries"].as_array().unwrap());
        let mut holding = Holding::new("test".parse().unwrap());
        for mut entry in entries {
            entry.as_object_mut().unwrap().remove("seq");
            let before = told(&holding);
            let sealed = sealed(&holding, &entry).unwrap();
            holding.accept(&sealed).unwrap();
            assert!(holding.take_back(&sealed));
            assert_eq!(told(&holding), before, "{entry} {line}");
            assert!(!holding.take_back(&sealed), "it is not the last one any more");
            holding.accept(&sealed).unwrap();
            taken_back += 1;
        }
    }
    assert!(taken_back > 1_000, "only {taken_back} entries were taken back");
}

/// Everything that a holding answers without a leaflet: its files, and the balance of each lot.
fn told(holding: &Holding) -> String {
    let ids =
        |file: &[std::sync::Arc<Record>]| file.iter().map(|record| record.id.to_string()).collect::<Vec<_>>();
    let colonies: Vec<_> = holding.colonies().map(|name| (name, ids(holding.colony_file(name)))).collect();
    let apiaries: Vec<_> = holding.apiaries().map(|name| (name, ids(holding.apiary_file(name)))).collect();
    let lots: Vec<_> =
        holding.lots().map(|name| (name, ids(holding.lot_file(name)), holding.balance(name))).collect();
    let there = holding.apiaries().map(|name| holding.colonies_at(name, Day::LAST).collect::<Vec<_>>());
    let there: Vec<_> = there.collect();
    let standing: Vec<_> = holding.standing().into_iter().map(|record| record.id).collect();
    format!(
        "{:?} {colonies:?} {apiaries:?} {lots:?} {there:?} {standing:?} {:?}",
        holding.tip(),
        holding.details_file().len()
    )
}

/// The result for some holdings.
struct Held {
    entries: usize,
    refused: usize,
    answers: usize,
    differences: Vec<Difference>,
}

/// A journal, and each question with the answer of the library.
type Answered = (Vec<Value>, Vec<(Value, Value)>);

/// A difference between the two answers.
#[derive(Clone)]
struct Difference {
    entries: Vec<Value>,
    ask: Value,
    ours: Value,
    theirs: Value,
}

impl Difference {
    /// With the whole journal, so that it can be turned into a case.
    fn shown(&self) -> String {
        let Self { entries, ask, ours, theirs } = self;
        let journal: Vec<String> = entries.iter().map(|entry| format!("    {entry}")).collect();
        format!("{ask}\n  library {ours}\n  reading {theirs}\n{}", journal.join("\n"))
    }
}

/// The difference with as few entries as possible: entries are removed one by one while it remains.
fn shortest(difference: &Difference, leaflets: &Leaflets) -> Difference {
    let mut shortest = difference.clone();
    loop {
        let without: Vec<Value> = (0..shortest.entries.len())
            .map(|left_out| {
                let mut entries = shortest.entries.clone();
                entries.remove(left_out);
                for entry in &mut entries {
                    entry.as_object_mut().unwrap().remove("seq"); // a new place is given
                }
                json!({ "entries": entries, "ask": [shortest.ask] })
            })
            .collect();
        let held = hold(&without, leaflets);
        match held.differences.into_iter().min_by_key(|difference| difference.entries.len()) {
            Some(shorter) => shortest = shorter,
            None => return shortest,
        }
    }
}

/// Asks both programs about some holdings.
fn hold(holdings: &[Value], leaflets: &Leaflets) -> Held {
    let mut held = Held { entries: 0, refused: 0, answers: 0, differences: Vec::new() };
    let mut lines = String::new();
    let mut ours: Vec<Answered> = Vec::new();
    for holding in holdings {
        let (fold, taken, refused) = recorded(holding["entries"].as_array().unwrap());
        held.entries += taken.len();
        held.refused += refused;
        let asked = holding["ask"].as_array().unwrap();
        let answers: Vec<(Value, Value)> =
            asked.iter().map(|ask| (ask.clone(), answer(&fold, leaflets, ask))).collect();
        held.answers += answers.len();
        lines.push_str(&json!({ "entries": taken, "ask": asked }).to_string());
        lines.push('\n');
        ours.push((taken, answers));
    }
    let theirs = python(READING, &LEAFLETS.map(|folder| root().join(folder)), &lines);
    let theirs: Vec<Value> = theirs.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!(theirs.len(), ours.len(), "the second reading answers every holding");
    for ((taken, answers), theirs) in ours.iter().zip(&theirs) {
        let theirs = theirs["answers"].as_array().unwrap();
        assert_eq!(theirs.len(), answers.len());
        for ((ask, ours), theirs) in answers.iter().zip(theirs) {
            if !agree(ours, theirs) {
                let (entries, ask) = (taken.clone(), ask.clone());
                let (ours, theirs) = (ours.clone(), theirs.clone());
                held.differences.push(Difference { entries, ask, ours, theirs });
            }
        }
    }
    held
}

/// Records entries one by one, leaving out refused ones. Accepted entries get their place.
fn recorded(entries: &[Value]) -> (Holding, Vec<Value>, usize) {
    let mut holding = Holding::new("test".parse().unwrap());
    let mut taken = Vec::new();
    for entry in entries {
        let Some(sealed) = sealed(&holding, entry) else { continue };
        if holding.accept(&sealed).is_ok() {
            let mut placed = entry.clone();
            placed["seq"] = json!(sealed.seq);
            taken.push(placed);
        }
    }
    let refused = entries.len() - taken.len();
    (holding, taken, refused)
}

/// The entry as it would be recorded next, if it can be read.
fn sealed(holding: &Holding, entry: &Value) -> Option<Entry> {
    let at: Instant = RECORDED.parse().unwrap();
    let mut wire = entry.clone();
    wire["recorded_by"] = json!("tester");
    let draft = Envelope::from_json(&wire.to_string()).and_then(Envelope::read).ok()?;
    Some(Entry::seal(holding.name(), draft, at, holding.tip()))
}

/// Whether the answers agree. The second reading names no day that depends on something coming out first; the library may.
fn agree(ours: &Value, theirs: &Value) -> bool {
    let once_out = ours["once_out"] == json!(true) && theirs["first_free"].is_null();
    let same = |key: &str| ours[key] == theirs[key];
    same("verdict") && same("last_blocked") && (once_out || same("first_free"))
}

fn answer(holding: &Holding, leaflets: &Leaflets, ask: &Value) -> Value {
    let colony = ask[0].as_str().unwrap().parse().unwrap();
    let on: Day = ask[1].as_str().unwrap().parse().unwrap();
    let history = History::of(holding, leaflets, &colony);
    let answer = history.supering(on);
    let named = answer.named_days();
    let (free, once_out) = match named.first_free {
        FirstFree::OnRecord(free) => (Some(free), false),
        FirstFree::OnceOut { free, .. } => (Some(free), true),
        FirstFree::NotKnown => (None, false),
    };
    json!({ "verdict": answer.verdict.as_str(), "last_blocked": named.last_blocked, "first_free": free, "once_out": once_out })
}
