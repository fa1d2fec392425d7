//! Arguments of the command line.

use std::fmt::Display;
use std::net::SocketAddr;
use std::path::PathBuf;
use std::str::FromStr;

use clap::{Args, Parser, Subcommand};
use combclear_domain::basics::calendar::{Counting, Day};
use combclear_domain::basics::misread::Misread;
use combclear_domain::basics::spelling::nearest;
use combclear_domain::basics::words::{
    Access, ApiaryName, ColonyName, Ground, HoldingName, Jurisdiction, LotName, Person, Power,
    PrescriptionName,
};
use combclear_domain::journal::Kind;
use combclear_domain::journal::key::{KeyId, Role};
use combclear_service::Origin;
use combclear_wording::terminal::failures as say;
use combclear_wording::unreadable::misread;
use combclear_wording::{Label, Words};

use crate::address::Address;
use crate::clock;
use crate::commands::record::{Begin, Record, beside_today};
use crate::failure::Said;

/// May this hive be supered today?
///
/// Combclear answers from a journal of what happened in a holding and from leaflets kept as data. It is an aid to
/// record-keeping: the leaflet on the pack, the prescriber and local law decide.
#[derive(Debug, Parser)]
#[command(name = "combclear", version, max_term_width = 80, after_help = EXIT_CODES)]
pub(crate) struct Arguments {
    #[command(flatten)]
    pub(crate) place: Place,
    #[command(subcommand)]
    pub(crate) command: Command,
}

const EXIT_CODES: &str = "Exit codes:
  0  done; when colonies were named: all may be supered; options: at least one is usable
  1  could not be done; the message says why and how to fix it
  2  the command line is wrong
  3  no: a named colony may not be supered, every option is ruled out, the journal or a document fails verification, something that the law requires is missing, or the doctor found something wrong
  4  not known: for at least one named colony, and no `no` among them; no option is usable, but not all are ruled out; the law could not be checked
  5  done in part: entries were left out (import --keep-going), or missing documents (export, pack, backup, restore)";

/// The heading of the options that every command takes.
const PLACE: &str = "Journal and leaflets";

/// The address of the journal, and its holding.
#[derive(Debug, Args)]
pub(crate) struct Place {
    /// The address of the database: `sqlite:FILE` or `postgres://USER@SERVER/DATABASE`
    #[arg(
        long,
        global = true,
        env = "COMBCLEAR_DB",
        // It may hold a password.
        hide_env_values = true,
        default_value = "sqlite:combclear.db",
        value_name = "ADDRESS",
        help_heading = PLACE
    )]
    pub(crate) db: Address,
    /// A folder of leaflets of your own, laid out as JURISDICTION/ID.toml, beside the built-in ones
    #[arg(long, global = true, env = "COMBCLEAR_LEAFLETS", value_name = "FOLDER", help_heading = PLACE)]
    pub(crate) leaflets: Option<PathBuf>,
    /// The holding; may be left out while the database keeps only one
    #[arg(
        long,
        global = true,
        env = "COMBCLEAR_HOLDING",
        value_name = "NAME",
        value_parser = value::<HoldingName>,
        help_heading = PLACE
    )]
    pub(crate) holding: Option<HoldingName>,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// The morning's page: what is due where, what may be supered, what to find out
    Today(Today),
    /// May these colonies be supered? Without names: the board of all living colonies
    Supering(Supering),
    /// What else can be used in a colony or at an apiary, on which days, and whether it is out before the flow
    Options(Options),
    /// The legal register for a period: what was acquired, given, taken out, disposed of and corrected
    Register(Register),
    /// What is missing from the legal record of a period, entry by entry, and irregularities
    Gaps(Gaps),
    /// What must or may be done, from when and by when, apiary by apiary
    Due(Due),
    /// What is left of each lot, what to dispose of, what to reorder
    Stock(Stock),
    /// Begin a new holding: who keeps it, where, and the country whose law and leaflets apply
    Begin(Begin),
    /// Write down what happened: strips placed or taken out, an inspection, a lot bought, and every other kind of entry
    Record(Record),
    /// Attach a proof of purchase to a lot, or a copy to a prescription
    Attach(Attach),
    /// Show the attached documents, or save one of them
    Documents(Documents),
    /// The inspection pack: one ZIP file with the register in every form, its supporting documents and checksums
    Pack(Pack),
    /// Write a spreadsheet to fill in, with the apiaries, colonies and lots on record as choices
    Sheet(Sheet),
    /// Import entries from a journal file or a filled-in sheet
    Import(Import),
    /// Export the journal as JSON Lines
    Export(Export),
    /// Check that nothing in the journal was changed since it was recorded
    Verify(Verify),
    /// A verified copy of the whole database in one new file, made while others may go on writing
    Backup(Backup),
    /// Take a backup into an empty or a new database, verified before and after
    Restore(Restore),
    /// What is wrong with the database, and what to do about it
    Doctor(Doctor),
    /// How long the medicine records must be kept, and which may be archived
    Retention(Retention),
    /// Permanently remove records that need no longer be kept from the journal, into a sealed file
    Archive(Archive),
    /// Show what the law requires of a medicine record in a jurisdiction, with its sources
    Law(Law),
    /// Show the leaflets that apply to the holding, or what one of them says
    Leaflets(Leaflets),
    /// Serve the HTTP API
    Serve(Serve),
    /// Make, show and end the keys that the service asks for where others can reach it
    Key(KeyArgs),
    /// Every kind of entry, with an example of the command that records it
    #[command(after_help = crate::commands::kinds::examples())]
    Kinds,
    /// Print the completions of a shell, to be read when it starts
    Completions(Completions),
    /// Write the manual as man pages, one for each command
    Manual(Manual),
}

