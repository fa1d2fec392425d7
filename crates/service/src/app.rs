//! The shared state of the handlers.

use std::ops::Deref;
use std::sync::{Arc, OnceLock};
use std::time::Duration;

use combclear_domain::basics::spelling::nearest_name;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Hash;
use combclear_domain::questions::options::Span;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, Instant};
use combclear_papers::Typesetter;
use combclear_store::{Holdings, RecordError, Recorded};
use combclear_wording::reports::{asked, rules};
use combclear_wording::{Label, http};
use tokio_util::task::TaskTracker;
use tracing::Instrument;

use crate::access::{Door, Rate};
use crate::body::{Room, held};
use crate::kept::KeptAnswers;
use crate::language::words;
use crate::metrics::Metrics;
use crate::origin::Origin;
use crate::problem::{Problem, ProblemKind, label};
use crate::work::{Limits, Reports, apart, unless_given_up};

/// The only source of the time.
pub trait Clock: Send + Sync {
    /// The current instant, for `recorded_at`.
    fn now(&self) -> Instant;

    /// The civil date at the keeper's place, for questions without a day.
    fn today(&self) -> Day;
}

/// Holdings, leaflets, laws and clock. Cheap to clone: every layer around a route does it for every request.
#[derive(Clone)]
pub struct App {
    parts: Arc<Parts>,
    /// The state of the holding that the question at hand is about, if it was looked up already.
    at_hand: Option<Arc<Holding>>,
}

/// What all requests share. It is looked at through [`App`] only.
#[derive(Clone)]
pub struct Parts {
    pub(crate) holdings: Arc<Holdings>,
    pub(crate) leaflets: Arc<Leaflets>,
    pub(crate) laws: Arc<Laws>,
    pub(crate) clock: Arc<dyn Clock>,
    pub(crate) typesetter: Option<Arc<dyn Typesetter>>,
    /// Appends in progress: they complete even if their client is gone, and before the service ends.
    pub(crate) appends: TaskTracker,
    pub(crate) reports: Reports,
    pub(crate) room: Room,
    pub(crate) metrics: Arc<Metrics>,
    /// How long a client may fall silent in the middle of a body.
    pub(crate) silence: Duration,
    /// Who is let in.
    pub(crate) door: Door,
    /// Names of this machine, besides the loopback ones.
    pub(crate) names: Vec<String>,
    /// The pages elsewhere that may call this service from a browser.
    pub(crate) origins: Vec<Origin>,
    rules: Arc<OnceLock<Hash>>,
    pub(crate) kept: Arc<KeptAnswers>,
}

impl Deref for App {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        &self.parts
    }
}

impl App {
    /// Creates the state, without a typesetter.
    #[must_use]
    pub fn new(
        holdings: Arc<Holdings>,
        leaflets: Arc<Leaflets>,
        laws: Arc<Laws>,
        clock: Arc<dyn Clock>,
    ) -> App {
        let limits = Limits::default();
        let metrics = Arc::new(Metrics::new());
        let counted = Arc::clone(&metrics);
        holdings.tell_of_commits(move |entries| counted.committed(entries));
        let parts = Parts {
            holdings,
            leaflets,
            laws,
            clock,
            typesetter: None,
            appends: TaskTracker::new(),
            reports: Reports::within(limits),
            room: Room::within(limits),
            metrics,
            silence: limits.silence,
            door: Door::Open,
            names: Vec::new(),
            origins: Vec::new(),
            rules: Arc::default(),
            kept: Arc::new(KeptAnswers::within(limits)),
        };
        App { parts: Arc::new(parts), at_hand: None }
    }

    fn with(mut self, change: impl FnOnce(&mut Parts)) -> App {
        change(Arc::make_mut(&mut self.parts));
        self
    }

    /// Lets pages of these origins call the service from a browser. Without any, only its own pages may.
    #[must_use]
    pub fn open_to(self, origins: Vec<Origin>) -> App {
        self.with(|app| app.origins = origins)
    }

    /// Asks everybody for a key, and lets each make so many requests.
    #[must_use]
    pub fn asking_for_keys(self, rate: Rate) -> App {
        self.with(|app| app.door = Door::with_keys(rate))
    }

    /// Answers to these host names too, without a port.
    #[must_use]
    pub fn named(self, names: Vec<String>) -> App {
        self.with(|app| app.names = names)
    }

