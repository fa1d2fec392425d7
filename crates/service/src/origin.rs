//! The pages elsewhere that may call the service from a browser.

use std::str::FromStr;

use axum::http::HeaderValue;
use axum::http::uri::Uri;

/// The origin of a page: scheme, host and port, as a browser sends them (RFC 6454), such as `https://hives.example.org`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Origin(HeaderValue);

/// A text that is not the origin of a page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("not an origin")]
pub struct NotAnOrigin;

impl Origin {
    pub(crate) fn header(&self) -> HeaderValue {
        self.0.clone()
    }
}

impl FromStr for Origin {
    type Err = NotAnOrigin;

    /// Reads an origin exactly as browsers write it, since it is compared as text: lower case, without a path and without the
    /// port that the scheme implies. `*` and `null` stand for any page, so they are none.
    fn from_str(text: &str) -> Result<Origin, NotAnOrigin> {
        let uri: Uri = text.parse().map_err(|_| NotAnOrigin)?;
        let (scheme, authority) = uri.scheme_str().zip(uri.authority()).ok_or(NotAnOrigin)?;
        let implied = match scheme {
            "http" => 80,
            "https" => 443,
            _ => return Err(NotAnOrigin),
        };
        let port = authority.port_u16();
        let plain = text.strip_prefix(scheme) == Some(format!("://{authority}").as_str());
        let host_only =
            !authority.as_str().contains('@') && port != Some(implied) && !authority.as_str().ends_with(':');
        if plain && host_only && !text.bytes().any(|byte| byte.is_ascii_uppercase()) {
            return HeaderValue::from_str(text).map(Origin).map_err(|_| NotAnOrigin);
        }
        Err(NotAnOrigin)
    }
}

#[cfg(test)]
mod tests {
    use super::Origin;

    #[test]
    fn an_origin_is_written_as_a_browser_sends_it() {
        for good in [
            "https://hives.example.org",
            "http://localhost:5173",
            "http://[::1]:8000",
            "https://10.0.0.2:8443",
        ] {
            assert!(good.parse::<Origin>().is_ok(), "{good}");
        }
        for bad in [
            "",
            "*",
            "null",
            "hives.example.org",
            "https://hives.example.org/",
            "https://hives.example.org/page",
            "https://Hives.example.org",
            "HTTPS://hives.example.org",
            "https://hives.example.org:443",
            "http://a.example:80",
            "https://me@hives.example.org",
            "https://hives.example.org?x",
            "ftp://hives.example.org",
            "https://",
            "https://hives.example.org:",
            "https://*.example.org/",
        ] {
            assert!(bad.parse::<Origin>().is_err(), "{bad}");
        }
    }
}
