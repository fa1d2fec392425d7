//! The first line of a journal file, and the lines below it.

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::lines::{Header, Line, VERSION};
use combclear_domain::journal::{Entry, Hash};
use combclear_testkit::entries::read;
use proptest::prelude::*;

use super::drafts::{drafts, envelopes};
use super::told::told;

fn holding() -> HoldingName {
    "Test Holding".parse().unwrap()
}

#[test]
fn a_header_comes_back_to_the_byte() {
    let hash = Hash([0xab; 32]);
    for header in [
        Header::drafts(holding()),
        Header::sealed(holding(), 0, None),
        Header::sealed(holding(), 7, Some(hash)),
        Header::sealed(holding(), 7, Some(hash)).with_contents(2),
    ] {
        let line = header.to_json();
        assert_eq!(Header::from_json(&line), Ok(header));
        assert!(!line.contains('\n'), "{line}");
    }
    assert_eq!(
        Header::drafts(holding()).to_json(),
        r#"{"combclear_journal":1,"holding":"Test Holding","sealed":false}"#
    );
    // Without documents the header does not mention them: exports from before documents existed stay byte for byte the same.
    let without = Header::sealed(holding(), 0, None);
    assert_eq!(
        without.to_json(),
        r#"{"combclear_journal":1,"holding":"Test Holding","sealed":true,"entries":0}"#
    );
    assert_eq!(without.clone().with_contents(0), without);
    assert_eq!(
        without.with_contents(2).to_json(),
        r#"{"combclear_journal":1,"holding":"Test Holding","sealed":true,"entries":0,"contents":2}"#
    );
}

#[test]
fn a_header_that_cannot_be_read_says_why_and_what_to_do() {
    let first_line = "the first line looks like";
    for (line, pointer, message, help) in [
        ("", "", "the first line is not a journal header", first_line),
        ("colony,date", "", "the first line is not a journal header", first_line),
        ("{}", "", "the first line is not a journal header", first_line),
        (r#"{"id":"x","on":"2026-04-11"}"#, "", "the first line is not a journal header", first_line),
        (
            r#"{"combclear_journal":"1","holding":"H","sealed":false}"#,
            "",
            "the first line is not a journal header",
            first_line,
        ),
        (
            r#"{"combclear_journal":0,"holding":"H","sealed":false}"#,
            "/combclear_journal",
            "format version `0`; this program reads version 1",
            "the program that wrote the file",
        ),
        (
            r#"{"combclear_journal":2,"holding":"H","sealed":true}"#,
            "/combclear_journal",
            "format version `2`; this program reads version 1",
            "the program that wrote the file",
        ),
        // A later version may have other fields, so the fault is about the version.
        (
            r#"{"combclear_journal":2,"keeper":"K"}"#,
            "/combclear_journal",
            "format version `2`",
            "the program that wrote the file",
        ),
        (r#"{"combclear_journal":1,"holding":"H"}"#, "", "missing field `sealed`", first_line),
        (r#"{"combclear_journal":1,"sealed":false}"#, "", "missing field `holding`", first_line),
        (
            r#"{"combclear_journal":1,"holding":"","sealed":false}"#,
            "",
            "cannot be the name of a holding",
            first_line,
        ),
        (
            r#"{"combclear_journal":1,"holding":"H","sealed":false,"keeper":"K"}"#,
            "",
            "unknown field `keeper`",
            first_line,
        ),
        (
            r#"{"combclear_journal":1,"holding":"H","sealed":true}"#,
            "/entries",
            "must say how many entries follow",
            "export the journal again",
        ),
        (
            r#"{"combclear_journal":1,"holding":"H","sealed":false,"contents":1}"#,
            "/contents",
            "a file of drafts cannot carry the contents of documents",
            "attach each document once the entries are imported",
        ),
        (r#"{"combclear_journal":1,"holding":"H","sealed":true,"entries":-1}"#, "", "-1", first_line),
        (
            r#"{"combclear_journal":1,"holding":"H","sealed":true,"entries":1,"head":"AB"}"#,
            "",
            "`AB` is not a hash",
            first_line,
        ),
        (
            r#"{"combclear_journal":1,"holding":"H","sealed":false} {}"#,
            "",
            "the first line is not a journal header",
            first_line,
        ),
    ] {
        let fault = told(&Header::from_json(line).expect_err(line));
        // A header is one line and short: where in it a field stands is of no help, so only what it is about is checked.
        assert!(fault.pointer.starts_with(pointer), "{line}: {fault:?}");
        assert!(fault.message.contains(message), "{line}: {fault:?}");
        assert!(fault.help.contains(help), "{line}: {fault:?}");
    }
    assert_eq!(VERSION, 1);
}

#[test]
fn a_header_fault_gives_no_line_of_its_own_since_the_header_is_the_first() {
    let fault = told(&Header::from_json(r#"{"combclear_journal":1,"holding":"H"}"#).unwrap_err());
    assert!(!fault.message.contains(" at line "), "{fault:?}");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_line_is_read_as_the_header_promised(envelope in envelopes()) {
        let draft = read(&envelope);
        let sealed = Entry::seal(&holding(), draft.clone(), "2026-04-11T08:15:30.123Z".parse().unwrap(), None);
        let (drafts, exported) = (Header::drafts(holding()), Header::sealed(holding(), 1, Some(sealed.hash)));
        let as_draft = Line::from_json(&drafts, &envelope.to_string()).unwrap();
        prop_assert_eq!(as_draft.draft(), &draft);
        let as_sealed = Line::from_json(&exported, &sealed.to_json()).unwrap();
        prop_assert_eq!(as_sealed, Line::Sealed(sealed.clone()));
        prop_assert!(Line::from_json(&exported, &envelope.to_string()).is_err(), "a draft among sealed entries");
        prop_assert!(Line::from_json(&drafts, &sealed.to_json()).is_err(), "a sealed entry among drafts");
    }

    #[test]
    fn an_export_of_several_entries_follows_from_end_to_end(drafts in prop::collection::vec(drafts(), 1..6)) {
        let mut tip = None;
        let mut lines = Vec::new();
        for draft in drafts {
            let entry = Entry::seal(&holding(), draft, "2026-04-11T08:15:30.123Z".parse().unwrap(), tip);
            tip = Some(entry.tip());
            lines.push(entry.to_json());
        }
        let mut read = None;
        for line in &lines {
            let entry = Entry::from_json(line).unwrap();
            prop_assert_eq!(entry.follows(&holding(), read), Ok(()));
            read = Some(entry.tip());
        }
        prop_assert_eq!(read, tip);
        if lines.len() > 1 {
            let second = Entry::from_json(&lines[1]).unwrap();
            prop_assert!(second.follows(&holding(), None).is_err(), "the first entry was left out");
        }
    }
}
