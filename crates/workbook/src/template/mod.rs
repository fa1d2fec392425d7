//! An empty sheet, with the choices of a holding.

mod xlsx;

use combclear_domain::Day;
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::words::{ColonyName, HoldingName, LotName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Kind;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_papers::flat::guarded;
use combclear_wording::{Label, Words, forms};

use crate::columns::columns;

pub use xlsx::xlsx;

/// A sheet that could not be written.
#[derive(Debug, thiserror::Error)]
#[error("the sheet could not be written: {0}")]
pub struct NotWritten(String);

/// What a sheet offers to choose from.
#[derive(Debug, Clone)]
pub struct Choices {
    /// The day on which it is made.
    pub on: Day,
    /// The holding that it is for, if it is known yet.
    pub holding: Option<HoldingName>,
    /// Its apiaries.
    pub apiaries: Vec<String>,
    /// The colonies that are alive.
    pub colonies: Vec<String>,
    /// Its medicines.
    pub medicines: Vec<String>,
    /// The lots of which something is left, or more is gone than there was.
    pub lots: Vec<String>,
    /// The leaflets of its country; of all countries if that is not on record.
    pub leaflets: Vec<String>,
    /// The countries that have leaflets.
    pub countries: Vec<String>,
}

impl Choices {
    /// The choices of a holding on a day.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, on: Day) -> Choices {
        let alive = |colony: &&ColonyName| holding.life(colony).lasts(on);
        let in_stock = |lot: &&LotName| holding.balance(lot).may_be_left();
        let country = holding.jurisdiction(on);
        let of_country =
            leaflets.iter().filter(|leaflet| country.is_none_or(|known| leaflet.jurisdiction == *known));
        let mut named: Vec<String> = of_country.map(|leaflet| leaflet.id.to_string()).collect();
        named.sort();
        named.dedup();
        Choices {
            holding: Some(holding.name().clone()),
            apiaries: in_order(holding.apiaries()),
            colonies: in_order(holding.colonies().filter(alive)),
            medicines: in_order(holding.medicines()),
            lots: in_order(holding.lots().filter(in_stock)),
            leaflets: named,
            ..Choices::of_nobody(None, leaflets, on)
        }
    }

    /// The choices of a holding that is not on record yet.
    #[must_use]
    pub fn of_nobody(holding: Option<HoldingName>, leaflets: &Leaflets, on: Day) -> Choices {
        let sorted = |mut texts: Vec<String>| {
            texts.sort();
            texts.dedup();
            texts
        };
        Choices {
            on,
            holding,
            apiaries: Vec::new(),
            colonies: Vec::new(),
            medicines: Vec::new(),
            lots: Vec::new(),
            leaflets: sorted(leaflets.iter().map(|leaflet| leaflet.id.to_string()).collect()),
            countries: sorted(leaflets.iter().map(|leaflet| leaflet.jurisdiction.to_string()).collect()),
        }
    }
}

/// Names in the order in which people count.
fn in_order<N: ToString>(names: impl Iterator<Item = N>) -> Vec<String> {
    let mut names: Vec<String> = names.map(|name| name.to_string()).collect();
    sort_naturally(&mut names, |name| name);
    names
}

/// An empty sheet for one kind of entry as CSV: the headings, and the row of hints, which names the kind.
///
/// # Errors
/// None is known, since it is written to memory.
pub fn csv(words: &Words, kind: Kind) -> Result<Vec<u8>, NotWritten> {
    let failed = |error: &dyn std::fmt::Display| NotWritten(error.to_string());
    let mut out = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let columns = columns(words, kind);
    let headings = columns.iter().map(|column| column.heading(words));
    let headings = std::iter::once(words.label(Label::SheetKind).to_owned()).chain(headings);
    out.write_record(headings).map_err(|error| failed(&error))?;
    let hints = columns.iter().map(|column| guarded(&column.hint));
    let hints = std::iter::once(forms::tab(words, kind).to_owned()).chain(hints);
    out.write_record(hints).map_err(|error| failed(&error))?;
    out.into_inner().map_err(|error| failed(&error))
}