#[derive(Debug, Args)]
pub(crate) struct Today {
    /// The day, like 2026-04-11; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) on: Option<Day>,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Supering {
    /// The colonies; R1-R15 is a range
    #[arg(value_name = "COLONY", value_parser = value::<ColonyName>)]
    pub(crate) colonies: Vec<ColonyName>,
    /// Only colonies at this apiary
    #[arg(long, value_name = "NAME", conflicts_with = "colonies", value_parser = value::<ApiaryName>)]
    pub(crate) apiary: Option<ApiaryName>,
    /// The day, like 2026-04-11; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) on: Option<Day>,
    /// Draw the season of one colony, or of an apiary, into this new file (SVG); `-` for standard output
    #[arg(long, value_name = "FILE")]
    pub(crate) picture: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) read_back: ReadBack,
    /// Show every reason and detail
    #[arg(long, conflicts_with = "json")]
    pub(crate) full: bool,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
#[command(group(clap::ArgGroup::new("where").required(true).args(["colony", "apiary"])))]
pub(crate) struct Options {
    /// The colony
    #[arg(value_name = "COLONY", value_parser = value::<ColonyName>)]
    pub(crate) colony: Option<ColonyName>,
    /// All colonies at this apiary together
    #[arg(long, value_name = "NAME", value_parser = value::<ApiaryName>)]
    pub(crate) apiary: Option<ApiaryName>,
    /// The first start day; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) from: Option<Day>,
    /// The last start day; 59 days after the first if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) to: Option<Day>,
    /// Ignore events after this day; the first start day if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) as_of: Option<Day>,
    /// Show every condition of one leaflet, with its sources
    #[arg(long, value_name = "ID", conflicts_with = "apiary")]
    pub(crate) leaflet: Option<String>,
    /// What if the power there were: `none`, `battery`, `generator` or `mains`; nothing is recorded
    #[arg(long, value_name = "WORD", value_parser = word(Power::from_word, Power::ALL))]
    pub(crate) power: Option<Power>,
    /// What if access to the apiary were: `vehicle`, `on_foot` or `none`; nothing is recorded
    #[arg(long, value_name = "WORD", value_parser = word(Access::from_word, Access::ALL))]
    pub(crate) access: Option<Access>,
    /// What if the ground at the stands were: `dry`, `wet` or `flooded`; nothing is recorded
    #[arg(long, value_name = "WORD", value_parser = word(Ground::from_word, Ground::ALL))]
    pub(crate) ground: Option<Ground>,
    /// The last day on which these what-if values apply
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) site_until: Option<Day>,
    /// Show every reason and detail
    #[arg(long, conflicts_with = "json")]
    pub(crate) full: bool,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

