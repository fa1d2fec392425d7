//! `combclear serve`: the HTTP API.

use std::io::ErrorKind;
use std::sync::Arc;

use combclear_domain::calendar::{Day, Instant};
use combclear_service::{App, Clock, check_address, serve};
use combclear_store::Register;
use tokio::net::TcpListener;
use tracing_subscriber::EnvFilter;

use super::print;
use crate::args::{Place, Serve};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &Serve) -> Result<Outcome, Failure> {
    check_address(ask.listen).map_err(|error| Failure::new(error.to_string(), error.help()))?;
    let leaflets = Arc::new(place::leaflets()?.clone());
    let register = Arc::new(Register::new(place::open(at).await?));
    let listener = TcpListener::bind(ask.listen).await.map_err(|error| cannot_listen(ask, &error))?;
    let address = listener.local_addr().unwrap_or(ask.listen);
    let filter = EnvFilter::try_from_default_env().unwrap_or_else(|_| EnvFilter::new("info"));
    tracing_subscriber::fmt().with_env_filter(filter).with_writer(std::io::stderr).init();
    print(&format!("Combclear answers at http://{address} (documented at http://{address}/docs); end it with Ctrl-C"))?;
    let app = App::new(register, leaflets, Arc::new(MachineClock));
    serve(listener, app, asked_to_end())
        .await
        .map_err(|error| Failure::new(format!("the server ended: {error}"), "start it again"))?;
    Ok(Outcome::Done)
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
    let message = match error.kind() {
        ErrorKind::AddrInUse => format!("{} is in use by another program", ask.listen),
        _ => format!("cannot listen at {}: {error}", ask.listen),
    };
    Failure::new(message, "choose another port, such as --listen 127.0.0.1:8421, or end the program that has it")
}

/// Ctrl-C, or being told to end by the system.
async fn asked_to_end() {
    let interrupted = tokio::signal::ctrl_c();
    #[cfg(unix)]
    let terminated = async {
        match tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) {
            Ok(mut signal) => {
                signal.recv().await;
            }
            Err(_) => std::future::pending().await,
        }
    };
    #[cfg(not(unix))]
    let terminated = std::future::pending::<()>();
    tokio::select! {
        _ = interrupted => {}
        () = terminated => {}
    }
}
