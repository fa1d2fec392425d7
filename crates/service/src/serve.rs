//! Listening, and at which addresses.

use std::future::Future;
use std::net::SocketAddr;

use tokio::net::TcpListener;

use crate::app::App;
use crate::router::router;

/// An address at which the journals would be open to others.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{address} is no loopback address")]
pub struct NotLoopback {
    /// The address.
    pub address: SocketAddr,
}

/// Lets only addresses pass that nobody but this machine can reach, since there are no keys.
///
/// # Errors
/// Any other address.
pub fn check_address(address: SocketAddr) -> Result<(), NotLoopback> {
    // An IPv4 address may come in the clothes of an IPv6 one.
    if address.ip().to_canonical().is_loopback() { Ok(()) } else { Err(NotLoopback { address }) }
}

/// Answers requests until `shutdown` comes, then finishes those that have begun, and every append.
///
/// The caller checks the address with [`check_address`] before it listens.
///
/// # Errors
/// The listener fails.
pub async fn serve(
    listener: TcpListener,
    app: App,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> std::io::Result<()> {
    let appends = app.appends.clone();
    let served = axum::serve(listener, router(app)).with_graceful_shutdown(shutdown).await;
    // An append whose client has gone away is under way all the same.
    appends.close();
    appends.wait().await;
    served
}