/// Reads a value that is written as text.
pub(crate) fn value<T: FromStr<Err: Into<Misread>>>(text: &str) -> Result<T, String> {
    text.parse().map_err(|fault: T::Err| misread(Words::english(), &fault.into()))
}

/// Reads a day that is asked about: a date, or a word for one that leaves no doubt. A weekday could be the last or the next.
fn asked_day(text: &str) -> Result<Day, String> {
    beside_today(&text.trim().to_lowercase(), clock::today()).map_or_else(|| value(text), Ok)
}

/// Reads one word of a list of the trade.
fn word<T: Copy + Display + Send + Sync + 'static>(
    read: fn(&str) -> Option<T>,
    all: &'static [T],
) -> impl Fn(&str) -> Result<T, String> + Clone + Send + Sync + 'static {
    move |written| {
        read(written).ok_or_else(|| {
            let words: Vec<String> = all.iter().map(ToString::to_string).collect();
            let near = nearest(written, words.iter().map(String::as_str));
            near.map_or_else(
                || say::write_one_of(Words::english(), &words.join(", ")),
                |near| say::did_you_mean(Words::english(), near),
            )
        })
    }
}

#[derive(Debug, Args)]
pub(crate) struct Register {
    #[command(flatten)]
    pub(crate) time: RegisterTime,
    #[command(flatten)]
    pub(crate) read_back: ReadBack,
    /// Write it as CSV to this file, which must not exist yet; `-` for standard output
    #[arg(long, value_name = "FILE")]
    pub(crate) csv: Option<PathBuf>,
    /// Write it as an HTML page for reading and printing
    #[arg(long, value_name = "FILE")]
    pub(crate) html: Option<PathBuf>,
    /// Write it as PDF
    #[arg(long, value_name = "FILE")]
    pub(crate) pdf: Option<PathBuf>,
    /// How days are counted: calendar-1 (civil days) or elapsed-24, which also gives the moment after full days of 24 hours
    #[arg(long, value_name = "POLICY", default_value = "calendar-1", value_parser = word(Counting::from_word, Counting::ALL))]
    pub(crate) counting: Counting,
    /// Write the treatments as a collection of the ICAR Animal Data Exchange
    #[arg(long, value_name = "FILE")]
    pub(crate) exchange_treatments: Option<PathBuf>,
    /// Write the movements of stock as a collection of the ICAR Animal Data Exchange
    #[arg(long, value_name = "FILE")]
    pub(crate) exchange_transactions: Option<PathBuf>,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

/// The period of a register.
#[derive(Debug, Args)]
pub(crate) struct RegisterTime {
    /// The first day; if left out, 1 January of the year of the last day
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) from: Option<Day>,
    /// The last day; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) to: Option<Day>,
    /// Ignore events after this day; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) as_of: Option<Day>,
}

/// Archives that are read back in for one question.
#[derive(Debug, Args)]
pub(crate) struct ReadBack {
    /// Read this archive file back in, for this question only; may be repeated
    #[arg(long = "with-archive", value_name = "FILE")]
    pub(crate) archives: Vec<PathBuf>,
}

