//! A colony, or many of them, with a number of courses, recorded entry by entry as in a holding.

use std::str::FromStr;

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::basics::quantity::Quantity;
use combclear_domain::basics::words::{
    ApiaryName, Brood, ColonyName, HoldingName, MedicinesInside, SuperPurpose, Unit,
};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::entry::{Draft, Entry, EntryId};
use combclear_domain::journal::event::{
    Administration, ApiaryDetails, ColonyEstablished, Event, Given, HoldingDetails, Inspection, LotAcquired,
    MedicineDescribed, Removal, SupersOff, SupersOn,
};
use combclear_domain::rules::leaflet::Leaflets;

/// Days from one course to the next.
const STEP: u16 = 90;
/// Days that strips stay in: long enough for every leaflet used here, with or without brood.
const STAY: u16 = 70;

/// A medicine with its name, leaflet and dose.
struct Medicine {
    /// The keeper's name for it and its only lot.
    name: &'static str,
    leaflet: &'static str,
    unit: Unit,
    each: u32,
    method: Option<&'static str>,
    comes_out: bool,
}

/// Strips that must come out, the only kind that a scene may leave in.
const STRIPS: Medicine = Medicine {
    name: "amber strips",
    leaflet: "amitraz-strip-500mg-a",
    unit: Unit::Strip,
    each: 2,
    method: None,
    comes_out: true,
};

/// Given in turn.
const MEDICINES: [Medicine; 4] = [
    STRIPS,
    Medicine {
        name: "grey powder",
        leaflet: "oxalic-powder-886mg",
        unit: Unit::Gram,
        each: 2,
        method: Some("trickle"),
        comes_out: false,
    },
    Medicine { name: "pale strips", leaflet: "amitraz-strip-500mg-b", ..STRIPS },
    Medicine { name: "white trays", leaflet: "thymol-gel-12.5g", unit: Unit::Tray, each: 1, ..STRIPS },
];

/// How a scene ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ending {
    /// All courses are long over, so every one is looked at. The answer is yes.
    AllOver,
    /// The last course is strips that are still in. The answer is no.
    LastIsIn,
}

/// A holding with one colony, and the day to ask about it.
#[derive(Debug)]
pub struct Scene {
    /// The holding.
    pub holding: Holding,
    /// The colony.
    pub colony: ColonyName,
    /// The day asked about.
    pub on: Day,
}

/// The built-in leaflets.
#[must_use]
pub fn leaflets() -> &'static Leaflets {
    combclear_leaflets::builtin()
        .unwrap_or_else(|faults| panic!("the built-in leaflets have faults: {faults:?}"))
}

/// A colony with this many courses, each with an inspection, and with supers on between them once a year.
#[must_use]
pub fn with_courses(courses: u16, ending: Ending) -> Scene {
    let colony: ColonyName = name("A1");
    let (holding, on) = of_courses(std::slice::from_ref(&colony), "2021-01-01", courses, ending);
    Scene { holding, colony, on }
}

/// So many colonies, all at one apiary and each with so many courses, the last of them still in; and the day to ask about them.
#[must_use]
pub fn many_with_courses(colonies: u16, courses: u16) -> (Holding, Day) {
    let colonies: Vec<ColonyName> = (0..colonies).map(|number| name(&format!("C{number}"))).collect();
    of_courses(&colonies, "2021-01-01", courses, Ending::LastIsIn)
}

/// The entries of a holding of so many colonies with so many courses each, in the order of the journal.
#[must_use]
pub fn journal_of(colonies: u16, courses: u16) -> Vec<Entry> {
    let colonies: Vec<ColonyName> = (0..colonies).map(|number| name(&format!("C{number}"))).collect();
    written(&colonies, "1950-01-01", courses, Ending::AllOver).0.entries
}

/// The entries of a register of so many apiaries of 25 colonies with 20 courses each, all over, in the order of the journal. An
/// apiary brings about 570 entries.
#[must_use]
pub fn register_of(holding: HoldingName, apiaries: u16) -> Vec<Entry> {
    let colonies = |apiary: u16| (0..25).map(move |number| name(&format!("C{apiary}-{number}"))).collect();
    let groups: Vec<Vec<ColonyName>> = (0..apiaries).map(colonies).collect();
    let mut writer = Writer { holding: Holding::new(holding), entries: Vec::new() };
    let first: Day = name("2015-01-01");
    writer.set_up(first);
    for (number, colonies) in groups.iter().enumerate() {
        writer.apiary(first, &name(&format!("apiary {number}")), colonies);
    }
    for index in 0..20 {
        for colonies in &groups {
            writer.course(colonies, first.plus(1 + index * STEP), index, false);
        }
    }
    writer.entries
}

