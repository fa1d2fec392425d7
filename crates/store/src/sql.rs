//! Every statement, once. Placeholders are `$1` and on, which both databases take.
//!
//! There is one `update` and one `delete`, for the archive step: the tables let nothing else of the kind through.

/// Holding. The last place and hash.
pub(crate) const TIP: &str = "
select seq, hash from entries where holding = $1 order by seq desc limit 1";

/// Thirteen columns. Adds nothing if the holding has the id already.
pub(crate) const INSERT: &str = "
insert into entries (holding, seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason,
    prev, hash)
values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13)
on conflict (holding, id) do nothing";

/// Holding, first place, how many at most.
pub(crate) const PAGE: &str = "
select seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, prev, hash
from entries where holding = $1 and seq >= $2 order by seq limit $3";

/// Holding, first place, how many at most. What the fold takes in: read far more often than anything else, column by column in the
/// order of `row::kept`.
pub(crate) const KEPT: &str = "
select seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, hash
from entries where holding = $1 and seq >= $2 order by seq limit $3";

/// Holding, id.
pub(crate) const BY_ID: &str = "
select seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, prev, hash
from entries where holding = $1 and id = $2";

/// Holding, kind.
pub(crate) const OF_KIND: &str = "
select seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, prev, hash
from entries where holding = $1 and kind = $2 order by seq";

/// Holding, hash, bytes. Adds nothing if the holding keeps the content already.
pub(crate) const KEEP: &str = "
insert into contents (holding, hash, bytes) values ($1, $2, $3) on conflict (holding, hash) do nothing";

/// Holding, place, id of the entry that says so. From here on the body of that place may be empty.
pub(crate) const MOVED: &str = "
insert into moved (holding, seq, archived_by) values ($1, $2, $3)";

/// Holding, place. Takes the body away.
pub(crate) const TAKE_BODY: &str = "
update entries set body = '' where holding = $1 and seq = $2 and body <> ''";

/// Holding, hash, id of the entry that says so. From here on the content may go.
pub(crate) const MOVED_CONTENT: &str = "
insert into moved_contents (holding, hash, archived_by) values ($1, $2, $3)";

/// Holding, hash. Takes the content away.
pub(crate) const TAKE_CONTENT: &str = "
delete from contents where holding = $1 and hash = $2";

/// Holding, hash.
pub(crate) const CONTENT: &str = "
select bytes from contents where holding = $1 and hash = $2";

/// Holding. Which contents are kept, and how long they are.
pub(crate) const CONTENTS: &str = "
select hash, length(bytes) from contents where holding = $1 order by hash";

/// The holdings. Steps from name to name, where `select distinct` would read every entry.
pub(crate) const HOLDINGS: &str = "
with recursive names (holding) as (
    select min(holding) from entries
    union all
    select (select min(holding) from entries where holding > names.holding) from names where names.holding is not null
)
select holding from names where holding is not null";

/// Touches the table, so that it shows whether the database can be read.
pub(crate) const PROBE: &str = "
select count(*) from (select 1 from entries limit 1) as one";
