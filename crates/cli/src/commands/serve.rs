//! `combclear serve`: the HTTP API.

use std::io::{ErrorKind, IsTerminal};
use std::sync::Arc;
use std::time::Duration;

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_service::{App, Certificate, Clock, Patience, Rate, check_address, serve};
use combclear_wording::terminal::failures as say;
use combclear_wording::{Label, Words};
use tokio::net::TcpListener;
#[cfg(unix)]
use tokio::signal::unix::{Signal, SignalKind, signal};
use tokio::sync::oneshot;
use tracing_subscriber::EnvFilter;

use super::print_as_is;
use crate::args::{Place, Serve};
use crate::failure::{Failure, why};
use crate::{Outcome, clock, place, typesetter};

pub(crate) async fn run(at: &Place, ask: &Serve) -> Result<Outcome, Failure> {
    let words = Words::english();
    let certificate = certificate(ask)?;
    let reached_by_others = ask.behind_proxy || check_address(ask.listen).is_err();
    if reached_by_others && !ask.behind_proxy && certificate.is_none() {
        let message = say::open_to_others(words, &ask.listen.to_string());
        return Err(Failure::new(message, say::this_machine_only(words, ask.listen.port())));
    }
    if reached_by_others && ask.name.is_empty() {
        return Err(Failure::new(Label::ServeNoName, Label::ServeNoNameHelp));
    }
    let asks_for_keys = reached_by_others || certificate.is_some() || ask.keys;
    let leaflets = Arc::new(place::leaflets(at)?);
    let laws = Arc::new(place::laws()?.clone());
    place::with_holdings(at, async |holdings| {
        if asks_for_keys && !holdings.journal().keys().await?.iter().any(|key| key.holds_on(clock::today())) {
            return Err(Failure::new(Label::ServeNoKeys, Label::ServeNoKeysHelp));
        }
        let listener = TcpListener::bind(ask.listen).await.map_err(|error| cannot_listen(ask, &error))?;
        let address = listener.local_addr().unwrap_or(ask.listen);
        // Before anybody is told that it answers, so that nobody can end it without its finishing.
        let ending = Ending::listen().map_err(|error| {
            Failure::new(say::no_signals(words, &error.to_string()), Label::ServeStartAgain)
        })?;
        let filter = EnvFilter::try_from_default_env().unwrap_or_else(|_| EnvFilter::new("info"));
        let colours = std::io::stderr().is_terminal();
        tracing_subscriber::fmt()
            .with_env_filter(filter)
            .with_ansi(colours)
            .with_writer(std::io::stderr)
            .init();
        let address = address.to_string();
        print_as_is(&match (&certificate, asks_for_keys) {
            (Some(_), _) => say::serves_encrypted(words, &address),
            (None, true) => say::serves_keyed(words, &address),
            (None, false) => say::serves(words, &address),
        })?;
        let mut app = App::new(Arc::clone(holdings), leaflets, laws, Arc::new(MachineClock))
            .open_to(ask.allow_origin.clone())
            .named(ask.name.clone());
        if asks_for_keys {
            app = app.asking_for_keys(Rate::default());
        }
        if let Some(typesetter) = typesetter::built_in() {
            app = app.typeset_by(typesetter);
        }
        let (tell, told) = oneshot::channel();
        let asked = async move {
            ending.asked().await;
            // The server may have ended by itself.
            let _ = tell.send(());
        };
        tokio::select! {
            () = serve(listener, certificate.as_ref(), app, Patience::default(), asked) => {}
            () = patience(told) => tracing::warn!("gave up requests that did not come to an end"),
        }
        Ok(Outcome::Done)
    })
    .await
}

/// The certificate to encrypt with, if there is one.
fn certificate(ask: &Serve) -> Result<Option<Certificate>, Failure> {
    let (Some(certificate), Some(key)) = (&ask.certificate, &ask.certificate_key) else { return Ok(None) };
    Certificate::read(certificate, key).map(Some).map_err(|bad| {
        Failure::new(say::bad_certificate(Words::english(), &bad.to_string()), Label::ServeBadCertificateHelp)
    })
}

/// How long requests in progress may take after the signal to end.
const PATIENCE: Duration = Duration::from_secs(10);

/// Ends some time after the signal: a client that never completes its request must not keep the server running.
async fn patience(told: oneshot::Receiver<()>) {
    match told.await {
        Ok(()) => tokio::time::sleep(PATIENCE).await,
        Err(_) => std::future::pending().await,
    }
}

struct MachineClock;

impl Clock for MachineClock {
    fn now(&self) -> Instant {
        clock::now()
    }

    fn today(&self) -> Day {
        clock::today()
    }
}

fn cannot_listen(ask: &Serve, error: &std::io::Error) -> Failure {
    let (words, address) = (Words::english(), ask.listen.to_string());
    let message = match error.kind() {
        ErrorKind::AddrInUse => say::in_use(words, &address),
        _ => say::cannot_listen(words, &address, &why(error)),
    };
    Failure::new(message, Label::ServeOtherPort)
}

/// Ctrl-C or the system's termination signal. Both are caught from the moment this is created.
struct Ending {
    #[cfg(unix)]
    interrupt: Signal,
    #[cfg(unix)]
    terminate: Signal,
}

impl Ending {
    #[cfg(unix)]
    fn listen() -> std::io::Result<Ending> {
        Ok(Ending {
            interrupt: signal(SignalKind::interrupt())?,
            terminate: signal(SignalKind::terminate())?,
        })
    }

    #[cfg(not(unix))]
    fn listen() -> std::io::Result<Ending> {
        Ok(Ending {})
    }

    #[cfg(unix)]
    async fn asked(mut self) {
        tokio::select! {
            _ = self.interrupt.recv() => {}
            _ = self.terminate.recv() => {}
        }
    }

    #[cfg(not(unix))]
    async fn asked(self) {
        if tokio::signal::ctrl_c().await.is_err() {
            std::future::pending::<()>().await;
        }
    }
}
