//! `combclear completions` and `combclear manual`: what a shell and the manual know of the commands.

use clap::CommandFactory;
use combclear_wording::Words;
use combclear_wording::terminal::failures as say;

use super::{print, print_as_is};
use crate::Outcome;
use crate::args::{Arguments, Completions, Manual};
use crate::failure::{Failure, why};
use combclear_wording::Label;

const NAME: &str = "combclear";

pub(crate) fn completions(ask: &Completions) -> Result<Outcome, Failure> {
    let mut script = Vec::new();
    clap_complete::generate(ask.shell, &mut Arguments::command(), NAME, &mut script);
    print_as_is(String::from_utf8_lossy(&script).trim_end())?;
    Ok(Outcome::Done)
}

pub(crate) fn write(ask: &Manual) -> Result<Outcome, Failure> {
    let folder = &ask.folder;
    clap_mangen::generate_to(Arguments::command(), folder).map_err(|error| {
        let place = folder.display().to_string();
        Failure::new(
            say::cannot_write_manual(Words::english(), &place, &why(&error)),
            Label::ManualNameAFolder,
        )
    })?;
    print(&say::manual_written(Words::english(), &folder.display().to_string()))?;
    Ok(Outcome::Done)
}
