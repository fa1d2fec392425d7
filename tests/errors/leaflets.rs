//! Every fault of a leaflet file, as its author gets to read it.
//!
//! Each file of `leaflets/` is sound but for the fault that its name tells; it is loaded alone, as `zz/<its name>`. The
//! files of a folder there are loaded together, under their paths below it. The page `leaflets.snap` holds every
//! message with the line it points at; it is reviewed as what it is: something to read.

#![expect(clippy::expect_used, clippy::unwrap_used, reason = "helpers of a test may end it")]

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use combclear_domain::diagnostic::Diagnostic;
use combclear_domain::leaflet::Leaflets;

/// Files loaded together, by path.
type Set = BTreeMap<String, String>;

#[test]
fn every_fault_reads_as_on_the_reviewed_page() {
    let mut page = String::new();
    for (name, set) in gallery() {
        write!(page, "## {}\n\n", name.replace('-', " ")).unwrap();
        for fault in faults(&set) {
            page.push_str(&as_read(&fault, set.get(&fault.file).unwrap()));
            page.push('\n');
        }
    }
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(".");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!("leaflets", page));
}

#[test]
fn one_fault_brings_one_message_and_no_follow_ups() {
    let single: Vec<_> = gallery().into_iter().filter(|(_, set)| set.len() == 1).collect();
    assert!(single.len() > 80, "only {} files of one fault", single.len());
    for (name, set) in single {
        let faults = faults(&set);
        let wanted = match name.as_str() {
            // It lacks the nine keys of every leaflet, and rules.
            "a-file-with-nothing-in-it" => 10,
            "several-faults-in-one-file" => 3,
            _ => 1,
        };
        assert_eq!(faults.len(), wanted, "{name}: {}", listed(&faults));
    }
}

#[test]
fn every_message_says_what_where_and_how_to_mend_it() {
    for (name, set) in gallery() {
        for Diagnostic { file, line, column, message, help } in faults(&set) {
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

#[test]
fn every_fault_of_every_file_is_reported_at_once_in_the_order_of_the_files() {
    let mut together = Set::new();
    let mut one_by_one = Vec::new();
    for (_, set) in gallery().into_iter().filter(|(_, set)| set.len() == 1) {
        one_by_one.extend(faults(&set));
        together.extend(set);
    }
    one_by_one.sort_by(|a, b| a.file.cmp(&b.file));
    assert!(one_by_one.len() > 80);
    assert_eq!(listed(&faults(&together)), listed(&one_by_one));
}

#[test]
fn within_a_file_faults_come_in_the_order_of_lines() {
    let mut several = 0;
    for (name, set) in gallery() {
        let faults = faults(&set);
        several += usize::from(faults.len() > 1);
        let places: Vec<_> = faults.iter().map(|fault| (&fault.file, fault.line, fault.column)).collect();
        assert!(places.is_sorted(), "{name}: {places:?}");
    }
    assert!(several >= 2);
}

/// Each broken file on its own, each folder as a set; by name.
fn gallery() -> BTreeMap<String, Set> {
    let mut gallery = BTreeMap::new();
    for path in listing(&root().join("tests/errors/leaflets")) {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let mut set = Set::new();
        if path.is_dir() {
            read_below(&path, "", &mut set);
        } else {
            set.insert(format!("zz/{name}.toml"), std::fs::read_to_string(&path).unwrap());
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

fn listing(folder: &Path) -> Vec<PathBuf> {
    let mut paths: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths
}

fn faults(set: &Set) -> Vec<Diagnostic> {
    let loaded = Leaflets::load(set.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    loaded.expect_err("a broken leaflet is refused")
}

/// A fault with the line it points at.
fn as_read(fault: &Diagnostic, text: &str) -> String {
    let Diagnostic { file, line, column, message, help } = fault;
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

fn listed(faults: &[Diagnostic]) -> String {
    faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}