fn of_courses(colonies: &[ColonyName], first: &str, courses: u16, ending: Ending) -> (Holding, Day) {
    let (writer, on) = written(colonies, first, courses, ending);
    (writer.holding, on)
}

fn written(colonies: &[ColonyName], first: &str, courses: u16, ending: Ending) -> (Writer, Day) {
    let mut writer = Writer { holding: Holding::new(name("bench")), entries: Vec::new() };
    let first: Day = name(first);
    writer.set_up(first);
    writer.apiary(first, &name("East"), colonies);
    let mut placed = first;
    for index in 0..courses {
        placed = first.plus(1 + index * STEP);
        let last_is_in = ending == Ending::LastIsIn && index + 1 == courses;
        writer.course(colonies, placed, index, last_is_in);
    }
    let on = match ending {
        Ending::AllOver => placed.plus(400),
        Ending::LastIsIn => placed.plus(20),
    };
    (writer, on)
}

struct Writer {
    holding: Holding,
    entries: Vec<Entry>,
}

impl Writer {
    fn write(&mut self, on: Day, event: Event) -> EntryId {
        let id: EntryId = name(&format!("00000000-0000-7000-8000-{:012x}", self.entries.len() + 1));
        let draft = Draft::new(id, on, name("keeper"), event);
        let recorded_at: Instant = name(&format!("{on}T12:00:00.000Z"));
        let entry = Entry::seal(self.holding.name(), draft, recorded_at, self.holding.tip());
        if let Err(refusal) = self.holding.accept(&entry) {
            panic!("entry {} of {on} is refused: {refusal}", entry.to_json());
        }
        self.entries.push(entry);
        id
    }

    fn apiary(&mut self, on: Day, apiary: &ApiaryName, colonies: &[ColonyName]) {
        self.write(on, Event::from(ApiaryDetails { apiary: apiary.clone(), place: None }));
        for colony in colonies {
            let established = ColonyEstablished {
                colony: colony.clone(),
                apiary: apiary.clone(),
                hive_mark: None,
                origin: None,
                medicines: MedicinesInside::None,
            };
            self.write(on, established.into());
        }
    }

    /// The keeper and the medicines.
    fn set_up(&mut self, on: Day) {
        let details = HoldingDetails {
            keeper: name("keeper"),
            address: None,
            jurisdiction: name("gb"),
            registration: None,
        };
        self.write(on, details.into());
        for Medicine { name: medicine, leaflet, unit, .. } in MEDICINES {
            let described = MedicineDescribed {
                medicine: name(medicine),
                pack_name: medicine.to_owned(),
                authorisation: None,
                unit,
                leaflet: Some(name(leaflet)),
                terms: None,
            };
            self.write(on, described.into());
            let acquired = LotAcquired {
                lot: name(medicine),
                medicine: name(medicine),
                batch: None,
                expiry: None,
                quantity: Quantity::whole(1_000_000),
                unit: None,
                supplier: None,
                proof: None,
                label_revision: None,
            };
            self.write(on, acquired.into());
        }
    }

    fn course(&mut self, colonies: &[ColonyName], placed: Day, index: u16, stays_in: bool) {
        let in_turn = MEDICINES.iter().cycle().nth(usize::from(index)).filter(|_| !stays_in);
        let Medicine { name: lot, each, method, comes_out, .. } = in_turn.unwrap_or(&STRIPS);
        for colony in colonies {
            let seen = Inspection {
                colony: colony.clone(),
                brood: Some(Brood::Present),
                seams: None,
                bees: None,
                brood_boxes: None,
                hive_litres: None,
                feeder: None,
                note: None,
            };
            self.write(placed, seen.into());
        }
        let given =
            Given { lot: name(lot), each: Quantity::whole(*each), unit: None, colonies: colonies.to_vec() };
        let administration = Administration {
            given: vec![given],
            method: method.map(name),
            continues: None,
            withdrawal_days: Some(0),
            given_by: None,
            vet: None,
            against: None,
            certificate: None,
            prescription: None,
            count_corrected: false,
        };
        let first = self.write(placed, administration.into());
        if *comes_out && !stays_in {
            let removal = Removal {
                administration: first,
                colonies: colonies.to_vec(),
                left_inside: 0,
                how_and_where: None,
            };
            self.write(placed.plus(STAY), removal.into());
        }
        if index % 4 == 1 {
            let colonies = colonies.to_vec();
            let on = SupersOn { colonies: colonies.clone(), supers: 2, purpose: SuperPurpose::Harvest };
            self.write(placed.plus(STAY + 2), on.into());
            self.write(placed.plus(STEP - 2), Event::from(SupersOff { colonies, left_on: 0 }));
        }
    }
}

