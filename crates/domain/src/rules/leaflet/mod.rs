//! A leaflet: the directions of one authorised form in one jurisdiction, kept as dated and sourced rules.
//!
//! - [`rule`]: one rule: its content, dates, sources and confidence. The kinds are declared in `basics/rule_kinds.rs`
//! - [`load`]: reading leaflets from TOML; every fault of every file is reported at once
//! - [`schema`]: the format as a JSON Schema, for editors
//! - [`Leaflets`]: the set in which a holding's medicines are looked up

mod kinds;
pub mod load;
mod overlap;
mod read_rule;
pub mod rule;
pub mod schema;
mod together;
mod written;

use crate::basics::confidence::Confidence;
use crate::basics::source::Source;
use crate::basics::topic::Topic;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::basics::spelling::nearest;
use crate::basics::words::{Jurisdiction, LeafletId, Method, SourceKind, Unit};
use crate::rules::fault::{Diagnostic, Faults, LeafletFault};

pub use rule::{Force, Rule, Says, WithdrawalPeriod};

/// The directions of one authorised form in one jurisdiction.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Leaflet {
    /// Active, form, strength, variant: `amitraz-strip-500mg-a`. Never reused, never renamed.
    pub id: LeafletId,
    /// The jurisdiction it was written for.
    pub jurisdiction: Jurisdiction,
    /// Active, form and strength in words.
    pub title: String,
    /// Active substances.
    pub actives: Vec<String>,
    /// The form, such as strip or gel.
    pub form: String,
    /// The strength in words.
    pub strength: String,
    /// The unit in which it is counted.
    pub unit: Unit,
    /// Whether it keeps working inside the hive.
    pub release: Release,
    /// The methods of administration, if there are several.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub methods: Vec<Method>,
    /// Label revisions found on packs, in order, if the rules differ between them.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub revisions: Vec<String>,
    /// For a Union leaflet: the member states known to authorise the medicine. Empty means not known.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub states: Vec<Jurisdiction>,
    /// The built-in leaflet that this keeper's own leaflet replaces: `gb/amitraz-strip-500mg-a`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub instead_of: Option<String>,
    /// Whether it comes from the keeper's own folder.
    pub own: bool,
    /// Where the rules were read.
    pub sources: Vec<Source>,
    /// The rules, in the order of the file.
    pub rules: Vec<Rule>,
    /// Where each topic has its rules.
    #[serde(skip)]
    pub(super) by_topic: ByTopic,
}

/// The places of the rules on each topic, in the order of the file: every question asks for the rules on one topic.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct ByTopic(Vec<(Topic, usize)>);

impl ByTopic {
    pub(super) fn of(rules: &[Rule]) -> ByTopic {
        let places = rules.iter().enumerate();
        let mut places: Vec<_> = places.map(|(index, rule)| (rule.says.topic(), index)).collect();
        places.sort_unstable();
        ByTopic(places)
    }
}

/// Whether a medicine keeps working inside the hive.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Release {
    /// A carrier stays in the hive and releases its active until it is taken out or used up.
    Slow,
    /// One dose at one moment; nothing stays in the hive.
    Single,
}

impl Leaflet {
    /// The rules on a topic, each with its index, in the order of the file.
    pub(crate) fn rules_on(&self, topic: Topic) -> impl Iterator<Item = (usize, &Rule)> {
        let ByTopic(places) = &self.by_topic;
        let from = places.partition_point(|(of, _)| *of < topic);
        let places = places.iter().skip(from).take_while(move |(of, _)| *of == topic);
        places.filter_map(|(_, index)| Some((*index, self.rules.get(*index)?)))
    }

