//! Sealed lines and the chain of hashes.

use combclear_domain::basics::calendar::Instant;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::seal::Broken;
use combclear_domain::journal::{Checkpoint, Draft, Entry, Hash};
use combclear_testkit::entries::read;
use combclear_wording::Words;
use combclear_wording::unreadable::{broken, misfit};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::drafts::{drafts, envelopes};

fn holding() -> HoldingName {
    "Test Holding".parse().unwrap()
}

fn instants() -> impl Strategy<Value = Instant> {
    (2000..2100_u16, 1..13_u8, 1..29_u8, 0..24_u8, 0..60_u8, 0..60_u8, 0..1000_u16).prop_map(
        |(y, mo, d, h, mi, s, ms)| {
            format!("{y}-{mo:02}-{d:02}T{h:02}:{mi:02}:{s:02}.{ms:03}Z").parse().unwrap()
        },
    )
}

fn tips() -> impl Strategy<Value = Option<(u64, Hash)>> {
    prop::option::of((1..100_000_u64, any::<[u8; 32]>().prop_map(Hash)))
}

/// Whether a changed line is detected: it cannot be read, or does not follow.
fn shows(line: &[u8], tip: Option<(u64, Hash)>) -> bool {
    let Ok(text) = std::str::from_utf8(line) else { return true };
    Entry::from_json(text).map_or(true, |entry| entry.follows(&holding(), tip).is_err())
}

/// An entry with every part of the envelope: time, correction, and a reason that needs escapes.
fn full() -> Draft {
    read(&json!({
        "id": "0190f0a1-beef-7abc-8def-abcdefabcdef",
        "on": "2026-04-11",
        "at": "09:30",
        "recorded_by": "a keeper",
        "kind": "inspection",
        "body": { "colony": "A1", "brood": "absent", "seams": 7, "feeder": false, "note": "calm \u{1f} \"é\"" },
        "copied_from": "red notebook \u{1f} 2025",
        "written_on": "2026-04-11",
        "corrects": "0190f0a1-cafe-7abc-8def-abcdefabcdef",
        "reason": "a \u{1f} slip\nof the pen",
    }))
}

#[test]
fn no_changed_byte_of_a_sealed_line_goes_unseen() {
    let tip = Some((41, Hash([0xab; 32])));
    let entry = Entry::seal(&holding(), full(), "2026-04-11T08:15:30.123Z".parse().unwrap(), tip);
    let line = entry.to_json();
    assert!(!shows(line.as_bytes(), tip), "the unchanged line stands");
    let mut unseen = Vec::new();
    for place in 0..line.len() {
        for byte in 0..=u8::MAX {
            let mut changed = line.clone().into_bytes();
            if std::mem::replace(&mut changed[place], byte) != byte && !shows(&changed, tip) {
                let around = &line[place.saturating_sub(12)..(place + 12).min(line.len())];
                unseen.push(format!(
                    "`{}` for `{}` in `{around}`",
                    char::from(byte),
                    char::from(line.as_bytes()[place])
                ));
            }
        }
    }
    let first: Vec<_> = unseen.iter().take(20).cloned().collect();
    assert!(unseen.is_empty(), "{} changes go unseen, such as\n{}", unseen.len(), first.join("\n"));
}

#[test]
fn an_entry_that_was_moved_or_belongs_elsewhere_does_not_follow() {
    let written: Instant = "2026-04-11T08:15:30.123Z".parse().unwrap();
    let first = Entry::seal(&holding(), full(), written, None);
    let second = Entry::seal(&holding(), full(), written, Some(first.tip()));
    let third = Entry::seal(&holding(), full(), written, Some(second.tip()));
    assert_eq!((first.seq, first.prev), (1, Hash::GENESIS));
    assert_eq!((second.seq, second.prev), (2, first.hash));
    assert_eq!(first.follows(&holding(), None), Ok(()));
    assert_eq!(second.follows(&holding(), Some(first.tip())), Ok(()));
    let words = Words::english();
    let what = |entry: &Entry, tip| entry.follows(&holding(), tip).unwrap_err();
    let said = |broken: &Broken| misfit(words, &broken.what);
    let gap = what(&third, Some(first.tip()));
    assert_eq!((gap.seq, said(&gap).as_str()), (3, "it comes after entry 1, so it should be entry 2"));
    assert_eq!(broken(words, &gap), format!("entry 3 ({}): {}", third.draft.id, said(&gap)));
    assert_eq!(said(&what(&second, None)), "it comes after entry 0, so it should be entry 1");
    let other = Entry::seal(&holding(), full(), written, Some((1, Hash([1; 32]))));
    assert_eq!(said(&what(&other, Some(first.tip()))), "its `prev` is not the hash of the entry before it");
    let elsewhere: HoldingName = "Another Holding".parse().unwrap();
    let changed = first.follows(&elsewhere, None).unwrap_err();
    assert_eq!(said(&changed), "its content does not match its hash: it was changed after it was recorded");
}

