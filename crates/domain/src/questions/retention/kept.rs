//! The day until which each entry must be kept, with the deciding rule, set by set.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::Serialize;

use super::ends::{self, LotEnd, StillRuns};
use super::sets::{self, RecordSet};
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    ColonyName, HoldingName, Jurisdiction, LotName, MedicineName, PrescriptionName, Unit,
};
use crate::facts::holding::mentions;
use crate::facts::holding::{Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::{Event, Kind, Prescription};
use crate::rules::law::{CountedFrom, KeepingForce, LawStanding, Laws, RecordSort, RetentionRule, Ruled};
use crate::rules::leaflet::Leaflets;

/// How long the medicine records of a holding must be kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Retention {
    /// The holding.
    pub holding: HoldingName,
    /// The day asked about, for `could_go`.
    pub on: Day,
    /// The sets of records, each kept and archived together, in the order of their first entries.
    pub sets: Vec<KeptSet>,
}

/// Entries that are kept or archived together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptSet {
    /// The lots of the set. Empty for prescriptions used by several sets or by none.
    pub lots: Vec<KeptLot>,
    /// How long all of it must be kept: the latest of its entries.
    pub keep: KeepUntil,
    /// The first day on which it may be archived. Absent if not known.
    pub could_go_from: Option<Day>,
    /// Whether it may be archived on the day asked about. Nothing is archived automatically.
    pub could_go: bool,
    /// Its entries, in the order of the journal.
    pub entries: Vec<KeptEntry>,
}

/// A lot and the end of its use.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = LotOfSet))]
pub struct KeptLot {
    /// The lot.
    pub lot: LotName,
    /// The medicine.
    pub medicine: Option<MedicineName>,
    /// The last day on which some of it was given, taken out or disposed of.
    pub last_use_or_disposal: Option<Day>,
    /// Why that day may still move. Empty if all of the lot is accounted for.
    #[serde(skip)]
    pub still_runs: Vec<NotSettled>,
}

/// An entry, with how long it must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = EntryOfSet))]
pub struct KeptEntry {
    /// The entry.
    pub entry: EntryId,
    /// Its position in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub seq: u64,
    /// The day of the event.
    pub on: Day,
    /// Its kind.
    pub kind: Kind,
    /// The legal categories of the record.
    pub records: Vec<RecordSort>,
    /// How long it must be kept.
    #[serde(skip)]
    pub keep: KeepUntil,
}

/// How long something must be kept. A report contains it with the rule and reasons in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(tag = "state", rename_all = "snake_case")]
#[cfg_attr(
    feature = "openapi",
    derive(utoipa::ToSchema),
    schema(description = "Until when something must be kept.")
)]
pub enum KeepUntil<By = DecidedBy, Why = NotSettled> {
    /// Until this day (inclusive).
    Until {
        /// The last day on which it must be kept.
        day: Day,
        /// The deciding rule.
        decided_by: Box<By>,
    },
    /// At least until this day; the end is not known yet.
    AtLeast {
        /// The last day on which it must be kept, if nothing more is recorded.
        day: Day,
        /// The deciding rule.
        decided_by: Box<By>,
        /// Why the end is not known.
        #[cfg_attr(feature = "openapi", schema(value_type = Vec<String>))]
        because: Vec<Why>,
    },
    /// Not known, so it must be kept.
    NotKnown {
        /// The missing facts.
        #[cfg_attr(feature = "openapi", schema(value_type = Vec<String>))]
        missing: Vec<Why>,
    },
}

/// The rule that decided how long to keep a record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = KeepingRule))]
pub struct DecidedBy {
    /// The jurisdiction of the law.
    pub jurisdiction: Jurisdiction,
    /// The number of years.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 30))]
    pub years: u8,
    /// The event from which the years count.
    pub counted_from: CountedFrom,
    /// The day of that event.
    pub counted_from_day: Day,
    /// How binding it is.
    pub force: KeepingForce,
    /// How well it is established.
    pub confidence: Confidence,
    /// Titles of the sources.
    pub sources: Vec<String>,
    /// A note for the reader.
    pub note: Option<String>,
}

