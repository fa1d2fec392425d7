//! Files for other programs, and running those programs.

use std::io::{Cursor, Read};
use std::path::PathBuf;

use combclear_domain::basics::words::{ApiaryName, MediaType};
use combclear_domain::journal::{Content, Hash};
use combclear_domain::questions::register::Register;
use combclear_papers::look::cautions;
use combclear_papers::pack::{FILES, Found, Input, Packer, seasons, wanted};
use combclear_papers::{Paper, Typesetter, html};
use combclear_testkit::files::demo_holding;
use combclear_wording::register::RegisterReport;
use combclear_wording::{Label, Words};

use super::making::{autumn, demo, hard, made, with_documents};
use crate::one_line::OneLine;

/// A folder of this test alone.
fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("papers").join(name);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// Runs a script beside this file, which says what it found.
fn python(script: &str, arguments: &[PathBuf]) -> String {
    combclear_testkit::files::python(&format!("tests/papers/{script}"), arguments, "")
}

fn content(text: &str) -> Content {
    Content::new(text.as_bytes().to_vec())
}

/// The pack of a register, with those of its documents that are found.
fn packed(report: &Register, typesetter: Option<&dyn Typesetter>, found: impl Fn(Hash) -> Found) -> Vec<u8> {
    let mut packer = Packer::begin(Cursor::new(Vec::new()), made());
    for document in wanted(report) {
        packer.document(document, &found(document.content)).unwrap();
    }
    let mut told = 0;
    let input = Input { words: Words::english(), register: report, gaps: None, seasons: &[], typesetter };
    let pack = packer.finish(&input, |_| told += 1).unwrap();
    assert!(told <= FILES);
    pack.into_inner()
}

#[test]
fn python_opens_the_pack_and_finds_every_file_as_its_sum_says() {
    let contents = [content("one"), content("two"), content("three"), content("four")];
    let hashes: Vec<_> = contents.iter().map(Content::hash).collect();
    let names = ["../../etc/passwd", "invoice H-1987.pdf", "\u{8702}\u{0}.pdf", "gone.pdf"];
    let report = with_documents(hard(), &hashes, &names);
    let found = |hash| match contents[..3].iter().find(|content| content.hash() == hash) {
        Some(content) => Found::Kept(content.clone()),
        None if hash == hashes[3] => Found::Altered,
        None => Found::Missing,
    };
    let pack = packed(&report, Some(&OneLine), found);
    assert!(pack == packed(&report, Some(&OneLine), found), "the same input gives the same bytes");
    let file = folder("pack").join("pack.zip");
    std::fs::write(&file, pack).unwrap();
    insta::assert_snapshot!(python("check_zip.py", &[file]));
    let without = folder("pack-without-pdf").join("pack.zip");
    std::fs::write(&without, packed(&report, None, found)).unwrap();
    let files = python("check_zip.py", &[without]);
    assert!(files.contains("register.html") && !files.contains("register.pdf"), "{files}");
}

#[test]
fn the_pack_shows_the_season_of_each_apiary_and_the_index_leads_to_it() {
    let (holding, leaflets, on) =
        (demo_holding(), combclear_leaflets::builtin().unwrap(), "2026-08-29".parse().unwrap());
    let report = demo();
    for words in Words::all() {
        let drawn = seasons(words, &holding, leaflets, on);
        // Every apiary of the demo has colonies on that day.
        let apiaries: Vec<&str> = holding.apiaries().map(ApiaryName::as_str).collect();
        assert_eq!(drawn.iter().map(|season| season.apiary.as_str()).collect::<Vec<_>>(), apiaries);
        let input = Input { words, register: &report, gaps: None, seasons: &drawn, typesetter: None };
        let pack = Packer::begin(Cursor::new(Vec::new()), made()).finish(&input, |_| ()).unwrap();
        let mut pack = zip::ZipArchive::new(pack).unwrap();
        let mut text_of = |name: &str| {
            let mut text = String::new();
            pack.by_name(name).unwrap().read_to_string(&mut text).unwrap();
            text
        };
        let (index, sums) = (text_of("index.html"), text_of("SHA256SUMS"));
        assert!(index.contains(&format!("lang=\"{}\"", words.language())), "{index}");
        for (place, season) in drawn.iter().enumerate() {
            let name = format!("seasons/{:02}-{}.svg", place + 1, season.apiary);
            assert_eq!(text_of(&name), season.drawn, "{name}");
            assert!(index.contains(&format!("href=\"{name}\"")) && sums.contains(&name), "{name}");
        }
    }
}