    /// Lets requests use up this much together.
    #[must_use]
    pub fn within(self, limits: Limits) -> App {
        self.with(|app| {
            app.reports = Reports::within(limits);
            app.room = Room::within(limits);
            app.kept = Arc::new(KeptAnswers::within(limits));
            app.silence = limits.silence;
        })
    }

    /// Offers PDF through this typesetter. Without one there is no PDF.
    #[must_use]
    pub fn typeset_by(self, typesetter: Arc<dyn Typesetter>) -> App {
        self.with(|app| app.typesetter = Some(typesetter))
    }

    /// Answers from this state of a holding, if there is one at hand.
    pub(crate) fn about(self, at_hand: Option<Arc<Holding>>) -> App {
        App { at_hand, ..self }
    }

    /// The day asked about; today if none is named.
    pub(crate) fn day(&self, on: Option<Day>) -> Day {
        on.unwrap_or_else(|| self.clock.today())
    }

    /// The days asked about.
    pub(crate) fn span(&self, from: Option<Day>, to: Option<Day>) -> Result<Span, Problem> {
        Ok(asked::span(words(), self.day(from), to)?)
    }

    /// Asks a question about one colony or one apiary of a holding at its current state. A holding without entries is a problem.
    /// Runs on a blocking thread, at once, and entries may be added meanwhile.
    pub(crate) async fn ask<T: Send + 'static>(
        &self,
        holding: &HoldingName,
        question: impl FnOnce(&Holding, &App) -> T + Send + 'static,
    ) -> Result<T, Problem> {
        let snapshot = self.recorded(holding).await?;
        let app = self.clone();
        apart(move || question(&snapshot, &app)).await
    }

    /// Asks a question about a whole holding, which waits for a place among the reports.
    pub(crate) async fn report<T: Send + 'static>(
        &self,
        holding: &HoldingName,
        question: impl FnOnce(&Holding, &App) -> T + Send + 'static,
    ) -> Result<T, Problem> {
        let (app, holding) = (self.clone(), holding.clone());
        let work = async move {
            let snapshot = app.recorded(&holding).await?;
            unless_given_up().await;
            Ok(question(&snapshot, &app))
        };
        self.reports.work_out(work).await
    }

    /// The holding at its current state. A holding without entries is a problem.
    pub(crate) async fn recorded(&self, holding: &HoldingName) -> Result<Arc<Holding>, Problem> {
        if let Some(at_hand) = self.at_hand.as_ref().filter(|at_hand| at_hand.name() == holding) {
            return Ok(Arc::clone(at_hand));
        }
        match self.holdings.snapshot(holding).await? {
            Some(holding) => Ok(holding),
            None => Err(self.unknown_holding(holding).await?),
        }
    }

    /// The problem for a holding without entries, with the nearest name of one that has some.
    pub(crate) async fn unknown_holding(&self, holding: &HoldingName) -> Result<Problem, Problem> {
        if self.door.asks_for_keys() {
            // Whoever asks may not know the names of others.
            return Ok(App::no_holding(holding, None));
        }
        let known = self.holdings.journal().holdings().await?;
        let near: Option<HoldingName> = nearest_name(holding.as_str(), known.iter().map(HoldingName::as_str));
        Ok(App::no_holding(holding, near.as_ref()))
    }

    /// What tells the leaflets and laws at hand from others.
    pub(crate) fn rules(&self) -> &Hash {
        self.rules.get_or_init(|| rules(&self.leaflets, &self.laws))
    }

    /// Runs an append in a task of its own, so that a client that hangs up does not stop it half-way.
    pub(crate) async fn append(
        &self,
        work: impl Future<Output = Result<Vec<Recorded>, RecordError>> + Send + 'static,
    ) -> Result<Result<Vec<Recorded>, RecordError>, Problem> {
        let room = held();
        let asks_for_keys = self.door.asks_for_keys();
        let work = async move {
            let _room = room;
            work.await.map_err(|error| match error {
                RecordError::NoHolding { holding, near } => {
                    RecordError::NoHolding { holding, near: near.filter(|_| !asks_for_keys) }
                }
                error => error,
            })
        };
        self.appends.spawn(work.in_current_span()).await.map_err(|failed| {
            tracing::error!(%failed, "an append did not come to its end");
            Problem::internal()
        })
    }

    /// The problem for a holding without entries.
    pub(crate) fn no_holding(holding: &HoldingName, near: Option<&HoldingName>) -> Problem {
        let problem = Problem::new(ProblemKind::UnknownHolding, http::no_holding(words(), holding));
        problem.at_unknown("holding", near.map(HoldingName::as_str), label(Label::HttpNoHoldingHelp))
    }
}
