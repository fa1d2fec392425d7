//! What a PDF does besides showing pages is said in the pack.
//!
//! Source: ISO 32000-1:2008, 7.3.5, 7.5.7, 7.6, 7.11.4, 12.6.4.5, 12.6.4.16. The files are the sample of this project with one
//! object more.

use std::io::Write;

use combclear_domain::basics::words::MediaType;
use combclear_papers::look::cautions;
use combclear_testkit::documents::sample;
use combclear_wording::{Label, Words};
use flate2::Compression;
use flate2::write::ZlibEncoder;

fn with(object: &[u8]) -> Vec<u8> {
    [b"%PDF-1.7\n9 0 obj\n".as_slice(), object, b"\nendobj\n", &sample(MediaType::Pdf, "a page")].concat()
}

/// The object within a packed stream of objects, as most programs write it today.
fn packed(object: &[u8]) -> Vec<u8> {
    let mut zlib = ZlibEncoder::new(Vec::new(), Compression::default());
    zlib.write_all(object).unwrap();
    let packed = zlib.finish().unwrap();
    let head =
        format!("<< /Type /ObjStm /N 1 /First 4 /Filter /FlateDecode /Length {} >>\nstream\n", packed.len());
    with(&[head.as_bytes(), &packed, b"\nendstream"].concat())
}

#[test]
fn a_locked_pdf_and_one_that_does_more_than_show_say_so() {
    use Label::{PdfFileInside, PdfLaunch, PdfLocked, PdfScript};
    for (object, wanted, name) in [
        (b"<< /Type /Page >>".as_slice(), vec![], "a page"),
        (b"<< /Encrypt 5 0 R >>", vec![PdfLocked], "a locked file"),
        (b"<< /S /JavaScript /JS (app.alert(1)) >>", vec![PdfScript], "a script"),
        (b"<< /S /J#61vaScript >>", vec![PdfScript], "a script whose name is escaped"),
        (b"<< /S /Launch /F (x.exe) >>", vec![PdfLaunch], "a program"),
        (b"<< /Type/EmbeddedFile/Length 3 >>", vec![PdfFileInside], "a file inside"),
        (b"<< /OpenAction << /S/Launch >> /Encrypt 5 0 R >>", vec![PdfLocked, PdfLaunch], "both"),
        (b"<< /JSON 1 /Launcher 2 /Encrypted false >>", vec![], "names that only begin alike"),
    ] {
        assert_eq!(cautions(MediaType::Pdf, &with(object)), wanted, "{name}");
        assert_eq!(cautions(MediaType::Pdf, &packed(object)), wanted, "{name}, packed");
        assert_eq!(cautions(MediaType::Png, &with(object)), vec![], "{name}, which is no PDF");
    }
    assert_eq!(Words::english().label(PdfScript), "contains a script");
}

/// A few bytes that unpack to very many are looked at up to a limit, and that is said.
#[test]
fn what_unpacks_to_very_much_is_not_looked_into_as_a_whole() {
    let bomb = packed(&vec![b' '; 40 * 1024 * 1024]);
    assert!(bomb.len() < 100_000);
    assert_eq!(cautions(MediaType::Pdf, &bomb), [Label::PdfNotLookedInto]);
    let broken = with(b"<< /Type /ObjStm >>\nstream\nno zlib at all\nendstream");
    assert_eq!(cautions(MediaType::Pdf, &broken), [Label::PdfNotLookedInto]);
}
