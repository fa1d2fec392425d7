//! Names of files in a pack and of downloads: safe everywhere, whatever a document was called.

use combclear_domain::basics::words::MediaType;
use combclear_domain::questions::register::DocumentPart;

use super::Season;

/// Longest readable part of a name, in characters.
const NAME_MOST: usize = 40;

/// `proofs/003-invoice-H-1987.pdf`: the number makes it unique, the type gives the extension. A copy in another type is
/// `proofs/003-invoice-H-1987-copy.jpg`.
pub(super) fn name_of(number: usize, document: &DocumentPart, copy: Option<MediaType>) -> String {
    let end = match copy.unwrap_or(document.media_type) {
        MediaType::Pdf => "pdf",
        MediaType::Jpeg => "jpg",
        MediaType::Png => "png",
        MediaType::Heic => "heic",
    };
    let name = safe(document.file_name.as_deref().unwrap_or_default());
    let of_copy = if copy.is_some() { "-copy" } else { "" };
    format!("proofs/{number:03}-{name}{of_copy}.{end}")
}

/// `seasons/01-Saltmarsh.svg`.
pub(super) fn name_of_season(place: usize, season: &Season) -> String {
    format!("seasons/{:02}-{}.svg", place + 1, safe_name(season.apiary.as_str()))
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
