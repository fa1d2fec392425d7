//! Reads one leaflet file. Reports every fault with file, line, message and help.

use super::overlap;
use super::read_rule;
use crate::basics::confidence::Confidence;

use super::{ByTopic, Leaflet, Release, Rule};
use crate::basics::source::Source;
use crate::basics::spelling::nearest;
use crate::basics::words::{Jurisdiction, LeafletId, Method, Unit};
use crate::rules::fault::{Diagnostic, LeafletFault, Listed, TableName, ValueFault, Wanted};
use crate::rules::sources::{Cited, Sources};
use crate::rules::table::{DataFile, KeyPlaces, Table, check_file_name, check_format, read_file};

/// The version of the leaflet format that this program reads.
pub(crate) const FORMAT: i64 = 1;

/// Reads a leaflet; `None` if it has any fault. The path is `<jurisdiction>/<id>.toml`.
///
/// Faults come in line order, after those of the file as a whole.
pub fn leaflet(path: &str, text: &str, faults: &mut Vec<Diagnostic>) -> Option<Leaflet> {
    read_file(path, text, faults, TableName::Leaflet, read)
}

fn read(file: &mut DataFile<'_>, mut table: Table<'_>) -> Option<Leaflet> {
    // Another format has other keys: reading on would only produce follow-up faults.
    check_format(file, &mut table, FORMAT)?;
    let id: Option<LeafletId> = table.name_of(file, "id", Wanted::FileName);
    let jurisdiction: Option<Jurisdiction> = table.name_of(file, "jurisdiction", Wanted::FolderName);
    let title = table.text(file, "title");
    let actives = table.texts(file, "actives", Wanted::Actives);
    let form = table.text(file, "form");
    let strength = table.text(file, "strength");
    let units: Vec<_> = Unit::ALL.iter().map(|unit| (unit.as_str(), *unit)).collect();
    let unit = table.word(file, "unit", &units);
    let release = table.word(file, "release", &[("slow", Release::Slow), ("single", Release::Single)]);
    let methods = methods(file, &mut table);
    let revisions = revisions(file, &mut table);
    let states = states(file, &mut table, jurisdiction.as_ref());
    let instead_of = table.maybe_text(file, "instead_of");
    let sources = Sources::read(file, &mut table);
    let rules = rules(file, &mut table, &Named { methods: &methods, revisions: &revisions }, &sources);
    check_file_name(file, &table, "id", id.as_ref().map(LeafletId::as_str));
    folder_fits(file, &table, jurisdiction.as_ref());
    table.finish(file);
    overlap::check(file, release, &rules);
    if let Some(jurisdiction) = &jurisdiction {
        documents_are_of_its_authority(file, jurisdiction, &sources, &rules);
    }
    let rules: Vec<Rule> = rules.into_iter().map(|placed| placed.rule).collect();
    Some(Leaflet {
        id: id?,
        jurisdiction: jurisdiction?,
        title: title?,
        actives: actives.into_iter().map(|(_, active)| active).collect(),
        form: form?,
        strength: strength?,
        unit: unit?,
        release: release?,
        methods,
        revisions,
        states,
        instead_of,
        own: false,
        sources: sources.defined,
        by_topic: ByTopic::of(&rules),
        rules,
    })
}

/// A rule, and the places of its values in the file.
pub(super) struct PlacedRule {
    pub(super) places: KeyPlaces,
    pub(super) rule: Rule,
}