/// Why the end of retention is not known, or may still move.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotSettled {
    /// The record does not say which jurisdiction applies.
    JurisdictionNotRecorded,
    /// No law of the jurisdiction is built in.
    LawNotBuiltIn {
        /// The jurisdiction.
        jurisdiction: Jurisdiction,
    },
    /// Only the Union's law is built in; a member state may require more.
    UnionsPartOnly {
        /// The jurisdiction.
        jurisdiction: Jurisdiction,
    },
    /// The built-in rules begin later.
    RulesBegin {
        /// The jurisdiction.
        jurisdiction: Jurisdiction,
        /// The first day on which one is in force.
        from: Day,
    },
    /// The built-in rules ended earlier.
    RulesEnded {
        /// The jurisdiction.
        jurisdiction: Jurisdiction,
        /// The last day on which one was in force.
        until: Day,
    },
    /// No built-in rule covers such a record.
    NoRule,
    /// A rule of the law was not read in its own text: it may ask for more. It releases nothing for good, unless the keeper
    /// says why it may.
    LawNotRead {
        /// The jurisdiction.
        jurisdiction: Jurisdiction,
        /// How well the rule is established.
        confidence: Confidence,
    },
    /// Some of a lot is left according to the journal.
    Left {
        /// The lot.
        lot: LotName,
        /// The quantity left.
        left: Quantity,
        /// The unit of the quantity.
        unit: Option<Unit>,
    },
    /// More of a lot is gone than was acquired.
    MoreGone {
        /// The lot.
        lot: LotName,
        /// The excess quantity.
        more: Quantity,
        /// The unit of the quantity.
        unit: Option<Unit>,
    },
    /// Some of a lot is in colonies and not recorded as out.
    InHive {
        /// The lot.
        lot: LotName,
        /// The colonies, by name.
        colonies: Vec<ColonyName>,
        /// Whether it is known that it must come out.
        must_come_out: bool,
    },
}

impl KeptSet {
    /// Whether only a law that was not read in its own text keeps it from being archived at the end of `through`.
    #[must_use]
    pub(super) fn waits_for_law(&self, through: Day) -> Option<Vec<NotSettled>> {
        let KeepUntil::AtLeast { day, because, .. } = &self.keep else { return None };
        let by_law = because.iter().all(|why| matches!(why, NotSettled::LawNotRead { .. }));
        (by_law && *day < through).then(|| because.clone())
    }
}

impl Retention {
    /// Works out how long each entry must be kept, from all entries, and what may be archived on a day.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, laws: &Laws, on: Day) -> Retention {
        let sets = sets::of_holding(holding);
        let ends = ends::of_holding(holding, leaflets);
        let desk = Desk { holding, laws, ends: &ends };
        let bearings: Vec<Bearing<'_>> = sets.iter().map(|set| desk.bearing(set)).collect();
        let kept = sets.iter().zip(&bearings).map(|(set, bearing)| {
            // A prescription used by several sets is kept as long as the longest of them.
            let numbers = desk.prescriptions_in(set);
            let users = sets
                .iter()
                .zip(&bearings)
                .filter(|(user, _)| user.shared_prescriptions.iter().any(|number| numbers.contains(&number)));
            let bearing = users.fold(bearing.clone(), |bearing, (_, user)| bearing.with(user));
            desk.set(set, &bearing, on)
        });
        Retention { holding: holding.name().clone(), on, sets: kept.collect() }
    }
}

impl KeepUntil {
    /// The same, with the rule and the reasons put into words.
    #[must_use]
    pub fn said<By, Why>(
        self,
        by: impl FnOnce(DecidedBy) -> By,
        why: impl Fn(&NotSettled) -> Why,
    ) -> KeepUntil<By, Why> {
        let all = |reasons: Vec<NotSettled>| reasons.iter().map(&why).collect();
        match self {
            KeepUntil::Until { day, decided_by } => {
                KeepUntil::Until { day, decided_by: Box::new(by(*decided_by)) }
            }
            KeepUntil::AtLeast { day, decided_by, because } => {
                KeepUntil::AtLeast { day, decided_by: Box::new(by(*decided_by)), because: all(because) }
            }
            KeepUntil::NotKnown { missing } => KeepUntil::NotKnown { missing: all(missing) },
        }
    }
}

/// The inputs for the days of retention.
struct Desk<'a> {
    holding: &'a Holding,
    laws: &'a Laws,
    ends: &'a BTreeMap<LotName, LotEnd>,
}

/// Facts that apply to every entry of a set.
#[derive(Clone)]
struct Bearing<'a> {
    lots: Vec<LotName>,
    /// The last day on which an entry of the set happened or was recorded. An attached document is no entry of its own.
    last_entry: Option<Day>,
    rules: Vec<Ruled<'a, RetentionRule>>,
    /// The law that is not known on one of its days, so that an unknown rule may apply.
    unknown_law: Vec<NotSettled>,
    /// Why no rule was found for a day, if that is known.
    without_rule: Vec<NotSettled>,
}

