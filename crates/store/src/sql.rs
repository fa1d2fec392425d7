//! Every statement, once. `$1` placeholders work on both databases.
//!
//! The one `update` and the one `delete` are for the archive step: triggers refuse any other.

/// Arguments: holding. The last place and hash.
pub(crate) const TIP: &str = "
select seq, hash from entries where holding = $1 order by seq desc limit 1";

/// Before rows of sixteen columns.
pub(crate) const INSERT: &str = "
insert into entries (holding, seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason,
    copied_from, written_on, key, prev, hash)
";

/// After those rows: one whose id the holding already has is not added.
pub(crate) const UNLESS_THERE: &str = "
on conflict (holding, id) do nothing";

/// Arguments: holding, first place, limit.
pub(crate) const PAGE: &str = "
select seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, copied_from,
    written_on, key, prev, hash
from entries where holding = $1 and seq >= $2 order by seq limit $3";

/// Arguments: holding, first place, limit. The fold reads every row, so this leaves out what it does not keep. The columns are in the
/// order of `row::Columns`.
pub(crate) const KEPT: &str = "
select seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, copied_from,
    written_on, key, hash
from entries where holding = $1 and seq >= $2 order by seq limit $3";

/// Arguments: holding, the lowest id. Counts in the order of the ids, which is another than that of the places: an entry that is
/// lost from one of them is in the other.
pub(crate) const COUNT_BY_ID: &str = "
select count(*) from entries where holding = $1 and id >= $2";

/// Arguments: holding, id.
pub(crate) const BY_ID: &str = "
select seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, copied_from,
    written_on, key, prev, hash
from entries where holding = $1 and id = $2";

/// Arguments: holding, kind.
pub(crate) const OF_KIND: &str = "
select seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, copied_from,
    written_on, key, prev, hash
from entries where holding = $1 and kind = $2 order by seq";

/// Arguments: holding, hash, bytes. Adds nothing if the content is already stored.
pub(crate) const KEEP: &str = "
insert into contents (holding, hash, bytes) values ($1, $2, $3) on conflict (holding, hash) do nothing";

/// Arguments: holding, place, id of the `archived` entry. Afterwards the body of that place may be emptied.
pub(crate) const MOVED: &str = "
insert into moved (holding, seq, archived_by) values ($1, $2, $3)";

/// Arguments: holding, place. Empties the body.
pub(crate) const TAKE_BODY: &str = "
update entries set body = '' where holding = $1 and seq = $2 and body <> ''";

/// Arguments: holding, hash, id of the `archived` entry. Afterwards the content may be deleted.
pub(crate) const MOVED_CONTENT: &str = "
insert into moved_contents (holding, hash, archived_by) values ($1, $2, $3)";

/// Arguments: holding, hash. Deletes the content.
pub(crate) const TAKE_CONTENT: &str = "
delete from contents where holding = $1 and hash = $2";

/// Arguments: holding, hash.
pub(crate) const CONTENT: &str = "
select bytes from contents where holding = $1 and hash = $2";

/// Arguments: holding. The stored contents and their lengths.
pub(crate) const CONTENTS: &str = "
select hash, cast(length(bytes) as bigint) from contents where holding = $1 order by hash";

/// Arguments: eight columns.
pub(crate) const ADD_KEY: &str = "
insert into keys (id, holding, role, holder, secret, made_at, until, ended_at)
values ($1, $2, $3, $4, $5, $6, $7, $8)";

/// Every key. The columns are in the order of `key_row::KeyRow`.
pub(crate) const KEYS: &str = "
select id, holding, role, holder, secret, made_at, until, ended_at from keys order by id";

/// Arguments: id.
pub(crate) const KEY: &str = "
select id, holding, role, holder, secret, made_at, until, ended_at from keys where id = $1";

/// Arguments: id, time. Ends a key that was not ended before.
pub(crate) const END_KEY: &str = "
update keys set ended_at = $2 where id = $1 and ended_at is null";

/// All holdings. Steps from name to name; `select distinct` would read every entry.
pub(crate) const HOLDINGS: &str = "
with recursive names (holding) as (
    select min(holding) from entries
    union all
    select (select min(holding) from entries where holding > names.holding) from names where names.holding is not null
)
select holding from names where holding is not null";

/// Reads from the table, to show that the database can be read.
pub(crate) const PROBE: &str = "
select count(*) from (select 1 from entries limit 1) as one";
