//! Every refusal in words, to the letter: programs and people know these sentences.

use std::collections::BTreeSet;

use combclear_domain::Day;
use combclear_domain::basics::topic::Topic;
use combclear_domain::basics::words::{CountMethod, Unit};
use combclear_domain::facts::holding::untrue::{
    Archives, Colonies, Corrections, Counts, Courses, Documents, Entries, Lots, Places, Terms, Weather,
};
use combclear_domain::facts::holding::{Bond, Refusal, Tie, Untrue};
use combclear_domain::journal::EntryId;
use combclear_domain::journal::event::Kind;
use combclear_domain::questions::options::Span;
use combclear_domain::questions::register::Period;
use combclear_testkit::entries::day;
use combclear_wording::Words;
use combclear_wording::refusals::{Refused, tie};

const ONE: &str = "00000000-0000-7000-8000-000000000001";
const TWO: &str = "00000000-0000-7000-8000-000000000002";

/// A name, an id or a day.
fn a<T: std::str::FromStr<Err: std::fmt::Debug>>(text: &str) -> T {
    text.parse().unwrap()
}

/// An amount or a temperature, as in an entry.
fn of_json<T: serde::de::DeserializeOwned>(text: &str) -> T {
    serde_json::from_str(text).unwrap()
}

fn one() -> EntryId {
    a(ONE)
}

fn two() -> EntryId {
    a(TWO)
}

fn early() -> Day {
    day("2026-03-01")
}

fn late() -> Day {
    day("2026-03-02")
}

/// Checks the words of each, and that no two share a word.
fn all_say(said: Vec<(Untrue, &str, &str)>) -> BTreeSet<&'static str> {
    let mut seen = BTreeSet::new();
    for (why, message, help) in said {
        seen.insert(why.as_str());
        let refusal = Refusal { pointer: "/body".to_owned(), why };
        assert_eq!(refusal.to_string(), format!("{} at `/body`", refusal.why.as_str()));
        let Refused { message: says, help: helps } = Refused::of(Words::english(), &refusal);
        assert_eq!((says.as_str(), helps.as_str()), (message, help), "{refusal:?}");
    }
    seen
}

