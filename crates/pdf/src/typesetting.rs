//! The typesetter in a sandbox: one built-in template, one JSON file, the built-in fonts, no clock.

use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};

use crate::glyphs::FONTS;

/// Sets the data with the template and returns a PDF.
///
/// # Errors
/// The message of the typesetter.
pub(crate) fn set(
    template: &str,
    data: Vec<u8>,
    ident: &str,
    made: Option<Datetime>,
) -> Result<Vec<u8>, String> {
    let desk = Desk::new(template, data)?;
    let set = typst::compile::<PagedDocument>(&desk).output.map_err(|faults| told(&faults));
    let standards = PdfStandards::new(&[PdfStandard::A_2a]).map_err(|fault| fault.message().to_string())?;
    let options = PdfOptions {
        ident: Smart::Custom(ident.to_owned()),
        creator: Smart::Custom(Some("combclear".to_owned())),
        timestamp: made.map(Timestamp::new_utc),
        standards,
        ..PdfOptions::default()
    };
    let pdf = set.and_then(|document| typst_pdf::pdf(&document, &options).map_err(|faults| told(&faults)));
    // Drop the cache: registers differ, and a server would only grow.
    typst::comemo::evict(0);
    pdf
}

fn told(faults: &[SourceDiagnostic]) -> String {
    faults.iter().map(|fault| fault.message.as_str()).collect::<Vec<_>>().join("; ")
}

/// The files and fonts that the typesetter can see.
struct Desk {
    library: LazyHash<Library>,
    source: Source,
    data: (FileId, Bytes),
}

impl Desk {
    fn new(template: &str, data: Vec<u8>) -> Result<Desk, String> {
        Ok(Desk {
            library: LazyHash::new(Library::default()),
            source: Source::new(file("paper.typ")?, template.to_owned()),
            data: (file("data.json")?, Bytes::new(data)),
        })
    }
}

fn file(name: &str) -> Result<FileId, String> {
    let path = VirtualPath::new(name).map_err(|error| error.to_string())?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

impl World for Desk {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &FONTS.book
    }

    fn main(&self) -> FileId {
        self.source.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.source.id() { Ok(self.source.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let (data, bytes) = &self.data;
        if id == *data { Ok(bytes.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn font(&self, index: usize) -> Option<Font> {
        FONTS.fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