#[test]
fn the_hash_is_sha_256_over_fields_with_their_lengths() {
    // Source: Python's `hashlib`, over the bytes described in `journal/seal.rs`.
    let draft = read(&json!({
        "id": "00000000-0000-7000-8000-000000000001", "on": "2026-04-11", "recorded_by": "k", "kind": "supers_off",
        "body": { "colonies": ["A1"], "left_on": 0 },
    }));
    let entry = Entry::seal(&"H".parse().unwrap(), draft, "2026-04-11T08:15:30.123Z".parse().unwrap(), None);
    assert_eq!(entry.hash.to_string(), "b42c0af828cea9c55f484e17291b940329eea10c05fbbe9b65ba883b4478c8c6");
}

#[test]
fn the_hash_of_a_copied_entry_covers_what_it_was_copied_from_and_when_it_was_written_there() {
    // Source: Python's `hashlib`, over the bytes described in `journal/seal.rs`.
    let copied = |what: &str, written_on: &str| {
        let draft = read(&json!({
            "id": "00000000-0000-7000-8000-000000000001", "on": "2026-04-11", "recorded_by": "k", "kind": "supers_off",
            "body": { "colonies": ["A1"], "left_on": 0 }, "copied_from": what, "written_on": written_on,
        }));
        let entry =
            Entry::seal(&"H".parse().unwrap(), draft, "2026-04-11T08:15:30.123Z".parse().unwrap(), None);
        assert_eq!(Entry::from_json(&entry.to_json()).unwrap(), entry);
        entry.hash.to_string()
    };
    let hash = "c07305a347f12702695c5f27dc4f350ca73c2106dd1f3f56051b74f3bf02a92b";
    assert_eq!(copied("red notebook 2025", "2026-04-11"), hash);
    assert_ne!(copied("red notebook 2026", "2026-04-11"), hash);
    assert_ne!(copied("red notebook 2025", "2026-04-12"), hash);
}

/// Both or none; and not a blank.
#[test]
fn what_an_entry_was_copied_from_comes_with_the_day_on_which_it_was_written_there() {
    let pointers = |fields: Value| -> Vec<String> {
        let mut entry = json!({
            "id": "00000000-0000-7000-8000-000000000001", "on": "2026-04-11", "recorded_by": "k", "kind": "supers_off",
            "body": { "colonies": ["A1"], "left_on": 0 },
        });
        entry.as_object_mut().unwrap().extend(fields.as_object().unwrap().clone());
        let read = Draft::from_json(&entry.to_string(), None);
        read.err().into_iter().flatten().map(|fault| fault.pointer).collect()
    };
    assert_eq!(pointers(json!({ "copied_from": "notebook", "written_on": "2026-04-11" })), [""; 0]);
    assert_eq!(pointers(json!({ "copied_from": "notebook" })), ["/written_on"]);
    assert_eq!(pointers(json!({ "written_on": "2026-04-11" })), ["/copied_from"]);
    assert_eq!(pointers(json!({ "copied_from": " ", "written_on": "2026-04-11" })), ["/copied_from"]);
    assert_eq!(pointers(json!({ "copied_from": "notebook", "written_on": "11.4." })), ["/written_on"]);
    assert_eq!(pointers(json!({ "copied_from": 7, "written_on": 7 })), ["/copied_from", "/written_on"]);
}

#[test]
fn a_hash_is_read_in_one_spelling_only() {
    let hash = Hash([0xab; 32]);
    assert_eq!(hash.to_string().parse(), Ok(hash));
    for bad in [
        "",
        "ab",
        &"AB".repeat(32),
        &"ab".repeat(31),
        &"ab".repeat(33),
        &"xy".repeat(32),
        &format!(" {}", "ab".repeat(32)),
    ] {
        assert!(bad.parse::<Hash>().is_err(), "{bad}");
    }
}

