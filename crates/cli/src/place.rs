//! Opens the journal named on the command line.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use combclear_domain::Faults;
use combclear_domain::basics::spelling::nearest;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Content;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_store::{Holdings, Journal, StoreError};
use combclear_wording::terminal::failures as say;
use combclear_wording::{Label, Words, diagnostics};

use crate::args::{Place, ReadBack};
use crate::clock;
use crate::commands::archive::whole;
use crate::commands::output::folder_of;
use crate::failure::{Failure, Said};

/// Runs `work` on the journals at the address, which is created if missing. The journals are closed properly, however the
/// work ends.
pub(crate) async fn with_holdings<T>(
    place: &Place,
    work: impl AsyncFnOnce(&Arc<Holdings>) -> Result<T, Failure>,
) -> Result<T, Failure> {
    let holdings = Arc::new(Holdings::new(combclear_store::open(place.db.whole()).await?));
    let done = work(&holdings).await;
    holdings.journal().close().await;
    done
}

/// The same at an address that must exist.
pub(crate) async fn with_holdings_there<T>(
    place: &Place,
    work: impl AsyncFnOnce(&Holdings) -> Result<T, Failure>,
) -> Result<T, Failure> {
    let holdings = Holdings::new(open_existing(place).await?);
    let done = work(&holdings).await;
    holdings.journal().close().await;
    done
}

/// Runs `work` on the holding named or implied. The address must exist.
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

/// Asks a question of the holding named or implied.
pub(crate) async fn ask<T>(place: &Place, question: impl FnOnce(&Holding) -> T) -> Result<T, Failure> {
    with_holding(place, async |holdings, name| read(holdings, &name, question).await).await
}

/// Asks a question of a holding.
pub(crate) async fn read<T>(
    holdings: &Holdings,
    name: &HoldingName,
    question: impl FnOnce(&Holding) -> T,
) -> Result<T, Failure> {
    let answer = read_if_any(holdings, name, question).await?;
    answer.ok_or_else(|| Failure::new(Label::JournalIsEmpty, Label::JournalTakeOneIn))
}

/// Asks a question of a holding, unless it has no entries.
pub(crate) async fn read_if_any<T>(
    holdings: &Holdings,
    name: &HoldingName,
    question: impl FnOnce(&Holding) -> T,
) -> Result<Option<T>, Failure> {
    let answer = holdings.read(name, |holding| {
        clock::doubt(holding);
        question(holding)
    });
    Ok(answer.await?)
}

/// Asks a question of a holding, with the entries of these archives read back in.
pub(crate) async fn read_with<T>(
    holdings: &Holdings,
    name: &HoldingName,
    archives: &ReadBack,
    question: impl FnOnce(&Holding) -> T,
) -> Result<T, Failure> {
    read_with_documents(holdings, name, archives, question).await.map(|(answer, _)| answer)
}

/// The same, with the documents of these archives, which lie in their files.
pub(crate) async fn read_with_documents<T>(
    holdings: &Holdings,
    name: &HoldingName,
    archives: &ReadBack,
    question: impl FnOnce(&Holding) -> T,
) -> Result<(T, Vec<Content>), Failure> {
    if archives.archives.is_empty() {
        return Ok((read(holdings, name, question).await?, Vec::new()));
    }
    let whole = whole(holdings, name, archives).await?;
    Ok((question(&whole.holding), whole.contents))
}

/// The holding named on the command line, or the only one.
async fn meant(place: &Place, journal: &dyn Journal) -> Result<HoldingName, Failure> {
    let words = Words::english();
    let known = journal.holdings().await?;
    let names = || known.iter().map(HoldingName::as_str);
    let listed = || names().collect::<Vec<_>>().join(", ");
    let holding = match (&place.holding, known.as_slice()) {
        (_, []) => {
            return Err(Failure::new(
                say::no_journal(words, &place.db.to_string()),
                Label::JournalImportFirst,
            ));
        }
        (Some(wanted), known) if known.contains(wanted) => wanted.clone(),
        (Some(wanted), _) => {
            let help = nearest(wanted.as_str(), names())
                .map_or_else(|| say::keeps(words, &listed()), |near| say::did_you_mean(words, near));
            return Err(Failure::new(say::no_journal_of(words, &place.db.to_string(), wanted), help));
        }
        (None, [only]) => only.clone(),
        (None, _) => {
            let help = say::say_which(words, &listed());
            return Err(Failure::new(say::several_journals(words, &place.db.to_string()), help));
        }
    };
    Ok(holding)
}

/// Opens without creating: a question must not leave an empty database at a mistyped address.
pub(crate) async fn open_existing(place: &Place) -> Result<Arc<dyn Journal>, Failure> {
    combclear_store::open_existing(place.db.whole()).await.map_err(|error| match error {
        StoreError::CannotOpen { place, .. } if is_new(Path::new(&place)) => {
            Failure::new(say::no_database(Words::english(), &place), Label::JournalNameTheDatabase)
        }
        error => error.into(),
    })
}

/// Whether the file does not exist but its folder does.
fn is_new(file: &Path) -> bool {
    !file.exists() && folder_of(file).is_dir()
}

/// The built-in laws.
pub(crate) fn laws() -> Result<&'static Laws, Failure> {
    combclear_leaflets::laws().map_err(|faults| {
        Failure::new(with_faults(&Label::RulesLawFaulty.said(), faults), Label::ProgramIsBroken)
    })
}

/// The built-in leaflets, and those of the folder on the command line.
pub(crate) fn leaflets(place: &Place) -> Result<Leaflets, Failure> {
    let built_in = combclear_leaflets::builtin().map_err(|faults| {
        Failure::new(with_faults(&Label::RulesLeafletsFaulty.said(), faults), Label::ProgramIsBroken)
    })?;
    let words = Words::english();
    let Some(folder) = &place.leaflets else { return Ok(built_in.clone()) };
    let files = files_below(folder).map_err(|error| {
        let (folder, why) = (folder.display().to_string(), error.to_string());
        Failure::new(say::cannot_read_leaflets(words, &folder, &why), Label::RulesNameAFolder)
    })?;
    let own = built_in.with_own(files.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    own.map_err(|faults| {
        let message = say::faults_in_leaflets(words, faults.iter().count(), &folder.display().to_string());
        Failure::new(with_faults(&message, &faults), Label::RulesMendFolder)
    })
}

fn with_faults(message: &str, faults: &Faults) -> String {
    format!("{message}\n{}", diagnostics::listed(Words::english(), faults))
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
