//! The inspection pack: one ZIP file with the register in every format, the proofs, and checksums.
//!
//! The same input gives the same bytes. File names in it consist of letters, digits, hyphens and underscores only, whatever
//! a document was called.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::io::{Cursor, Write};

use combclear_domain::Instant;
use combclear_domain::basics::words::MediaType;
use combclear_domain::journal::{Checkpoint, Content, Hash};
use combclear_domain::questions::register::{DocumentPart, Register};
use combclear_wording::gaps::GapsReport;
use combclear_wording::pack::{self as say, Part};
use combclear_wording::register::RegisterReport;
use combclear_wording::{Label, Words};
use maud::{Markup, html};
use sha2::{Digest, Sha256};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

use crate::exchange::{Exchange, notes};
use crate::look::cautions;
use crate::sheet::{Paper, visible, written};
use crate::typesetter::{NotSet, Typesetter};
use crate::{flat, html};

/// The content of a pack.
#[derive(Debug, Clone, Copy)]
pub struct Input<'a> {
    /// The register.
    pub register: &'a Register,
    /// The gaps, if asked for.
    pub gaps: Option<&'a GapsReport>,
    /// The contents of documents that the register names, as far as they are stored.
    pub contents: &'a [Content],
    /// Missing and altered contents.
    pub failing: &'a [Failing],
    /// Makes the PDF. Without one the pack has no PDF and says so.
    pub typesetter: Option<&'a dyn Typesetter>,
    /// The creation time written to all files.
    pub made: Instant,
}

/// A missing or altered content.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Failing {
    /// Its hash.
    pub hash: Hash,
    /// The reason.
    pub why: Why,
}

/// Why a content cannot be included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// It is no longer stored.
    Missing,
    /// The stored content is not the one attached.
    Altered,
}

