//! Reading one leaflet file. Every fault is noted with file, line, what is wrong and how to mend it.

use std::collections::BTreeSet;

use super::overlap;
use super::read_rule;
use super::table::{File, Table};
use super::{Leaflet, Release, Rule, Source};
use crate::diagnostic::{Diagnostic, nearest};
use crate::words::{Jurisdiction, LeafletId, Method, Unit};

/// The version of the leaflet format that this program reads.
pub const FORMAT: i64 = 1;

/// Reads a leaflet; none if anything is wrong with it. The path is `<jurisdiction>/<id>.toml`.
pub fn leaflet(path: &str, text: &str, faults: &mut Vec<Diagnostic>) -> Option<Leaflet> {
    let before = faults.len();
    let mut file = File::new(path, text, faults);
    let mut table = file.parse();
    if file.fault_count() > before {
        // Half-read TOML would only bring follow-up faults.
        return None;
    }
    let leaflet = read(&mut file, &mut table);
    table.finish(&mut file);
    leaflet.filter(|_| file.fault_count() == before)
}

fn read(file: &mut File<'_>, table: &mut Table<'_>) -> Option<Leaflet> {
    let format: Option<i64> = table.whole(file, "format", FORMAT..=FORMAT);
    let id: Option<LeafletId> = table.parsed(file, "id");
    let jurisdiction: Option<Jurisdiction> = table.parsed(file, "jurisdiction");
    let title = table.text(file, "title");
    let actives: Vec<String> = table.texts(file, "actives").into_iter().map(|(_, text)| text).collect();
    let form = table.text(file, "form");
    let strength = table.text(file, "strength");
    let units: Vec<_> = Unit::ALL.iter().map(|unit| (unit.as_str(), *unit)).collect();
    let unit = table.word(file, "unit", &units);
    let release = table.word(file, "release", &[("slow", Release::Slow), ("single", Release::Single)]);
    let methods = methods(file, table);
    let sources = sources(file, table);
    let rules = rules(file, table, &methods, &sources);

    if actives.is_empty() {
        file.fault(0, "the leaflet names no active", "add `actives = [\"…\"]`");
    }
    name_fits_path(file, id.as_ref(), jurisdiction.as_ref());
    if let Some(release) = release {
        overlap::check(file, release, &rules);
    }
    let rules = rules.into_iter().map(|placed| placed.rule).collect();
    format?;
    Some(Leaflet {
        id: id?,
        jurisdiction: jurisdiction?,
        title: title?,
        actives,
        form: form?,
        strength: strength?,
        unit: unit?,
        release: release?,
        methods,
        sources: sources.into_iter().map(|placed| placed.source).collect(),
        rules,
    })
}

/// A rule and where it stands in the file.
pub(super) struct PlacedRule {
    pub(super) offset: usize,
    pub(super) rule: Rule,
}

struct PlacedSource {
    offset: usize,
    source: Source,
}

fn methods(file: &mut File<'_>, table: &mut Table<'_>) -> Vec<Method> {
    let mut methods = Vec::new();
    for (offset, text) in table.texts(file, "methods") {
        match Method::new(&text) {
            Ok(method) if methods.contains(&method) => {
                file.fault(offset, format!("the method `{text}` is named twice"), "name each method once");
            }
            Ok(method) => methods.push(method),
            Err(error) => {
                file.fault(offset, error.to_string(), "give the method a short name, such as `trickle`")
            }
        }
    }
    methods
}

fn sources(file: &mut File<'_>, table: &mut Table<'_>) -> Vec<PlacedSource> {
    let mut sources: Vec<PlacedSource> = Vec::new();
    for mut entry in table.tables(file, "source") {
        let offset = entry.offset();
        let id = entry.text(file, "id");
        if let Some(id) = &id {
            entry.rename(format!("source `{id}`"));
        }
        let title = entry.text(file, "title");
        let locator = entry.maybe_text(file, "locator");
        let published = entry.maybe_text(file, "published");
        entry.finish(file);
        let (Some(id), Some(title)) = (id, title) else { continue };
        if sources.iter().any(|known| known.source.id == id) {
            file.fault(
                offset,
                format!("the source `{id}` is defined twice"),
                "give each source a key of its own",
            );
            continue;
        }
        sources.push(PlacedSource { offset, source: Source { id, title, locator, published } });
    }
    sources
}

fn rules(
    file: &mut File<'_>,
    table: &mut Table<'_>,
    methods: &[Method],
    sources: &[PlacedSource],
) -> Vec<PlacedRule> {
    let mut rules = Vec::new();
    let mut used = BTreeSet::new();
    let tables = table.tables(file, "rule");
    if tables.is_empty() {
        file.fault(0, "the leaflet holds no rule", "add at least one [[rule]]");
    }
    for mut entry in tables {
        let offset = entry.offset();
        let (rule, keys) = read_rule::rule(file, &mut entry);
        entry.finish(file);
        for (at, key) in &keys {
            if sources.iter().any(|known| known.source.id == *key) {
                used.insert(key.clone());
            } else {
                let ids = sources.iter().map(|known| known.source.id.as_str());
                let help = nearest(key, ids).map_or_else(
                    || format!("add a [[source]] with id = \"{key}\""),
                    |near| format!("did you mean `{near}`?"),
                );
                file.fault(*at, format!("the source `{key}` is not defined"), help);
            }
        }
        let Some(rule) = rule else { continue };
        if let Some(method) = rule.method.as_ref().filter(|method| !methods.contains(method)) {
            let help = "add it to `methods` at the head of the leaflet, or correct it";
            file.fault(offset, format!("the leaflet has no method `{method}`"), help);
        }
        rules.push(PlacedRule { offset, rule });
    }
    for unused in sources.iter().filter(|known| !used.contains(&known.source.id)) {
        let message = format!("no rule cites the source `{}`", unused.source.id);
        file.fault(unused.offset, message, "cite it in a rule's `source`, or drop it");
    }
    rules
}

/// `gb/amitraz-strip-500mg-a.toml` holds the leaflet of that id for that jurisdiction.
fn name_fits_path(file: &mut File<'_>, id: Option<&LeafletId>, jurisdiction: Option<&Jurisdiction>) {
    let (Some(id), Some(jurisdiction)) = (id, jurisdiction) else { return };
    let wanted = format!("{jurisdiction}/{id}.toml");
    if file.path() != wanted && !file.path().ends_with(&format!("/{wanted}")) {
        let message = format!("the leaflet calls itself `{wanted}`, but the file is `{}`", file.path());
        file.fault(0, message, "make `jurisdiction` the folder and `id` the file name without `.toml`");
    }
}
