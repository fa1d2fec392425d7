//! The inspection pack: one ZIP file with the register in every format, the proofs, and checksums.
//!
//! It is written file by file, so that no more than one of them is held in memory at a time: [`Packer::document`] for each
//! document that the register names, then [`Packer::finish`]. The same input gives the same bytes. File names in it consist
//! of letters, digits, hyphens and underscores only, whatever a document was called.

mod index;
mod names;

use std::collections::{HashMap, HashSet};
use std::io::{ErrorKind, Seek, SeekFrom, Write};

use combclear_domain::Day;
use combclear_domain::Instant;
use combclear_domain::basics::words::{ApiaryName, MediaType};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::keeping::ContentState;
use combclear_domain::journal::{Checkpoint, Content, Hash};
use combclear_domain::questions::register::{DocumentPart, Register};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::gaps::GapsReport;
use combclear_wording::register::RegisterReport;
use combclear_wording::{Label, Words};
use sha2::{Digest, Sha256};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

use crate::exchange::Exchange;
use crate::look::cautions;
use crate::office_copy::jpeg_of_heic;
use crate::sheet::Paper;
use crate::typesetter::{NotSet, Typesetter};
use crate::{flat, html};

use names::name_of_season;

pub use names::safe_name;

/// What a pack tells of, besides the documents.
#[derive(Debug, Clone, Copy)]
pub struct Input<'a> {
    /// The words in which it is written.
    pub words: &'static Words,
    /// The register.
    pub register: &'a Register,
    /// The gaps, if asked for.
    pub gaps: Option<&'a GapsReport>,
    /// The season of each apiary.
    pub seasons: &'a [Season],
    /// Makes the PDF. Without one the pack has no PDF and says so.
    pub typesetter: Option<&'a dyn Typesetter>,
}

/// The season of an apiary as a picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Season {
    /// The apiary.
    pub apiary: ApiaryName,
    /// The picture: SVG.
    pub drawn: String,
}

/// The seasons of the apiaries with colonies on a day.
#[must_use]
pub fn seasons(words: &Words, holding: &Holding, leaflets: &Leaflets, on: Day) -> Vec<Season> {
    let drawn = |apiary: &ApiaryName| {
        let here = holding.apiary(apiary, on)?.colonies;
        let drawn = combclear_pictures::around(words, holding, leaflets, apiary, &here, on)?;
        Some(Season { apiary: apiary.clone(), drawn })
    };
    holding.apiaries().filter_map(drawn).collect()
}

/// The most files, besides the seasons, that [`Packer::finish`] tells of.
pub const FILES: usize = 9;

/// A document that a register names, as it was found in the store.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Found {
    /// As it was attached.
    Kept(Content),
    /// It is no longer stored.
    Missing,
    /// The stored content is not the one attached.
    Altered,
}

impl From<Result<Content, ContentState>> for Found {
    fn from(found: Result<Content, ContentState>) -> Found {
        match found {
            Ok(content) => Found::Kept(content),
            Err(ContentState::Missing) => Found::Missing,
            Err(ContentState::Kept | ContentState::Altered) => Found::Altered,
        }
    }
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
    Zip(zip::result::ZipError),
    /// The ZIP file could not be written.
    #[error("the pack could not be written: {0}")]
    Write(#[from] std::io::Error),
}

impl From<zip::result::ZipError> for NotPacked {
    fn from(error: zip::result::ZipError) -> NotPacked {
        match error {
            zip::result::ZipError::Io(error) => NotPacked::Write(error),
            other => NotPacked::Zip(other),
        }
    }
}

/// A pack in the making.
pub struct Packer<W: Write + Seek> {
    zip: ZipWriter<UntilFailure<W>>,
    made: Instant,
    sums: String,
    proofs: Proofs,
}

/// What became of each document.
#[derive(Debug, Default)]
struct Proofs {
    by_hash: HashMap<Hash, Result<Put, Label>>,
    put: usize,
}

/// A document in the pack.
#[derive(Debug)]
struct Put {
    name: String,
    /// Its copy for an office that cannot open it.
    copy: Option<String>,
    /// What to know before opening it.
    cautions: Vec<Label>,
}

/// The documents that a register names, in order, each content once.
#[must_use]
pub fn wanted(register: &Register) -> Vec<&DocumentPart> {
    let mut known = HashSet::new();
    let documents = register.documents().map(|(_, document)| document);
    documents.filter(|document| known.insert(document.content)).collect()
}

impl<W: Write + Seek> Packer<W> {
    /// Begins a pack. `made` is the creation time written to all files.
    pub fn begin(out: W, made: Instant) -> Packer<W> {
        let out = UntilFailure { out, has_failed: false };
        Packer { zip: ZipWriter::new(out), made, sums: String::new(), proofs: Proofs::default() }
    }

    /// Puts a document in, or notes why it is not there. Of several with the same content only the first is put in.
    ///
    /// # Errors
    /// The file cannot be written.
    pub fn document(&mut self, document: &DocumentPart, found: &Found) -> Result<(), NotPacked> {
        if self.proofs.by_hash.contains_key(&document.content) {
            return Ok(());
        }
        let what = match found {
            Found::Kept(content) if content.hash() == document.content => Ok(self.put(document, content)?),
            Found::Kept(_) | Found::Altered => Err(Label::PackAltered),
            Found::Missing => Err(Label::PackNotKept),
        };
        self.proofs.by_hash.insert(document.content, what);
        Ok(())
    }

