//! The legal register, on cases kept as data and against its journal.
//!
//! Each file of `cases/` begins with a setup that its cases share. A case adds entries in the wire format of the journal
//! (ids are short words here), asks for the register of a time, and gives its rows as lines.

use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::register::{Period, Register};
use combclear_testkit::cases::ask_all;
use combclear_testkit::entries::day;
use serde::Deserialize;

mod changed;
mod elapsed;
mod gaps;
mod laws;
mod lines;
mod required;

use crate::supering::leaflets;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Ask {
    from: String,
    to: String,
    as_of: String,
    #[serde(default)]
    acquisitions: Option<Vec<String>>,
    #[serde(default)]
    vet_lots: Option<Vec<String>>,
    #[serde(default)]
    prescriptions: Option<Vec<String>>,
    #[serde(default)]
    administrations: Option<Vec<String>>,
    /// The fate of the administrations, one line each.
    #[serde(default)]
    courses: Option<Vec<String>>,
    #[serde(default)]
    removals: Option<Vec<String>>,
    #[serde(default)]
    disposals: Option<Vec<String>>,
    #[serde(default)]
    corrections: Option<Vec<String>>,
    #[serde(default)]
    totals: Option<Vec<String>>,
    /// Late rows, as `kind day days`.
    #[serde(default)]
    late: Option<Vec<String>>,
    #[serde(default)]
    keepers: Option<Vec<String>>,
}

#[test]
fn every_case_has_its_rows() {
    let called = |ask: &Ask| format!("{} to {}", ask.from, ask.to);
    ask_all("tests/register/cases", called, |holding, ask| {
        let (count, faults) = faults(holding, ask);
        assert!(count > 0, "{}: a question without an expected answer", called(ask));
        faults
    });
}

/// How many tables were compared, and those that differ.
fn faults(holding: &Holding, ask: &Ask) -> (usize, Vec<String>) {
    let report = register(holding, &ask.from, &ask.to, &ask.as_of);
    let tables = [
        ("acquisitions", &ask.acquisitions, lines::acquisitions(&report)),
        ("vet_lots", &ask.vet_lots, lines::vet_lots(&report)),
        ("prescriptions", &ask.prescriptions, lines::prescriptions(&report)),
        ("administrations", &ask.administrations, lines::administrations(&report)),
        ("courses", &ask.courses, lines::courses(&report)),
        ("removals", &ask.removals, lines::removals(&report)),
        ("disposals", &ask.disposals, lines::disposals(&report)),
        ("corrections", &ask.corrections, lines::corrections(&report)),
        ("totals", &ask.totals, lines::totals(&report)),
        ("late", &ask.late, lines::late(&report)),
        ("keepers", &ask.keepers, lines::keepers(&report)),
    ];
    let asked = tables.iter().filter(|(_, wanted, _)| wanted.is_some()).count();
    let differ = tables.into_iter().filter_map(|(name, wanted, got)| {
        let wanted = wanted.as_ref().filter(|wanted| **wanted != got)?;
        Some(format!("{name} from {} as of {}\n  wanted {wanted:#?}\n  got    {got:#?}", ask.from, ask.as_of))
    });
    (asked, differ.collect())
}

fn register(holding: &Holding, from: &str, to: &str, as_of: &str) -> Register {
    Register::of(holding, leaflets(), Period::new(day(from), day(to)).unwrap(), day(as_of))
}
