//! `combclear`: may this hive be supered today? The command line and the server.

mod address;
mod args;
mod clock;
mod commands;
mod failure;
mod layout;
mod place;
mod typesetter;

use std::process::ExitCode;

use clap::Parser;
use combclear_wording::terminal::failures as say;
use combclear_wording::{Label, Words};

use args::{Arguments, Command};
use failure::Failure;

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    match begun(&arguments) {
        Ok(outcome) => outcome.into(),
        Err(failure) => {
            layout::tell(&failure.to_string());
            ExitCode::from(1)
        }
    }
}

/// The result of a command, for the exit code.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Outcome {
    /// Done; asked of named colonies: yes.
    Done,
    /// No: some named colony may not be supered, or the journal or a document fails verification.
    No,
    /// Not known.
    Unknown,
    /// Done in part: some entries or documents were left out.
    InPart,
}

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> ExitCode {
        ExitCode::from(match outcome {
            Outcome::Done => 0,
            Outcome::No => 3,
            Outcome::Unknown => 4,
            Outcome::InPart => 5,
        })
    }
}

/// Runs the command. What still works on a thread of its own when it ends, such as a paper that nobody waits for any more, does
/// not keep the program running.
fn begun(arguments: &Arguments) -> Result<Outcome, Failure> {
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build();
    let runtime = runtime.map_err(|error| {
        Failure::new(say::no_threads(Words::english(), &error.to_string()), Label::FailureLookAtTheMachine)
    })?;
    let outcome = runtime.block_on(run(arguments));
    runtime.shutdown_background();
    outcome
}

async fn run(arguments: &Arguments) -> Result<Outcome, Failure> {
    let place = &arguments.place;
    match &arguments.command {
        Command::Today(ask) => commands::today::run(place, ask).await,
        Command::Supering(ask) => commands::supering::run(place, ask).await,
        Command::Options(ask) => commands::options::run(place, ask).await,
        Command::Register(ask) => commands::register::run(place, ask).await,
        Command::Due(ask) => commands::due::run(place, ask).await,
        Command::Stock(ask) => commands::stock::run(place, ask).await,
        Command::Gaps(ask) => commands::gaps::run(place, ask).await,
        Command::Begin(begin) => commands::record::begin(place, begin).await,
        Command::Record(record) => commands::record::run(place, record).await,
        Command::Attach(attach) => commands::attach::run(place, attach).await,
        Command::Documents(ask) => commands::documents::run(place, ask).await,
        Command::Pack(ask) => commands::pack::run(place, ask).await,
        Command::Sheet(sheet) => commands::sheet::run(place, sheet).await,
        Command::Import(import) => commands::import::run(place, import).await,
        Command::Export(export) => commands::export::run(place, export).await,
        Command::Verify(verify) => commands::verify::run(place, verify).await,
        Command::Backup(ask) => commands::backup::run(place, ask).await,
        Command::Restore(ask) => commands::backup::restore(place, ask).await,
        Command::Doctor(ask) => commands::doctor::run(place, ask).await,
        Command::Retention(ask) => commands::retention::run(place, ask).await,
        Command::Archive(ask) => commands::archive::run(place, ask).await,
        Command::Law(ask) => commands::law::run(ask),
        Command::Leaflets(leaflets) => commands::leaflets::run(place, leaflets).await,
        Command::Kinds => commands::kinds::run(),
        Command::Completions(ask) => commands::manual::completions(ask),
        Command::Manual(ask) => commands::manual::write(ask),
        Command::Key(key) => commands::key::run(place, &key.command).await,
        Command::Serve(serve) => commands::serve::run(place, serve).await,
    }
}
