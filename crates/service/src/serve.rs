//! Listening, and the permitted addresses.

use std::future::Future;
use std::net::SocketAddr;

use tokio::net::TcpListener;

use crate::app::App;
use crate::router::router;

/// An address that other machines could reach.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{address} is no loopback address")]
pub struct NotLoopback {
    /// The address.
    pub address: SocketAddr,
}

/// Admits only loopback addresses, since there are no keys.
///
/// # Errors
/// Any other address.
pub fn check_address(address: SocketAddr) -> Result<(), NotLoopback> {
    // The address may be IPv4-mapped IPv6.
    if address.ip().to_canonical().is_loopback() { Ok(()) } else { Err(NotLoopback { address }) }
}

/// Serves requests until `shutdown`, then completes those in progress and every append.
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
    // Appends whose clients have gone are completed too.
    appends.close();
    appends.wait().await;
    served
}
