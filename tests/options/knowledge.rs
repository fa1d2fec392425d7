//! What an entry adds to a journal, knowledge or news; which entries of one day may be reordered; what a condition depends
//! on; and where the program does not satisfy the properties yet.

use combclear_domain::basics::topic::Topic;
use std::collections::{BTreeMap, BTreeSet};

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::{ColonyName, RemovalNeed};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::event::Inspection;
use combclear_domain::journal::{Draft, Event, Kind};
use combclear_domain::questions::options::{Ask, Because};
use combclear_domain::rules::leaflet::{Force, Leaflet, Release};
use combclear_testkit::entries::draft;
use serde_json::{Value, json};

use super::making::{Journal, day, invented};

/// A reading split into one entry per term; other entries unchanged.
pub(super) fn one_by_one(told: &Draft) -> Vec<Draft> {
    let body: Value = serde_json::from_str(&told.body).unwrap();
    let Some(terms) = body["terms"].as_object().filter(|terms| !terms.is_empty()) else {
        return vec![told.clone()];
    };
    // The stay is read before the removal.
    let each = terms.iter().rev().map(|(field, value)| {
        let body = json!({ "lot": body["lot"], "terms": { field: value } });
        draft(&format!("{field} {}", told.id), told.on, "leaflet_reading", &body)
    });
    each.collect()
}

/// Whether an entry adds knowledge rather than news.
///
/// News is: any event of a colony or a lot, such as supers, doses, removals, moves; an inspection when another has the same
/// facts; a newer forecast, or a measurement after one; a flow beside others of its year, or of the same forage shortly
/// before or after, which may be the same flow recorded again; site conditions when some were already stated; a reading of a
/// term that somebody or the leaflet has stated. Such entries may well change answers. An estimate that contradicts a count
/// is no knowledge either: one of the two is wrong.
pub(super) fn is_knowledge(journal: &Journal, holding: &Holding, learnt: &Draft) -> bool {
    let mut known = journal.drafts.iter();
    match &learnt.event {
        Event::Inspection(new) => !known.any(|draft| match &draft.event {
            Event::Inspection(old) if old.colony == new.colony => {
                let near = learnt.on.days_since(draft.on).abs() <= 30;
                near && (fields(&learnt.body).intersection(&fields(&draft.body)).count() > 1
                    || contradict(old, new))
            }
            _ => false,
        }),
        Event::Temperature(new) => !known.any(|draft| match &draft.event {
            Event::Temperature(old) if old.apiary == new.apiary => {
                let days: BTreeSet<Day> = new.days.iter().map(|day| day.day).collect();
                old.days.iter().any(|day| days.contains(&day.day))
            }
            _ => false,
        }),
        Event::TemperatureNormals(new) => !known.any(|draft| match &draft.event {
            Event::TemperatureNormals(old) => {
                old.apiary == new.apiary && old.months.iter().any(|month| month.month == new.months[0].month)
            }
            _ => false,
        }),
        Event::SiteConditions(new) => !known.any(|draft| match &draft.event {
            Event::SiteConditions(old) => old.apiary == new.apiary && draft.on <= learnt.on,
            _ => false,
        }),
        Event::NectarFlow(new) => {
            // A flow over the new year belongs to the year in which it begins: days of the next year do not ask for it.
            let (first, last) =
                (new.from_early.unwrap_or(new.from), new.to.or(new.from_late).unwrap_or(new.from));
            let tells_of_it = |draft: &Draft| match &draft.event {
                Event::NectarFlow(old) if old.apiary == new.apiary => {
                    let near = old.from.days_since(new.from).abs() <= 90;
                    old.from.year() == new.from.year() || (old.forage == new.forage && near)
                }
                _ => false,
            };
            first.year() == last.year() && !known.any(tells_of_it)
        }
        Event::LeafletReading(new) => {
            let medicine = &holding.lot(&new.lot).unwrap().1.medicine;
            let leaflet =
                invented().into_iter().find(|leaflet| leaflet.id.as_str() == medicine.as_str()).unwrap();
            // The leaflet of a slow medicine says that something stays.
            let unsays_the_leaflet =
                new.terms.removal == Some(RemovalNeed::NothingStays) && leaflet.release == Release::Slow;
            let terms = serde_json::to_value(&new.terms).unwrap();
            let mut said = terms.as_object().unwrap().keys();
            !unsays_the_leaflet && !said.any(|field| stated(journal, holding, leaflet).contains(field))
        }
        _ => false,
    }
}

