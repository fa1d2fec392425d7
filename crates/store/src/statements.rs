//! Bind and fetch: one line per statement, generated for each database. Contains no logic.

use std::future::Future;

use combclear_domain::basics::calendar::Instant;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::key::{Key, KeyId};
use combclear_domain::journal::{Content, Entry, Hash, Kept, Kind};
use sqlx::{Connection, QueryBuilder};
use uuid::Uuid;

use crate::key_row::KeyRow;
use crate::row::{Chain, Columns, NotKept, Row};
use crate::sql;

/// The statements of [`sql`] on a connection.
pub(crate) trait Statements: Send {
    /// The last place and hash.
    fn tip(&mut self, holding: &str) -> impl Future<Output = sqlx::Result<Option<(i64, Vec<u8>)>>> + Send;

    /// Adds rows in one statement. Returns the number added: fewer if an id exists.
    fn insert(&mut self, holding: &str, entries: &[Entry]) -> impl Future<Output = sqlx::Result<u64>> + Send;

    /// Rows from a place onwards.
    fn page(
        &mut self,
        holding: &str,
        from: i64,
        limit: i64,
    ) -> impl Future<Output = sqlx::Result<Vec<Row>>> + Send;

    /// Entries after a place, as the fold takes them in; or the first that does not follow the one before it, or that cannot be
    /// understood.
    fn kept(
        &mut self,
        holding: &str,
        after: Option<(u64, Hash)>,
        limit: i64,
    ) -> impl Future<Output = sqlx::Result<Result<Vec<Kept>, NotKept>>> + Send;

    /// How many entries there are, by their ids.
    fn count_by_id(&mut self, holding: &str) -> impl Future<Output = sqlx::Result<i64>> + Send;

    /// The row with an id.
    fn by_id(&mut self, holding: &str, id: Uuid) -> impl Future<Output = sqlx::Result<Option<Row>>> + Send;

    /// The rows of a kind, in order.
    fn of_kind(&mut self, holding: &str, kind: Kind) -> impl Future<Output = sqlx::Result<Vec<Row>>> + Send;

    /// Adds a content, unless it is already stored.
    fn keep(&mut self, holding: &str, content: &Content) -> impl Future<Output = sqlx::Result<()>> + Send;

    /// Notes that the body of a place is in an archive, as the entry with this id says.
    fn note_moved(
        &mut self,
        holding: &str,
        seq: i64,
        archived_by: Uuid,
    ) -> impl Future<Output = sqlx::Result<()>> + Send;

    /// Empties the body of a noted place. Returns the number of rows changed.
    fn take_body(&mut self, holding: &str, seq: i64) -> impl Future<Output = sqlx::Result<u64>> + Send;

    /// Deletes a content archived by the entry with this id. Returns the number of rows deleted.
    fn take_content(
        &mut self,
        holding: &str,
        hash: Hash,
        archived_by: Uuid,
    ) -> impl Future<Output = sqlx::Result<u64>> + Send;

    /// The bytes under a hash.
    fn content(
        &mut self,
        holding: &str,
        hash: Hash,
    ) -> impl Future<Output = sqlx::Result<Option<Vec<u8>>>> + Send;

    /// The hashes of stored contents with their sizes in bytes.
    fn contents(&mut self, holding: &str) -> impl Future<Output = sqlx::Result<Vec<(Vec<u8>, i64)>>> + Send;

    /// Adds a key with the hash of its secret.
    fn add_key(&mut self, key: &Key, secret: Hash) -> impl Future<Output = sqlx::Result<()>> + Send;

    /// Every key.
    fn keys(&mut self) -> impl Future<Output = sqlx::Result<Vec<KeyRow>>> + Send;

    /// The key with an id.
    fn key(&mut self, id: KeyId) -> impl Future<Output = sqlx::Result<Option<KeyRow>>> + Send;

    /// Ends a key. Returns the number of rows changed.
    fn end_key(&mut self, id: KeyId, at: Instant) -> impl Future<Output = sqlx::Result<u64>> + Send;

    /// The names of the holdings.
    fn holdings(&mut self) -> impl Future<Output = sqlx::Result<Vec<String>>> + Send;

    /// A minimal read.
    fn probe(&mut self) -> impl Future<Output = sqlx::Result<i64>> + Send;
}

