//! Output files: each is written as a whole, and none is overwritten.

use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};
use std::path::Path;

use combclear_wording::terminal::failures as say;
use combclear_wording::{Label, Words};

use crate::failure::{Failure, why};

/// The file name for standard output.
const STANDARD_OUTPUT: &str = "-";

/// Whether the path means standard output.
pub(crate) fn is_standard_output(path: &Path) -> bool {
    path.as_os_str() == STANDARD_OUTPUT
}

/// Writes to standard output or a new file.
pub(crate) fn write(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    if !is_standard_output(path) {
        return save(path, bytes);
    }
    let mut out = std::io::stdout();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(Failure::new(say::cannot_write_out(Words::english(), &why(&error)), Label::OutputLook))
        }
        _ => Ok(()),
    }
}

/// Checks that none of the files exists, before the first is written.
pub(crate) fn must_be_new<'p>(paths: impl IntoIterator<Item = &'p Path>) -> Result<(), Failure> {
    let mut seen: Vec<&Path> = Vec::new();
    for path in paths.into_iter().filter(|path| !is_standard_output(path)) {
        // A dangling link counts as existing.
        if path.symlink_metadata().is_ok() {
            return Err(cannot_make(path, &ErrorKind::AlreadyExists.into()));
        }
        if seen.contains(&path) {
            let message = say::named_twice(Words::english(), &path.display().to_string());
            return Err(Failure::new(message, Label::FileNameOneForEach));
        }
        seen.push(path);
    }
    Ok(())
}

/// Writes a new file. An incomplete one is removed.
pub(crate) fn save(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let opened = OpenOptions::new().write(true).create_new(true).open(path);
    let mut file = opened.map_err(|error| cannot_make(path, &error))?;
    let written = file.write_all(bytes).and_then(|()| file.sync_all());
    written.map_err(|error| {
        let message = say::cannot_write(Words::english(), &path.display().to_string(), &why(&error));
        let failure = Failure::new(message, Label::FileLookTryAgain);
        if std::fs::remove_file(path).is_err() {
            return failure.and(Label::FileNotWhole);
        }
        failure
    })
}

/// The failure for a file that could not be created.
pub(crate) fn cannot_make(path: &Path, error: &std::io::Error) -> Failure {
    let (words, path) = (Words::english(), path.display().to_string());
    if error.kind() == ErrorKind::AlreadyExists {
        return Failure::new(say::is_there(words, &path), Label::FileNameANewOne);
    }
    Failure::new(say::cannot_make(words, &path, &why(error)), Label::FileNameAWritableFolder)
}
