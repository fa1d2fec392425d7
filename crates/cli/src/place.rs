//! Opening the journal that the command line names.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use combclear_domain::basics::diagnostic::nearest;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_store::{Holdings, Journal, StoreError};

use crate::args::Place;
use crate::failure::Failure;

/// Works on the journals at the address of the command line, which is made if it is missing, and lets go of them
/// properly, however the work ends.
pub(crate) async fn with_holdings<T>(
    place: &Place,
    work: impl AsyncFnOnce(&Arc<Holdings>) -> Result<T, Failure>,
) -> Result<T, Failure> {
    let holdings = Arc::new(Holdings::new(combclear_store::open(&place.db).await?));
    let done = work(&holdings).await;
    holdings.journal().close().await;
    done
}

/// Works on the journal of the holding that is meant at the address, which must be there.
pub(crate) async fn with_holding<T>(
    place: &Place,
    work: impl AsyncFnOnce(&Holdings, HoldingName) -> Result<T, Failure>,
) -> Result<T, Failure> {
    let holdings = Holdings::new(open_existing(place).await?);
    let done = match meant(place, holdings.journal().as_ref()).await {
        Ok(holding) => work(&holdings, holding).await,
        Err(failure) => Err(failure),
    };
    holdings.journal().close().await;
    done
}

/// Asks a question of the holding that is meant at the address.
pub(crate) async fn ask<T>(place: &Place, question: impl FnOnce(&Holding) -> T) -> Result<T, Failure> {
    with_holding(place, async |holdings, name| read(holdings, &name, question).await).await
}

/// Asks a question of a holding.
pub(crate) async fn read<T>(
    holdings: &Holdings,
    name: &HoldingName,
    question: impl FnOnce(&Holding) -> T,
) -> Result<T, Failure> {
    let answer = holdings.read(name, question).await?;
    answer.ok_or_else(|| Failure::new("the journal is empty", "take a journal in first"))
}

/// The holding that the command line means.
async fn meant(place: &Place, journal: &dyn Journal) -> Result<HoldingName, Failure> {
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
    Ok(holding)
}

/// A question leaves no empty database behind where its address was mistyped.
async fn open_existing(place: &Place) -> Result<Arc<dyn Journal>, Failure> {
    // An address with `?` says itself how it is to be opened; one without scheme is refused as it was written.
    let only_if_there = place.db.starts_with("sqlite:") && !place.db.contains('?');
    let address = if only_if_there { format!("{}?mode=rw", place.db) } else { place.db.clone() };
    combclear_store::open(&address).await.map_err(|error| match error {
        StoreError::CannotOpen { place, .. } if is_new(Path::new(&place)) => {
            let help = "name the right one with --db, or take a journal in first: combclear import FILE";
            Failure::new(format!("there is no database at `{place}` yet"), help)
        }
        error => error.into(),
    })
}

/// Whether nothing is there, in a folder that is.
fn is_new(file: &Path) -> bool {
    let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty());
    !file.exists() && folder.is_none_or(Path::is_dir)
}

/// What the law asks, as it is built in.
pub(crate) fn laws() -> Result<&'static Laws, Failure> {
    combclear_leaflets::laws().map_err(|faults| {
        Failure::new(format!("the built-in law does not load\n{faults}"), "this program is broken")
    })
}

/// The built-in leaflets, and those of the folder that the command line names.
pub(crate) fn leaflets(place: &Place) -> Result<Leaflets, Failure> {
    let built_in = combclear_leaflets::builtin().map_err(|faults| {
        Failure::new(format!("the built-in leaflets do not load\n{faults}"), "this program is broken")
    })?;
    let Some(folder) = &place.leaflets else { return Ok(built_in.clone()) };
    let files = files_below(folder).map_err(|error| {
        let message = format!("cannot read the leaflets in `{}`: {error}", folder.display());
        Failure::new(message, "name a folder that holds folders such as gb, with leaflets in them")
    })?;
    let own = built_in.with_own(files.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    own.map_err(|faults| {
        let count = faults.iter().count();
        let noun = if count == 1 { "fault" } else { "faults" };
        let message = format!("{count} {noun} in the leaflets of `{}`\n{faults}", folder.display());
        Failure::new(message, "mend these files; none of the folder is used until then")
    })
}

/// The leaflet files of a folder in order: its own folders are jurisdictions.
fn files_below(folder: &Path) -> std::io::Result<Vec<(String, String)>> {
    let mut files = Vec::new();
    for jurisdiction in sorted(folder)?.iter().filter(|path| path.is_dir()) {
        for file in
            sorted(jurisdiction)?.iter().filter(|path| path.extension().is_some_and(|end| end == "toml"))
        {
            let name = file.strip_prefix(folder).unwrap_or(file).to_string_lossy().replace('\\', "/");
            files.push((name, std::fs::read_to_string(file)?));
        }
    }
    Ok(files)
}

fn sorted(folder: &Path) -> std::io::Result<Vec<PathBuf>> {
    let mut paths: Vec<PathBuf> =
        std::fs::read_dir(folder)?.map(|entry| Ok(entry?.path())).collect::<std::io::Result<_>>()?;
    paths.sort();
    Ok(paths)
}
