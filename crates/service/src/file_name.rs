//! File names of documents, as attached and as saved.

use axum::http::HeaderValue;
use combclear_domain::journal::document::extensions;
use combclear_domain::journal::event::DocumentAttached;
use combclear_wording::{Label, http};
use percent_encoding::utf8_percent_encode;

use crate::entries::header;
use crate::language::words;
use crate::pages::ESCAPED;
use crate::problem::{Problem, label};

/// Longest file name, in characters.
const FILE_NAME_MOST: usize = 200;

/// Checks that the name is a file name rather than a path, and is printable.
pub(crate) fn check(name: Option<&str>) -> Result<(), Problem> {
    let Some(name) = name else { return Ok(()) };
    let why = if name.trim().is_empty() {
        Label::HttpFileNameEmpty
    } else if name.chars().count() > FILE_NAME_MOST {
        Label::HttpFileNameTooLong
    } else if name.contains(['/', '\\']) {
        Label::HttpFileNameSlash
    } else if name.chars().any(char::is_control) {
        Label::HttpFileNameControlCharacter
    } else {
        return Ok(());
    };
    let detail = http::not_a_file_name(words(), &name.escape_debug().to_string(), label(why));
    Err(Problem::bad_parameter("file_name", detail, label(Label::HttpFileNameHelp)))
}

/// The name under which a document is saved. Its extension always fits the type of the content.
pub(crate) fn saved(document: &DocumentAttached) -> String {
    let ends = extensions(document.media_type);
    let usual = ends.first().copied().unwrap_or_default();
    // Entries may come from elsewhere, so the name is not trusted.
    let plain = |sign: char| if sign.is_control() || "/\\:\"<>|?*".contains(sign) { '_' } else { sign };
    let name: String =
        document.file_name.as_deref().unwrap_or_default().chars().take(FILE_NAME_MOST).map(plain).collect();
    let name = name.trim().trim_start_matches('.');
    if name.is_empty() {
        return format!("document.{usual}");
    }
    let ending = name.rsplit_once('.').map(|(_, ending)| ending.to_lowercase());
    if ending.is_some_and(|ending| ends.contains(&ending.as_str())) {
        return name.to_owned();
    }
    format!("{name}.{usual}")
}

/// Source: RFC 6266, 4.3 and appendix D: a plain name for old clients, and the real one encoded as in RFC 8187.
pub(crate) fn to_be_saved_as(name: &str) -> Result<HeaderValue, Problem> {
    let plain: String =
        name.chars().map(|sign| if sign.is_ascii() && sign != '%' { sign } else { '_' }).collect();
    header(&format!(
        "attachment; filename=\"{plain}\"; filename*=UTF-8''{}",
        utf8_percent_encode(name, ESCAPED)
    ))
}
