//! Migrations are embedded when the crate is built, so a new or edited one must build it again. `cfg(postgres)` is set where the
//! programs of PostgreSQL are on this machine: its tests are built only there.

#[path = "../testkit/src/find_postgres.rs"]
mod find_postgres;

fn main() {
    println!("cargo::rerun-if-changed=../../migrations");
    println!("cargo::rerun-if-changed=../testkit/src/find_postgres.rs");
    println!("cargo::rerun-if-changed=/usr/lib/postgresql");
    println!("cargo::rerun-if-env-changed=COMBCLEAR_POSTGRES");
    println!("cargo::rustc-check-cfg=cfg(postgres)");
    if find_postgres::folder().is_some() {
        println!("cargo::rustc-cfg=postgres");
    }
}