fn of_entries() -> Vec<(Untrue, &'static str, &'static str)> {
    let jurisdiction = a("uk");
    let of = one();
    vec![
        (
            Entries::IdIsTaken { id: one() }.into(),
            "an entry with the id 00000000-0000-7000-8000-000000000001 is already recorded",
            "make a new id for a new entry",
        ),
        (
            Entries::InTheFuture { on: late(), today: early() }.into(),
            "2026-03-02 is in the future; an entry can be dated 2026-03-01 at the latest",
            "record what happened, on the day it happened or later",
        ),
        (
            Entries::NameHasInvisibleSign { name: "A\u{200b}1".to_owned(), sign: "U+200B".to_owned() }.into(),
            "the name `A\u{200b}1` has a sign that cannot be seen (U+200B)",
            "type the name anew rather than pasting it",
        ),
        (
            Entries::NameLooksLikeAnother { name: "\u{410}1".to_owned(), other: "A1".to_owned() }.into(),
            "the name `\u{410}1` looks like `A1` but is written with other letters",
            "if the other one is meant, write that; else choose a name that looks different",
        ),
        (
            Entries::WrittenBefore { written_on: early(), on: late() }.into(),
            "it was written on paper on 2026-03-01, before it happened on 2026-03-02",
            "look up both days on paper: the day on which it happened, and the day on which it was written down",
        ),
        (
            Entries::WrittenLater { written_on: late(), today: early() }.into(),
            "it was written on paper on 2026-03-02, but it is copied no later than 2026-03-01",
            "look up both days on paper: the day on which it happened, and the day on which it was written down",
        ),
        (
            Entries::JurisdictionIsUnknown { jurisdiction, meant: Some("gb") }.into(),
            "no leaflets and no law are known for the jurisdiction `uk`",
            "did you mean `gb`?",
        ),
        (
            Entries::JurisdictionIsUnknown { jurisdiction: a("zq"), meant: None }.into(),
            "no leaflets and no law are known for the jurisdiction `zq`",
            "write gb, ni, ch, us, eu or the lower-case code of a member state of the Union; elsewhere a code \
             from xa to xz, with leaflets of your own",
        ),
        (
            Corrections::NoSuchEntry { of }.into(),
            "there is no entry 00000000-0000-7000-8000-000000000001 to correct",
            "look its id up in the journal",
        ),
        (
            Corrections::CorrectedBefore { of, by: two() }.into(),
            "entry 00000000-0000-7000-8000-000000000001 was already corrected by entry \
             00000000-0000-7000-8000-000000000002",
            "correct entry 00000000-0000-7000-8000-000000000002, or record again what was struck out",
        ),
        (
            Corrections::OfArchiveStep { of }.into(),
            "entry 00000000-0000-7000-8000-000000000001 moved others into an archive, which cannot be undone",
            "record additions in an entry of their own",
        ),
        (
            Corrections::OfMovedEntry { of }.into(),
            "entry 00000000-0000-7000-8000-000000000001 was moved into an archive",
            "record additions in an entry of their own",
        ),
        (
            Corrections::OfStrikeOut { of }.into(),
            "entry 00000000-0000-7000-8000-000000000001 is a strike-out, which cannot be corrected",
            "record again what was struck out",
        ),
        (
            Corrections::OfOtherKind { of, was: Kind::Inspection, now: Kind::SupersOff }.into(),
            "entry 00000000-0000-7000-8000-000000000001 is of kind `inspection`, not `supers_off`",
            "correct it with an entry of its own kind, or strike it out",
        ),
        (
            Corrections::OfAnother {
                kind: Kind::SupersOn,
                on: late(),
                entry: two(),
                why: Box::new(Colonies::NoSuchColony { colony: a("A2"), near: None }.into()),
            }
            .into(),
            "with this correction the supers_on of 2026-03-02 (entry 00000000-0000-7000-8000-000000000002) could \
             not be true: there is no colony `A2`",
            "correct or strike out that entry first",
        ),
    ]
}

fn of_colonies() -> Vec<(Untrue, &'static str, &'static str)> {
    let method = CountMethod::SugarRoll;
    vec![
        (
            Colonies::NoSuchColony { colony: a("A2"), near: None }.into(),
            "there is no colony `A2`",
            "record it as established first",
        ),
        (
            Colonies::NoSuchColony { colony: a("A2"), near: Some(a("A1")) }.into(),
            "there is no colony `A2`",
            "did you mean `A1`?",
        ),
        (
            Colonies::NotYetThere { colony: a("A1"), begun: late(), on: early() }.into(),
            "colony `A1` came into the record on 2026-03-02, after 2026-03-01",
            "check both dates",
        ),
        (
            Colonies::Ended { colony: a("A1"), ended: early() }.into(),
            "colony `A1` ended on 2026-03-01",
            "check the colony and the date",
        ),
        (
            Colonies::EndedBefore { colony: a("A1"), ended: early() }.into(),
            "colony `A1` ended on 2026-03-01",
            "correct that entry instead",
        ),
        (
            Colonies::LivedLater { colony: a("A1"), kind: Kind::MiteCount, last: late(), on: early() }.into(),
            "colony `A1` has an entry later than 2026-03-01: a mite count (2026-03-02)",
            "check both dates, or correct that entry first",
        ),
        (Colonies::NoneNamed.into(), "no colony is named", "name at least one"),
        (Colonies::NamedTwice { colony: a("A1") }.into(), "colony `A1` is named twice", "name it once"),
        (
            Colonies::NameIsTaken { colony: a("A1"), since: early() }.into(),
            "there is a colony `A1` since 2026-03-01",
            "a colony's name is never used again; a hive mark may be",
        ),
        (
            Colonies::UnitedWithItself { colony: a("A1") }.into(),
            "colony `A1` cannot be united with itself",
            "name the colony that takes it in",
        ),
        (Colonies::NoSuper.into(), "no super is put on", "say how many supers, 1 or more"),
        (
            Counts::OverNone { field: "bees" }.into(),
            "nothing can be counted over 0 bees",
            "write how many, or leave it out if nobody counted",
        ),
        (
            Counts::NotOfMethod { field: "days", method }.into(),
            "`days` does not belong to a count by `sugar_roll`",
            "leave it out, or correct the method",
        ),
        (
            Counts::MoreThanCells { mites: 4_294_967_295, cells: 1_000 }.into(),
            "4294967295 of 1000 cells would be infested",
            "count the infested cells, not the mites in them",
        ),
    ]
}