fn methods(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Vec<Method> {
    let mut methods = Vec::new();
    for (offset, name) in table.maybe_texts(file, "methods", Wanted::Methods) {
        match Method::new(&name) {
            Ok(method) if methods.contains(&method) => {
                file.fault(offset, ValueFault::Twice { of: Listed::Method, name });
            }
            Ok(method) => methods.push(method),
            Err(bad) => file.fault(offset, LeafletFault::MethodName(bad)),
        }
    }
    methods
}

/// The member states in which the medicine of a Union leaflet is authorised.
fn states(
    file: &mut DataFile<'_>,
    table: &mut Table<'_>,
    jurisdiction: Option<&Jurisdiction>,
) -> Vec<Jurisdiction> {
    let mut states: Vec<Jurisdiction> = Vec::new();
    for (offset, text) in table.maybe_texts(file, "states", Wanted::States) {
        match Jurisdiction::new(&text) {
            Ok(state) if states.contains(&state) => {
                file.fault(offset, ValueFault::Twice { of: Listed::State, name: text });
            }
            Ok(state) if state.is_member_state() => states.push(state),
            _ => file.fault(offset, LeafletFault::NotAState { written: text }),
        }
    }
    if let Some(other) = jurisdiction.filter(|known| !known.is_union() && !states.is_empty()) {
        file.fault(table.at("states"), LeafletFault::StatesElsewhere { jurisdiction: other.clone() });
    }
    states
}

/// Reports each value marked as a document whose sources include no authority of the leaflet's jurisdiction.
fn documents_are_of_its_authority(
    file: &mut DataFile<'_>,
    jurisdiction: &Jurisdiction,
    sources: &Sources,
    rules: &[PlacedRule],
) {
    for PlacedRule { places, rule } in
        rules.iter().filter(|placed| placed.rule.confidence == Confidence::Document)
    {
        let cited: Option<Vec<&Source>> =
            rule.source.iter().map(|key| sources.defined.iter().find(|source| source.id == *key)).collect();
        // An undefined or unreadable source is reported elsewhere.
        let Some(cited) = cited.filter(|cited| !cited.is_empty()) else { continue };
        if !cited.iter().any(|source| source.speaks_for(jurisdiction)) {
            let (topic, sources) = (rule.says.topic(), rule.source.clone());
            let fault = LeafletFault::NoAuthority { topic, sources, jurisdiction: jurisdiction.clone() };
            file.fault(places.of("confidence"), fault);
        }
    }
}

/// The methods and label revisions of a leaflet, to which its rules may be limited.
struct Named<'a> {
    methods: &'a [Method],
    revisions: &'a [String],
}

fn revisions(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Vec<String> {
    let mut revisions = Vec::new();
    for (offset, name) in table.maybe_texts(file, "revisions", Wanted::Revisions) {
        if revisions.contains(&name) {
            file.fault(offset, ValueFault::Twice { of: Listed::Revision, name });
        } else {
            revisions.push(name);
        }
    }
    revisions
}

fn rules(
    file: &mut DataFile<'_>,
    table: &mut Table<'_>,
    named: &Named<'_>,
    sources: &Sources,
) -> Vec<PlacedRule> {
    let mut rules = Vec::new();
    let mut cited = Cited::default();
    let Some(entries) = table.tables(file, "rule") else { return rules };
    if entries.is_empty() {
        file.fault(None, LeafletFault::NoRule);
        return rules;
    }
    for mut entry in entries {
        let read = read_rule::rule(file, &mut entry);
        if let Some(method) = read.method.as_ref().filter(|method| !named.methods.contains(method)) {
            unknown_method(file, entry.at("method"), method, named.methods);
        }
        if let Some(revision) = read.revision.as_ref().filter(|known| !named.revisions.contains(known)) {
            unknown_revision(file, entry.at("revision"), revision, named.revisions);
        }
        let places = if read.kind_is_known { entry.finish(file) } else { entry.finish_unread(file) };
        cited.by_rule(file, &read.cited, sources);
        rules.extend(read.rule.map(|rule| PlacedRule { places, rule }));
    }
    cited.note_unused(file, sources);
    rules
}

fn unknown_method(file: &mut DataFile<'_>, at: Option<usize>, method: &Method, methods: &[Method]) {
    let meant = nearest(method.as_str(), methods.iter().map(Method::as_str)).map(str::to_owned);
    let (method, declared) = (method.clone(), methods.to_vec());
    file.fault(at, LeafletFault::UnknownMethod { method, meant, declared });
}

fn unknown_revision(file: &mut DataFile<'_>, at: Option<usize>, revision: &str, revisions: &[String]) {
    let meant = nearest(revision, revisions.iter().map(String::as_str)).map(str::to_owned);
    file.fault(at, LeafletFault::UnknownRevision { revision: revision.to_owned(), meant });
}

/// Reports a leaflet in the folder of another jurisdiction.
fn folder_fits(file: &mut DataFile<'_>, head: &Table<'_>, jurisdiction: Option<&Jurisdiction>) {
    let folder = file.path().rsplit('/').nth(1).unwrap_or_default().to_owned();
    if let Some(jurisdiction) = jurisdiction.filter(|jurisdiction| folder != jurisdiction.as_str()).cloned() {
        file.fault(head.at("jurisdiction"), LeafletFault::OtherFolder { jurisdiction, folder });
    }
}
