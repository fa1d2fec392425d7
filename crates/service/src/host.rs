//! The host names that the service answers to.
//!
//! There are no keys: the only protection is that other machines cannot connect. A foreign web page can get round that by
//! pointing its own name to the loopback address; its requests then carry that name in `Host`.

use axum::extract::Request;
use axum::http::header::HOST;
use axum::http::uri::Authority;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use combclear_wording::{Words, http};

use crate::problem::{Problem, ProblemKind};

/// Admits only requests whose `Host` is a name of this machine.
pub(crate) async fn own_names_only(request: Request, next: Next) -> Response {
    let named = request.headers().get(HOST).map(|host| host.to_str().unwrap_or_default());
    match named {
        Some(host) if !is_own(host) => {
            let detail = http::not_own_name(Words::english(), host);
            Problem::new(ProblemKind::ForeignHost, detail).into_response()
        }
        _ => next.run(request).await,
    }
}

fn is_own(host: &str) -> bool {
    let Ok(authority) = host.parse::<Authority>() else { return false };
    let name = authority.host().trim_start_matches('[').trim_end_matches(']');
    let address = name.parse::<std::net::IpAddr>();
    name.eq_ignore_ascii_case("localhost")
        || address.is_ok_and(|address| address.to_canonical().is_loopback())
}

#[cfg(test)]
mod tests {
    use super::is_own;

    #[test]
    fn only_names_of_this_machine_itself_are_its_own() {
        for own in ["localhost", "LOCALHOST:8420", "127.0.0.1", "127.9.9.9:80", "[::1]", "[::1]:8420"] {
            assert!(is_own(own), "{own}");
        }
        for foreign in
            ["example.org", "localhost.example.org", "127.0.0.1.example.org:80", "10.0.0.1", "[::2]", ""]
        {
            assert!(!is_own(foreign), "{foreign}");
        }
    }
}