macro_rules! statements_on {
    ($connection:ty) => {
        impl Statements for $connection {
            async fn tip(&mut self, holding: &str) -> sqlx::Result<Option<(i64, Vec<u8>)>> {
                sqlx::query_as(sql::TIP).bind(holding).fetch_optional(self).await
            }

            async fn insert(&mut self, holding: &str, entries: &[Entry]) -> sqlx::Result<u64> {
                let mut rows: QueryBuilder<<$connection as Connection>::Database> =
                    QueryBuilder::new(sql::INSERT);
                rows.push_values(entries, |mut row, entry| {
                    let draft = &entry.draft;
                    let (correction, copied) = (draft.correction.as_ref(), draft.copied_from.as_ref());
                    row.push_bind(holding)
                        // No journal reaches a place beyond i64; the database refuses it.
                        .push_bind(i64::try_from(entry.seq).unwrap_or(i64::MAX))
                        .push_bind(draft.id.0)
                        .push_bind(draft.on.to_string())
                        .push_bind(draft.at.map(|at| at.to_string()))
                        .push_bind(entry.recorded_at.to_string())
                        .push_bind(draft.recorded_by.as_str())
                        .push_bind(draft.kind().as_str())
                        .push_bind(draft.body.as_ref())
                        .push_bind(correction.map(|correction| correction.of.0))
                        .push_bind(correction.map(|correction| correction.reason.as_str()))
                        .push_bind(copied.map(|copied| copied.what.as_str()))
                        .push_bind(copied.map(|copied| copied.written_on.to_string()))
                        .push_bind(entry.key.as_ref().map(KeyId::as_str))
                        .push_bind(entry.prev.0.as_slice())
                        .push_bind(entry.hash.0.as_slice());
                });
                rows.push(sql::UNLESS_THERE);
                Ok(rows.build().execute(self).await?.rows_affected())
            }

            async fn page(&mut self, holding: &str, from: i64, limit: i64) -> sqlx::Result<Vec<Row>> {
                sqlx::query_as(sql::PAGE).bind(holding).bind(from).bind(limit).fetch_all(self).await
            }

            async fn kept(
                &mut self,
                holding: &str,
                after: Option<(u64, Hash)>,
                limit: i64,
            ) -> sqlx::Result<Result<Vec<Kept>, NotKept>> {
                let mut chain = Chain::after(after);
                let Some(from) = chain.next_place() else { return Ok(Ok(Vec::new())) };
                let rows = sqlx::query(sql::KEPT).bind(holding).bind(from).bind(limit);
                let kept = rows.try_map(|row| Ok(chain.next(holding, &Columns::of(&row)?)));
                Ok(kept.fetch_all(self).await?.into_iter().collect())
            }

            async fn count_by_id(&mut self, holding: &str) -> sqlx::Result<i64> {
                sqlx::query_scalar(sql::COUNT_BY_ID).bind(holding).bind(Uuid::nil()).fetch_one(self).await
            }

            async fn by_id(&mut self, holding: &str, id: Uuid) -> sqlx::Result<Option<Row>> {
                sqlx::query_as(sql::BY_ID).bind(holding).bind(id).fetch_optional(self).await
            }

            async fn of_kind(&mut self, holding: &str, kind: Kind) -> sqlx::Result<Vec<Row>> {
                sqlx::query_as(sql::OF_KIND).bind(holding).bind(kind.as_str()).fetch_all(self).await
            }

            async fn keep(&mut self, holding: &str, content: &Content) -> sqlx::Result<()> {
                let hash = content.hash();
                let keep = sqlx::query(sql::KEEP).bind(holding).bind(hash.0.as_slice()).bind(content.bytes());
                keep.execute(self).await?;
                Ok(())
            }

            async fn note_moved(&mut self, holding: &str, seq: i64, archived_by: Uuid) -> sqlx::Result<()> {
                sqlx::query(sql::MOVED).bind(holding).bind(seq).bind(archived_by).execute(self).await?;
                Ok(())
            }

            async fn take_body(&mut self, holding: &str, seq: i64) -> sqlx::Result<u64> {
                let taken = sqlx::query(sql::TAKE_BODY).bind(holding).bind(seq).execute(self).await?;
                Ok(taken.rows_affected())
            }

            async fn take_content(
                &mut self,
                holding: &str,
                hash: Hash,
                archived_by: Uuid,
            ) -> sqlx::Result<u64> {
                let hash = hash.0.as_slice();
                let note = sqlx::query(sql::MOVED_CONTENT).bind(holding).bind(hash).bind(archived_by);
                note.execute(&mut *self).await?;
                let taken = sqlx::query(sql::TAKE_CONTENT).bind(holding).bind(hash).execute(self).await?;
                Ok(taken.rows_affected())
            }

            async fn content(&mut self, holding: &str, hash: Hash) -> sqlx::Result<Option<Vec<u8>>> {
                sqlx::query_scalar(sql::CONTENT)
                    .bind(holding)
                    .bind(hash.0.as_slice())
                    .fetch_optional(self)
                    .await
            }

            async fn contents(&mut self, holding: &str) -> sqlx::Result<Vec<(Vec<u8>, i64)>> {
                sqlx::query_as(sql::CONTENTS).bind(holding).fetch_all(self).await
            }

            async fn add_key(&mut self, key: &Key, secret: Hash) -> sqlx::Result<()> {
                let add = sqlx::query(sql::ADD_KEY)
                    .bind(key.id.as_str())
                    .bind(key.holding.as_ref().map(HoldingName::as_str))
                    .bind(key.role.as_str())
                    .bind(key.holder.as_str())
                    .bind(secret.0.as_slice())
                    .bind(key.made_at.to_string())
                    .bind(key.until.map(|day| day.to_string()))
                    .bind(key.ended_at.map(|at| at.to_string()));
                add.execute(self).await?;
                Ok(())
            }

            async fn keys(&mut self) -> sqlx::Result<Vec<KeyRow>> {
                sqlx::query_as(sql::KEYS).fetch_all(self).await
            }

            async fn key(&mut self, id: KeyId) -> sqlx::Result<Option<KeyRow>> {
                sqlx::query_as(sql::KEY).bind(id.as_str()).fetch_optional(self).await
            }

            async fn end_key(&mut self, id: KeyId, at: Instant) -> sqlx::Result<u64> {
                let ended = sqlx::query(sql::END_KEY).bind(id.as_str()).bind(at.to_string());
                Ok(ended.execute(self).await?.rows_affected())
            }

            async fn holdings(&mut self) -> sqlx::Result<Vec<String>> {
                sqlx::query_scalar(sql::HOLDINGS).fetch_all(self).await
            }

            async fn probe(&mut self) -> sqlx::Result<i64> {
                sqlx::query_scalar(sql::PROBE).fetch_one(self).await
            }
        }
    };
}

statements_on!(sqlx::SqliteConnection);
statements_on!(sqlx::PgConnection);
