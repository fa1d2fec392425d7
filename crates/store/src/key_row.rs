//! A key as stored.

use std::str::FromStr;

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::basics::misread::Misread;
use combclear_domain::basics::words::{HoldingName, Person};
use combclear_domain::journal::Hash;
use combclear_domain::journal::key::{Key, KeyId, Role};
use combclear_domain::journal::misfit::Misfit;

use crate::row;

/// A row of `keys`, in the order of its columns.
pub(crate) type KeyRow =
    (String, Option<String>, String, String, Vec<u8>, String, Option<String>, Option<String>);

/// The key of a row, and the hash of its secret; or what cannot be understood about it.
pub(crate) fn understand(stored: &KeyRow) -> Result<(Key, Hash), Misfit> {
    let (id, holding, role, holder, secret, made_at, until, ended_at) = stored;
    let key = Key {
        id: read::<KeyId>("id", id)?,
        holding: optional::<HoldingName>("holding", holding.as_deref())?,
        role: Role::from_word(role).ok_or_else(|| Misfit::UnknownRole { role: role.clone() })?,
        holder: read::<Person>("holder", holder)?,
        made_at: read::<Instant>("made_at", made_at)?,
        until: optional::<Day>("until", until.as_deref())?,
        ended_at: optional::<Instant>("ended_at", ended_at.as_deref())?,
    };
    Ok((key, row::hash("secret", secret)?))
}

fn optional<T>(column: &'static str, text: Option<&str>) -> Result<Option<T>, Misfit>
where
    T: FromStr<Err: Into<Misread>>,
{
    text.map(|text| read(column, text)).transpose()
}

fn read<T>(column: &'static str, text: &str) -> Result<T, Misfit>
where
    T: FromStr<Err: Into<Misread>>,
{
    text.parse().map_err(|fault: T::Err| Misfit::Misread { column, why: fault.into() })
}