/// A pack that could not be put together.
#[derive(Debug, thiserror::Error)]
pub enum NotPacked {
    /// The PDF could not be made.
    #[error(transparent)]
    Pages(#[from] NotSet),
    /// The CSV could not be written.
    #[error(transparent)]
    Csv(#[from] flat::NotWritten),
    /// JSON could not be written.
    #[error("the JSON could not be written: {0}")]
    Json(#[from] serde_json::Error),
    /// The ZIP file could not be put together.
    #[error("the pack could not be put together: {0}")]
    Zip(#[from] zip::result::ZipError),
    /// The ZIP file could not be written.
    #[error("the pack could not be written: {0}")]
    Write(#[from] std::io::Error),
}

/// Makes the pack.
///
/// # Errors
/// None is known for any register, since it is written to memory.
pub fn pack(input: &Input<'_>) -> Result<Vec<u8>, NotPacked> {
    let register = input.register;
    let words = Words::english();
    let proofs = proofs(words, input);
    let paper = Paper::of(register, input.gaps);
    let exchange = Exchange::of(register);
    let mut files = vec![
        PackedFile::new("index.html", index(words, input, &paper, &proofs).into_bytes()),
        PackedFile::new("register.html", html::page(&paper).into_bytes()),
    ];
    if let Some(typesetter) = input.typesetter {
        files.push(PackedFile::new("register.pdf", typesetter.set(&paper, input.made)?.bytes));
    }
    files.extend([
        PackedFile::new("register.csv", flat::csv(register)?),
        PackedFile::new("register.json", json(&RegisterReport::of(words, register))?),
        PackedFile::new("exchange-treatments.json", json(&exchange.treatments)?),
        PackedFile::new("exchange-transactions.json", json(&exchange.transactions)?),
    ]);
    if let Some(gaps) = input.gaps {
        files.push(PackedFile::new("gaps.html", html::page(&Paper::of_gaps(gaps, register)).into_bytes()));
        files.push(PackedFile::new("gaps.json", json(gaps)?));
    }
    if let Some(checkpoint) = checkpoint(register) {
        files.push(PackedFile::new("checkpoint.txt", checkpoint.to_string().into_bytes()));
    }
    let mut packed: BTreeSet<&str> = BTreeSet::new();
    for proof in &proofs {
        if let Ok((name, bytes)) = &proof.kept
            && packed.insert(name)
        {
            // Pictures and PDFs are compressed already.
            let how = CompressionMethod::Stored;
            files.push(PackedFile { name: name.clone(), bytes: Cow::Borrowed(bytes), how });
        }
    }
    zipped(&files, input.made)
}

struct PackedFile<'a> {
    name: String,
    bytes: Cow<'a, [u8]>,
    how: CompressionMethod,
}

impl<'a> Input<'a> {
    /// The hashes of the contents that a register names, in order, with repeats.
    #[must_use]
    pub fn wanted(register: &'a Register) -> Vec<Hash> {
        register.documents().map(|(_, document)| document.content).collect()
    }
}

impl PackedFile<'_> {
    fn new(name: &str, bytes: Vec<u8>) -> PackedFile<'static> {
        PackedFile { name: name.to_owned(), bytes: Cow::Owned(bytes), how: CompressionMethod::Deflated }
    }
}

/// The state of the journal from which the register was read.
fn checkpoint(register: &Register) -> Option<Checkpoint> {
    let head = register.head?;
    Some(Checkpoint { holding: register.holding.clone(), entries: register.entries, head })
}

fn json(value: &impl serde::Serialize) -> Result<Vec<u8>, serde_json::Error> {
    let mut text = serde_json::to_vec_pretty(value)?;
    text.push(b'\n');
    Ok(text)
}

fn zipped(files: &[PackedFile<'_>], made: Instant) -> Result<Vec<u8>, NotPacked> {
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(dos_time(made).unwrap_or_default())
        .unix_permissions(0o644);
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    let mut sums = String::new();
    for file in files {
        zip.start_file(file.name.as_str(), options.compression_method(file.how))?;
        zip.write_all(&file.bytes)?;
        sums.push_str(&format!("{}  {}\n", hex::encode(Sha256::digest(&file.bytes)), file.name));
    }
    zip.start_file("SHA256SUMS", options)?;
    zip.write_all(sums.as_bytes())?;
    Ok(zip.finish()?.into_inner())
}

/// The instant in the ZIP format, in UTC; `None` before 1980 and after 2107.
fn dos_time(made: Instant) -> Option<DateTime> {
    let text = made.to_string();
    let mut parts = text.split(['-', 'T', ':', '.']).map(str::parse::<u16>).map_while(Result::ok);
    let year = parts.next()?;
    let mut small = parts.map_while(|part| u8::try_from(part).ok());
    DateTime::from_date_and_time(
        year,
        small.next()?,
        small.next()?,
        small.next()?,
        small.next()?,
        small.next()?,
    )
    .ok()
}

/// A document and the record it belongs to.
struct Proof<'a> {
    /// What it proves, in words.
    of: String,
    document: &'a DocumentPart,
    /// Its name in the pack and its content, or why it is missing.
    kept: Result<(String, &'a [u8]), Label>,
}

/// Every document of the register, in order. A content named several times has one file.
fn proofs<'a>(words: &Words, input: &Input<'a>) -> Vec<Proof<'a>> {
    let acquired = input.register.acquisitions.iter().flat_map(|row| {
        let of = say::acquisition(words, row.written.seq, &row.lot);
        row.documents.iter().map(move |document| (of.clone(), document))
    });
    let prescribed = input.register.prescriptions.iter().flat_map(|row| {
        let of = say::prescription(words, row.written.seq, &row.prescription.number);
        row.documents.iter().map(move |document| (of.clone(), document))
    });
    let mut known: Vec<(Hash, String)> = Vec::new();
    let mut proofs = Vec::new();
    for (of, document) in acquired.chain(prescribed) {
        let kept = content(input, document.content).map(|bytes| {
            let found = known.iter().find(|(hash, _)| *hash == document.content);
            let name = if let Some((_, name)) = found {
                name.clone()
            } else {
                let name = name_of(known.len() + 1, document);
                known.push((document.content, name.clone()));
                name
            };
            (name, bytes)
        });
        proofs.push(Proof { of, document, kept });
    }
    proofs
}

/// The content of a document, if it is as attached.
fn content<'a>(input: &Input<'a>, hash: Hash) -> Result<&'a [u8], Label> {
    match input.failing.iter().find(|failing| failing.hash == hash).map(|failing| failing.why) {
        Some(Why::Missing) => return Err(Label::PackNotKept),
        Some(Why::Altered) => return Err(Label::PackAltered),
        None => {}
    }
    let content = input.contents.iter().find(|content| content.hash() == hash);
    content.map(Content::bytes).ok_or(Label::PackNotGiven)
}

/// Longest readable part of a name, in characters.
const NAME_MOST: usize = 40;

/// `proofs/003-invoice-H-1987.pdf`: the number makes it unique, the type gives the extension.
fn name_of(number: usize, document: &DocumentPart) -> String {
    let end = match document.media_type {
        MediaType::Pdf => "pdf",
        MediaType::Jpeg => "jpg",
        MediaType::Png => "png",
        MediaType::Heic => "heic",
    };
    let name = safe(document.file_name.as_deref().unwrap_or_default());
    format!("proofs/{number:03}-{name}.{end}")
}

/// The letters, digits and underscores of a text, with a hyphen for each run of others; `document` if nothing remains.
///
/// At most 40 ASCII characters: safe in file names everywhere, and within quotes in an HTTP header.
#[must_use]
pub fn safe_name(text: &str) -> String {
    let mut safe = String::new();
    for sign in text.chars() {
        if sign.is_ascii_alphanumeric() || sign == '_' {
            safe.push(sign);
        } else if !safe.is_empty() && !safe.ends_with('-') {
            safe.push('-');
        }
        if safe.len() == NAME_MOST {
            break;
        }
    }
    let safe = safe.trim_matches('-');
    if safe.is_empty() { "document".to_owned() } else { safe.to_owned() }
}