#[test]
fn the_register_is_written_in_each_language_with_the_same_facts() {
    let report = demo();
    let [english, german] = Words::all().map(|words| html::page(&Paper::of(words, &report, None)));
    assert!(english.contains("lang=\"en\"") && german.contains("lang=\"de\""));
    // What people wrote stays as it was written, as often as in English; so do the days.
    for text in ["Perpetua Saltmarrow (demo)", "Palestrip 500 (demo)", "2026-07-11"] {
        assert!(english.contains(text));
        assert_eq!(english.matches(text).count(), german.matches(text).count(), "{text}");
    }
    assert_eq!(english.matches("<tr>").count(), german.matches("<tr>").count());
    assert!(german.contains("Wartezeit") && !german.contains("Withdrawal"), "{german}");
}

fn names(pack: &zip::ZipArchive<Cursor<Vec<u8>>>) -> Vec<String> {
    pack.file_names().map(|name| name.unwrap().into_owned()).collect()
}

/// A picture in HEIC that libheif 1.15.1 made of four fields of one colour each.
const SLIP: &[u8] = include_bytes!("data/slip.heic");

/// The copy is read by a JPEG decoder of its own, and shows the four colours that were drawn.
#[test]
fn a_picture_in_heic_has_a_copy_in_the_pack_that_an_office_can_open() {
    let slip = Content::new(SLIP.to_vec());
    let mut report = with_documents(demo(), &[slip.hash()], &["slip.HEIC"]);
    report.acquisitions[0].documents.last_mut().unwrap().media_type = MediaType::Heic;
    let pack =
        packed(
            &report,
            None,
            |hash| {
                if hash == slip.hash() { Found::Kept(slip.clone()) } else { Found::Missing }
            },
        );
    let mut pack = zip::ZipArchive::new(Cursor::new(pack)).unwrap();
    let mut read = |end: &str| {
        let name = names(&pack).into_iter().find(|name| name.ends_with(end)).unwrap();
        let mut bytes = Vec::new();
        pack.by_name(&name).unwrap().read_to_end(&mut bytes).unwrap();
        bytes
    };
    assert!(read("-slip.heic") == SLIP, "the original is unchanged");
    let index = String::from_utf8(read("index.html")).unwrap();
    assert!(
        index.contains("a copy in JPEG for offices that cannot open HEIC; the original counts"),
        "{index}"
    );
    let mut decoder = zune_jpeg::JpegDecoder::new(Cursor::new(read("-slip-copy.jpg")));
    let pixels = decoder.decode().unwrap();
    assert_eq!(decoder.dimensions(), Some((320, 240)));
    for (x, y, drawn) in [
        (80, 90, [240, 230, 200]),
        (240, 60, [40, 90, 160]),
        (80, 180, [200, 40, 40]),
        (240, 180, [30, 30, 30]),
    ] {
        let at = (y * 320 + x) * 3;
        let shown = &pixels[at..at + 3];
        let near = shown.iter().zip(drawn).all(|(shown, drawn)| shown.abs_diff(drawn) <= 6);
        assert!(near, "at {x}, {y}: {shown:?} for {drawn:?}");
    }
}

#[test]
fn a_picture_in_heic_that_cannot_be_read_is_kept_and_said_to_have_no_copy() {
    for (name, bytes) in [("cut off", &SLIP[..1_000]), ("empty", &b"\0\0\0\x18ftypheic"[..])] {
        let broken = Content::new(bytes.to_vec());
        assert_eq!(cautions(MediaType::Heic, bytes), [Label::HeicNoCopy], "{name}");
        let mut report = with_documents(demo(), &[broken.hash()], &["slip.heic"]);
        report.acquisitions[0].documents.last_mut().unwrap().media_type = MediaType::Heic;
        let found = |hash| if hash == broken.hash() { Found::Kept(broken.clone()) } else { Found::Missing };
        let pack = zip::ZipArchive::new(Cursor::new(packed(&report, None, found))).unwrap();
        assert!(names(&pack).iter().any(|file| file.ends_with("-slip.heic")), "{name}");
        assert!(!names(&pack).iter().any(|file| file.contains("-copy")), "{name}");
    }
    assert_eq!(cautions(MediaType::Heic, SLIP), []);
}

#[test]
fn python_reads_the_csv_back_as_the_json_tells_it() {
    for (name, report) in [("demo", demo()), ("autumn", autumn()), ("hard", hard())] {
        let folder = folder("csv");
        let csv = folder.join(format!("{name}.csv"));
        let json = folder.join(format!("{name}.json"));
        std::fs::write(&csv, combclear_papers::flat::csv(&report).unwrap()).unwrap();
        std::fs::write(&json, serde_json::to_vec(&RegisterReport::of(Words::english(), &report)).unwrap())
            .unwrap();
        let said = python("check_csv.py", &[csv, json]);
        assert!(said.starts_with("as the JSON tells it: "), "{said}");
    }
}
