//! Broken files, their faults, and the page that shows them.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;

use combclear_domain::Faults as Found;
use combclear_testkit::files::{listing, root};
use combclear_wording::Words;
use combclear_wording::diagnostics::Diagnosed;

/// Files loaded together, by path.
pub(super) type Set = BTreeMap<String, String>;

/// What is wrong with a set of files.
pub(super) type Faults = fn(&Set) -> Vec<Diagnosed>;

/// The faults of files that do not load, in words.
pub(super) fn in_words<T>(loaded: Result<T, Found>) -> Vec<Diagnosed> {
    let faults = loaded.err().expect("broken files are refused");
    faults.iter().map(|fault| Diagnosed::of(Words::english(), fault)).collect()
}

/// The page of all faults.
pub(super) fn page(all: &BTreeMap<String, Set>, faults: Faults) -> String {
    let mut page = String::new();
    for (name, set) in all {
        write!(page, "## {}\n\n", name.replace('-', " ")).unwrap();
        for fault in faults(set) {
            page.push_str(&as_read(&fault, set.get(&fault.file).unwrap()));
            page.push('\n');
        }
    }
    page
}

/// Holds a page against the reviewed one.
pub(super) fn on_page(name: &str, page: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(".");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, page));
}

/// That every message says what, where, and how to mend it, in the manner of this program.
pub(super) fn every_message_is_whole(all: &BTreeMap<String, Set>, faults: Faults) {
    for (name, set) in all {
        for Diagnosed { file, line, column, message, help } in faults(set) {
            let text = set.get(&file).unwrap_or_else(|| panic!("{name}: no file `{file}` was loaded"));
            assert!(!message.is_empty() && !help.is_empty(), "{name}: `{message}`, help `{help}`");
            for words in [&message, &help] {
                assert!(!words.starts_with(char::is_uppercase), "{name}: begins with a capital: {words}");
                assert!(!words.ends_with('.'), "{name}: ends with a full stop: {words}");
                assert!(!words.contains('\n'), "{name}: runs over several lines: {words}");
            }
            if line == 0 {
                assert_eq!(column, 0, "{name}: a column without a line");
                continue;
            }
            let lines: Vec<&str> = text.lines().collect();
            let pointed = lines.get(line as usize - 1).unwrap_or_else(|| panic!("{name}: no line {line}"));
            let most = pointed.chars().count() + 1;
            assert!((column as usize) <= most, "{name}: no column {column} in `{pointed}`");
        }
    }
}

/// Each broken file of a folder on its own, under the path that `alone` makes of its name; each folder there as a set; by name.
pub(super) fn gallery(folder: &str, alone: fn(&str) -> String) -> BTreeMap<String, Set> {
    let mut gallery = BTreeMap::new();
    for path in listing(root().join("tests/errors").join(folder)) {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let mut set = Set::new();
        if path.is_dir() {
            read_below(&path, "", &mut set);
        } else {
            set.insert(alone(&name), std::fs::read_to_string(&path).unwrap());
        }
        gallery.insert(name, set);
    }
    gallery
}

fn read_below(folder: &Path, prefix: &str, set: &mut Set) {
    for path in listing(folder) {
        let name = format!("{prefix}{}", path.file_name().unwrap().to_string_lossy());
        if path.is_dir() {
            read_below(&path, &format!("{name}/"), set);
        } else {
            set.insert(name, std::fs::read_to_string(&path).unwrap());
        }
    }
}

/// A fault with the line it points at.
fn as_read(fault: &Diagnosed, text: &str) -> String {
    let Diagnosed { file, line, column, message, help } = fault;
    let mut read = match (line, column) {
        (0, _) => format!("{file}: {message}\n"),
        (_, 0) => format!("{file}:{line}: {message}\n"),
        _ => format!("{file}:{line}:{column}: {message}\n"),
    };
    if let Some(pointed) = (*line as usize).checked_sub(1).and_then(|above| text.lines().nth(above)) {
        writeln!(read, "  | {pointed}").unwrap();
        if let Some(left) = (*column as usize).checked_sub(1) {
            writeln!(read, "  | {}^", " ".repeat(left)).unwrap();
        }
    }
    writeln!(read, "  help: {help}").unwrap();
    read
}

/// One fault below the other.
pub(super) fn listed(faults: &[Diagnosed]) -> String {
    faults.iter().map(|fault| fault.said(Words::english())).collect::<Vec<_>>().join("\n")
}
