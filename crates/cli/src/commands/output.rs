//! Files that a command writes: each made whole, none written over.

use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};
use std::path::Path;

use crate::failure::{Failure, why};

/// What stands for standard output where a file is named.
const STANDARD_OUTPUT: &str = "-";

/// Whether standard output is meant.
pub(crate) fn is_standard_output(path: &Path) -> bool {
    path.as_os_str() == STANDARD_OUTPUT
}

/// Writes to standard output where that is meant, else to a file that was not there.
pub(crate) fn write(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    if !is_standard_output(path) {
        return save(path, bytes);
    }
    let mut out = std::io::stdout();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(Failure::new(
            format!("cannot write to standard output: {}", why(&error)),
            "look where it is sent",
        )),
        _ => Ok(()),
    }
}

/// That nothing is there yet where a file is to be written: asked of all files before the first is written.
pub(crate) fn must_be_new<'p>(paths: impl IntoIterator<Item = &'p Path>) -> Result<(), Failure> {
    let mut seen: Vec<&Path> = Vec::new();
    for path in paths.into_iter().filter(|path| !is_standard_output(path)) {
        // A link that leads nowhere is there too.
        if path.symlink_metadata().is_ok() {
            return Err(cannot_make(path, &ErrorKind::AlreadyExists.into()));
        }
        if seen.contains(&path) {
            let message = format!("`{}` is named for two things", path.display());
            return Err(Failure::new(message, "name a file of its own for each"));
        }
        seen.push(path);
    }
    Ok(())
}

/// Writes a file that was not there; what could not be finished is taken away again.
pub(crate) fn save(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let opened = OpenOptions::new().write(true).create_new(true).open(path);
    let mut file = opened.map_err(|error| cannot_make(path, &error))?;
    let written = file.write_all(bytes).and_then(|()| file.sync_all());
    written.map_err(|error| {
        let message = format!("cannot write `{}`: {}", path.display(), why(&error));
        let failure = Failure::new(message, "look where it goes, then try again");
        if std::fs::remove_file(path).is_err() {
            return failure.and("what was written so far is not whole; delete it");
        }
        failure
    })
}

/// A file that could not be made.
pub(crate) fn cannot_make(path: &Path, error: &std::io::Error) -> Failure {
    let path = path.display();
    if error.kind() == ErrorKind::AlreadyExists {
        return Failure::new(
            format!("`{path}` is there already; it was left as it is"),
            "name a file that is not there yet",
        );
    }
    Failure::new(
        format!("cannot make `{path}`: {}", why(error)),
        "name a file in a folder that is there and can be written",
    )
}
