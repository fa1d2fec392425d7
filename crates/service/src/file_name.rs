//! The names of files that documents came in, and under which they are saved.

use axum::http::HeaderValue;
use combclear_domain::journal::document::extensions;
use combclear_domain::journal::event::DocumentAttached;
use percent_encoding::utf8_percent_encode;

use crate::entries::header;
use crate::pages::ESCAPED;
use crate::problem::{Problem, ProblemKind};

/// How long the name of a file may be, in characters.
const FILE_NAME_MOST: usize = 200;

/// That the name is one of a file, not a path, and can be shown.
pub(crate) fn check(name: Option<&str>) -> Result<(), Problem> {
    let Some(name) = name else { return Ok(()) };
    let why = if name.trim().is_empty() {
        "it is empty"
    } else if name.chars().count() > FILE_NAME_MOST {
        "it is longer than 200 characters"
    } else if name.contains(['/', '\\']) {
        "it holds a `/` or a `\\`"
    } else if name.chars().any(char::is_control) {
        "it holds a control character"
    } else {
        return Ok(());
    };
    let detail = format!("`{}` cannot be the name of a file: {why}", name.escape_debug());
    let help = "give the name without its folder, or leave `file_name` out";
    Err(Problem::new(ProblemKind::BadParameter, detail).at_parameter("file_name", help))
}

/// The name under which a document is saved. Whatever it came in as, its end says what it is.
pub(crate) fn saved(document: &DocumentAttached) -> String {
    let ends = extensions(document.media_type);
    let usual = ends.first().copied().unwrap_or_default();
    // Entries may come from elsewhere, so the name is not trusted to be one.
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

/// Source: RFC 6266, 4.3 and appendix D: a plain name for old readers, and the real one encoded as RFC 8187 says.
pub(crate) fn to_be_saved_as(name: &str) -> Result<HeaderValue, Problem> {
    let plain: String =
        name.chars().map(|sign| if sign.is_ascii() && sign != '%' { sign } else { '_' }).collect();
    header(&format!(
        "attachment; filename=\"{plain}\"; filename*=UTF-8''{}",
        utf8_percent_encode(name, ESCAPED)
    ))
}