impl<'a> Bearing<'a> {
    /// Adds the facts of another set.
    fn with(mut self, other: &Bearing<'a>) -> Bearing<'a> {
        self.lots.extend(other.lots.iter().cloned());
        self.last_entry = self.last_entry.max(other.last_entry);
        for rule in &other.rules {
            self.add_rule(*rule);
        }
        add_new(&mut self.unknown_law, other.unknown_law.iter().cloned());
        add_new(&mut self.without_rule, other.without_rule.iter().cloned());
        self
    }

    fn add_rule(&mut self, ruled: Ruled<'a, RetentionRule>) {
        if !self.rules.iter().any(|known| std::ptr::eq(known.rule, ruled.rule)) {
            self.rules.push(ruled);
        }
    }
}

/// Adds the reasons that are not in the list yet.
fn add_new(to: &mut Vec<NotSettled>, further: impl IntoIterator<Item = NotSettled>) {
    for one in further {
        if !to.contains(&one) {
            to.push(one);
        }
    }
}

impl<'a> Desk<'a> {
    fn records<'s>(&'s self, set: &'s RecordSet) -> impl Iterator<Item = &'a Arc<Record>> + 's {
        set.entries.iter().filter_map(|entry| self.holding.entry(*entry))
    }

    fn prescriptions_in(&self, set: &RecordSet) -> Vec<&'a PrescriptionName> {
        let number = |record: &'a Arc<Record>| Some(&record.body::<Prescription>()?.prescription);
        self.records(set).filter_map(number).collect()
    }

    fn bearing(&self, set: &RecordSet) -> Bearing<'a> {
        let last = |record: &Arc<Record>| record.on.max(record.recorded_at.latest_civil_date());
        // The end of a colony with a medicine of the lot inside is not an entry of the set, but its day counts.
        let ends = || set.lots.iter().filter_map(|lot| self.ends.get(lot)).flat_map(|end| &end.days).copied();
        let is_entry = |record: &&Arc<Record>| !matches!(record.event, Event::DocumentAttached(_));
        let mut bearing = Bearing {
            lots: set.lots.clone(),
            last_entry: self.records(set).filter(is_entry).map(last).chain(ends()).max(),
            rules: Vec::new(),
            unknown_law: Vec::new(),
            without_rule: Vec::new(),
        };
        let mut days: Vec<Day> = self.records(set).map(|record| record.on).chain(ends()).collect();
        days.sort_unstable();
        days.dedup();
        for day in days {
            self.add_law(&mut bearing, day);
        }
        bearing
    }

    /// Adds the rules in force on a day, or why there are none.
    fn add_law(&self, bearing: &mut Bearing<'a>, day: Day) {
        let Some(jurisdiction) = self.holding.jurisdiction(day).cloned() else {
            return add_new(&mut bearing.unknown_law, [NotSettled::JurisdictionNotRecorded]);
        };
        let Some(profile) = self.laws.profile(&jurisdiction, day) else {
            return add_new(&mut bearing.unknown_law, [NotSettled::LawNotBuiltIn { jurisdiction }]);
        };
        if profile.is_of_the_union_only() {
            let jurisdiction = jurisdiction.clone();
            add_new(&mut bearing.unknown_law, [NotSettled::UnionsPartOnly { jurisdiction }]);
        }
        match profile.standing() {
            LawStanding::InForce => {}
            LawStanding::NotYet { from } => {
                add_new(&mut bearing.without_rule, [NotSettled::RulesBegin { jurisdiction, from }]);
            }
            LawStanding::Over { until } => {
                add_new(&mut bearing.without_rule, [NotSettled::RulesEnded { jurisdiction, until }]);
            }
        }
        for ruled in profile.all_retentions() {
            bearing.add_rule(ruled);
        }
    }

    fn set(&self, set: &RecordSet, bearing: &Bearing<'a>, on: Day) -> KeptSet {
        let entries: Vec<KeptEntry> = self.records(set).map(|record| self.entry(record, bearing)).collect();
        let keep = longest(entries.iter().map(|entry| &entry.keep));
        let could_go_from = match &keep {
            KeepUntil::Until { day, .. } if *day < Day::LAST => Some(day.next()),
            KeepUntil::Until { .. } | KeepUntil::AtLeast { .. } | KeepUntil::NotKnown { .. } => None,
        };
        let lot = |lot: &LotName| KeptLot {
            lot: lot.clone(),
            medicine: self.holding.lot(lot).map(|(_, lot)| lot.medicine.clone()),
            last_use_or_disposal: self.ends.get(lot).map(|end| end.last),
            still_runs: self.runs(lot),
        };
        KeptSet {
            lots: set.lots.iter().map(lot).collect(),
            keep,
            could_go_from,
            could_go: could_go_from.is_some_and(|from| from <= on),
            entries,
        }
    }

    fn entry(&self, record: &Record, bearing: &Bearing<'a>) -> KeptEntry {
        let records = self.sorts(record);
        // A removal, a strike-out or a copy of a prescription names no lot: it depends on every lot of its set.
        let own = mentions::of(&record.event).lots;
        let lots: Vec<&LotName> = if own.is_empty() { bearing.lots.iter().collect() } else { own };
        let rules =
            bearing.rules.iter().filter(|ruled| ruled.rule.records.iter().any(|sort| records.contains(sort)));
        let found: Vec<Found<'_>> =
            rules.map(|ruled| self.apply(*ruled, record, &records, &lots, bearing.last_entry)).collect();
        KeptEntry {
            entry: record.id,
            seq: record.seq,
            on: record.on,
            kind: record.event.kind(),
            keep: self.decide(&found, bearing),
            records,
        }
    }

    /// The legal categories of an entry. A strike-out has those of the entry it strikes out.
    fn sorts(&self, record: &Record) -> Vec<RecordSort> {
        match &record.event {
            Event::LotAcquired(_) => vec![RecordSort::Acquisition, RecordSort::Proof],
            // The withdrawal period in an administration comes from a reading; its product and batch, if a vet gave it from
            // the vet's own stock, from the vet's lot.
            Event::LeafletReading(_) | Event::VetLot(_) | Event::Administration(_) | Event::Removal(_) => {
                vec![RecordSort::Administration]
            }
            Event::Disposal(_) => vec![RecordSort::Disposal],
            Event::Prescription(_) => vec![RecordSort::Prescription],
            Event::StrikeOut(_) => {
                let of = record.correction.as_ref().and_then(|correction| self.holding.entry(correction.of));
                of.filter(|old| !matches!(old.event, Event::StrikeOut(_)))
                    .map_or_else(Vec::new, |old| self.sorts(old))
            }
            Event::DocumentAttached(body) if body.prescription.is_some() => vec![RecordSort::Prescription],
            Event::DocumentAttached(_) => vec![RecordSort::Proof],
            // The day of opening shows whether the medicine was still usable when given.
            Event::LotOpened(_) => vec![RecordSort::Administration],
            Event::HoldingDetails(_)
            | Event::ApiaryDetails(_)
            | Event::SiteConditions(_)
            | Event::NectarFlow(_)
            | Event::Temperature(_)
            | Event::TemperatureNormals(_)
            | Event::ColonyEstablished(_)
            | Event::ColonyMoved(_)
            | Event::ColonySplit(_)
            | Event::ColonyUnited(_)
            | Event::ColonyEnded(_)
            | Event::SupersOn(_)
            | Event::SupersOff(_)
            | Event::Inspection(_)
            | Event::MiteCount(_)
            | Event::MedicineDescribed(_)
            | Event::Harvest(_)
            | Event::Archived(_)
            | Event::InArchive(_) => Vec::new(),
        }
    }

    fn apply(
        &self,
        ruled: Ruled<'a, RetentionRule>,
        record: &Record,
        records: &[RecordSort],
        lots: &[&LotName],
        last_entry: Option<Day>,
    ) -> Found<'a> {
        let last_use = || lots.iter().filter_map(|lot| self.ends.get(*lot)).map(|end| end.last).max();
        // An invoice attached later, or a leaflet read later, does not move the last use of the lot.
        let with_last_use = || last_use().unwrap_or(record.on);
        let made = if matches!(record.event, Event::DocumentAttached(_)) {
            // It belongs to a record that was made long before.
            with_last_use()
        } else {
            record.on.max(record.recorded_at.latest_civil_date())
        };
        // An acquisition proves the doses given from it, so it is kept as long as they are.
        let proves = records.iter().any(|sort| matches!(sort, RecordSort::Acquisition | RecordSort::Proof));
        let from = match ruled.rule.counted_from {
            CountedFrom::LastUseOrDisposalOfLot => with_last_use(),
            CountedFrom::EntryMade => made,
            CountedFrom::EndOfYearOfLastEntry => last_entry.map_or(made, |last| last.max(made)).end_of_year(),
            CountedFrom::Event if proves => with_last_use(),
            CountedFrom::Event => record.on,
        };
        Found { ruled, from, day: from.plus_years(ruled.rule.years) }
    }

    fn decide(&self, found: &[Found<'a>], bearing: &Bearing<'a>) -> KeepUntil {
        // Of several equal ones, the first in pack order.
        let Some(longest) = found.iter().rev().max_by_key(|found| found.day) else {
            let mut missing = bearing.unknown_law.clone();
            add_new(&mut missing, bearing.without_rule.iter().cloned());
            if missing.is_empty() {
                missing.push(NotSettled::NoRule);
            }
            return KeepUntil::NotKnown { missing };
        };
        let (day, decided_by) = (longest.day, Box::new(longest.written()));
        let mut because = bearing.unknown_law.clone();
        add_new(&mut because, found.iter().filter_map(Found::not_read));
        // While some of it is left or in a hive its set is not over, whichever rule decides.
        add_new(&mut because, bearing.lots.iter().flat_map(|lot| self.runs(lot)));
        if because.is_empty() {
            KeepUntil::Until { day, decided_by }
        } else {
            KeepUntil::AtLeast { day, decided_by, because }
        }
    }

    /// Why the end of use of a lot may still move.
    fn runs(&self, lot: &LotName) -> Vec<NotSettled> {
        let unit = self.holding.unit_of(lot);
        let runs = self.ends.get(lot).into_iter().flat_map(|end| &end.runs);
        let named = runs.map(|runs| match runs {
            StillRuns::Left(left) => NotSettled::Left { lot: lot.clone(), left: *left, unit },
            StillRuns::MoreGone(more) => NotSettled::MoreGone { lot: lot.clone(), more: *more, unit },
            StillRuns::InHive { colonies, must_come_out, .. } => NotSettled::InHive {
                lot: lot.clone(),
                colonies: colonies.clone(),
                must_come_out: *must_come_out,
            },
        });
        named.collect()
    }
}

