//! What holds of every text that is read as an entry, and as the body of one.

use combclear_domain::journal::entry::{EntryFault, Envelope};
use combclear_domain::journal::{Draft, Entry, Event, Kind};
use combclear_domain::{Day, Instant};
use combclear_wording::{Words, unreadable};

/// Reads the bytes as a draft, and as a sealed entry.
pub fn check(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    match Draft::from_json(text, None) {
        Ok(draft) => is_written_as_it_is_read(&draft),
        Err(faults) => are_said(&faults),
    }
    match Entry::from_json(text) {
        Ok(entry) => assert_eq!(entry.to_json(), text),
        Err(fault) => are_said(&[fault]),
    }
}

/// Reads what stands after the first byte as the body of an entry. The first byte chooses the kind.
pub fn check_body(bytes: &[u8]) {
    let Some((first, body)) = bytes.split_first() else { return };
    let Ok(body) = std::str::from_utf8(body) else { return };
    let kind = Kind::ALL[usize::from(*first) % Kind::ALL.len()];
    match Event::read(kind, body) {
        Ok(event) => {
            assert_eq!(event.kind(), kind);
            let written = event.to_body();
            assert_eq!(Event::read(kind, &written).as_ref(), Ok(&event), "{written}");
            assert!(!written.contains('\n'), "{written}");
            // Blanks between the parts of a body mean nothing.
            let spread: serde_json::Value = serde_json::from_str(&written).unwrap();
            let spread = serde_json::to_string_pretty(&spread).unwrap();
            assert_eq!(Event::read(kind, &spread).as_ref(), Ok(&event), "{spread}");
            let id = "00000000-0000-7000-8000-000000000001".parse().unwrap();
            let correcting = Draft::new(id, Day::LAST, "K".parse().unwrap(), event).correcting(id, "why");
            is_written_as_it_is_read(&correcting);
        }
        Err(fault) => {
            assert!(is_a_pointer(&fault.pointer), "{fault:?}");
            assert!(!unreadable::misread(Words::english(), &fault.what).is_empty(), "{fault:?}");
        }
    }
}

/// A draft is written in one way, and is then read as the same. So is the entry that is sealed from it.
fn is_written_as_it_is_read(draft: &Draft) {
    let written = serde_json::to_string(&Envelope::of(draft)).unwrap();
    let read = Draft::from_json(&written, None);
    assert_eq!(read.as_ref(), Ok(draft), "{written}");
    assert_eq!(draft.body.as_ref(), draft.event.to_body(), "the body is not in canonical form");
    let holding = "test".parse().unwrap();
    let at: Instant = "2026-08-29T08:00:00.000Z".parse().unwrap();
    let entry = Entry::seal(&holding, draft.clone(), at, None);
    let line = entry.to_json();
    assert!(!line.contains('\n'), "{line}");
    assert_eq!(Entry::from_json(&line).as_ref(), Ok(&entry), "{line}");
    assert_eq!(entry.follows(&holding, None), Ok(()));
}

/// There is a fault, none is told twice, and each has a place and a sentence.
fn are_said(faults: &[EntryFault]) {
    assert!(!faults.is_empty(), "it is refused for nothing");
    for (index, fault) in faults.iter().enumerate() {
        assert!(is_a_pointer(&fault.pointer), "{fault}");
        assert!(!faults[..index].contains(fault), "{fault} is told twice");
        let said = unreadable::line(Words::english(), fault);
        assert!(!said.message.is_empty() && !said.help.is_empty(), "{fault} is not said");
    }
}

fn is_a_pointer(text: &str) -> bool {
    text.is_empty() || text.starts_with('/')
}
