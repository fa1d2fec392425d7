//! The sources of a data file. Each is defined once and cited by some rule; every cited key is defined.

use std::collections::BTreeSet;

use crate::basics::source::Source;
use crate::basics::spelling::nearest;
use crate::basics::words::{Jurisdiction, SourceKind};
use crate::rules::fault::{SourceFault, Wanted};
use crate::rules::table::{DataFile, Table, words};

/// Reports a source whose author country is missing or wrong for its kind.
fn whose_text(
    file: &mut DataFile<'_>,
    entry: &Table<'_>,
    country: Option<&Jurisdiction>,
    kind: Option<SourceKind>,
) {
    let union = country.is_some_and(Jurisdiction::is_union);
    match kind {
        Some(SourceKind::Memory) | None => {}
        Some(_) if !entry.has("country") => {
            file.fault(entry.at(""), SourceFault::NoCountry { source: entry.name() });
        }
        Some(SourceKind::Union) if country.is_some() && !union => {
            file.fault(entry.at("country"), SourceFault::UnionOfAState);
        }
        Some(SourceKind::Authority) if union => {
            file.fault(entry.at("country"), SourceFault::UnionAsAuthority);
        }
        Some(_) => {}
    }
}

/// The sources that could be read, and the keys of all that were written.
pub(crate) struct Sources {
    pub(crate) defined: Vec<Source>,
    /// Every key with its place, in file order.
    keys: Vec<(String, Option<usize>)>,
    /// Whether every source could be read and has a key. If not, a key that is not found may belong to an unreadable one.
    complete: bool,
}

impl Sources {
    /// Reads the `[[source]]` tables of a file.
    pub(crate) fn read(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Sources {
        let mut sources = Sources { defined: Vec::new(), keys: Vec::new(), complete: true };
        let Some(entries) = table.tables(file, "source") else {
            return Sources { complete: false, ..sources };
        };
        for mut entry in entries {
            let id = entry.text(file, "id");
            if let Some(id) = &id {
                entry.rename("source", id);
            }
            let country: Option<Jurisdiction> = entry.maybe_name_of(file, "country", Wanted::Country);
            let kind = entry.word(file, "kind", &words(SourceKind::ALL, |kind| kind.as_str()));
            let title = entry.text(file, "title");
            let record = entry.maybe_text(file, "record");
            let locator = entry.maybe_text(file, "locator");
            let address = entry.maybe_text(file, "address");
            let published = entry.maybe_text(file, "published");
            whose_text(file, &entry, country.as_ref(), kind);
            let at = entry.finish(file).of("id");
            let Some(id) = id else {
                sources.complete = false;
                continue;
            };
            if let Some((_, first)) = sources.keys.iter().find(|(known, _)| *known == id) {
                file.fault(at, SourceFault::Twice { line: file.line(*first), id });
                continue;
            }
            sources.keys.push((id.clone(), at));
            let read = title.zip(kind).map(|(title, kind)| Source {
                id,
                country,
                kind,
                title,
                record,
                locator,
                address,
                published,
            });
            sources.defined.extend(read);
        }
        sources
    }

    /// The source that a rule cites. If it is not defined, the one that was probably meant, so that it is not reported as
    /// unused too.
    fn cited(&self, file: &mut DataFile<'_>, at: usize, key: &str) -> Option<&str> {
        let keys = || self.keys.iter().map(|(known, _)| known.as_str());
        if let Some(known) = keys().find(|known| *known == key) {
            return Some(known);
        }
        let near = nearest(key, keys());
        if self.complete {
            let (id, meant) = (key.to_owned(), near.map(str::to_owned));
            file.fault(at, SourceFault::NotDefined { id, meant });
        }
        near
    }
}

/// Which sources the rules of a file cite.
pub(crate) struct Cited<'s> {
    used: BTreeSet<&'s str>,
    every_rule_cites: bool,
}

impl Default for Cited<'_> {
    fn default() -> Self {
        Cited { used: BTreeSet::new(), every_rule_cites: true }
    }
}

impl<'s> Cited<'s> {
    /// Collects the keys that a rule cites, and reports each undefined one.
    pub(crate) fn by_rule(
        &mut self,
        file: &mut DataFile<'_>,
        keys: &[(usize, String)],
        sources: &'s Sources,
    ) {
        self.every_rule_cites &= !keys.is_empty();
        for (at, key) in keys {
            self.used.extend(sources.cited(file, *at, key));
        }
    }

    /// Notes that some rules could not be read: they may cite any source.
    pub(crate) fn some_unread(&mut self) {
        self.every_rule_cites = false;
    }

    /// Reports sources that no rule cites.
    pub(crate) fn note_unused(&self, file: &mut DataFile<'_>, sources: &Sources) {
        // A rule without sources may be the one that needs it.
        let unused = sources
            .keys
            .iter()
            .filter(|(known, _)| self.every_rule_cites && !self.used.contains(known.as_str()));
        for (unused, at) in unused {
            file.fault(*at, SourceFault::NotCited { id: unused.clone() });
        }
    }
}
