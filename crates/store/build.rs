//! Migrations are embedded when the crate is built, so a new or edited one must build it again.

fn main() {
    println!("cargo::rerun-if-changed=../../migrations");
}
