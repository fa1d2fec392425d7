//! The contents of documents as lines of a journal file.

use combclear_domain::journal::{Content, Hash};
use proptest::prelude::*;

use super::told::told;

#[test]
fn a_hash_is_the_one_that_every_other_program_gives() {
    // Source: FIPS 180-4 example (SHA-256 of `abc`), as published with the standard.
    let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    assert_eq!(Hash::of_content(b"abc").to_string(), abc);
    // Source: RFC 4648, section 10: `foobar` in base64.
    let foobar = Content::new(b"foobar".to_vec());
    assert_eq!(
        foobar.to_json(),
        format!(r#"{{"content":"{}","bytes":6,"base64":"Zm9vYmFy"}}"#, Hash::of_content(b"foobar"))
    );
}

#[test]
fn a_line_that_is_not_what_was_written_out_says_what_is_wrong() {
    let good = Content::new(b"foobar".to_vec()).to_json();
    let other = Hash::of_content(b"foobaz").to_string();
    let hash = Hash::of_content(b"foobar").to_string();
    for (line, pointer, message) in [
        (good.replace("Zm9vYmFy", "Zm9vYmF6"), "/content", "does not match its hash"),
        (good.replace("Zm9vYmFy", "Zm9v"), "/bytes", "the document has 3 bytes; the line says 6"),
        (good.replace("Zm9vYmFy", "Zm9vYmF"), "/base64", "are not base64"),
        (good.replace("Zm9vYmFy", "Zm9v YmFy"), "/base64", "are not base64"),
        (good.replace(":6,", ":7,"), "/bytes", "the document has 6 bytes; the line says 7"),
        (good.replace(&hash, &other), "/content", "does not match its hash"),
        (good.replace(&hash, &hash.to_uppercase()), "/content", "is not a hash of 64 hexadecimal digits"),
        (good.replace(",\"bytes\"", ", \"bytes\""), "", "is not written exactly as it was exported"),
        (good.replace("Zm9v", r"\u005am9v"), "", "is not written exactly as it was exported"),
        (good.replace('}', r#","name":"x"}"#), "/name", "unknown field `name`"),
        (good.replace(r#","base64":"Zm9vYmFy""#, ""), "", "missing field `base64`"),
        (
            Content::new(Vec::new()).to_json(),
            "/bytes",
            "the document has 0 bytes; it must have at least 1 byte and at most 10 MB",
        ),
        (good.trim_end_matches('}').to_owned(), "", "EOF"),
    ] {
        assert_ne!(line, good, "{message}");
        let fault = told(&Content::from_json(&line).expect_err(&line));
        assert!(fault.pointer.starts_with(pointer) && fault.message.contains(message), "{line}: {fault:?}");
        assert!(!fault.help.is_empty(), "{line}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_content_comes_back_to_the_byte(bytes in prop::collection::vec(any::<u8>(), 1..300)) {
        let content = Content::new(bytes.clone());
        let line = content.to_json();
        prop_assert!(!line.contains('\n'));
        let read = Content::from_json(&line).unwrap();
        prop_assert_eq!(read.bytes(), &bytes);
        prop_assert_eq!(read, content);
    }

    #[test]
    fn any_other_sign_in_a_line_is_refused(
        bytes in prop::collection::vec(any::<u8>(), 1..60), at in any::<prop::sample::Index>(), sign in 0x20_u8..0x7f
    ) {
        let line = Content::new(bytes).to_json();
        let mut changed = line.clone().into_bytes();
        let at = at.index(changed.len());
        prop_assume!(changed[at] != sign);
        changed[at] = sign;
        prop_assert!(Content::from_json(&String::from_utf8(changed).unwrap()).is_err());
    }
}
