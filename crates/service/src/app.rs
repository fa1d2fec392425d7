//! What the handlers work with.

use std::sync::Arc;

use combclear_domain::basics::diagnostic::nearest;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, Instant};
use combclear_papers::Typesetter;
use combclear_store::Holdings;
use tokio::sync::Semaphore;
use tokio_util::task::TaskTracker;

use crate::problem::{Problem, ProblemKind};

/// Tells the time, so that nothing else has to ask the machine for it.
pub trait Clock: Send + Sync {
    /// The instant, for noting when an entry was recorded.
    fn now(&self) -> Instant;

    /// The civil date where the keeper is, for questions that name no day.
    fn today(&self) -> Day;
}

/// The register, the leaflets, the law and the clock. Cheap to clone.
#[derive(Clone)]
pub struct App {
    pub(crate) holdings: Arc<Holdings>,
    pub(crate) leaflets: Arc<Leaflets>,
    pub(crate) laws: Arc<Laws>,
    pub(crate) clock: Arc<dyn Clock>,
    pub(crate) typesetter: Option<Arc<dyn Typesetter>>,
    /// Appends under way: they end even if their client is gone, and before the service does.
    pub(crate) appends: TaskTracker,
    /// Whoever puts a pack together holds it: all its proofs are in memory at once, so there is one at a time.
    pub(crate) packing: Arc<Semaphore>,
}

impl App {
    /// Puts them together.
    #[must_use]
    pub fn new(
        holdings: Arc<Holdings>,
        leaflets: Arc<Leaflets>,
        laws: Arc<Laws>,
        clock: Arc<dyn Clock>,
    ) -> App {
        let packing = Arc::new(Semaphore::new(1));
        App { holdings, leaflets, laws, clock, typesetter: None, appends: TaskTracker::new(), packing }
    }

    /// Sets pages as PDF with this typesetter. Without one no PDF is offered.
    #[must_use]
    pub fn typeset_by(self, typesetter: Arc<dyn Typesetter>) -> App {
        App { typesetter: Some(typesetter), ..self }
    }

    /// The day asked about: today where none is named.
    pub(crate) fn day(&self, on: Option<Day>) -> Day {
        on.unwrap_or_else(|| self.clock.today())
    }

    /// Asks a question of a holding as it stands; a holding without entries is a problem. The work is done apart from what
    /// answers requests, and entries may be added meanwhile.
    pub(crate) async fn ask<T: Send + 'static>(
        &self,
        holding: &HoldingName,
        question: impl FnOnce(&Holding, &App) -> T + Send + 'static,
    ) -> Result<T, Problem> {
        let Some(snapshot) = self.holdings.snapshot(holding).await? else {
            return Err(self.unknown_holding(holding).await?);
        };
        let app = self.clone();
        apart(move || question(&snapshot, &app)).await
    }

    /// The problem with a holding that has no entries, with the nearest name that has some.
    pub(crate) async fn unknown_holding(&self, holding: &HoldingName) -> Result<Problem, Problem> {
        let known = self.holdings.journal().holdings().await?;
        let near = nearest(holding.as_str(), known.iter().map(HoldingName::as_str));
        let detail = format!("no entry is recorded under the holding `{holding}`");
        let help = near.map_or_else(
            || "GET /holdings lists those that have entries; the first entry makes a new one".to_owned(),
            |near| format!("did you mean `{near}`?"),
        );
        Ok(Problem::new(ProblemKind::UnknownHolding, detail).at_parameter("holding", help))
    }
}

/// Does work that takes the processor for long, apart from what answers requests.
pub(crate) async fn apart<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Problem> {
    tokio::task::spawn_blocking(work).await.map_err(|error| {
        tracing::error!(%error, "work for a request was broken off");
        Problem::internal()
    })
}