    fn put(&mut self, document: &DocumentPart, content: &Content) -> Result<Put, NotPacked> {
        self.proofs.put += 1;
        let (number, bytes) = (self.proofs.put, content.bytes());
        let name = names::name_of(number, document, None);
        // Pictures and PDFs are compressed already.
        self.add(&name, bytes, CompressionMethod::Stored)?;
        if document.media_type != MediaType::Heic {
            return Ok(Put { name, copy: None, cautions: cautions(document.media_type, bytes) });
        }
        let Some(jpeg) = jpeg_of_heic(bytes) else {
            return Ok(Put { name, copy: None, cautions: vec![Label::HeicNoCopy] });
        };
        let copy = names::name_of(number, document, Some(MediaType::Jpeg));
        self.add(&copy, &jpeg, CompressionMethod::Stored)?;
        Ok(Put { name, copy: Some(copy), cautions: Vec::new() })
    }

    /// Adds the register in every format and the index. `making` is told the name of each file before it is made.
    ///
    /// # Errors
    /// A file cannot be made or written.
    pub fn finish(mut self, input: &Input<'_>, mut making: impl FnMut(&str)) -> Result<W, NotPacked> {
        let (register, made) = (input.register, self.made);
        let words = input.words;
        let paper = Paper::of(words, register, input.gaps);
        let deflated = CompressionMethod::Deflated;
        let mut add = |name: &str, make: &dyn Fn() -> Result<Vec<u8>, NotPacked>| {
            making(name);
            let bytes = make()?;
            self.add(name, &bytes, deflated)
        };
        if let Some(typesetter) = input.typesetter {
            add("register.pdf", &|| Ok(typesetter.set(&paper, made)?.bytes))?;
        }
        add("register.html", &|| Ok(html::page(&paper).into_bytes()))?;
        add("register.csv", &|| Ok(flat::csv(register)?))?;
        add("register.json", &|| json(&RegisterReport::of(words, register)))?;
        let exchange = Exchange::of(register);
        add("exchange-treatments.json", &|| json(&exchange.treatments))?;
        add("exchange-transactions.json", &|| json(&exchange.transactions))?;
        if let Some(gaps) = input.gaps {
            add("gaps.html", &|| Ok(html::page(&Paper::of_gaps(words, gaps, register)).into_bytes()))?;
            add("gaps.json", &|| json(gaps))?;
        }
        for (place, season) in input.seasons.iter().enumerate() {
            add(&name_of_season(place, season), &|| Ok(season.drawn.clone().into_bytes()))?;
        }
        if let Some(checkpoint) = checkpoint(register) {
            add("checkpoint.txt", &|| Ok(checkpoint.to_string().into_bytes()))?;
        }
        let index = index::page(words, input, &paper, &self.proofs, made);
        self.add("index.html", index.as_bytes(), deflated)?;
        self.start("SHA256SUMS", deflated)?;
        self.zip.write_all(self.sums.as_bytes())?;
        Ok(self.zip.finish()?.out)
    }

    fn add(&mut self, name: &str, bytes: &[u8], how: CompressionMethod) -> Result<(), NotPacked> {
        self.start(name, how)?;
        self.zip.write_all(bytes)?;
        self.sums.push_str(&format!("{}  {name}\n", hex::encode(Sha256::digest(bytes))));
        Ok(())
    }

    fn start(&mut self, name: &str, how: CompressionMethod) -> Result<(), NotPacked> {
        let options = SimpleFileOptions::default()
            .compression_method(how)
            .last_modified_time(dos_time(self.made).unwrap_or_default())
            .unix_permissions(0o644);
        Ok(self.zip.start_file(name, options)?)
    }
}

/// Takes in nothing more after a failure, which was told: the ZIP writer would try to write its end, and complain on standard error.
struct UntilFailure<W> {
    out: W,
    has_failed: bool,
}

impl<W: Write> Write for UntilFailure<W> {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        if self.has_failed {
            return Ok(bytes.len());
        }
        self.out.write(bytes).inspect_err(|error| self.has_failed = error.kind() != ErrorKind::Interrupted)
    }

    fn flush(&mut self) -> std::io::Result<()> {
        if self.has_failed { Ok(()) } else { self.out.flush() }
    }
}

impl<W: Seek> Seek for UntilFailure<W> {
    fn seek(&mut self, to: SeekFrom) -> std::io::Result<u64> {
        self.out.seek(to)
    }
}

/// The state of the journal from which the register was read.
fn checkpoint(register: &Register) -> Option<Checkpoint> {
    let head = register.head?;
    Some(Checkpoint { holding: register.holding.clone(), entries: register.entries, head })
}

fn json(value: &impl serde::Serialize) -> Result<Vec<u8>, NotPacked> {
    let mut text = serde_json::to_vec_pretty(value)?;
    text.push(b'\n');
    Ok(text)
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