fn of_places() -> Vec<(Untrue, &'static str, &'static str)> {
    let dates = "check both dates";
    vec![
        (
            Places::NoSuchApiary { apiary: a("West"), near: None }.into(),
            "there is no apiary `West`",
            "record the apiary first",
        ),
        (
            Places::NoSuchApiary { apiary: a("Eats"), near: Some(a("East")) }.into(),
            "there is no apiary `Eats`",
            "did you mean `East`?",
        ),
        (
            Places::ApiaryIsRecorded { apiary: a("East") }.into(),
            "the apiary `East` is already recorded",
            "correct that entry instead",
        ),
        (
            Places::DaysAreBackwards { from: late(), to: early() }.into(),
            "the last day 2026-03-01 is before the first, 2026-03-02",
            dates,
        ),
        (
            Places::FlowNotYetSeen { from: late(), on: early() }.into(),
            "the flow would begin on 2026-03-02, after 2026-03-01, so nobody has seen it",
            "record it as expected, or correct the day",
        ),
        (
            Places::SeenFlowHasOneDay.into(),
            "only an expected flow has early and late years",
            "leave it out: a flow that was seen began on one day",
        ),
        (
            Places::EarlyAfterUsual { early: late(), usual: early() }.into(),
            "an early year would begin on 2026-03-02, after a usual one on 2026-03-01",
            dates,
        ),
        (
            Places::LateBeforeUsual { late: early(), usual: late() }.into(),
            "a late year would begin on 2026-03-01, before a usual one on 2026-03-02",
            dates,
        ),
        (
            Places::LateAfterEnd { late: late(), to: early() }.into(),
            "a late year would begin on 2026-03-02, after the end of the flow on 2026-03-01",
            dates,
        ),
        (
            Weather::NumberOfDays { days: 1_401, most: 400 }.into(),
            "the list has 1401 days",
            "give 1 to 400 days in one entry",
        ),
        (Weather::DayTwice { day: early() }.into(), "2026-03-01 is in the list twice", "keep one of the two"),
        (
            Weather::NotYetMeasured { day: late(), on: early() }.into(),
            "2026-03-02 is after 2026-03-01, so nobody has measured it",
            "record a forecast, or correct the day",
        ),
        (Weather::NoMonths.into(), "the list has no month", "give 1 to 12 months"),
        (
            Weather::NoSuchMonth { month: 13 }.into(),
            "there is no month 13",
            "write 1 for January to 12 for December",
        ),
        (Weather::MonthTwice { month: 3 }.into(), "month 3 is in the list twice", "keep one of the two"),
        (
            Weather::LowestAboveHighest { min: of_json("9.5"), max: of_json("-1") }.into(),
            "the lowest temperature 9.5 is above the highest, -1",
            "swap or correct them",
        ),
    ]
}

