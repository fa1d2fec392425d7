//! The type of a document, read from its content, and whether it is complete.

use combclear_domain::basics::words::MediaType;
use combclear_domain::journal::document::{Unfit, media_type};
use combclear_testkit::documents::sample;

use super::told;

#[test]
fn each_type_is_known_by_its_content() {
    for wanted in MediaType::ALL {
        assert_eq!(media_type(&sample(*wanted, "invoice 17")), Ok(*wanted));
    }
}

#[test]
fn what_cameras_and_writers_put_behind_the_end_does_no_harm() {
    for (wanted, behind) in [
        (MediaType::Pdf, &b"\r\n\0\0\0   "[..]),
        (MediaType::Jpeg, b"\0\0\0\0 a second picture \xff\xd8\xff"),
        (MediaType::Png, b"\0\0"),
        // A box of its own.
        (MediaType::Heic, b"\0\0\0\x0cfree\0\0\0\0"),
    ] {
        let bytes = [&sample(wanted, "invoice 17")[..], behind].concat();
        assert_eq!(media_type(&bytes), Ok(wanted));
    }
}

/// A picture cut off anywhere is refused; so is a PDF, unless its last line is complete.
#[test]
fn a_document_that_breaks_off_anywhere_is_refused() {
    for wanted in MediaType::ALL {
        let whole = sample(*wanted, "invoice 17");
        // The line break after the last line of a PDF may be missing; the last box of a HEIC may be empty.
        let last = match wanted {
            MediaType::Pdf => whole.len() - 1,
            _ => whole.len(),
        };
        let mut cut_off = 0;
        for length in 1..last {
            match media_type(&whole[..length]) {
                Err(Unfit::CutOff { media_type, .. }) => {
                    assert_eq!(media_type, *wanted);
                    cut_off += 1;
                }
                // Too short to show its type.
                Err(Unfit::OtherType(_)) if length < 24 => {}
                // A cut between its last two boxes leaves no trace.
                Ok(MediaType::Heic) if whole[length..].starts_with(b"\0\0\0\x12mdat") => {}
                other => panic!("{wanted} up to {length} of {}: {other:?}", whole.len()),
            }
        }
        assert!(cut_off > 40, "{wanted}: {cut_off}");
    }
}

#[test]
fn what_looks_cut_off_says_what_is_missing() {
    for (wanted, message) in [
        (MediaType::Pdf, "the PDF looks cut off: there is no `%%EOF` near its end"),
        (MediaType::Jpeg, "the JPEG looks cut off: its end marker is missing"),
        (MediaType::Png, "the PNG looks cut off: its last chunk, IEND, is missing"),
        (MediaType::Heic, "the HEIC looks cut off: a box runs past the end"),
    ] {
        let whole = sample(wanted, "invoice 17");
        let unfit = media_type(&whole[..whole.len() - 9]).unwrap_err();
        let unfit = told::unfit(&unfit);
        assert_eq!(unfit.message, message);
        assert!(unfit.help.starts_with("copy it again from the original"), "{}", unfit.help);
    }
    let only_type = media_type(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic").unwrap_err();
    let said = "the HEIC looks cut off: the box that describes the picture is missing";
    assert_eq!(told::unfit(&only_type).message, said);
    // The end of a PDF stands at its end: one that was written over an older one has several.
    let long = [&sample(MediaType::Pdf, "a")[..], &[b' '; 5000]].concat();
    assert!(matches!(media_type(&long), Err(Unfit::CutOff { media_type: MediaType::Pdf, .. })));
}

#[test]
fn anything_else_is_refused_whatever_it_is_called() {
    let png_of_one_word = b"\x89PNG".to_vec();
    for (what, bytes, shown) in [
        ("a ZIP", b"PK\x03\x04\x14\0\0\0\0\0".to_vec(), Some("application/zip")),
        ("HTML", b"<!DOCTYPE html><script>alert(1)</script>".to_vec(), Some("text/html")),
        // Some readers would take it for a PDF, and some browsers for a page.
        ("HTML with a PDF in it", b"<html>\n%PDF-1.4\n%%EOF\n</html>".to_vec(), None),
        ("SVG", br#"<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>"#.to_vec(), None),
        ("SVG with a declaration", br#"<?xml version="1.0"?><svg/>"#.to_vec(), Some("text/xml")),
        (
            "a program for Linux",
            [&b"\x7fELF\x02\x01\x01"[..], &[0; 60]].concat(),
            Some("application/x-executable"),
        ),
        (
            "a program for Windows",
            [&b"MZ\x90\0"[..], &[0; 60]].concat(),
            Some("application/vnd.microsoft.portable-executable"),
        ),
        ("a script", b"#!/bin/sh\nrm -r x\n".to_vec(), Some("text/x-shellscript")),
        ("text", b"invoice 17".to_vec(), None),
        ("a GIF", b"GIF89a\x01\0\x01\0\0\0\0;".to_vec(), Some("image/gif")),
        ("a film", b"\0\0\0\x18ftypisom\0\0\0\0isommp42\0\0\0\x08mdat".to_vec(), Some("video/mp4")),
        ("blanks before a PDF", [b" ", &sample(MediaType::Pdf, "a")[..]].concat(), None),
        ("nothing but zeros", vec![0; 100], None),
    ] {
        let unfit = media_type(&bytes).unwrap_err();
        assert_eq!(unfit, Unfit::OtherType(shown), "{what}");
        assert!(told::unfit(&unfit).message.ends_with("not a PDF, JPEG, PNG or HEIC"), "{unfit}");
    }
    assert!(matches!(media_type(&png_of_one_word), Err(Unfit::CutOff { .. })));
}

#[test]
fn a_document_has_one_byte_at_least_and_ten_million_at_most() {
    assert_eq!(media_type(&[]), Err(Unfit::Empty));
    let mut bytes = sample(MediaType::Jpeg, "large");
    bytes.resize(10_000_000, 0);
    assert_eq!(media_type(&bytes), Ok(MediaType::Jpeg));
    bytes.push(0);
    assert_eq!(media_type(&bytes), Err(Unfit::TooLarge));
    assert_eq!(told::unfit(&Unfit::TooLarge).message, "the document has more than 10 MB (10000000 bytes)");
}
