//! Opening the journal that the command line names.

use std::sync::Arc;

use combclear_domain::diagnostic::nearest;
use combclear_domain::leaflet::Leaflets;
use combclear_domain::words::HoldingName;
use combclear_store::{Journal, Register};

use crate::args::Place;
use crate::failure::Failure;

/// The database at the address of the command line.
pub(crate) async fn open(place: &Place) -> Result<Arc<dyn Journal>, Failure> {
    Ok(combclear_store::open(&place.db).await?)
}

/// The database, and the holding that is meant in it.
pub(crate) async fn open_holding(place: &Place) -> Result<(Register, HoldingName), Failure> {
    let journal = open(place).await?;
    let known = journal.holdings().await?;
    let names = || known.iter().map(HoldingName::as_str);
    let listed = || names().collect::<Vec<_>>().join(", ");
    let holding = match (&place.holding, known.as_slice()) {
        (_, []) => {
            let help = "take a journal in first: combclear import FILE";
            return Err(Failure::new(format!("`{}` keeps no journal yet", place.db), help));
        }
        (Some(wanted), known) if known.contains(wanted) => wanted.clone(),
        (Some(wanted), _) => {
            let help = nearest(wanted.as_str(), names())
                .map_or_else(|| format!("it keeps: {}", listed()), |near| format!("did you mean `{near}`?"));
            return Err(Failure::new(format!("`{}` keeps no journal of `{wanted}`", place.db), help));
        }
        (None, [only]) => only.clone(),
        (None, _) => {
            let help = format!("say which with --holding: {}", listed());
            return Err(Failure::new(format!("`{}` keeps the journals of several holdings", place.db), help));
        }
    };
    Ok((Register::new(journal), holding))
}

/// The built-in leaflets.
pub(crate) fn leaflets() -> Result<&'static Leaflets, Failure> {
    combclear_leaflets::builtin().map_err(|faults| {
        let all: Vec<String> = faults.iter().map(ToString::to_string).collect();
        Failure::new(format!("the built-in leaflets do not load\n{}", all.join("\n")), "this program is broken")
    })
}
