//! A working folder, and the program run in it.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use combclear_domain::journal::Entry;
use combclear_domain::journal::lines::Header;
use serde_json::{Value, json};
use tempfile::TempDir;

/// The journal of the demo in the repository.
pub(crate) const DEMO: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/holding.jsonl");
/// Number of its entries.
pub(crate) const DEMO_ENTRIES: usize = 456;
/// The day of the demo.
pub(crate) const DEMO_DAY: &str = "2026-08-29";

/// A temporary folder. Files are named relative to it, so that messages do not depend on its place.
pub(crate) struct Bench {
    folder: TempDir,
    /// The database, if it is not the default one in the folder.
    db: Option<String>,
}

/// The result of a run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Ran {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Bench {
    /// An empty folder.
    pub(crate) fn new() -> Bench {
        Bench { folder: tempfile::tempdir().unwrap(), db: None }
    }

    /// An empty folder, and the database at this address.
    pub(crate) fn on(db: String) -> Bench {
        Bench { db: Some(db), ..Bench::new() }
    }

    /// A folder with the demo in the default database.
    pub(crate) fn with_demo() -> Bench {
        let bench = Bench::new();
        bench.run(&["import", DEMO]).done();
        bench
    }

    /// A folder with the small holding `mine` in the default database, and its drafts in `mine.jsonl`.
    pub(crate) fn with_mine() -> Bench {
        Bench::new().filled_with_mine()
    }

    /// The same in this folder and database.
    pub(crate) fn filled_with_mine(self) -> Bench {
        self.write("mine.jsonl", mine(&[]));
        self.run(&["import", "mine.jsonl"]).done();
        self
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub(crate) fn write(&self, name: &str, text: impl AsRef<[u8]>) {
        std::fs::write(self.path(name), text).unwrap();
    }

    pub(crate) fn read(&self, name: &str) -> String {
        std::fs::read_to_string(self.path(name)).unwrap()
    }

    /// The names of the files in the folder.
    pub(crate) fn files(&self) -> Vec<String> {
        let names = std::fs::read_dir(self.folder.path()).unwrap();
        let mut names: Vec<String> =
            names.map(|file| file.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    }

    /// The program with these arguments, not started yet, isolated from the environment.
    pub(crate) fn command(&self, arguments: &[&str]) -> Command {
        let mut command = bare(Path::new(env!("CARGO_BIN_EXE_combclear")), self.folder.path());
        command.args(arguments);
        if let Some(db) = &self.db {
            command.env("COMBCLEAR_DB", db);
        }
        command
    }

    pub(crate) fn run(&self, arguments: &[&str]) -> Ran {
        ran(self.command(arguments).output().unwrap())
    }

    /// Runs it with this standard input.
    pub(crate) fn run_with_input(&self, arguments: &[&str], input: &str) -> Ran {
        let mut command = self.command(arguments);
        let mut child =
            command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        child.stdin.take().unwrap().write_all(input.as_bytes()).unwrap();
        ran(child.wait_with_output().unwrap())
    }

    /// The whole content of the database: an export of each holding.
    pub(crate) fn kept(&self) -> Vec<String> {
        let only = self.run(&["export"]);
        if only.code == Some(0) {
            return vec![only.out];
        }
        if let Some((_, names)) = only.err.split_once("say which with --holding: ") {
            let export = |name: &str| self.run(&["export", "--holding", name]).done().out;
            return names.trim().split(", ").map(export).collect();
        }
        assert!(Bench::keeps_nothing(&only), "{}", only.err);
        Vec::new()
    }

    /// Whether a question found nothing: no database, or one without entries.
    pub(crate) fn keeps_nothing(ran: &Ran) -> bool {
        let nothing =
            ["there is no database at `combclear.db` yet\n", "`sqlite:combclear.db` has no journal yet\n"];
        ran.code == Some(1) && nothing.iter().any(|nothing| ran.err.contains(nothing))
    }
}

/// This or another program, in this folder and without outside variables.
pub(crate) fn bare(program: &Path, folder: &Path) -> Command {
    let mut command = Command::new(program);
    command.current_dir(folder).stdin(Stdio::null());
    // The help reads COLUMNS and LINES, the server RUST_LOG, and "today" TZ.
    for name in ["COMBCLEAR_DB", "COMBCLEAR_HOLDING", "COLUMNS", "LINES", "RUST_LOG", "TZ"] {
        command.env_remove(name);
    }
    command
}

pub(crate) fn ran(output: Output) -> Ran {
    Ran {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

impl Ran {
    /// It succeeded, without complaints.
    #[track_caller]
    pub(crate) fn done(self) -> Ran {
        assert_eq!((self.code, self.err.as_str()), (Some(0), ""), "{}", self.out);
        self
    }

    /// It answered, with this exit code.
    #[track_caller]
    pub(crate) fn answered(self, code: i32) -> Ran {
        assert_eq!((self.code, self.err.as_str()), (Some(code), ""), "{}", self.out);
        self
    }

    /// It failed: nothing on standard output, a message and help on standard error.
    #[track_caller]
    pub(crate) fn failed(self) -> Ran {
        assert_eq!((self.code, self.out.as_str()), (Some(1), ""), "{}", self.err);
        assert!(self.err.starts_with("error: "), "{}", self.err);
        assert!(self.err.contains("\n  help: "), "{}", self.err);
        self
    }

    /// It failed with exactly this text.
    #[track_caller]
    pub(crate) fn failed_with(self, message: &str, help: &str) -> Ran {
        let ran = self.failed();
        assert_eq!(ran.err, format!("error: {message}\n  help: {help}\n"));
        ran
    }

    /// Its output contains all of this, wherever its lines are broken.
    #[track_caller]
    pub(crate) fn says(self, wanted: &[&str]) -> Ran {
        let said = format!("{}{}", self.out, self.err);
        for wanted in wanted {
            assert!(unbroken(&said).contains(&unbroken(wanted)), "`{wanted}` is not in:\n{said}");
        }
        self
    }

    /// Its output is exactly this, wherever its lines are broken.
    #[track_caller]
    pub(crate) fn says_only(self, wanted: &str) -> Ran {
        assert_eq!(unbroken(self.out.trim_end()), unbroken(wanted.trim_end()), "{}", self.out);
        self
    }

    pub(crate) fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|error| panic!("{error}: {}", self.out))
    }
}

/// A text on one line: the width of the output decides where its lines are broken.
pub(crate) fn unbroken(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The header of a file of drafts.
pub(crate) const MINE: &str = r#"{"combclear_journal":1,"holding":"mine","sealed":false}"#;

/// The id of the nth entry.
pub(crate) fn id(number: usize) -> String {
    combclear_testkit::entries::id(number).to_string()
}

/// An entry on one line.
pub(crate) fn draft(number: usize, on: &str, kind: &str, body: &Value) -> String {
    json!({"id": id(number), "on": on, "recorded_by": "me", "kind": kind, "body": body}).to_string()
}

/// An inspection of this colony.
pub(crate) fn inspection(number: usize, on: &str, colony: &str) -> String {
    draft(number, on, "inspection", &json!({"colony": colony}))
}

/// Drafts of a holding with one apiary and one colony. Additional lines start at line 4.
pub(crate) fn mine(more: &[&str]) -> String {
    let apiary = draft(1, "2026-03-01", "apiary_details", &json!({"apiary": "East"}));
    let established = json!({"colony": "A1", "apiary": "East", "medicines": "none"});
    let colony = draft(2, "2026-03-01", "colony_established", &established);
    lines([MINE, &apiary, &colony].into_iter().chain(more.iter().copied()))
}

/// Each on a line of its own.
pub(crate) fn lines<'a>(each: impl IntoIterator<Item = &'a str>) -> String {
    each.into_iter().fold(String::new(), |text, line| text + line + "\n")
}

/// The first entries of the demo, as an export from when it had no more.
pub(crate) fn demo_up_to(entries: usize) -> String {
    demo_part(1, entries)
}

/// The entries of the demo from `first` to `last` (inclusive), as an export.
pub(crate) fn demo_part(first: usize, last: usize) -> String {
    let demo = std::fs::read_to_string(DEMO).unwrap();
    let entries: Vec<&str> = demo.lines().skip(first).take(last + 1 - first).collect();
    let head = Entry::from_json(entries.last().unwrap()).unwrap().hash;
    let count = u64::try_from(entries.len()).unwrap();
    // With the documents that these entries attach.
    let named = |line: &&str| {
        let content = line.strip_prefix("{\"content\":\"").map(|rest| rest.split('"').next().unwrap());
        let attached =
            |hash: &str| entries.iter().any(|entry| entry.contains(&format!("\"content\":\"{hash}\"")));
        content.is_some_and(attached)
    };
    let contents: Vec<&str> = demo.lines().filter(named).collect();
    let header = Header::sealed("demo".parse().unwrap(), count, Some(head));
    let header = header.with_contents(u64::try_from(contents.len()).unwrap()).to_json();
    lines(std::iter::once(header.as_str()).chain(entries).chain(contents))
}