    /// The rules on a topic that are in force on a day, in the order of the file.
    ///
    /// With a `method`: those for it and those for all methods. Without one: all of them.
    pub fn in_force<'a>(
        &'a self,
        topic: Topic,
        on: Day,
        method: Option<&'a Method>,
    ) -> impl Iterator<Item = &'a Rule> + 'a {
        let rules = self.rules_on(topic).map(|(_, rule)| rule);
        rules.filter(move |rule| rule.is_in_force(on) && rule.fits(method, None))
    }

    /// Whether any rule states a withdrawal period in days. A label without one may state a wait before supers instead.
    #[must_use]
    pub fn states_withdrawal_days(&self) -> bool {
        let states_days =
            |rule: &Rule| matches!(rule.says, Says::Withdrawal { days: WithdrawalPeriod::Days(_) });
        self.rules.iter().any(states_days)
    }

    /// Whether its confidence marks must be derived anew for this jurisdiction.
    fn is_marked_elsewhere(&self, jurisdiction: &Jurisdiction) -> bool {
        self.jurisdiction != *jurisdiction || jurisdiction.is_union()
    }

    /// The leaflet as far as it can be relied on in another jurisdiction; `None` if it does not apply there.
    fn seen_from(&self, jurisdiction: &Jurisdiction) -> Option<Leaflet> {
        let by_recognition = self.states.contains(jurisdiction);
        if !jurisdiction.is_union() && !self.states.is_empty() && !by_recognition {
            return None;
        }
        let speaks = |source: &Source| {
            let there = match source.kind {
                // One state's authority does not speak for the Union as a whole.
                SourceKind::Authority if jurisdiction.is_union() => false,
                SourceKind::Authority
                | SourceKind::Union
                | SourceKind::Trade
                | SourceKind::Research
                | SourceKind::Memory => source.speaks_for(jurisdiction),
            };
            let shared = by_recognition
                && source.kind == SourceKind::Authority
                && source.country.as_ref().is_some_and(|country| self.states.contains(country));
            there || shared
        };
        let mut seen = self.clone();
        for rule in &mut seen.rules {
            let documented = rule.source.iter().filter_map(|key| self.source(key)).any(speaks);
            if rule.confidence == Confidence::Document && !documented {
                rule.confidence = Confidence::SecondHand;
            }
        }
        Some(seen)
    }

    /// The source with this key.
    #[must_use]
    pub fn source(&self, id: &str) -> Option<&Source> {
        self.sources.iter().find(|source| source.id == id)
    }
}

/// A set of leaflets, looked up by jurisdiction and id.
#[derive(Debug, Clone, Default)]
pub struct Leaflets {
    /// As written.
    by_name: BTreeMap<(Jurisdiction, LeafletId), Arc<Leaflet>>,
    /// As they apply in jurisdictions that have none of their own: see [`Leaflets::get`].
    seen_from: BTreeMap<(Jurisdiction, LeafletId), Arc<Leaflet>>,
}

