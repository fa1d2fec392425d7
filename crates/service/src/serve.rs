//! Listening, and the permitted addresses.

use std::future::Future;
use std::net::SocketAddr;
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;

use hyper_util::rt::{TokioExecutor, TokioIo, TokioTimer};
use hyper_util::server::conn::auto::Builder;
use hyper_util::server::graceful::GracefulShutdown;
use hyper_util::service::TowerToHyperService;
use tokio::net::TcpListener;
use tokio::sync::Semaphore;
use tokio_util::sync::CancellationToken;

use crate::app::App;
use crate::certificate::Certificate;
use crate::router::router;

/// An address that other machines could reach.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{address} is no loopback address")]
pub struct NotLoopback {
    /// The address.
    pub address: SocketAddr,
}

/// Tells loopback addresses, which only this machine can reach, from others.
///
/// # Errors
/// Any other address.
pub fn check_address(address: SocketAddr) -> Result<(), NotLoopback> {
    // The address may be IPv4-mapped IPv6.
    if address.ip().to_canonical().is_loopback() { Ok(()) } else { Err(NotLoopback { address }) }
}

/// What clients that take their time may use up.
#[derive(Debug, Clone, Copy)]
pub struct Patience {
    /// How long the head of a request may take to arrive, from the first byte or from the end of the request before it on the same
    /// connection.
    pub head: Duration,
    /// The most connections at a time. More wait until one ends.
    pub connections: usize,
}

impl Default for Patience {
    fn default() -> Patience {
        Patience { head: Duration::from_secs(15), connections: 512 }
    }
}

/// Serves requests until `shutdown`, then completes those in progress and every append.
///
/// With a certificate, connections are encrypted. The caller checks the address with [`check_address`] before it listens.
pub async fn serve(
    listener: TcpListener,
    certificate: Option<&Certificate>,
    app: App,
    patience: Patience,
    shutdown: impl Future<Output = ()> + Send + 'static,
) {
    let appends = app.appends.clone();
    let router = router(app);
    // Without encryption no browser speaks HTTP/2, and waiting for the word which of the two it is would have no end.
    let mut builder = Builder::new(TokioExecutor::new()).http1_only();
    builder.http1().timer(TokioTimer::new()).header_read_timeout(patience.head);
    let open = GracefulShutdown::new();
    let ending = CancellationToken::new();
    let room = Arc::new(Semaphore::new(patience.connections));
    let mut shutdown = pin!(shutdown);
    loop {
        let accepted = async {
            // It is never closed.
            let place = Arc::clone(&room).acquire_owned().await.ok();
            (listener.accept().await, place)
        };
        let (accepted, place) = tokio::select! {
            accepted = accepted => accepted,
            () = &mut shutdown => break,
        };
        let stream = match accepted {
            Ok((stream, _)) => stream,
            Err(error) => {
                // Such as no descriptor left: others are answered meanwhile.
                tracing::warn!(%error, "a connection could not be taken");
                tokio::time::sleep(PAUSE).await;
                continue;
            }
        };
        let service = TowerToHyperService::new(router.clone());
        let (builder, watcher, ending) = (builder.clone(), open.watcher(), ending.clone());
        let acceptor = certificate.map(|certificate| certificate.acceptor.clone());
        tokio::spawn(async move {
            let _place = place;
            // The server behind it does not begin to count before the first byte.
            let mut first = [0];
            let spoken = tokio::time::timeout(patience.head, stream.peek(&mut first));
            let has_spoken = tokio::select! {
                spoken = spoken => spoken.is_ok_and(|peeked| peeked.is_ok_and(|bytes| bytes > 0)),
                () = ending.cancelled() => false,
            };
            if !has_spoken {
                return;
            }
            let ended = match acceptor {
                None => {
                    let connection = builder.serve_connection_with_upgrades(TokioIo::new(stream), service);
                    watcher.watch(connection.into_owned()).await
                }
                Some(acceptor) => {
                    let agreed = tokio::time::timeout(patience.head, acceptor.accept(stream)).await;
                    let Ok(Ok(stream)) = agreed else {
                        tracing::debug!("a client did not come to an agreement on how to encrypt");
                        return;
                    };
                    let connection = builder.serve_connection_with_upgrades(TokioIo::new(stream), service);
                    watcher.watch(connection.into_owned()).await
                }
            };
            if let Err(error) = ended {
                tracing::debug!(%error, "a connection ended early");
            }
        });
    }
    ending.cancel();
    drop(listener);
    open.shutdown().await;
    // Appends whose clients have gone are completed too.
    appends.close();
    appends.wait().await;
}

/// Pause after a connection that could not be taken.
const PAUSE: Duration = Duration::from_millis(200);