fn fields(body: &str) -> BTreeSet<String> {
    serde_json::from_str::<BTreeMap<String, Value>>(body).unwrap().into_keys().collect()
}

/// Whether the seams of one and the estimate of the other contradict each other.
fn contradict(one: &Inspection, two: &Inspection) -> bool {
    let apart = |seams: Option<u8>, bees: Option<u32>| {
        let bounds = seams.map(|seams| u32::from(seams) * 1_200..=u32::from(seams) * 3_000);
        bounds.zip(bees).is_some_and(|(bounds, bees)| !bounds.contains(&bees))
    };
    apart(one.seams, two.bees) || apart(two.seams, one.bees)
}

/// Length of stay and removal are one topic: a carrier that need not come out is used up after the longest of these.
const STAYS: [&str; 3] = ["stay_min_days", "stay_min_days_with_brood", "stay_max_days"];

/// The terms of a medicine that anybody has stated.
fn stated(journal: &Journal, holding: &Holding, leaflet: &Leaflet) -> BTreeSet<String> {
    let mut stated = BTreeSet::new();
    for draft in &journal.drafts {
        let Event::LeafletReading(old) = &draft.event else { continue };
        if holding.lot(&old.lot).is_some_and(|(_, lot)| lot.medicine.as_str() == leaflet.id.as_str()) {
            stated.extend(serde_json::to_value(&old.terms).unwrap().as_object().unwrap().keys().cloned());
        }
    }
    for rule in leaflet.rules.iter().filter(|rule| rule.force != Force::Advice) {
        let fields: &[&str] = match rule.says.topic() {
            Topic::SupersDuring => &["supers_during"],
            Topic::FlowDuring => &["flow_during"],
            Topic::Withdrawal => &["withdrawal_days"],
            Topic::WaitAfterRemoval => &["wait_after_removal_days"],
            Topic::Removal => &["removal"],
            Topic::StayMin | Topic::StayMax => &STAYS,
            Topic::Doses => &["doses"],
            _ => &[],
        };
        stated.extend(fields.iter().map(|field| (*field).to_owned()));
    }
    if STAYS.iter().any(|field| stated.contains(*field)) {
        stated.extend(STAYS.map(str::to_owned));
    }
    if leaflet.release == Release::Single {
        stated.insert("removal".to_owned());
        stated.extend(STAYS.map(str::to_owned));
    }
    stated
}

/// Whether two entries of one day may mean something else in the other order: they speak of one colony or of one apiary,
/// or one builds on the other. Readings of leaflets may come in any order.
pub(super) fn depend(one: &Draft, two: &Draft) -> bool {
    let set_up = |draft: &Draft| draft.on < day(0);
    let reading = |draft: &Draft| draft.kind() == Kind::LeafletReading;
    let named = |draft: &Draft| -> BTreeSet<String> {
        let body: Value = serde_json::from_str(&draft.body).unwrap();
        let one = [&body["colony"], &body["apiary"], &body["administration"]].into_iter();
        let lists = [&body["colonies"], &body["given"][0]["colonies"]].into_iter();
        let all = one.chain(lists.filter_map(Value::as_array).flatten());
        all.filter_map(|name| name.as_str().map(str::to_owned)).chain([draft.id.to_string()]).collect()
    };
    set_up(one)
        || set_up(two)
        || (!reading(one) && !reading(two) && named(one).intersection(&named(two)).next().is_some())
}

/// Whether a condition is met because of the value in the leaflet, and might not be for another value.
pub(super) fn leans(because: &Because) -> bool {
    match because {
        Because::Courses { given, .. } => *given > 0,
        Because::SupersOn { .. }
        | Because::FlowAllowed
        | Because::AfterLastFlow { .. }
        | Because::NoFeeder { .. }
        | Because::BroodSeen { .. }
        | Because::Counted { .. }
        | Because::SinceLast { .. }
        | Because::InSeason { .. }
        | Because::Warm { .. } => true,
        _ => false,
    }
}

/// A colony is judged at its apiary on the first day asked about, even on days after a move.
pub(super) fn moved_meanwhile(journal: &Journal, colony: &ColonyName, ask: &Ask) -> bool {
    journal.drafts.iter().any(|draft| match &draft.event {
        Event::ColonyMoved(moved) => {
            moved.colony == *colony && ask.span.from() < draft.on && draft.on <= ask.as_of
        }
        _ => false,
    })
}