#[test]
fn a_checkpoint_is_three_lines_and_nothing_else() {
    let checkpoint = Checkpoint { holding: holding(), entries: 7, head: Hash([0xab; 32]) };
    let text = checkpoint.to_string();
    let hash = "ab".repeat(32);
    assert_eq!(text, format!("combclear journal of Test Holding\n7\n{hash}\n"));
    assert_eq!(text.parse(), Ok(checkpoint));
    for bad in [
        String::new(),
        "combclear journal of Test Holding\n7\n".to_owned(),
        format!("combclear journal of Test Holding\n7\n{hash}\nmore\n"),
        format!("a journal of Test Holding\n7\n{hash}\n"),
        format!("combclear journal of \n7\n{hash}\n"),
        format!("combclear journal of Test Holding\nseven\n{hash}\n"),
        format!("combclear journal of Test Holding\n-7\n{hash}\n"),
        format!("combclear journal of Test Holding\n7\n{}\n", &hash[1..]),
    ] {
        let fault = super::told::said(bad.parse::<Checkpoint>().unwrap_err());
        assert!(fault.contains("a checkpoint has three lines"), "{bad:?}: {fault}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_sealed_line_comes_back_to_the_byte(draft in drafts(), written in instants(), tip in tips()) {
        let entry = Entry::seal(&holding(), draft, written, tip);
        let line = entry.to_json();
        prop_assert!(!line.contains('\n'), "one entry, one line");
        let back = Entry::from_json(&line).unwrap();
        prop_assert_eq!(back.to_json(), line);
        prop_assert_eq!(back.follows(&holding(), tip), Ok(()));
        prop_assert_eq!(&back, &entry);
    }

    #[test]
    fn a_body_written_in_another_way_is_kept_to_the_byte(envelope in envelopes(), written in instants()) {
        // The fields of a body in another order, as another program may write them.
        let body: Value = envelope["body"].clone();
        let mut draft = read(&envelope);
        draft.body = body.to_string().into();
        let line = Entry::seal(&holding(), draft, written, None).to_json();
        let back = Entry::from_json(&line).unwrap();
        prop_assert_eq!(back.draft.body.as_ref(), body.to_string());
        prop_assert_eq!(back.to_json(), line);
        prop_assert_eq!(back.follows(&holding(), None), Ok(()));
    }

    #[test]
    fn a_changed_byte_shows(
        draft in drafts(),
        written in instants(),
        tip in tips(),
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 24),
    ) {
        let line = Entry::seal(&holding(), draft, written, tip).to_json().into_bytes();
        for (place, byte) in changes {
            let place = place.index(line.len());
            // The other case of a letter is the change most likely to read the same.
            for byte in [byte, line[place] ^ 0x20, b' '] {
                let mut changed = line.clone();
                if std::mem::replace(&mut changed[place], byte) != byte {
                    prop_assert!(shows(&changed, tip), "{}", String::from_utf8_lossy(&changed));
                }
            }
        }
    }

    #[test]
    fn a_checkpoint_comes_back(name in "[A-Za-z][A-Za-z é'-]{0,20}[a-z]", entries in any::<u64>(), head in any::<[u8; 32]>()) {
        let checkpoint = Checkpoint { holding: name.parse().unwrap(), entries, head: Hash(head) };
        prop_assert_eq!(checkpoint.to_string().parse(), Ok(checkpoint.clone()));
    }

    #[test]
    fn a_draft_read_again_is_the_same(envelope in envelopes()) {
        let draft = read(&envelope);
        let again = combclear_domain::journal::entry::Envelope::of(&draft);
        let again = serde_json::to_value(&again).unwrap();
        prop_assert_eq!(read(&again), draft);
    }

    #[test]
    fn the_same_draft_gives_the_same_hash_and_another_draft_another(one in drafts(), two in drafts(), written in instants()) {
        let sealed = |draft: &Draft| Entry::seal(&holding(), draft.clone(), written, None).hash;
        prop_assert_eq!(sealed(&one), sealed(&one.clone()));
        prop_assert_eq!(sealed(&one) == sealed(&two), one == two);
    }
}
