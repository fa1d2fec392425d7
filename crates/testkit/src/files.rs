//! Files of the repository, and programs that read them.

use std::ffi::OsStr;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Entry;

/// The root of the workspace.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// What is in a folder, by name.
pub fn listing(folder: impl AsRef<Path>) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).unwrap();
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths
}

/// The entries of the demo, as its journal has them.
pub fn demo() -> Vec<Entry> {
    let text = std::fs::read_to_string(root().join("demo/holding.jsonl")).unwrap();
    // The header stands before the entries, the documents behind them.
    let lines = text.lines().filter(|line| line.starts_with("{\"seq\""));
    lines.map(|line| Entry::from_json(line).unwrap()).collect()
}

/// The holding of the demo.
pub fn demo_holding() -> Holding {
    let mut holding = Holding::new("demo".parse().unwrap());
    for entry in demo() {
        holding.restore(&entry);
    }
    holding
}

/// What a script of the repository says to these arguments and this input.
pub fn python(script: &str, arguments: &[impl AsRef<OsStr>], input: &str) -> String {
    let mut command = Command::new("python3");
    command.arg(root().join(script)).args(arguments);
    let started = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn();
    let mut child =
        started.unwrap_or_else(|error| panic!("this test needs `python3`, which cannot be run: {error}"));
    let mut stdin = child.stdin.take().unwrap();
    let ran = std::thread::scope(|scope| {
        let feeding = scope.spawn(move || stdin.write_all(input.as_bytes()));
        let ran = child.wait_with_output().unwrap();
        feeding.join().unwrap().unwrap();
        ran
    });
    assert!(ran.status.success(), "{script}:\n{}", String::from_utf8_lossy(&ran.stderr));
    String::from_utf8(ran.stdout).unwrap()
}