impl Leaflets {
    /// Loads leaflet files, given as path and text. The path is `<jurisdiction>/<id>.toml`.
    ///
    /// # Errors
    /// Every fault of every file, in file order.
    pub fn load<'a>(files: impl IntoIterator<Item = (&'a str, &'a str)>) -> Result<Leaflets, Faults> {
        let mut faults = Vec::new();
        let mut set = Leaflets::default();
        let mut places: BTreeMap<(Jurisdiction, LeafletId), String> = BTreeMap::new();
        for (path, text) in files {
            let Some(leaflet) = load::leaflet(path, text, &mut faults) else { continue };
            let key = (leaflet.jurisdiction.clone(), leaflet.id.clone());
            if let Some(earlier) = places.insert(key.clone(), path.to_owned()) {
                faults.push(Diagnostic::of_file(path, twice(&leaflet, &earlier)));
            }
            set.by_name.insert(key, Arc::new(leaflet));
        }
        set.look_from_elsewhere();
        Faults::none_of(faults, || set)
    }

    /// Adds a keeper's own leaflets, under the same checks. One with the id of a built-in leaflet must name it in
    /// `instead_of`, so that none is replaced by accident.
    ///
    /// # Errors
    /// Every fault of every file. The set itself is unchanged.
    pub fn with_own<'a>(
        &self,
        files: impl IntoIterator<Item = (&'a str, &'a str)>,
    ) -> Result<Leaflets, Faults> {
        let mut faults = Vec::new();
        let mut set = self.clone();
        let mut own: BTreeMap<(Jurisdiction, LeafletId), String> = BTreeMap::new();
        for (path, text) in files {
            let Some(mut leaflet) = load::leaflet(path, text, &mut faults) else { continue };
            leaflet.own = true;
            let key = (leaflet.jurisdiction.clone(), leaflet.id.clone());
            if let Some(fault) = self.fault_of_own(&leaflet, own.get(&key)) {
                faults.push(Diagnostic::of_file(path, fault));
                continue;
            }
            own.insert(key.clone(), path.to_owned());
            set.by_name.insert(key, Arc::new(leaflet));
        }
        set.look_from_elsewhere();
        Faults::none_of(faults, || set)
    }

    fn fault_of_own(&self, leaflet: &Leaflet, earlier: Option<&String>) -> Option<LeafletFault> {
        let (jurisdiction, id) = (leaflet.jurisdiction.clone(), leaflet.id.clone());
        let name = format!("{jurisdiction}/{id}");
        let built_in = self.as_written(&jurisdiction, &id).is_some();
        match (earlier, &leaflet.instead_of) {
            (Some(file), _) => Some(twice(leaflet, file)),
            (None, None) if built_in => Some(LeafletFault::WouldReplace { jurisdiction, id }),
            (None, Some(of)) if *of != name => {
                Some(LeafletFault::InsteadOfAnother { of: of.clone(), jurisdiction, id })
            }
            (None, Some(of)) if !built_in => Some(LeafletFault::InsteadOfNone { of: of.clone() }),
            _ => None,
        }
    }

    /// The leaflet with this id that applies in this jurisdiction: its own, else the first of
    /// `Jurisdiction::leaflets_from`.
    ///
    /// In a borrowed leaflet, confidence depends on who says it. A value is a document only if its source is an authority of
    /// that jurisdiction, a Union body, or the authority of a state that shares one text by recognition. Values from another
    /// country's authority are second hand. A Union leaflet that names its states applies in those only.
    #[must_use]
    pub fn get(&self, jurisdiction: &Jurisdiction, id: &LeafletId) -> Option<&Arc<Leaflet>> {
        let key = (jurisdiction.clone(), id.clone());
        self.seen_from.get(&key).or_else(|| self.by_name.get(&key))
    }

    /// The leaflet with this id exactly as its file has it.
    #[must_use]
    pub fn as_written(&self, jurisdiction: &Jurisdiction, id: &LeafletId) -> Option<&Arc<Leaflet>> {
        self.by_name.get(&(jurisdiction.clone(), id.clone()))
    }

    /// Every leaflet that applies in a jurisdiction, by id, marked as in [`Leaflets::get`].
    #[must_use]
    pub fn holding_in(&self, jurisdiction: &Jurisdiction) -> Vec<&Arc<Leaflet>> {
        let from = jurisdiction.leaflets_from();
        let ids = self.by_name.keys().filter(|(of, _)| from.contains(of)).map(|(_, id)| id);
        let ids: BTreeSet<&LeafletId> = ids.collect();
        ids.into_iter().filter_map(|id| self.get(jurisdiction, id)).collect()
    }

    /// Derives the leaflets of jurisdictions that use another's.
    fn look_from_elsewhere(&mut self) {
        self.seen_from.clear();
        for jurisdiction in Jurisdiction::looking_elsewhere() {
            let from = jurisdiction.leaflets_from();
            let ids: BTreeSet<&LeafletId> =
                self.by_name.keys().filter(|(of, _)| from.contains(of)).map(|(_, id)| id).collect();
            for id in ids {
                let first = from.iter().find_map(|of| self.by_name.get(&(of.clone(), id.clone())));
                // A jurisdiction's own leaflet keeps its marks; a Union leaflet carries marks of single states.
                let Some(written) = first.filter(|written| written.is_marked_elsewhere(&jurisdiction)) else {
                    continue;
                };
                if let Some(seen) = written.seen_from(&jurisdiction) {
                    self.seen_from.insert((jurisdiction.clone(), id.clone()), Arc::new(seen));
                }
            }
        }
    }

    /// Whether leaflets of a jurisdiction state withdrawal periods. False where labels only state a wait before supers.
    #[must_use]
    pub(crate) fn know_withdrawal(&self, jurisdiction: &Jurisdiction) -> bool {
        self.holding_in(jurisdiction).into_iter().any(|leaflet| leaflet.states_withdrawal_days())
    }

    /// Every leaflet, by jurisdiction and id.
    pub fn iter(&self) -> impl Iterator<Item = &Arc<Leaflet>> {
        self.by_name.values()
    }

    /// The known id nearest in spelling.
    #[must_use]
    pub fn nearest_to(&self, id: &str) -> Option<&str> {
        nearest(id, self.by_name.keys().map(|(_, known)| known.as_str()))
    }
}

fn twice(leaflet: &Leaflet, earlier: &str) -> LeafletFault {
    let (jurisdiction, id) = (leaflet.jurisdiction.clone(), leaflet.id.clone());
    LeafletFault::InTwoFiles { jurisdiction, id, other: earlier.to_owned() }
}
