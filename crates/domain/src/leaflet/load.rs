//! Reading one leaflet file. Every fault is noted with file, line, what is wrong and how to mend it.

use std::collections::BTreeSet;

use super::overlap;
use super::read_rule;
use super::table::{File, Places, Table};
use super::{Leaflet, Release, Rule, Source};
use crate::diagnostic::{Diagnostic, nearest};
use crate::words::{Jurisdiction, LeafletId, Method, Unit};

/// The version of the leaflet format that this program reads.
pub const FORMAT: i64 = 1;

/// Reads a leaflet; none if anything is wrong with it. The path is `<jurisdiction>/<id>.toml`.
///
/// Faults come in the order of lines; those of the file as a whole come first.
pub fn leaflet(path: &str, text: &str, faults: &mut Vec<Diagnostic>) -> Option<Leaflet> {
    let mut found = Vec::new();
    let mut file = File::new(path, text, &mut found);
    let leaflet = Table::of_file(&mut file).and_then(|table| read(&mut file, table));
    found.sort_by_key(|fault| (fault.line, fault.column));
    let sound = found.is_empty();
    faults.append(&mut found);
    leaflet.filter(|_| sound)
}

fn read(file: &mut File<'_>, mut table: Table<'_>) -> Option<Leaflet> {
    let wanted = format!("the number {FORMAT}");
    let format = table.number(file, "format", &wanted, |written| {
        let other = || Some(format!("write {wanted}; a later format needs a later version of this program"));
        if written == FORMAT.to_string() { Ok(()) } else { Err(other()) }
    });
    if format.is_none() && table.has("format") {
        // Another format has other keys: reading on would only bring follow-up faults.
        return None;
    }
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
    let instead_of = table.maybe_text(file, "instead_of");
    let sources = sources(file, &mut table);
    let rules = rules(file, &mut table, &Named { methods: &methods, revisions: &revisions }, &sources);
    name_fits_path(file, &table, id.as_ref(), jurisdiction.as_ref());
    table.finish(file);
    overlap::check(file, release, &rules);
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
        instead_of,
        own: false,
        sources: sources.defined,
        rules: rules.into_iter().map(|placed| placed.rule).collect(),
    })
}

/// A rule and where its values stand in the file.
pub(super) struct PlacedRule {
    pub(super) places: Places,
    pub(super) rule: Rule,
}

/// The sources that could be read, and the keys of all that were written.
struct Sources {
    defined: Vec<Source>,
    /// Every key in the order of the file, with its place.
    keys: Vec<(String, Option<usize>)>,
    /// Whether every source was written as one and has a key. If not, a key that is not found may be the one left out.
    complete: bool,
}

fn methods(file: &mut File<'_>, table: &mut Table<'_>) -> Vec<Method> {
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
                file.fault(offset, error.to_string(), "give the method a short name, such as `trickle`");
            }
        }
    }
    methods
}

/// What the head of a leaflet names and its rules may be limited to.
struct Named<'a> {
    methods: &'a [Method],
    revisions: &'a [String],
}

fn revisions(file: &mut File<'_>, table: &mut Table<'_>) -> Vec<String> {
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

fn sources(file: &mut File<'_>, table: &mut Table<'_>) -> Sources {
    let mut sources = Sources { defined: Vec::new(), keys: Vec::new(), complete: true };
    let Some(entries) = table.tables(file, "source") else {
        return Sources { complete: false, ..sources };
    };
    for mut entry in entries {
        let id = entry.text(file, "id");
        if let Some(id) = &id {
            entry.rename(format!("source `{id}`"));
        }
        let title = entry.text(file, "title");
        let locator = entry.maybe_text(file, "locator");
        let published = entry.maybe_text(file, "published");
        let at = entry.finish(file).of("id");
        let Some(id) = id else {
            sources.complete = false;
            continue;
        };
        if let Some((_, first)) = sources.keys.iter().find(|(known, _)| *known == id) {
            let message = format!("the source `{id}` is already defined in line {}", file.line(*first));
            file.fault(at, message, "give each source an `id` of its own, or drop one of the two");
            continue;
        }
        sources.keys.push((id.clone(), at));
        sources.defined.extend(title.map(|title| Source { id, title, locator, published }));
    }
    sources
}

fn rules(
    file: &mut File<'_>,
    table: &mut Table<'_>,
    named: &Named<'_>,
    sources: &Sources,
) -> Vec<PlacedRule> {
    let mut rules = Vec::new();
    let mut used = BTreeSet::new();
    let mut every_rule_cites = true;
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
        every_rule_cites &= !read.cited.is_empty();
        for (at, key) in &read.cited {
            used.extend(cited(file, *at, key, sources));
        }
        rules.extend(read.rule.map(|rule| PlacedRule { places, rule }));
    }
    // A rule that cites nothing yet may be the one that needs the source.
    let unused = sources.keys.iter().filter(|(known, _)| every_rule_cites && !used.contains(known.as_str()));
    for (unused, at) in unused {
        file.fault(
            *at,
            format!("no rule cites the source `{unused}`"),
            "cite it in the `source` of a rule, or drop it",
        );
    }
    rules
}

/// The source that a rule cites; if there is none, the one that was meant, so that it is not called unused as well.
fn cited<'s>(file: &mut File<'_>, at: usize, key: &str, sources: &'s Sources) -> Option<&'s str> {
    let keys = || sources.keys.iter().map(|(known, _)| known.as_str());
    if let Some(known) = keys().find(|known| *known == key) {
        return Some(known);
    }
    let near = nearest(key, keys());
    if sources.complete {
        let add = format!("add a [[source]] with `id = \"{key}\"`");
        let help = near.map_or_else(|| add.clone(), |near| format!("did you mean `{near}`? if not, {add}"));
        file.fault(at, format!("the source `{key}` is not defined"), help);
    }
    near
}

fn unknown_method(file: &mut File<'_>, at: Option<usize>, method: &Method, methods: &[Method]) {
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

fn unknown_revision(file: &mut File<'_>, at: Option<usize>, revision: &str, revisions: &[String]) {
    let help = match nearest(revision, revisions.iter().map(String::as_str)) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("add \"{revision}\" to `revisions` at the head of the leaflet, or drop the key"),
    };
    file.fault(at, format!("the leaflet has no label revision `{revision}`"), help);
}

/// `gb/amitraz-strip-500mg-a.toml` holds the leaflet of that id for that jurisdiction.
fn name_fits_path(
    file: &mut File<'_>,
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