fn of_lots() -> Vec<(Untrue, &'static str, &'static str)> {
    vec![
        (
            Lots::NoSuchMedicine { medicine: a("strip"), near: None }.into(),
            "no medicine `strip` is described",
            "describe the medicine first",
        ),
        (
            Lots::NoSuchMedicine { medicine: a("stripe"), near: Some(a("strip")) }.into(),
            "no medicine `stripe` is described",
            "did you mean `strip`?",
        ),
        (
            Lots::MedicineIsDescribed { medicine: a("strip") }.into(),
            "the medicine `strip` is already described",
            "correct that entry instead",
        ),
        (
            Lots::NoSuchLot { lot: a("L1"), near: None }.into(),
            "there is no lot `L1`",
            "record first that it was acquired, or that a vet brought it",
        ),
        (
            Lots::NoSuchLot { lot: a("L2"), near: Some(a("L1")) }.into(),
            "there is no lot `L2`",
            "did you mean `L1`?",
        ),
        (
            Lots::LotNameIsTaken { lot: a("L1") }.into(),
            "there is already a lot `L1`",
            "give this lot a name of its own; two lots may have the same batch number",
        ),
        (
            Lots::OfVetsStock { lot: a("V1") }.into(),
            "lot `V1` is of a vet's own stock, so nothing of it is the keeper's to open or dispose of",
            "if the vet left some with you, record that as a lot received from the vet",
        ),
        (
            Lots::NotYetAcquired { lot: a("L1"), acquired: late(), on: early() }.into(),
            "lot `L1` is on record from 2026-03-02, which is after 2026-03-01",
            "check both dates",
        ),
        (
            Lots::MoreThanHeld { lot: a("L1"), held: of_json("1000"), gone: of_json("1000.001") }.into(),
            "lot `L1` held 1000, but 1000.001 would have been taken from it",
            "check the amount and the lot; if the record's count is wrong, set `count_corrected`",
        ),
        (Lots::NoAmount.into(), "the amount is zero", "write an amount above zero"),
        (
            Lots::InOtherUnit { medicine: a("strip"), unit: Unit::Gram, counted_in: Unit::Strip }.into(),
            "the amount is given in `g`, but `strip` is counted in `strip`",
            "convert the amount to `strip`",
        ),
        (
            Lots::NoSuchPrescription { prescription: a("7") }.into(),
            "no prescription `7` is recorded",
            "record the prescription first",
        ),
        (
            Lots::PrescriptionIsRecorded { prescription: a("7") }.into(),
            "a prescription `7` is already recorded",
            "correct that entry instead",
        ),
        (
            Documents::BeforeItsSubject { from: day("2026-03-02") }.into(),
            "a document cannot be attached for a day before 2026-03-02, when what it belongs to begins",
            "give the day on which it was attached, 2026-03-02 or later",
        ),
        (Documents::Empty.into(), "the document is empty", "attach the file itself"),
        (
            Documents::TooLarge { bytes: 10_000_001 }.into(),
            "the document has 10000001 bytes; at most 10 MB is kept",
            "scan it at a lower resolution, or take a smaller photograph",
        ),
        (
            Documents::OfNothing.into(),
            "the document is attached to nothing",
            "name the lot whose purchase it proves, or the prescription it is a copy of",
        ),
        (
            Documents::OfTwoThings.into(),
            "a lot and a prescription are named",
            "name one of them, and attach it to the other in an entry of its own",
        ),
    ]
}

fn of_terms() -> Vec<(Untrue, &'static str, &'static str)> {
    vec![
        (
            Terms::TooManyDays { days: 1_008, most: 400 }.into(),
            "1008 days are more than any leaflet states",
            "write days, not hours; 400 at most",
        ),
        (
            Terms::WithdrawalTwice.into(),
            "a label without a withdrawal period does not state one in days",
            "keep `withdrawal_days` if the label states a period, even one of 0 days; otherwise keep `withdrawal`",
        ),
        (
            Terms::StayOfNoDays.into(),
            "a stay of 0 days is not a stay",
            "leave it out; if nothing stays in the hive, say so in `removal`",
        ),
        (
            Terms::NothingStaysYetStays { least: 42 }.into(),
            "nothing stays in the hive, but it must stay at least 42 days",
            "write `needed` or `not_needed` for a carrier; for a single dose leave the minimum stay out",
        ),
        (
            Terms::LeastAboveMost { least: 42, most: 41 }.into(),
            "it must stay at least 42 days and at most 41",
            "correct the one that is wrong",
        ),
        (
            Terms::NothingIsConfirmed.into(),
            "nothing is confirmed",
            "write the value in the words that the program shows for it",
        ),
        (
            Terms::StatedNotConfirmed { topic: Topic::Withdrawal }.into(),
            "`withdrawal` must be stated, not confirmed",
            "write the value that you read in `terms`",
        ),
    ]
}