/// The result of one rule for one entry.
struct Found<'a> {
    ruled: Ruled<'a, RetentionRule>,
    from: Day,
    day: Day,
}

impl Found<'_> {
    /// A rule of the law that was not read in its own text. A scheme only adds to the law, whose own rule is looked at too.
    fn not_read(&self) -> Option<NotSettled> {
        let (rule, file) = (self.ruled.rule, self.ruled.file);
        let confidence = rule.basis.confidence;
        (rule.force == KeepingForce::Law && confidence != Confidence::Document)
            .then(|| NotSettled::LawNotRead { jurisdiction: file.jurisdiction.clone(), confidence })
    }

    fn written(&self) -> DecidedBy {
        let (rule, file) = (self.ruled.rule, self.ruled.file);
        let titles = rule.basis.source.iter().filter_map(|id| file.source(id));
        let sources: Vec<String> = titles.map(|source| source.title.clone()).collect();
        DecidedBy {
            jurisdiction: file.jurisdiction.clone(),
            years: rule.years,
            counted_from: rule.counted_from,
            counted_from_day: self.from,
            force: rule.force,
            confidence: rule.basis.confidence,
            sources,
            note: rule.basis.note.clone(),
        }
    }
}

/// The longest of several: not known outranks `AtLeast`, which outranks `Until`.
fn longest<'k>(keeps: impl Iterator<Item = &'k KeepUntil> + Clone) -> KeepUntil {
    let mut missing = Vec::new();
    let mut because = Vec::new();
    let mut latest: Option<(Day, &Box<DecidedBy>)> = None;
    for keep in keeps {
        let (day, decided_by) = match keep {
            KeepUntil::NotKnown { missing: more } => {
                add_new(&mut missing, more.iter().cloned());
                continue;
            }
            KeepUntil::AtLeast { day, decided_by, because: more } => {
                add_new(&mut because, more.iter().cloned());
                (*day, decided_by)
            }
            KeepUntil::Until { day, decided_by } => (*day, decided_by),
        };
        if latest.is_none_or(|(known, _)| known < day) {
            latest = Some((day, decided_by));
        }
    }
    match latest {
        Some((day, decided_by)) if missing.is_empty() && because.is_empty() => {
            KeepUntil::Until { day, decided_by: decided_by.clone() }
        }
        Some((day, decided_by)) if missing.is_empty() => {
            KeepUntil::AtLeast { day, decided_by: decided_by.clone(), because }
        }
        _ => KeepUntil::NotKnown { missing },
    }
}
