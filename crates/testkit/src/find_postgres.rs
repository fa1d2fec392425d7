// Where the programs of PostgreSQL are, if they are on this machine. Build scripts include this file too: they leave the tests on
// PostgreSQL out where it is missing, under a name that says so.

use std::path::PathBuf;
use std::process::Command;

/// The oldest version that the store works with.
const LEAST: u32 = 15;

/// The folder with `initdb` and `postgres`: the one that `COMBCLEAR_POSTGRES` names, else the newest below the folder in which
/// Debian keeps them, else the one of the `pg_config` on the path.
pub(crate) fn folder() -> Option<PathBuf> {
    let complete = |folder: &PathBuf| ["initdb", "postgres"].iter().all(|name| folder.join(name).is_file());
    if let Some(named) = std::env::var_os("COMBCLEAR_POSTGRES") {
        return Some(PathBuf::from(named)).filter(complete);
    }
    let mut versions: Vec<(u32, PathBuf)> = std::fs::read_dir("/usr/lib/postgresql")
        .into_iter()
        .flatten()
        .filter_map(|version| {
            let version = version.ok()?;
            Some((version.file_name().to_str()?.parse().ok()?, version.path().join("bin")))
        })
        .filter(|(version, folder)| *version >= LEAST && complete(folder))
        .collect();
    versions.sort();
    if let Some((_, folder)) = versions.pop() {
        return Some(folder);
    }
    let told = Command::new("pg_config").args(["--bindir", "--version"]).output().ok()?;
    let told = String::from_utf8(told.stdout).ok()?;
    let (folder, version) = told.split_once('\n')?;
    let version: u32 = version.trim_start_matches("PostgreSQL ").split('.').next()?.trim().parse().ok()?;
    Some(PathBuf::from(folder)).filter(|folder| version >= LEAST && complete(folder))
}
