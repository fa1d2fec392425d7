//! Which holdings there are, and whether their chains are sound.

use axum::Json;
use axum::extract::State;
use combclear_domain::basics::words::{HoldingName, LotName, PrescriptionName};
use combclear_domain::journal::{EntryId, Hash};
use combclear_store::{DocumentFault, Verified};
use combclear_wording::{Words, keeping, unreadable};
use serde::Serialize;
use utoipa::ToSchema;

use crate::app::App;
use crate::documents::StateOfContent;
use crate::extract::{HoldingPath, Nothing, Path, Query};
use crate::problem::{Problem, Problems};

/// The holdings that have entries.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct HoldingList {
    /// By name.
    items: Vec<HoldingItem>,
}

/// A holding that has entries.
#[derive(Debug, Serialize, ToSchema)]
struct HoldingItem {
    /// Its name.
    holding: HoldingName,
    /// How many entries its journal has.
    #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
    entries: u64,
    /// The hash of the last of them. Kept elsewhere, it proves later that nothing up to here was changed.
    head: Hash,
}

/// List the holdings
///
/// Those that have entries, each with the number of them and the hash of the last.
#[utoipa::path(
    get,
    path = "/holdings",
    tag = "journal",
    responses((status = 200, description = "The holdings.", body = HoldingList), Problems),
)]
pub(crate) async fn list_holdings(
    State(app): State<App>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Json<HoldingList>, Problem> {
    let journal = app.holdings.journal();
    let mut items = Vec::new();
    for holding in journal.holdings().await? {
        if let Some((entries, head)) = journal.tip(&holding).await? {
            items.push(HoldingItem { holding, entries, head });
        }
    }
    Ok(Json(HoldingList { items }))
}

/// What a walk along the whole chain of a journal found.
#[derive(Debug, Serialize, ToSchema)]
#[serde(tag = "answer", rename_all = "snake_case")]
pub(crate) enum VerificationReport {
    /// Every entry is what was recorded, in its place.
    Sound {
        /// How many entries.
        #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
        entries: u64,
        /// The hash of the last.
        head: Hash,
    },
    /// Every entry is what was recorded, but not every document is what was attached.
    Lacking {
        /// How many entries.
        #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
        entries: u64,
        /// The hash of the last.
        head: Hash,
        /// The documents that are missing or altered, in the order of their entries.
        documents: Vec<LackingDocument>,
    },
    /// An entry was changed, moved or taken away after it was recorded.
    Broken {
        /// The place of the first entry that does not fit.
        #[schema(minimum = 0, maximum = 9_007_199_254_740_991i64)]
        seq: u64,
        /// Its id.
        id: EntryId,
        /// What does not fit.
        what: String,
    },
}

/// A document whose content is missing or altered.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct LackingDocument {
    /// The hash of its content.
    content: Hash,
    /// The place of the entry that attaches it.
    #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
    seq: u64,
    /// The id of that entry.
    id: EntryId,
    /// The lot whose purchase it proves.
    #[serde(skip_serializing_if = "Option::is_none")]
    lot: Option<LotName>,
    /// The prescription that it is a copy of.
    #[serde(skip_serializing_if = "Option::is_none")]
    prescription: Option<PrescriptionName>,
    /// Missing or altered.
    state: StateOfContent,
    /// How to mend it.
    help: &'static str,
}

impl LackingDocument {
    fn of(fault: DocumentFault) -> LackingDocument {
        let help = keeping::document_help(Words::english(), fault.state);
        let DocumentFault { content, seq, id, lot, prescription, state } = fault;
        LackingDocument { content, seq, id, lot, prescription, state: state.into(), help }
    }
}

/// Verify the journal
///
/// Walks the whole chain and names the first entry that does not fit; then works out the hash of every document anew and
/// names those that are missing or altered. A broken chain is an answer, not a problem. That
/// the end was cut off shows only against a number of entries and a head kept elsewhere.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/verification",
    tag = "journal",
    params(HoldingPath),
    responses((status = 200, description = "What was found.", body = VerificationReport), Problems),
)]
pub(crate) async fn verify_holding(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Json<VerificationReport>, Problem> {
    match app.holdings.journal().verify(&path.holding, None).await? {
        Verified::Sound { entries, head: Some(head) } => {
            Ok(Json(VerificationReport::Sound { entries, head }))
        }
        Verified::Lacking { entries, head: Some(head), documents } => {
            let documents = documents.into_iter().map(LackingDocument::of).collect();
            Ok(Json(VerificationReport::Lacking { entries, head, documents }))
        }
        Verified::Sound { head: None, .. } | Verified::Lacking { head: None, .. } => {
            Err(app.unknown_holding(&path.holding).await?)
        }
        Verified::Broken(broken) => Ok(Json(VerificationReport::Broken {
            seq: broken.seq,
            id: broken.id,
            what: unreadable::misfit(Words::english(), &broken.what),
        })),
        Verified::CheckpointMissed(missed) => {
            tracing::error!(%missed, "a checkpoint was missed that nobody gave");
            Err(Problem::internal())
        }
    }
}