/// Parses a name, a day or an instant of this file.
fn name<T: FromStr<Err: std::fmt::Display>>(text: &str) -> T {
    text.parse().unwrap_or_else(|error| panic!("{error}"))
}

#[cfg(test)]
mod tests {
    use combclear_domain::facts::history::{Histories, History};

    use super::*;
    use crate::plain;
    use combclear_domain::basics::verdict::Verdict;

    #[test]
    fn the_yardstick_gives_the_same_answers_as_the_domain() {
        for courses in [4, 20, 100] {
            for ending in [Ending::AllOver, Ending::LastIsIn] {
                let scene = with_courses(courses, ending);
                let history = History::of(&scene.holding, leaflets(), &scene.colony);
                let by_hand = plain::of(&history);
                assert_eq!(by_hand.len(), usize::from(courses));
                let worked_out: Vec<_> = by_hand.iter().map(plain::WorkedOut::of).collect();
                let mut seen = Vec::new();
                for on in (0..=courses * STEP + 500).map(|days| name::<Day>("2021-01-01").plus(days)) {
                    let verdict = plain::may_be_supered(&by_hand, on);
                    assert_eq!(
                        verdict,
                        plain::free_of_all(&worked_out, on),
                        "{courses} courses, {ending:?}, on {on}"
                    );
                    assert_eq!(verdict, history.may_be_supered(on), "{courses} courses, {ending:?}, on {on}");
                    assert_eq!(
                        verdict,
                        history.supering(on).verdict,
                        "{courses} courses, {ending:?}, on {on}"
                    );
                    seen.push(verdict);
                }
                assert!(seen.contains(&Verdict::Yes) && seen.contains(&Verdict::No));
            }
        }
    }

    #[test]
    fn the_yardstick_names_the_same_last_blocked_day_as_the_domain() {
        for courses in [1, 4, 20] {
            for ending in [Ending::AllOver, Ending::LastIsIn] {
                let scene = with_courses(courses, ending);
                let history = History::of(&scene.holding, leaflets(), &scene.colony);
                let answer = history.supering(scene.on);
                let by_hand = plain::answer(&plain::of(&history), scene.on);
                assert_eq!(by_hand.verdict, answer.verdict, "{courses} courses, {ending:?}");
                let named = answer.named_days().last_blocked;
                assert_eq!(by_hand.last_blocked, named, "{courses} courses, {ending:?}");
            }
        }
    }

    #[test]
    fn a_register_has_as_many_entries_as_it_says() {
        let entries = register_of(name("bench"), 2);
        assert_eq!((entries.len() - 9) / 2, 571);
        let holding = entries.iter().fold(Holding::new(name("bench")), |mut holding, entry| {
            holding.restore(entry);
            holding
        });
        let history = History::of(&holding, leaflets(), &name("C1-24"));
        assert_eq!(history.courses.len(), 20);
    }

    #[test]
    fn each_of_many_colonies_has_all_the_courses() {
        let (holding, on) = many_with_courses(3, 10);
        let mut histories = Histories::new(&holding, leaflets());
        for colony in holding.colonies() {
            let history = histories.of(colony);
            assert_eq!(history.courses_on(on).count(), 10, "{colony}");
            assert_eq!(history.may_be_supered(on), Verdict::No, "{colony}");
        }
        assert_eq!(holding.colonies().count(), 3);
    }

    #[test]
    fn a_scene_asks_for_the_answer_it_is_made_for() {
        for (ending, verdict) in [(Ending::AllOver, Verdict::Yes), (Ending::LastIsIn, Verdict::No)] {
            let scene = with_courses(20, ending);
            let history = History::of(&scene.holding, leaflets(), &scene.colony);
            assert_eq!(history.may_be_supered(scene.on), verdict, "{ending:?}");
            assert!(history.courses.iter().all(|course| course.placed <= scene.on), "a course is left out");
        }
    }
}
