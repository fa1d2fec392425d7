//! Writes the inputs that fuzzing begins with into a folder, one folder for each target: from the files of this repository.

use std::io::{Cursor, Read};
use std::path::PathBuf;
use std::{env, fs};

use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Kind;
use combclear_domain::journal::entry::Envelope;
use combclear_domain::journal::lines::Header;
use combclear_fuzz::sheet::PARTS;
use combclear_testkit::files::{demo, listing, root};
use combclear_wording::{Words, forms};
use combclear_workbook::columns::TABS;
use combclear_workbook::template;
use rust_xlsxwriter::Workbook;
use serde_json::Value;

/// Longest input. Longer files are cut by the fuzzer.
const MOST: usize = 16_384;

fn main() {
    let folder = PathBuf::from(env::args().nth(1).expect("the folder to write to"));
    let write = |target: &str, inputs: Vec<Vec<u8>>| {
        let folder = folder.join(target);
        fs::create_dir_all(&folder).unwrap();
        let inputs = inputs.into_iter().filter(|input| input.len() <= MOST);
        for (number, input) in inputs.enumerate() {
            fs::write(folder.join(format!("seed-{number:04}")), input).unwrap();
        }
    };
    let leaflets = ["crates/leaflets/gb", "crates/leaflets/us", "crates/leaflets/eu"];
    let examples = ["tests/errors/leaflets", "tests/supering/leaflets/zz", "tests/options/leaflets/zz"];
    write("leaflet", leaflets.iter().chain(&examples).flat_map(|folder| tables(folder)).collect());
    let laws = ["crates/leaflets/law", "tests/errors/laws"];
    write("law", laws.iter().flat_map(|folder| tables(folder)).collect());
    write("entry", entries());
    write("body", bodies());
    write("journal", journals());
    write("csv", TABS.into_iter().map(csv).collect());
    let workbooks: Vec<Vec<u8>> = TABS.into_iter().map(workbook).collect();
    write("workbook", workbooks.iter().map(|packed| parts(packed)).collect());
    write("xlsx", workbooks);
}

fn tables(folder: &str) -> Vec<Vec<u8>> {
    let is_table = |path: &PathBuf| path.extension().is_some_and(|end| end == "toml");
    listing(root().join(folder)).into_iter().filter(is_table).map(|path| fs::read(path).unwrap()).collect()
}

/// The drafts of the files of drafts, and every fifth entry of the demo.
fn entries() -> Vec<Vec<u8>> {
    let drafts = fs::read_to_string(root().join("tests/cli/data/spring.jsonl")).unwrap();
    let drafts = drafts.lines().skip(1).map(|line| line.as_bytes().to_vec());
    let of_demo = demo().into_iter().step_by(5).flat_map(|entry| {
        let draft = serde_json::to_vec(&Envelope::of(&entry.draft)).unwrap();
        [draft, entry.to_json().into_bytes()]
    });
    drafts.chain(of_demo).collect()
}

fn bodies() -> Vec<Vec<u8>> {
    let of_demo = demo().into_iter().map(|entry| (entry.draft.kind(), entry.draft.body.to_string()));
    // The form of each kind, with an empty text in every field.
    let empty = Kind::ALL.iter().map(|kind| {
        let fields = kind.fields().iter().map(|field| (field.name.to_owned(), Value::from("")));
        (*kind, Value::Object(fields.collect()).to_string())
    });
    let first = |kind: Kind| Kind::ALL.iter().position(|other| *other == kind).unwrap() as u8;
    of_demo.chain(empty).map(|(kind, body)| [&[first(kind)], body.as_bytes()].concat()).collect()
}

/// Short journals: the beginning of the demo, and then a few of its entries at a time.
fn journals() -> Vec<Vec<u8>> {
    let drafts: Vec<String> =
        demo().iter().map(|entry| serde_json::to_string(&Envelope::of(&entry.draft)).unwrap()).collect();
    let header = Header::drafts("demo".parse().unwrap()).to_json();
    let spring = fs::read_to_string(root().join("tests/cli/data/spring.jsonl")).unwrap();
    let spring: Vec<String> = spring.lines().skip(1).map(str::to_owned).collect();
    let whole = |lines: &[String]| format!("{header}\n{}\n", lines.join("\n")).into_bytes();
    let mut journals = vec![whole(&drafts[..drafts.len().min(45)]), whole(&spring[..40])];
    // What one colony takes: every entry that names it, and those that name nobody in particular.
    let mut holding = Holding::new("demo".parse().unwrap());
    demo().iter().for_each(|entry| holding.restore(entry));
    for colony in holding.colonies() {
        let name = format!("\"{colony}\"");
        let about = |line: &&String| {
            line.contains(&name)
                || ["holding_details", "apiary_details", "medicine_described", "lot_acquired"]
                    .iter()
                    .any(|kind| line.contains(&format!("\"kind\":\"{kind}\"")))
        };
        let lines: Vec<String> = drafts.iter().filter(about).cloned().collect();
        journals.push(whole(&lines));
    }
    let sealed: Vec<String> = demo().iter().take(20).map(|entry| entry.to_json()).collect();
    let head = demo().get(19).map(|entry| entry.hash);
    let header = Header::sealed("demo".parse().unwrap(), 20, head).to_json();
    journals.push(format!("{header}\n{}\n", sealed.join("\n")).into_bytes());
    journals
}

/// A row of examples below the headings of a kind.
fn csv(kind: Kind) -> Vec<u8> {
    let words = Words::english();
    let mut text = template::csv(words, kind).unwrap();
    text.extend_from_slice(forms::tab(words, kind).as_bytes());
    text.extend_from_slice(b",2026-08-20,,K,");
    text.extend_from_slice(b"M1,2,strip\r\n");
    text
}

/// One tab with a day and the same words in each of its other columns.
fn workbook(kind: Kind) -> Vec<u8> {
    let words = Words::english();
    let mut workbook = Workbook::new();
    let sheet = workbook.add_worksheet().set_name(forms::tab(words, kind)).unwrap();
    let headings = String::from_utf8(template::csv(words, kind).unwrap()).unwrap();
    let headings =
        headings.lines().next().unwrap().split(',').skip(1).map(|heading| heading.trim_matches('"'));
    for (column, heading) in headings.enumerate() {
        let column = u16::try_from(column).unwrap();
        sheet.write(0, column, heading).unwrap();
        match column {
            0 => sheet.write(1, column, "2026-08-20").unwrap(),
            1 => sheet,
            column if column % 2 == 0 => sheet.write(1, column, 2).unwrap(),
            _ => sheet.write(1, column, "M1").unwrap(),
        };
    }
    workbook.save_to_buffer().unwrap()
}

fn parts(packed: &[u8]) -> Vec<u8> {
    let mut archive = zip::ZipArchive::new(Cursor::new(packed)).unwrap();
    let mut part = |name: &str| {
        let mut content = Vec::new();
        archive.by_name(name).unwrap().read_to_end(&mut content).unwrap();
        content
    };
    PARTS.map(|name| part(name)).join(&0)
}