/// A file name without extension, made safe.
fn safe(file_name: &str) -> String {
    safe_name(file_name.rsplit_once('.').map_or(file_name, |(stem, _)| stem))
}

fn index(words: &Words, input: &Input<'_>, paper: &Paper, proofs: &[Proof<'_>]) -> String {
    let checkpoint = checkpoint(input.register);
    let label = |label| words.label(label);
    let file = |name: &str, says| html! { a href=(name) { (name) } ": " (label(says)) };
    let body = html! {
        h1 { (label(Label::PackTitle)) }
        dl {
            div { dt { (label(Label::Holding)) } dd { (visible(&paper.holding)) } }
            @for fact in &paper.facts { div { dt { (fact.head) } dd { (visible(&fact.says)) } } }
            div { dt { (label(Label::PackPutTogether)) } dd { (input.made) } }
        }
        p { strong { (paper.notice) } }
        h2 { (label(Label::PackContents)) }
        ul {
            li { (file("register.html", Label::PackHtml)) }
            @if input.typesetter.is_some() {
                li { (file("register.pdf", Label::PackPdf)) }
            } @else {
                li { (label(Label::PackNoPdf)) }
            }
            li { (file("register.csv", Label::PackCsv)) }
            li { (file("register.json", Label::PackJson)) }
            li {
                a href="exchange-treatments.json" { "exchange-treatments.json" } ", "
                (file("exchange-transactions.json", Label::PackExchange))
                ul { @for note in notes() { li { (note) } } }
            }
            @if input.gaps.is_some() {
                li { a href="gaps.html" { "gaps.html" } ", " (file("gaps.json", Label::PackGaps)) }
            } @else {
                li { (label(Label::PackGapsNotAsked)) }
            }
            @if checkpoint.is_some() { li { (file("checkpoint.txt", Label::PackCheckpoint)) } }
            li { (file("SHA256SUMS", Label::PackSums)) }
        }
        h2 id="proofs" { (label(Label::PackProofs)) }
        @if proofs.is_empty() { p { (label(Label::PackNoProofs)) } } @else { (table(words, proofs)) }
        h2 { (label(Label::PackHowToCheck)) }
        ol {
            li { (parts(&say::check_files(words, "sha256sum -c SHA256SUMS"))) }
            li { (label(Label::PackCheckProofs)) }
            @if let Some(Checkpoint { entries, head, .. }) = &checkpoint {
                li { (parts(&say::check_journal(words, "combclear verify --since-checkpoint checkpoint.txt", *entries, *head))) }
            }
        }
    };
    let title = format!("{}: {}, {}", label(Label::PackTitle), visible(&paper.holding), paper.period);
    html::document(words, &title, &body, paper.size)
}

fn table(words: &Words, proofs: &[Proof<'_>]) -> Markup {
    let heads = [Label::PackBelongsTo, Label::PackFile, Label::PackCalled, Label::Sha256];
    let called = |document: &DocumentPart| {
        let name = written(document.file_name.as_ref());
        name.map_or_else(|| words.label(Label::NotRecorded).to_owned(), visible)
    };
    html! {
        table {
            caption { (words.label(Label::PackProofsCaption)) }
            thead { tr { @for head in heads { th scope="col" { (words.label(head)) } } } }
            tbody { @for proof in proofs { tr {
                th scope="row" { (visible(&proof.of)) }
                td { @match &proof.kept {
                    Ok((name, bytes)) => {
                        a href=(name) { (name) }
                        @for caution in cautions(proof.document.media_type, bytes) {
                            br; em { (words.label(caution)) }
                        }
                    }
                    Err(why) => { em { (words.label(*why)) } }
                } }
                td { (called(proof.document)) }
                td { (proof.document.content) }
            } } }
        }
    }
}

/// A sentence with its commands marked as code.
fn parts(parts: &[Part]) -> Markup {
    html! {
        @for part in parts {
            @match part {
                Part::Words(words) => { (words) }
                Part::Code(code) => { code { (code) } }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_in_the_pack_is_safe_whatever_the_file_was_called() {
        let cases = [
            ("a plain name", "invoice H-1987.pdf", "invoice-H-1987"),
            ("a way out of the folder", "../../etc/passwd", "document"),
            ("a way out by backslashes", r"..\..\boot.ini", "boot"),
            ("an absolute path", "/root/x.pdf", "root-x"),
            ("control characters", "a\u{0}b\nc.png", "a-b-c"),
            ("a turned direction", "a\u{202e}fdp.exe", "a-fdp"),
            ("letters beyond ASCII", "Öl Rechnung.pdf", "l-Rechnung"),
            ("no letter at all", "\u{8702}.jpg", "document"),
            ("nothing", "", "document"),
            ("only an ending", ".pdf", "document"),
            ("a very long name", &"x".repeat(300), &"x".repeat(NAME_MOST)),
            ("a hyphen first, which a program may read as an option", "-rf.pdf", "rf"),
        ];
        for (name, file, expected) in cases {
            assert_eq!(safe(file), expected, "{name}");
        }
    }
}