fn of_courses() -> Vec<(Untrue, &'static str, &'static str)> {
    let (entry, first_dose) = (one(), "name the entry that recorded the first dose");
    let colony = || a("A1");
    vec![
        (Courses::NothingIsGiven.into(), "nothing is given", "name the lot, the amount and the colonies"),
        (
            Courses::TwoMedicines { lot: a("shot 1"), medicine: a("shot"), other: a("strip") }.into(),
            "lot `shot 1` is `shot`, but the entry also gives `strip`",
            "make one entry for each medicine",
        ),
        (
            Courses::PrescriptionOfOther { prescription: a("7"), medicine: a("shot") }.into(),
            "prescription `7` is for `shot`",
            "name the prescription of the medicine that was given",
        ),
        (
            Courses::WithItself.into(),
            "a dose cannot continue itself",
            "name the first dose of the course, or leave `continues` out",
        ),
        (
            Courses::FirstDoseStruckOut { entry }.into(),
            "entry 00000000-0000-7000-8000-000000000001 was struck out",
            first_dose,
        ),
        (
            Courses::FirstDoseOfOtherKind { entry }.into(),
            "entry 00000000-0000-7000-8000-000000000001 is not an administration",
            first_dose,
        ),
        (
            Courses::NoSuchFirstDose { entry }.into(),
            "there is no entry 00000000-0000-7000-8000-000000000001",
            first_dose,
        ),
        (
            Courses::LaterDoseNamed { entry, first: two() }.into(),
            "entry 00000000-0000-7000-8000-000000000001 is a later dose of the course that began with entry \
             00000000-0000-7000-8000-000000000002",
            "name the first dose, 00000000-0000-7000-8000-000000000002",
        ),
        (
            Courses::FirstDoseOfOtherMedicine { first: one() }.into(),
            "entry 00000000-0000-7000-8000-000000000001 gave another medicine",
            "name the first dose of the same medicine",
        ),
        (
            Courses::BeforeFirstDose { first: late(), on: early() }.into(),
            "the first dose was given on 2026-03-02, after 2026-03-01",
            "check both dates",
        ),
        (
            Courses::NotGivenFirstDose { colony: colony() }.into(),
            "colony `A1` was not given the first dose",
            "give it a course of its own, in an entry without `continues`",
        ),
        (
            Courses::TakenOutBefore { colony: colony(), out: early() }.into(),
            "the course was taken out of colony `A1` on 2026-03-01",
            "begin a new course, in an entry without `continues`",
        ),
        (
            Courses::OutBeforePlaced { placed: late(), on: early() }.into(),
            "it was placed on 2026-03-02, so it cannot come out on 2026-03-01",
            "check both dates",
        ),
        (
            Courses::NoPartInIt { colony: colony(), administration: two() }.into(),
            "colony `A1` was not part of entry 00000000-0000-7000-8000-000000000002",
            "check the colony, or the entry that it names",
        ),
        (
            Courses::ClearedBefore { colony: colony(), out: early() }.into(),
            "it was already taken out of colony `A1` on 2026-03-01",
            "correct that entry if its date is wrong",
        ),
        (
            Courses::LaterDoseFollows { colony: colony(), given: late() }.into(),
            "a later dose of this course was given to colony `A1` on 2026-03-02",
            "check both dates",
        ),
    ]
}

