//! The list of holdings, and the verification of their chains.

use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use combclear_domain::basics::words::{HoldingName, LotName, PrescriptionName};
use combclear_domain::journal::key::Role;
use combclear_domain::journal::{EntryId, Hash};
use combclear_store::{DocumentFault, Verified};
use combclear_wording::{keeping, unreadable};
use serde::Serialize;
use utoipa::ToSchema;

use crate::access::Caller;
use crate::app::App;
use crate::documents::StateOfContent;
use crate::extract::{HoldingPath, Nothing, Path, Query};
use crate::language::words;
use crate::problem::{Problem, Problems};

/// The holdings that have entries.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct HoldingList {
    /// In order of name.
    items: Vec<HoldingItem>,
}

/// A holding that has entries.
#[derive(Debug, Serialize, ToSchema)]
struct HoldingItem {
    /// Its name.
    holding: HoldingName,
    /// Number of entries in its journal.
    #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
    entries: u64,
    /// The hash of the last entry. Kept elsewhere, it proves later that nothing up to there was changed.
    head: Hash,
    /// What the holder of the key is to the holding. Absent where nobody is asked for a key.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, example = "reader")]
    role: Option<Role>,
}

/// List the holdings
///
/// Those that have entries, each with the number of entries and the hash of the last. A key for one holding shows that one only.
#[utoipa::path(
    get,
    path = "/holdings",
    tag = "journal",
    responses((status = 200, description = "The holdings.", body = HoldingList), Problems),
)]
pub(crate) async fn list_holdings(
    State(app): State<App>,
    caller: Caller,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Json<HoldingList>, Problem> {
    let journal = app.holdings.journal();
    let mut items = Vec::new();
    for holding in journal.holdings().await?.into_iter().filter(|holding| caller.may_know_of(holding)) {
        if let Some((entries, head)) = journal.tip(&holding).await? {
            items.push(HoldingItem { holding, entries, head, role: caller.role() });
        }
    }
    Ok(Json(HoldingList { items }))
}

/// The result of a walk along the chain of a journal.
#[derive(Debug, Serialize, ToSchema)]
#[serde(tag = "answer", rename_all = "snake_case")]
pub(crate) enum VerificationReport {
    /// Every entry is as recorded and in its place.
    Sound {
        /// Number of entries.
        #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
        entries: u64,
        /// The hash of the last.
        head: Hash,
    },
    /// Every entry is as recorded, but not every document is as attached.
    Lacking {
        /// Number of entries.
        #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
        entries: u64,
        /// The hash of the last.
        head: Hash,
        /// The missing or altered documents, in the order of their entries.
        documents: Vec<LackingDocument>,
    },
    /// An entry was changed, moved or removed after it was recorded.
    Broken {
        /// The place of the first entry that breaks the chain.
        #[schema(minimum = 0, maximum = 9_007_199_254_740_991i64)]
        seq: u64,
        /// Its id.
        id: EntryId,
        /// What is wrong with it.
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
    /// The prescription of which it is a copy.
    #[serde(skip_serializing_if = "Option::is_none")]
    prescription: Option<PrescriptionName>,
    /// Missing or altered.
    state: StateOfContent,
    /// How to fix it.
    help: &'static str,
}

impl LackingDocument {
    fn of(fault: DocumentFault) -> LackingDocument {
        let help = keeping::document_help(words(), fault.state);
        let DocumentFault { content, seq, id, lot, prescription, state } = fault;
        LackingDocument { content, seq, id, lot, prescription, state: state.into(), help }
    }
}

/// Verify the journal
///
/// Walks the whole chain and names the first entry that breaks it; then hashes every document and names those that are
/// missing or altered. A broken chain is an answer, not a problem. Only a number of entries and a head kept elsewhere can
/// show that the end was cut off.
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
    let (journal, holding) = (Arc::clone(app.holdings.journal()), path.holding.clone());
    let verify = async move { Ok(journal.verify(&holding, None).await?) };
    match app.reports.work_out(verify).await? {
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
            what: unreadable::misfit(words(), &broken.what),
        })),
        Verified::CheckpointMissed(missed) => {
            tracing::error!(%missed, "a checkpoint was missed that nobody gave");
            Err(Problem::internal())
        }
    }
}
