//! Reads one leaflet file. Reports every fault with file, line, message and help.

use super::overlap;
use super::read_rule;
use crate::basics::confidence::Confidence;

use super::{ByTopic, Leaflet, Release, Rule};
use crate::basics::diagnostic::{Diagnostic, nearest};
use crate::basics::source::Source;
use crate::basics::words::{Jurisdiction, LeafletId, Method, Unit};
use crate::rules::sources::{Cited, Sources};
use crate::rules::table::{DataFile, KeyPlaces, Table, check_format, not_a_name};

/// The version of the leaflet format that this program reads.
pub const FORMAT: i64 = 1;

/// Reads a leaflet; `None` if it has any fault. The path is `<jurisdiction>/<id>.toml`.
///
/// Faults come in line order, after those of the file as a whole.
pub fn leaflet(path: &str, text: &str, faults: &mut Vec<Diagnostic>) -> Option<Leaflet> {
    let mut found = Vec::new();
    let mut file = DataFile::new(path, text, &mut found);
    let leaflet = Table::of_file(&mut file, "the leaflet").and_then(|table| read(&mut file, table));
    found.sort_by_key(|fault| (fault.line, fault.column));
    let sound = found.is_empty();
    faults.append(&mut found);
    leaflet.filter(|_| sound)
}

fn read(file: &mut DataFile<'_>, mut table: Table<'_>) -> Option<Leaflet> {
    // Another format has other keys: reading on would only produce follow-up faults.
    check_format(file, &mut table, FORMAT)?;
    let id: Option<LeafletId> = table.name_of(file, "id", "the file name without `.toml`, in double quotes");
    let jurisdiction: Option<Jurisdiction> =
        table.name_of(file, "jurisdiction", "the name of the folder, in double quotes");
    let title = table.text(file, "title");
    let actives = table.texts(file, "actives", "a list of the active substances, such as [\"amitraz\"]");
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
    name_fits_path(file, &table, id.as_ref(), jurisdiction.as_ref());
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
    for (offset, text) in
        table.maybe_texts(file, "methods", "a list of names, such as [\"trickle\", \"sublimation\"]")
    {
        match Method::new(&text) {
            Ok(method) if methods.contains(&method) => {
                file.fault(offset, format!("the method `{text}` is named twice"), "name each method once");
            }
            Ok(method) => methods.push(method),
            Err(error) => {
                file.fault(
                    offset,
                    not_a_name(&error, "the name of a method"),
                    "give the method a short name, such as `trickle`",
                );
            }
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
    for (offset, text) in
        table.maybe_texts(file, "states", "a list of member states, such as [\"de\", \"fr\"]")
    {
        match Jurisdiction::new(&text) {
            Ok(state) if states.contains(&state) => {
                file.fault(offset, format!("the state `{text}` is named twice"), "name each state once");
            }
            Ok(state) if state.is_member_state() => states.push(state),
            _ => {
                let help = "write the lower-case code of a member state of the Union, such as `fr`";
                file.fault(offset, format!("`{text}` is no member state"), help);
            }
        }
    }
    if let Some(other) = jurisdiction.filter(|known| !known.is_union() && !states.is_empty()) {
        let message = format!("a leaflet of `{other}` holds there alone");
        file.fault(table.at("states"), message, "drop `states`: only leaflets of `eu` name them");
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
            let keys: Vec<_> = rule.source.iter().map(|key| format!("`{key}`")).collect();
            let message = format!(
                "this `{}` is marked as a document, but {} is no text of an authority of `{jurisdiction}`",
                rule.says.topic().as_str(),
                keys.join(" or ")
            );
            let help = "write `confidence = \"second_hand\"`, or cite the authority's own text";
            file.fault(places.of("confidence"), message, help);
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
    let wanted = "a list of label revisions in order, such as [\"2013-03\", \"2021-02\"]";
    for (offset, text) in table.maybe_texts(file, "revisions", wanted) {
        if revisions.contains(&text) {
            file.fault(offset, format!("the revision `{text}` is named twice"), "name each revision once");
        } else {
            revisions.push(text);
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
        file.fault(None, "the leaflet holds no rule", "add at least one [[rule]]");
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
    let near = nearest(method.as_str(), methods.iter().map(Method::as_str));
    let help = match (near, methods) {
        (Some(near), _) => format!("did you mean `{near}`?"),
        (None, []) => format!("add `methods = [\"{method}\"]` to the head of the leaflet, or drop the key"),
        (None, _) => {
            let declared: Vec<_> = methods.iter().map(|known| format!("`{known}`")).collect();
            format!("the head of the leaflet declares {}: add it there, or correct it", declared.join(", "))
        }
    };
    file.fault(at, format!("the leaflet has no method `{method}`"), help);
}

fn unknown_revision(file: &mut DataFile<'_>, at: Option<usize>, revision: &str, revisions: &[String]) {
    let help = match nearest(revision, revisions.iter().map(String::as_str)) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("add \"{revision}\" to `revisions` at the head of the leaflet, or drop the key"),
    };
    file.fault(at, format!("the leaflet has no label revision `{revision}`"), help);
}

/// Reports a path that does not fit: `gb/amitraz-strip-500mg-a.toml` holds the `gb` leaflet of that id.
fn name_fits_path(
    file: &mut DataFile<'_>,
    head: &Table<'_>,
    id: Option<&LeafletId>,
    jurisdiction: Option<&Jurisdiction>,
) {
    let path = file.path();
    let (folders, name) = path.rsplit_once('/').unwrap_or(("", path));
    let folder = folders.rsplit('/').next().unwrap_or_default();
    if let Some(id) = id.filter(|id| name != format!("{id}.toml")) {
        let stem = name.strip_suffix(".toml").unwrap_or(name);
        let help = format!("rename the file to `{id}.toml`, or write `id = \"{stem}\"`");
        file.fault(head.at("id"), format!("the id is `{id}`, but the file is `{name}`"), help);
    }
    if let Some(jurisdiction) = jurisdiction.filter(|jurisdiction| folder != jurisdiction.as_str()) {
        let help =
            format!("move the file to the folder `{jurisdiction}`, or write `jurisdiction = \"{folder}\"`");
        let message = format!("the jurisdiction is `{jurisdiction}`, but the folder is `{folder}`");
        file.fault(head.at("jurisdiction"), message, help);
    }
}