#[derive(Debug, Args)]
pub(crate) struct Gaps {
    #[command(flatten)]
    pub(crate) time: RegisterTime,
    #[command(flatten)]
    pub(crate) read_back: ReadBack,
    /// Show every reason and detail
    #[arg(long, conflicts_with = "json")]
    pub(crate) full: bool,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Pack {
    /// The file, which must not exist yet; `-` for standard output
    pub(crate) file: PathBuf,
    #[command(flatten)]
    pub(crate) time: RegisterTime,
    /// Put your own list of what is missing into it too
    #[arg(long)]
    pub(crate) with_gaps: bool,
    #[command(flatten)]
    pub(crate) read_back: ReadBack,
}

#[derive(Debug, Args)]
pub(crate) struct Due {
    /// The first day; events after it are ignored; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) from: Option<Day>,
    /// The last day; 59 days after the first if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) to: Option<Day>,
    /// Only this apiary
    #[arg(long, value_name = "NAME", value_parser = value::<ApiaryName>)]
    pub(crate) apiary: Option<ApiaryName>,
    /// Write it as a calendar (iCalendar) into this file; `-` for standard output
    #[arg(long, value_name = "FILE", conflicts_with = "json")]
    pub(crate) calendar: Option<PathBuf>,
    /// Show every reason and detail
    #[arg(long, conflicts_with = "json")]
    pub(crate) full: bool,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Stock {
    /// The day, like 2026-04-11; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) on: Option<Day>,
    #[command(flatten)]
    pub(crate) read_back: ReadBack,
    /// Show every reason and detail
    #[arg(long, conflicts_with = "json")]
    pub(crate) full: bool,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
#[command(group(clap::ArgGroup::new("to").required(true).args(["lot", "prescription"])))]
pub(crate) struct Attach {
    /// The file: a PDF, JPEG, PNG or HEIC of at most 10 MB
    pub(crate) file: PathBuf,
    /// The lot whose purchase it proves
    #[arg(long, value_name = "LOT", value_parser = value::<LotName>)]
    pub(crate) lot: Option<LotName>,
    /// The prescription of which it is a copy
    #[arg(long, value_name = "NUMBER", value_parser = value::<PrescriptionName>)]
    pub(crate) prescription: Option<PrescriptionName>,
    /// The day on which it is attached; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) on: Option<Day>,
    /// Who attaches it
    #[arg(long, value_name = "NAME", value_parser = value::<Person>)]
    pub(crate) by: Person,
}

#[derive(Debug, Args)]
pub(crate) struct Documents {
    /// The hash of one document, or its first digits (at least 8)
    #[arg(value_name = "HASH", requires = "save")]
    pub(crate) hash: Option<String>,
    /// Where to save it: a file that must not exist yet
    #[arg(long, value_name = "FILE", requires = "hash")]
    pub(crate) save: Option<PathBuf>,
    /// Print JSON, for programs
    #[arg(long, conflicts_with = "hash")]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Sheet {
    /// The file, which must not exist yet: .xlsx with a tab for each kind of entry, or .csv with one kind
    pub(crate) file: PathBuf,
    /// The kind of entry of a .csv file, named as in `record`, such as inspection
    #[arg(long, value_name = "KIND", value_parser = crate::commands::sheet::kind)]
    pub(crate) kind: Option<Kind>,
    /// For a holding that is not on record yet: without choices of its own
    #[arg(long)]
    pub(crate) new: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Import {
    /// A journal file (JSON Lines), or a sheet (.xlsx or .csv); `-` for a journal on standard input
    pub(crate) file: PathBuf,
    /// Import what can be imported, and list what was left out
    #[arg(long)]
    pub(crate) keep_going: bool,
    /// Keep the holding of the file beside those that the database keeps already
    #[arg(long)]
    pub(crate) begin: bool,
    /// Print JSON, for programs
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
    pub(crate) since_checkpoint: Option<PathBuf>,
    /// An archive file: also proves that it is what was moved out of this journal
    #[arg(long, value_name = "FILE")]
    pub(crate) archive: Option<PathBuf>,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Backup {
    /// The file, which must not exist yet. It holds every holding and all keys, and opens as `sqlite:FILE`
    pub(crate) file: PathBuf,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Restore {
    /// The file that `combclear backup` made
    pub(crate) file: PathBuf,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Doctor {
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Retention {
    /// The day on which records would be archived, like 2033-03-02; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) on: Option<Day>,
    /// Show every reason and detail
    #[arg(long, conflicts_with = "json")]
    pub(crate) full: bool,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Archive {
    /// The file, which must not exist yet
    pub(crate) file: PathBuf,
    /// Only records that need not be kept beyond this day; today or earlier
    #[arg(long, value_name = "DATE", value_parser = value::<Day>)]
    pub(crate) through: Day,
    /// Who archives them
    #[arg(long, value_name = "NAME", value_parser = value::<Person>)]
    pub(crate) by: Person,
    /// Also records that are released only by a law known here second hand or from memory: where you looked it up
    #[arg(long, value_name = "WHERE")]
    pub(crate) law_checked: Option<String>,
    /// Remove the records from the journal; this cannot be undone. Without it, they are only listed
    #[arg(long)]
    pub(crate) move_for_good: bool,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Law {
    /// The code of a jurisdiction, such as gb; all are listed if left out
    #[arg(value_parser = value::<Jurisdiction>)]
    pub(crate) jurisdiction: Option<Jurisdiction>,
    /// The day of the event, like 2026-04-11; today if left out
    #[arg(long, value_name = "DATE", value_parser = asked_day)]
    pub(crate) on: Option<Day>,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
#[expect(clippy::struct_excessive_bools, reason = "each is a flag of the command line")]
pub(crate) struct Leaflets {
    /// The id of one leaflet
    pub(crate) id: Option<String>,
    /// Show the leaflets of every country, not only those that apply to the holding
    #[arg(long)]
    pub(crate) all_countries: bool,
    /// The format of leaflets as a JSON Schema, for an editor
    #[arg(long, conflicts_with_all = ["id", "json"])]
    pub(crate) schema: bool,
    /// Show every reason and detail
    #[arg(long, conflicts_with = "json")]
    pub(crate) full: bool,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Completions {
    /// The shell
    pub(crate) shell: clap_complete::Shell,
}

#[derive(Debug, Args)]
pub(crate) struct Manual {
    /// The folder, which must exist
    pub(crate) folder: PathBuf,
}

#[derive(Debug, Args)]
pub(crate) struct Serve {
    /// Where to listen
    #[arg(long, default_value = "127.0.0.1:8420", value_name = "ADDRESS", value_parser = address)]
    pub(crate) listen: SocketAddr,
    /// Let a page of this origin, such as `https://hives.example.org`, call the API from a browser; may be given several times
    #[arg(long, value_name = "ORIGIN", value_parser = origin)]
    pub(crate) allow_origin: Vec<Origin>,
    /// A name by which others reach the service, such as `hives.example.org`; may be given several times
    #[arg(long, value_name = "NAME")]
    pub(crate) name: Vec<String>,
    /// Encrypt with this certificate: a PEM file, with those that vouch for it
    #[arg(long, value_name = "FILE", requires = "certificate_key")]
    pub(crate) certificate: Option<PathBuf>,
    /// The private key of the certificate: a PEM file
    #[arg(long, value_name = "FILE", requires = "certificate")]
    pub(crate) certificate_key: Option<PathBuf>,
    /// A proxy in front of the service encrypts: others reach it through that
    #[arg(long, conflicts_with = "certificate")]
    pub(crate) behind_proxy: bool,
    /// Ask for keys although only this machine can reach the service
    #[arg(long)]
    pub(crate) keys: bool,
}

#[derive(Debug, Args)]
pub(crate) struct KeyArgs {
    #[command(subcommand)]
    pub(crate) command: KeyCommand,
}

#[derive(Debug, Subcommand)]
pub(crate) enum KeyCommand {
    /// Make a key for somebody. It is shown once; only its hash is kept
    Add(KeyAdd),
    /// Show the keys that were made, and which of them hold
    List(KeyList),
    /// End a key. What was recorded with it stays
    End(KeyEnd),
}

#[derive(Debug, Args)]
pub(crate) struct KeyAdd {
    /// What the key allows: `keeper` everything in the holding; `helper` to read and add, not to correct; `vet` to read, and add
    /// prescriptions and what was given; `reader` to read; `operator` to begin holdings and see what the service measures
    #[arg(value_name = "ROLE", value_parser = word(Role::from_word, &Role::ALL))]
    pub(crate) role: Role,
    /// Who holds it
    #[arg(long = "for", value_name = "NAME", value_parser = value::<Person>)]
    pub(crate) holder: Person,
    /// The last day on which it holds, like 2026-12-31; without end if left out
    #[arg(long, value_name = "DATE", value_parser = value::<Day>)]
    pub(crate) until: Option<Day>,
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct KeyList {
    /// Print JSON, for programs
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct KeyEnd {
    /// The key: the eight signs before the dot
    #[arg(value_name = "KEY", value_parser = value::<KeyId>)]
    pub(crate) id: KeyId,
}

fn address(text: &str) -> Result<SocketAddr, String> {
    text.parse().map_err(|_| Label::AskedWriteAddress.said())
}

fn origin(text: &str) -> Result<Origin, String> {
    text.parse().map_err(|_| Label::AskedWriteOrigin.said())
}
