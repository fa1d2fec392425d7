//! Output files: each is written as a whole or removed, and none is overwritten.

use std::fs::{File, OpenOptions};
use std::io::{ErrorKind, Seek, Write};
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
    told(out.write_all(bytes).and_then(|()| out.flush()))
}

/// Whoever closed standard output does not want to know.
fn told(written: std::io::Result<()>) -> Result<(), Failure> {
    match written {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(Failure::new(say::cannot_write_out(Words::english(), &why(&error)), Label::OutputLook))
        }
        _ => Ok(()),
    }
}

/// A file that is written bit by bit. One that is dropped before [`Unfinished::done`] is removed.
pub(crate) struct Unfinished<'p> {
    path: &'p Path,
    is_done: bool,
}

impl<'p> Unfinished<'p> {
    /// A new file; for standard output one that nobody sees.
    pub(crate) fn begin(path: &'p Path) -> Result<(Unfinished<'p>, File), Failure> {
        let opened = if is_standard_output(path) {
            tempfile::tempfile()
        } else {
            OpenOptions::new().read(true).write(true).create_new(true).open(path)
        };
        match opened {
            Ok(file) => Ok((Unfinished { path, is_done: false }, file)),
            Err(error) => Err(cannot_make(path, &error)),
        }
    }

    /// Keeps the file, or copies it to standard output.
    pub(crate) fn done(mut self, mut file: File) -> Result<(), Failure> {
        if is_standard_output(self.path) {
            let mut out = std::io::stdout();
            let copied = file.rewind().and_then(|()| std::io::copy(&mut file, &mut out));
            return told(copied.and_then(|_| out.flush()));
        }
        file.sync_all().map_err(|error| cannot_write(self.path, &error))?;
        self.is_done = true;
        Ok(())
    }
}

impl Drop for Unfinished<'_> {
    fn drop(&mut self) {
        if !self.is_done && !is_standard_output(self.path) {
            // The failure that ended it is the one to tell of.
            let _ = std::fs::remove_file(self.path);
        }
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
        let failure = cannot_write(path, &error);
        if std::fs::remove_file(path).is_err() {
            return failure.and(Label::FileNotWhole);
        }
        failure
    })
}

/// The failure for a file that could not be written to its end.
pub(crate) fn cannot_write(path: &Path, error: &std::io::Error) -> Failure {
    let message = say::cannot_write(Words::english(), &path.display().to_string(), &why(error));
    Failure::new(message, Label::FileLookTryAgain)
}

/// The failure for a file that could not be created.
pub(crate) fn cannot_make(path: &Path, error: &std::io::Error) -> Failure {
    let (words, path) = (Words::english(), path.display().to_string());
    if error.kind() == ErrorKind::AlreadyExists {
        return Failure::new(say::is_there(words, &path), Label::FileNameANewOne);
    }
    Failure::new(say::cannot_make(words, &path, &why(error)), Label::FileNameAWritableFolder)
}

/// The folder in which a file lies.
pub(crate) fn folder_of(file: &Path) -> &Path {
    file.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// Makes the name of a new file reach the disk, as its content has. Some systems cannot sync a folder, which is no reason to stop.
pub(crate) fn name_on_disk(file: &Path) {
    let _ = File::open(folder_of(file)).and_then(|folder| folder.sync_all());
}
