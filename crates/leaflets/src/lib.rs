//! The leaflets built into Combclear: data only, one TOML file per active, form, strength, variant and jurisdiction. `law/`
//! holds the law on medicine records: one file per jurisdiction.
//!
//! They are written from published documents in the project's own words, each value with its source and confidence. They are
//! an aid: the leaflet on the pack, the prescriber and local law decide.
#![deny(missing_docs)]

use std::sync::LazyLock;

use combclear_domain::Faults;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use include_dir::{Dir, include_dir};

/// One folder per jurisdiction.
static FILES: [(&str, Dir<'_>); 7] = [
    ("ch", include_dir!("$CARGO_MANIFEST_DIR/ch")),
    ("de", include_dir!("$CARGO_MANIFEST_DIR/de")),
    ("eu", include_dir!("$CARGO_MANIFEST_DIR/eu")),
    ("gb", include_dir!("$CARGO_MANIFEST_DIR/gb")),
    ("it", include_dir!("$CARGO_MANIFEST_DIR/it")),
    ("pl", include_dir!("$CARGO_MANIFEST_DIR/pl")),
    ("us", include_dir!("$CARGO_MANIFEST_DIR/us")),
];

/// One file per jurisdiction.
static LAW_FILES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/law");

static BUILT_IN: LazyLock<Result<Leaflets, Faults>> = LazyLock::new(|| {
    let mut files: Vec<(String, &str)> = files().collect();
    files.sort();
    Leaflets::load(files.iter().map(|(path, text)| (path.as_str(), *text)))
});

/// The built-in leaflets.
///
/// # Errors
/// Faults in the embedded files. A test keeps them free of faults, so a released program never sees one.
pub fn builtin() -> Result<&'static Leaflets, &'static Faults> {
    BUILT_IN.as_ref()
}

static LAWS: LazyLock<Result<Laws, Faults>> = LazyLock::new(|| {
    let mut files: Vec<(String, &str)> = LAW_FILES
        .files()
        .filter_map(|file| Some((format!("law/{}", file.path().to_str()?), file.contents_utf8()?)))
        .collect();
    files.sort();
    Laws::load(files.iter().map(|(path, text)| (path.as_str(), *text)))
});

/// The law on medicine records, by jurisdiction.
///
/// # Errors
/// Faults in the embedded files. A test keeps them free of faults, so a released program never sees one.
pub fn laws() -> Result<&'static Laws, &'static Faults> {
    LAWS.as_ref()
}

/// The embedded files, as path below this crate and text.
fn files() -> impl Iterator<Item = (String, &'static str)> {
    FILES.iter().flat_map(|(jurisdiction, folder)| {
        folder.files().filter_map(move |file| {
            let name = file.path().to_str()?;
            Some((format!("{jurisdiction}/{name}"), file.contents_utf8()?))
        })
    })
}
