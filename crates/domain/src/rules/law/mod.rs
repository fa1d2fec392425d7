//! The law on medicine records, as dated and sourced data: which fields on which occasion, how soon, in what form, for how
//! long.
//!
//! - [`words`]: occasions, fields, sorts of record
//! - [`rule`]: the rules, each with dates, sources and confidence
//! - [`load`]: reading law files; every fault of every file is reported at once
//! - [`profile`]: the rules that apply in a jurisdiction on a day
//!
//! Rules are chosen by the day of the event, never by today's date.

pub mod load;
pub mod profile;
pub mod rule;
pub mod words;

use std::collections::BTreeMap;

use crate::basics::calendar::Day;
use crate::basics::source::Source;
use crate::basics::spelling::nearest;
use crate::basics::words::Jurisdiction;
use crate::rules::fault::{Diagnostic, Faults, LawFault};

pub use profile::{FieldNeeded, LawStanding, Part, Profile, Ruled};
pub use rule::{Basis, Dated, FieldRule, FormRule, RetentionRule, TimeLimitRule};
pub use words::{CountedFrom, Field, FieldNeed, KeepingForce, Occasion, RecordSort};

/// The law of one jurisdiction as its file has it: its own rules, of all dates.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LawFile {
    /// The jurisdiction whose law it is.
    pub jurisdiction: Jurisdiction,
    /// Its title.
    pub title: String,
    /// Jurisdictions whose rules apply here too, in order.
    pub includes: Vec<Jurisdiction>,
    /// Where the rules were read.
    pub sources: Vec<Source>,
    /// Which fields must be recorded.
    pub fields: Vec<FieldRule>,
    /// How long records must be kept.
    pub retentions: Vec<RetentionRule>,
    /// How soon an entry must be made.
    pub time_limits: Vec<TimeLimitRule>,
    /// In what form the records must be kept.
    pub forms: Vec<FormRule>,
}

impl LawFile {
    /// The source with this key.
    #[must_use]
    pub fn source(&self, id: &str) -> Option<&Source> {
        self.sources.iter().find(|source| source.id == id)
    }

    /// The basis of every rule, in the order of the lists.
    pub fn bases(&self) -> impl Iterator<Item = &Basis> {
        let fields = self.fields.iter().map(Dated::basis);
        let retentions = self.retentions.iter().map(Dated::basis);
        let limits = self.time_limits.iter().map(Dated::basis);
        fields.chain(retentions).chain(limits).chain(self.forms.iter().map(Dated::basis))
    }
}

/// The law of several jurisdictions. Every include names a loaded file, and includes form no cycle.
#[derive(Debug, Clone, Default)]
pub struct Laws {
    files: BTreeMap<Jurisdiction, LawFile>,
}

impl Laws {
    /// Loads law files, given as path and text. The path ends in `<jurisdiction>.toml`.
    ///
    /// # Errors
    /// Every fault of every file, in file order; then the faults between files.
    pub fn load<'a>(files: impl IntoIterator<Item = (&'a str, &'a str)>) -> Result<Laws, Faults> {
        let mut faults = Vec::new();
        let mut read: BTreeMap<Jurisdiction, (String, load::ReadLaw)> = BTreeMap::new();
        let mut paths: Vec<String> = Vec::new();
        for (path, text) in files {
            paths.push(path.to_owned());
            let Some(law) = load::law(path, text, &mut faults) else { continue };
            let jurisdiction = law.file.jurisdiction.clone();
            if let Some((earlier, _)) = read.get(&jurisdiction) {
                let fault = LawFault::InTwoFiles { jurisdiction, other: earlier.clone() };
                faults.push(Diagnostic::of_file(path, fault));
                continue;
            }
            read.insert(jurisdiction, (path.to_owned(), law));
        }
        faults.extend(faults_between(&read, &paths));
        Faults::none_of(faults, || Laws {
            files: read.into_iter().map(|(of, (_, law))| (of, law.file)).collect(),
        })
    }

    /// The rules that apply in a jurisdiction on a day: its own, else those of the union it belongs to. `None` if no rules
    /// are known for it. A day before the first rule gives a profile that says so.
    #[must_use]
    pub fn profile(&self, jurisdiction: &Jurisdiction, on: Day) -> Option<Profile<'_>> {
        let of = |jurisdiction: &Jurisdiction| self.files.get(jurisdiction);
        let own = of(jurisdiction).or_else(|| of(&jurisdiction.wider()?))?;
        let mut parts = vec![own];
        // Includes are transitive. The loader has refused cycles, so this ends.
        let mut next = 0;
        while let Some(part) = parts.get(next).copied() {
            for include in part.includes.iter().filter_map(of) {
                if !parts.iter().any(|known| known.jurisdiction == include.jurisdiction) {
                    parts.push(include);
                }
            }
            next += 1;
        }
        Some(Profile::new(jurisdiction.clone(), on, parts))
    }

    /// Every law file, by jurisdiction.
    pub fn iter(&self) -> impl Iterator<Item = &LawFile> {
        self.files.values()
    }

    /// All jurisdictions, for the help on an unknown one. A nearest match would mislead: any two-letter code is near any
    /// other.
    #[must_use]
    pub fn listed(&self) -> String {
        self.files.keys().map(Jurisdiction::as_str).collect::<Vec<_>>().join(", ")
    }
}

/// Reports includes that name no file, and cycles.
fn faults_between(
    read: &BTreeMap<Jurisdiction, (String, load::ReadLaw)>,
    paths: &[String],
) -> Vec<Diagnostic> {
    let mut faults = Vec::new();
    for (own, (path, law)) in read {
        for (include, (line, column)) in &law.includes {
            let mut fault = |what: LawFault| {
                let what = what.into();
                faults.push(Diagnostic { file: path.clone(), line: *line, column: *column, what });
            };
            if read.contains_key(include) {
                if leads_to(read, include, own) {
                    fault(LawFault::LeadsBack { own: own.clone(), include: include.clone() });
                }
                continue;
            }
            // A file that is there but did not load has been reported already.
            let name = format!("{include}.toml");
            if paths.iter().any(|path| path.rsplit('/').next() == Some(&name)) {
                continue;
            }
            let meant = nearest(include.as_str(), read.keys().map(Jurisdiction::as_str)).map(str::to_owned);
            fault(LawFault::NothingToInclude { include: include.clone(), meant });
        }
    }
    faults
}

/// Whether the includes of one law lead to another.
fn leads_to(
    read: &BTreeMap<Jurisdiction, (String, load::ReadLaw)>,
    from: &Jurisdiction,
    to: &Jurisdiction,
) -> bool {
    let mut seen = vec![from];
    let mut next = 0;
    while let Some(at) = seen.get(next).copied() {
        for (include, _) in read.get(at).into_iter().flat_map(|(_, law)| &law.includes) {
            if include == to {
                return true;
            }
            if !seen.contains(&include) {
                seen.push(include);
            }
        }
        next += 1;
    }
    false
}
