//! What the command line takes.

use std::net::SocketAddr;
use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};
use combclear_domain::calendar::Day;
use combclear_domain::words::{ApiaryName, ColonyName, HoldingName};

/// May this hive be supered today?
///
/// Combclear answers from a journal of what happened in a holding and from leaflets kept as data. It is an aid to
/// record-keeping: the leaflet on the pack, the prescriber and local law decide.
#[derive(Debug, Parser)]
#[command(name = "combclear", version, after_help = EXIT_CODES)]
pub(crate) struct Arguments {
    #[command(flatten)]
    pub(crate) place: Place,
    #[command(subcommand)]
    pub(crate) command: Command,
}

const EXIT_CODES: &str = "Exit codes:
  0  done; when colonies were named: all may be supered
  1  could not be done; the message says why and how to mend it
  2  the command line is wrong
  3  no: a named colony may not be supered, or the journal does not hold
  4  not known for at least one named colony, and no `no` among them
  5  done in part: entries were left out (import --keep-going)";

/// Where the journal is kept, and whose it is.
#[derive(Debug, Args)]
pub(crate) struct Place {
    /// The database
    #[arg(
        long,
        global = true,
        env = "COMBCLEAR_DB",
        default_value = "sqlite:combclear.db",
        value_name = "ADDRESS"
    )]
    pub(crate) db: String,
    /// A folder of leaflets of your own, laid out as JURISDICTION/ID.toml, beside the built-in ones
    #[arg(long, global = true, env = "COMBCLEAR_LEAFLETS", value_name = "FOLDER")]
    pub(crate) leaflets: Option<PathBuf>,
    /// The holding; may be left out while the database keeps only one
    #[arg(long, global = true, env = "COMBCLEAR_HOLDING", value_name = "NAME")]
    pub(crate) holding: Option<HoldingName>,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// May these colonies be supered? Without names: a table of all that are alive
    Supering(Supering),
    /// Take a journal file in
    Import(Import),
    /// Write the journal out as JSON Lines
    Export(Export),
    /// Check that nothing in the journal was changed since it was recorded
    Verify(Verify),
    /// Show the built-in leaflets, or one of them with its sources
    Leaflets(Leaflets),
    /// Answer over HTTP
    Serve(Serve),
}

#[derive(Debug, Args)]
pub(crate) struct Supering {
    /// The colonies
    #[arg(value_name = "COLONY")]
    pub(crate) colonies: Vec<ColonyName>,
    /// Only colonies at this apiary
    #[arg(long, value_name = "NAME", conflicts_with = "colonies")]
    pub(crate) apiary: Option<ApiaryName>,
    /// The day, like 2026-04-11; today if left out
    #[arg(long, value_name = "DATE")]
    pub(crate) on: Option<Day>,
    /// For programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Import {
    /// The file; `-` for standard input
    pub(crate) file: PathBuf,
    /// Take in what can be taken in, and list what was left out
    #[arg(long)]
    pub(crate) keep_going: bool,
    /// For programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Export {
    /// The file, which must not exist yet; standard output if left out
    pub(crate) file: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub(crate) struct Verify {
    /// A checkpoint kept from earlier: also proves that nothing before it was changed or cut off
    #[arg(long, value_name = "FILE")]
    pub(crate) since: Option<PathBuf>,
    /// For programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Leaflets {
    /// The id of one leaflet
    pub(crate) id: Option<String>,
    /// For programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Serve {
    /// Where to listen
    #[arg(long, default_value = "127.0.0.1:8420", value_name = "ADDRESS", value_parser = address)]
    pub(crate) listen: SocketAddr,
}

fn address(text: &str) -> Result<SocketAddr, &'static str> {
    text.parse().map_err(|_| "write the number of an address and a port, like 127.0.0.1:8420")
}