fn of_archives() -> Vec<(Untrue, &'static str, &'static str)> {
    let tie = Tie { stays: two(), goes: one(), how: Bond::Correction };
    vec![
        (
            Archives::ByItsStepOnly { kind: Kind::Archived }.into(),
            "entries of kind `archived` cannot be recorded this way",
            "an archive is made by its own command: combclear archive",
        ),
        (Archives::StepCorrects.into(), "an archive step corrects nothing", "leave `corrects` out"),
        (
            Archives::ThroughAfterStep { through: late(), on: early() }.into(),
            "2026-03-02 is after the archive step itself, on 2026-03-01",
            "name the day of the step at the latest",
        ),
        (
            Archives::NumberDiffers { entries: 2, places: u64::MAX }.into(),
            "2 entries are announced, but 18446744073709551615 places are named",
            "count the places",
        ),
        (
            Archives::PlacesNotThere { places: a("7-10,15") }.into(),
            "not all of the places 7-10,15 are in the journal",
            "verify the journal",
        ),
        (
            Archives::TellsOfArchive { seq: 1_007 }.into(),
            "entry 1007 records an archive step, so it stays in the journal",
            "leave it out",
        ),
        (
            Archives::MovedBefore { seq: 7 }.into(),
            "entry 7 has already been moved into an archive",
            "leave it out",
        ),
        (
            Archives::StillWhole { seq: 7 }.into(),
            "entry 7 was moved into an archive, but it is still complete here",
            "import the file into a new database (--db)",
        ),
        (
            Archives::Tied { tie }.into(),
            "entry 00000000-0000-7000-8000-000000000001 cannot be archived without entry \
             00000000-0000-7000-8000-000000000002: one corrects the other",
            "archive complete sets of records only",
        ),
        (
            Archives::NotBesideIt { of: one() }.into(),
            "its body is in an archive, but entry 00000000-0000-7000-8000-000000000001, which it corrects, is \
             missing",
            "import a complete export of this journal",
        ),
    ]
}

#[test]
fn every_refusal_says_what_cannot_be_true_and_how_to_mend_it() {
    let mut words = BTreeSet::new();
    for said in [of_entries(), of_colonies(), of_places(), of_lots(), of_terms(), of_courses(), of_archives()]
    {
        for word in all_say(said) {
            assert!(words.insert(word), "`{word}` stands for two reasons");
        }
    }
}

#[test]
fn what_happened_later_to_a_colony_is_said_in_words_of_its_own() {
    let mut phrases = BTreeSet::new();
    for kind in Kind::ALL {
        let why = Colonies::LivedLater { colony: a("A1"), kind: *kind, last: late(), on: early() };
        let refusal = Refusal { pointer: "/body/colony".to_owned(), why: why.into() };
        let message = Refused::of(Words::english(), &refusal).message;
        let phrase = message
            .strip_prefix("colony `A1` has an entry later than 2026-03-01: ")
            .and_then(|rest| rest.strip_suffix(" (2026-03-02)"))
            .unwrap();
        assert!(!phrase.contains('_') && phrases.insert(phrase.to_owned()), "{message}");
    }
    assert!(phrases.contains("supers put on") && phrases.contains("a move"), "{phrases:?}");
}

#[test]
fn a_tie_names_both_entries_and_what_ties_them() {
    let said = |how| tie(Words::english(), &Tie { stays: two(), goes: one(), how });
    assert_eq!(
        said(Bond::Correction),
        format!("entry {ONE} cannot be archived without entry {TWO}: one corrects the other")
    );
    assert_eq!(
        said(Bond::Course),
        format!("entry {ONE} cannot be archived without entry {TWO}: both are of one course")
    );
    assert_eq!(
        said(Bond::Name),
        format!("entry {ONE} cannot be archived: entry {TWO}, which stays, names what it introduced")
    );
    assert_eq!(said(Bond::Unknown), format!("there is no entry {ONE}"));
}

#[test]
fn days_that_cannot_be_asked_about_say_why() {
    let refused = |from: &str, to: &str| {
        let Refused { message, help } =
            Refused::of_span(Words::english(), Span::new(day(from), day(to)).unwrap_err());
        (message, help)
    };
    assert_eq!(
        refused("2026-03-02", "2026-03-01"),
        (
            "the last day 2026-03-01 is before the first, 2026-03-02".to_owned(),
            "swap `from` and `to`, or correct one of them".to_owned()
        )
    );
    assert_eq!(
        refused("2026-01-01", "2030-01-01"),
        (
            "1462 days are too many: at most 400 can be asked about at once".to_owned(),
            "ask about a shorter period".to_owned()
        )
    );
    let Refused { message, help } =
        Refused::of_period(Words::english(), Period::new(late(), early()).unwrap_err());
    assert_eq!(message, "the last day 2026-03-01 is before the first, 2026-03-02");
    assert_eq!(help, "swap the two days, or correct one of them");
}
