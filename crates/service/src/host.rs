//! The host names that the service answers to.
//!
//! Without keys the only protection is that other machines cannot connect. A foreign web page can get round that by pointing its own
//! name to the loopback address; its requests then carry that name in `Host`. Where others can connect, the names that are meant are
//! given when the service is started.

use axum::http::HeaderMap;
use axum::http::header::HOST;
use axum::http::uri::Authority;
use combclear_wording::http;

use crate::language::words;
use crate::problem::{Problem, ProblemKind};

/// Admits only requests whose `Host` is a name of this machine.
pub(crate) fn own_names_only(names: &[String], headers: &HeaderMap) -> Result<(), Problem> {
    let named = headers.get(HOST).map(|host| host.to_str().unwrap_or_default());
    match named {
        Some(host) if !is_own(host, names) => {
            Err(Problem::new(ProblemKind::ForeignHost, http::not_own_name(words(), host)))
        }
        _ => Ok(()),
    }
}

fn is_own(host: &str, names: &[String]) -> bool {
    let Ok(authority) = host.parse::<Authority>() else { return false };
    let name = authority.host().trim_start_matches('[').trim_end_matches(']');
    let address = name.parse::<std::net::IpAddr>();
    name.eq_ignore_ascii_case("localhost")
        || names.iter().any(|own| own.eq_ignore_ascii_case(name))
        || address.is_ok_and(|address| address.to_canonical().is_loopback())
}

#[cfg(test)]
mod tests {
    use super::is_own;

    #[test]
    fn only_names_of_this_machine_itself_are_its_own() {
        for own in ["localhost", "LOCALHOST:8420", "127.0.0.1", "127.9.9.9:80", "[::1]", "[::1]:8420"] {
            assert!(is_own(own, &[]), "{own}");
        }
        for foreign in
            ["example.org", "localhost.example.org", "127.0.0.1.example.org:80", "10.0.0.1", "[::2]", ""]
        {
            assert!(!is_own(foreign, &[]), "{foreign}");
        }
        let names = ["hives.example.org".to_owned(), "192.0.2.7".to_owned()];
        for own in ["hives.example.org", "Hives.example.org:8443", "192.0.2.7:8443", "localhost"] {
            assert!(is_own(own, &names), "{own}");
        }
        for foreign in ["example.org", "a.hives.example.org", "192.0.2.8"] {
            assert!(!is_own(foreign, &names), "{foreign}");
        }
    }
}
