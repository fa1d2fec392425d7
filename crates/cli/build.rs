//! `cfg(postgres)` is set where the programs of PostgreSQL are on this machine: tests on it are ignored elsewhere, by name.

#[path = "../testkit/src/find_postgres.rs"]
mod find_postgres;

fn main() {
    println!("cargo::rerun-if-changed=../testkit/src/find_postgres.rs");
    println!("cargo::rerun-if-changed=/usr/lib/postgresql");
    println!("cargo::rerun-if-env-changed=COMBCLEAR_POSTGRES");
    println!("cargo::rustc-check-cfg=cfg(postgres)");
    if find_postgres::folder().is_some() {
        println!("cargo::rustc-cfg=postgres");
    }
}
