//! The address of the database. It may hold a password, which is never shown.

use std::convert::Infallible;
use std::fmt;
use std::str::FromStr;

/// An address, as it was given. Shown without user and password.
#[derive(Clone)]
pub(crate) struct Address(String);

impl Address {
    /// All of it, to open it.
    pub(crate) fn whole(&self) -> &str {
        &self.0
    }
}

impl FromStr for Address {
    type Err = Infallible;

    fn from_str(text: &str) -> Result<Address, Infallible> {
        Ok(Address(text.to_owned()))
    }
}

impl fmt::Display for Address {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some((scheme, rest)) = self.0.split_once("://").filter(|(scheme, _)| *scheme != "sqlite") else {
            return f.write_str(&self.0);
        };
        // Parameters may hold a password too.
        let rest = rest.split_once('?').map_or(rest, |(rest, _)| rest);
        let rest = rest.rsplit_once('@').map_or(rest, |(_, rest)| rest);
        write!(f, "{scheme}://{rest}")
    }
}

impl fmt::Debug for Address {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{self}`")
    }
}
