//! The tables of both databases are the same: names, columns, what may be null, checks, keys and triggers.

use std::collections::{BTreeMap, BTreeSet};

use combclear_testkit::postgres::shared;
use sqlx::SqliteConnection;

use super::Bench;
use crate::making;

/// Each column, and whether it may be null.
type Columns = BTreeMap<String, bool>;

const TABLES: [&str; 5] = ["contents", "entries", "keys", "moved", "moved_contents"];

#[tokio::test]
async fn the_tables_of_both_databases_are_the_same() {
    let on_file = making::Bench::new();
    on_file.open().await.close().await;
    let mut file = on_file.raw().await;
    let on_server = Bench::new();
    on_server.open().await.close().await;
    let url = on_server.url();
    let schema = url.rsplit("%3D").next().unwrap().to_owned();
    let list = |sql: &str| -> BTreeSet<String> {
        shared().run(&sql.replace("$1", &format!("'{schema}'"))).lines().map(str::to_owned).collect()
    };

    let mut tables: BTreeSet<String> = TABLES.iter().map(ToString::to_string).collect();
    tables.insert("_sqlx_migrations".to_owned());
    assert_eq!(texts(&mut file, "select name from sqlite_schema where type = 'table'").await, tables);
    assert_eq!(list("select tablename from pg_tables where schemaname = $1"), tables);

    for table in TABLES {
        let of_file: Vec<(String, i64, i64)> =
            sqlx::query_as("select name, \"notnull\", pk from pragma_table_info($1)")
                .bind(table)
                .fetch_all(&mut file)
                .await
                .unwrap();
        let of_file: Columns =
            of_file.into_iter().map(|(name, not_null, key)| (name, not_null == 0 && key == 0)).collect();
        let of_server: Columns = list(&format!(
            "select column_name || ' ' || is_nullable from information_schema.columns
            where table_schema = $1 and table_name = '{table}'"
        ))
        .iter()
        .map(|column| column.split_once(' ').map(|(name, may)| (name.to_owned(), may == "YES")).unwrap())
        .collect();
        assert_eq!(of_file, of_server, "{table}");
    }

    // PostgreSQL has a type for ids, which needs no check of their length, and a statement that asks no trigger of a row.
    let triggers = texts(&mut file, "select name from sqlite_schema where type = 'trigger'").await;
    let on_server = list(
        "select tgname from pg_trigger join pg_class on pg_class.oid = tgrelid
        join pg_namespace on pg_namespace.oid = relnamespace where nspname = $1 and not tgisinternal",
    );
    let (of_rows, of_tables): (BTreeSet<String>, BTreeSet<String>) =
        on_server.into_iter().partition(|name| !name.ends_with("_truncated"));
    // What replaces a row on SQLite without asking is an update here.
    let replaced: BTreeSet<String> =
        ["keys_are_not_replaced", "moved_are_not_replaced", "moved_contents_are_not_replaced"]
            .map(str::to_owned)
            .into();
    assert_eq!(triggers, of_rows.union(&replaced).cloned().collect());
    assert_eq!(of_tables, TABLES.iter().map(|table| format!("{table}_are_not_truncated")).collect());

    for table in TABLES {
        let sql: String = sqlx::query_scalar("select sql from sqlite_schema where name = $1")
            .bind(table)
            .fetch_one(&mut file)
            .await
            .unwrap();
        let of_ids = sql.matches("check (length(id) = 16)").count()
            + sql.matches("check (length(corrects) = 16)").count()
            + sql.matches("check (length(archived_by) = 16)").count();
        let checks = sql.matches("check (").count() - of_ids;
        let of_server = list(&format!(
            "select conname from pg_constraint join pg_class on pg_class.oid = conrelid
            join pg_namespace on pg_namespace.oid = relnamespace
            where nspname = $1 and relname = '{table}' and contype = 'c'"
        ));
        assert_eq!(checks, of_server.len(), "{table}: {of_server:?}");
    }
}

async fn texts(file: &mut SqliteConnection, sql: &'static str) -> BTreeSet<String> {
    let names: Vec<String> = sqlx::query_scalar(sql).fetch_all(file).await.unwrap();
    names.into_iter().filter(|name| !name.starts_with("sqlite_")).collect()
}

/// The steps have the same names, so that a version means the same on both.
#[test]
fn the_steps_of_both_databases_have_the_same_names() {
    let names = |folder: &str| -> BTreeSet<String> {
        let folder = format!("{}/../../migrations/{folder}", env!("CARGO_MANIFEST_DIR"));
        std::fs::read_dir(folder)
            .unwrap()
            .map(|file| file.unwrap().file_name().into_string().unwrap())
            .collect()
    };
    assert_eq!(names("sqlite"), names("postgres"));
}
