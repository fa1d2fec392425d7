//! Files that the program carries compressed: sent as they are to a client that takes that, and unpacked to others.

use std::borrow::Cow;
use std::io::Read;

use axum::http::header::{ACCEPT_ENCODING, CONTENT_ENCODING, VARY};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};
use flate2::read::GzDecoder;

use crate::accept::weight;
use crate::problem::Problem;
use crate::work::apart;

/// The answer with these bytes, which are compressed with gzip.
pub(crate) async fn unpacked_for(asked: &HeaderMap, packed: Cow<'static, [u8]>) -> Result<Response, Problem> {
    let vary = [(VARY, HeaderValue::from_static("accept-encoding"))];
    if takes_gzip(asked) {
        let encoding = [(CONTENT_ENCODING, HeaderValue::from_static("gzip"))];
        return Ok((vary, encoding, packed.into_owned()).into_response());
    }
    let unpacked = apart(move || {
        let mut bytes = Vec::new();
        GzDecoder::new(&*packed).read_to_end(&mut bytes).map(|_| bytes)
    });
    let bytes = unpacked.await?.map_err(|error| {
        tracing::error!(%error, "a file of this program cannot be unpacked");
        Problem::internal()
    })?;
    Ok((vary, bytes).into_response())
}

/// Whether a client takes gzip (RFC 9110, section 12.5.3). One that says nothing is sent plain bytes.
fn takes_gzip(asked: &HeaderMap) -> bool {
    let lines = asked.get_all(ACCEPT_ENCODING).iter().filter_map(|line| line.to_str().ok());
    let mut anything = false;
    for coding in lines.flat_map(|line| line.split(',')) {
        let mut parts = coding.split(';').map(str::trim);
        let name = parts.next().unwrap_or_default();
        let takes = weight(parts) > 0;
        if name.eq_ignore_ascii_case("gzip") || name.eq_ignore_ascii_case("x-gzip") {
            return takes;
        }
        anything |= name == "*" && takes;
    }
    anything
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gzip_is_sent_only_to_a_client_that_takes_it() {
        for (name, said, takes) in [
            ("nothing said", None, false),
            ("gzip", Some("gzip"), true),
            ("its old name", Some("x-gzip"), true),
            ("a browser", Some("gzip, deflate, br, zstd"), true),
            ("others only", Some("br, deflate"), false),
            ("anything", Some("*"), true),
            ("refused", Some("gzip;q=0"), false),
            ("refused among anything", Some("*, gzip;q=0"), false),
            ("anything refused", Some("*;q=0"), false),
            ("plain only", Some("identity"), false),
            ("letters of any size", Some("GZIP;q=0.5"), true),
        ] {
            let mut headers = HeaderMap::new();
            if let Some(said) = said {
                headers.insert(ACCEPT_ENCODING, said.parse().unwrap());
            }
            assert_eq!(takes_gzip(&headers), takes, "{name}");
        }
    }
}
