//! Cases as data, and their runner.
//!
//! Each file in a folder `cases/` begins with a setup shared by its cases. A case adds entries in the wire format of the
//! journal (with short words as ids) and asks questions of its own form.

use std::collections::BTreeMap;

use combclear_domain::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::rules::leaflet::Leaflets;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use crate::entries::holding;
use crate::files::{listing, root};

#[derive(Deserialize)]
#[serde(deny_unknown_fields, bound = "A: DeserializeOwned")]
struct CaseFile<A> {
    #[serde(default = "Vec::new")]
    setup: Vec<toml::Value>,
    #[serde(rename = "case")]
    cases: Vec<Case<A>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, bound = "A: DeserializeOwned")]
struct Case<A> {
    name: String,
    /// A published source, or "common practice, no source".
    source: Option<String>,
    difference: Option<String>,
    /// Skips the setup of the file.
    #[serde(default)]
    without_setup: bool,
    #[serde(default)]
    entries: Vec<toml::Value>,
    ask: Vec<A>,
}

/// Asks every question of every case below a folder of the workspace. `faults` answers one; `called` names it.
pub fn ask_all<A: DeserializeOwned>(
    folder: &str,
    called: impl Fn(&A) -> String,
    faults: impl Fn(&Holding, &A) -> Vec<String>,
) {
    let mut wrong = Vec::new();
    let mut asked = 0;
    for file in listing(root().join(folder)) {
        let text = std::fs::read_to_string(&file).unwrap();
        let cases: CaseFile<A> =
            toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        for case in &cases.cases {
            let setup = if case.without_setup { &[][..] } else { &cases.setup[..] };
            let holding = holding(setup.iter().chain(&case.entries))
                .unwrap_or_else(|refusal| panic!("{}: {}: {refusal}", file.display(), case.name));
            for ask in &case.ask {
                asked += 1;
                for fault in faults(&holding, ask) {
                    let name = file.file_name().unwrap().display();
                    wrong.push(format!("{name}: {}, {}: {fault}", case.name, called(ask)));
                }
            }
            assert!(case.source.as_deref() != Some(""), "{}: an empty source", case.name);
            let differs = case.difference.as_ref();
            assert!(differs.is_none() || case.source.is_some(), "{}: a difference from no source", case.name);
        }
    }
    assert!(asked > 0, "no case was found");
    assert!(wrong.is_empty(), "{} faults in {asked} questions:\n{}", wrong.len(), wrong.join("\n"));
}

/// The built-in leaflets, and those of folders that are invented for tests, each given with its jurisdiction.
pub fn leaflets_and(invented: &[(&str, &str)]) -> Leaflets {
    let built_in = ["ch", "de", "eu", "gb", "it", "pl", "us"];
    let built_in = built_in.map(|name| (format!("crates/leaflets/{name}"), name));
    let invented = invented.iter().map(|(folder, name)| ((*folder).to_owned(), *name));
    let mut files: BTreeMap<String, String> = BTreeMap::new();
    for (folder, jurisdiction) in built_in.into_iter().chain(invented) {
        for path in listing(root().join(folder)) {
            let name = format!("{jurisdiction}/{}", path.file_name().unwrap().to_string_lossy());
            files.insert(name, std::fs::read_to_string(&path).unwrap());
        }
    }
    let loaded = Leaflets::load(files.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    loaded.unwrap_or_else(|faults| {
        panic!("{}", faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))
    })
}

/// Compares expected and actual values.
#[derive(Default)]
pub struct Compare {
    pub faults: Vec<String>,
}

impl Compare {
    #[expect(clippy::needless_pass_by_value, reason = "what was got is made for the comparison")]
    pub fn one(&mut self, what: &str, wanted: Option<&String>, got: String) {
        if let Some(wanted) = wanted.filter(|wanted| **wanted != got) {
            self.faults.push(format!("{what}: wanted `{wanted}`, got `{got}`"));
        }
    }

    pub fn list(&mut self, what: &str, wanted: Option<&Vec<String>>, got: impl Iterator<Item = String>) {
        if let Some(wanted) = wanted {
            let got: Vec<String> = got.collect();
            self.one(what, Some(&wanted.join(", ")), got.join(", "));
        }
    }

    /// Each of these is a part of something that was got.
    pub fn all(&mut self, what: &str, parts: Option<&Vec<String>>, got: &[&String]) {
        for part in parts.into_iter().flatten() {
            self.part(what, Some(part), got);
        }
    }

    pub fn part(&mut self, what: &str, part: Option<&String>, got: &[&String]) {
        if let Some(part) = part.filter(|part| !got.iter().any(|got| got.contains(*part))) {
            self.faults.push(format!("{what}: wanted a part `{part}` in {got:?}"));
        }
    }
}

/// A day, or `-` where none is named.
pub fn day(day: Option<Day>) -> String {
    day.map_or("-".to_owned(), |day| day.to_string())
}

/// The word that stands for a value on the wire.
pub fn word(value: impl Serialize) -> String {
    serde_json::to_value(value).unwrap().as_str().unwrap().to_owned()
}
