//! The subcommands of `record`, made from the forms of the kinds of entry.

use std::collections::BTreeMap;

use clap::error::ErrorKind;
use clap::{Arg, ArgAction, ArgMatches, Args, Command, FromArgMatches};
use combclear_domain::basics::misread::Named;
use combclear_domain::basics::words::{ApiaryName, HoldingName};
use combclear_domain::journal::Kind;
use combclear_domain::journal::form::{Blank, Input, Origin, blanks};
use combclear_domain::recording::Chosen;
use combclear_domain::rules::leaflet::Says;
use combclear_wording::forms::{self, FieldWords};
use combclear_wording::terminal::record as say;
use combclear_wording::{Label, Words};

use crate::failure::Said;

/// What `record` is asked to write down.
#[derive(Debug, Clone)]
pub(crate) struct Record {
    pub(super) what: What,
    /// The day as written, such as `yesterday`.
    pub(super) on: Option<String>,
    pub(super) at: Option<String>,
    pub(super) by: Option<String>,
    /// What it is copied from, and the day as written on which it was written there.
    pub(super) copied_from: Option<String>,
    pub(super) written_on: Option<String>,
    /// Whether to record without asking.
    pub(super) yes: bool,
    /// Whether to record a dose that is on record already.
    pub(super) again: bool,
    /// Values of the built-in leaflet that were found on the leaflet of a lot.
    pub(super) confirms: Vec<Says>,
}

#[derive(Debug, Clone)]
pub(super) enum What {
    /// A form, with the texts of its fields.
    Form { kind: Kind, texts: BTreeMap<String, Vec<String>>, chosen: Option<Chosen> },
    /// A correction of an entry.
    Correction { number: String, changes: BTreeMap<String, String>, reason: Option<String> },
    /// An entry that did not happen.
    StrikeOut { number: String, reason: Option<String> },
}

/// A holding to begin.
#[derive(Debug, Clone)]
pub(crate) struct Begin {
    pub(super) holding: HoldingName,
    /// The form of its first entry.
    pub(super) first: Record,
}

impl Args for Begin {
    fn augment_args(command: Command) -> Command {
        let words = Words::english();
        let name = Arg::new(NAME)
            .required(true)
            .value_name(Label::BeginNameValue.said())
            .value_parser(crate::args::value::<HoldingName>)
            .help(Label::BeginName.said());
        let fields = blanks(Kind::HoldingDetails);
        let fields = fields.iter().map(|blank| argument(words, Kind::HoldingDetails, blank, false));
        command.arg(name).args(fields).args(common(words))
    }

    fn augment_args_for_update(command: Command) -> Command {
        Begin::augment_args(command)
    }
}

impl FromArgMatches for Begin {
    fn from_arg_matches(given: &ArgMatches) -> Result<Begin, clap::Error> {
        let Some(holding) = given.get_one::<HoldingName>(NAME).cloned() else {
            return Err(clap::Error::new(ErrorKind::MissingRequiredArgument));
        };
        Ok(Begin { holding, first: Record::of(form_of(Kind::HoldingDetails, given), given) })
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Begin::from_arg_matches(matches)?;
        Ok(())
    }
}

impl Record {
    /// What is recorded, with the options that every form has.
    fn of(what: What, given: &ArgMatches) -> Record {
        let one = |id: &str| given.get_one::<String>(id).cloned();
        Record {
            what,
            on: one(ON),
            at: one(AT),
            by: one(BY),
            copied_from: one(COPIED_FROM),
            written_on: one(WRITTEN_ON),
            yes: given.get_flag(YES),
            again: given.try_get_one::<bool>(AGAIN).ok().flatten().copied().unwrap_or_default(),
            confirms: Vec::new(),
        }
    }
}

impl Record {
    /// The keeper, if the form names one.
    pub(super) fn keeper(&self) -> Option<String> {
        match &self.what {
            What::Form { texts, .. } => texts.get("keeper")?.first().cloned(),
            What::Correction { .. } | What::StrikeOut { .. } => None,
        }
    }
}

/// The name of the command that fills in the form of a kind. None if no such command fills it in.
pub(crate) const fn command_of(kind: Kind) -> Option<&'static str> {
    Some(match kind {
        Kind::HoldingDetails => "keeper",
        Kind::ApiaryDetails => "apiary",
        Kind::SiteConditions => "site",
        Kind::NectarFlow => "flow",
        Kind::Temperature => "temperatures",
        Kind::TemperatureNormals => "usual-temperatures",
        Kind::ColonyEstablished => "colony",
        Kind::ColonyMoved => "moved",
        Kind::ColonySplit => "split",
        Kind::ColonyUnited => "united",
        Kind::ColonyEnded => "ended",
        Kind::SupersOn => "supers-on",
        Kind::SupersOff => "supers-off",
        Kind::Inspection => "inspection",
        Kind::MiteCount => "mites",
        Kind::MedicineDescribed => "medicine",
        Kind::LotAcquired => "lot",
        Kind::VetLot => "vet-lot",
        Kind::LotOpened => "opened",
        Kind::LeafletReading => "leaflet",
        Kind::Prescription => "prescription",
        Kind::Administration => "given",
        Kind::Removal => "taken-out",
        Kind::Disposal => "disposed",
        Kind::Harvest => "harvest",
        // A document has a command of its own; a strike-out names an entry.
        Kind::DocumentAttached | Kind::StrikeOut | Kind::Archived => return None,
    })
}

/// The option of a field, without the dashes before it.
pub(crate) fn option_of(key: &str) -> String {
    match key {
        // The jurisdiction of a keeper is a country.
        "jurisdiction" => "country".to_owned(),
        key => key.replace('_', "-"),
    }
}

impl Args for Record {
    fn augment_args(command: Command) -> Command {
        let words = Words::english();
        let of_kind = |kind: &Kind| Some(of_form(words, *kind, command_of(*kind)?));
        let common = common(words).map(|arg| arg.global(true));
        command
            .subcommand_required(true)
            .arg_required_else_help(true)
            .args(common)
            .subcommands(Kind::ALL.iter().filter_map(of_kind))
            .subcommand(correction())
            .subcommand(strike_out())
    }

    fn augment_args_for_update(command: Command) -> Command {
        Record::augment_args(command)
    }
}

impl FromArgMatches for Record {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Record, clap::Error> {
        let Some((name, given)) = matches.subcommand() else {
            return Err(clap::Error::new(ErrorKind::MissingSubcommand));
        };
        let one = |id: &str| given.get_one::<String>(id).cloned();
        let what = match Kind::ALL.iter().find(|kind| command_of(**kind) == Some(name)) {
            Some(kind) => form_of(*kind, given),
            None if name == CORRECTION => What::Correction {
                number: one(NUMBER).unwrap_or_default(),
                changes: given.get_many::<(String, String)>(SET).into_iter().flatten().cloned().collect(),
                reason: one(REASON),
            },
            None => What::StrikeOut { number: one(NUMBER).unwrap_or_default(), reason: one(REASON) },
        };
        Ok(Record::of(what, given))
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Record::from_arg_matches(matches)?;
        Ok(())
    }
}

// Ids of arguments. None can be the key of a field: those have no capitals.
const ON: &str = "ON";
const AT: &str = "AT";
const BY: &str = "BY";
const YES: &str = "YES";
const AGAIN: &str = "AGAIN";
const CHOSEN_AT: &str = "CHOSEN_AT";
const CHOSEN_INSIDE: &str = "CHOSEN_INSIDE";
const CHOSEN_ALL: &str = "CHOSEN_ALL";
const NAME: &str = "NAME";
const NUMBER: &str = "NUMBER";
const COPIED_FROM: &str = "COPIED_FROM";
const WRITTEN_ON: &str = "WRITTEN_ON";
const SET: &str = "SET";
const REASON: &str = "REASON";
const CORRECTION: &str = "correction";
const STRIKE_OUT: &str = "strike-out";

fn common(words: &Words) -> [Arg; 6] {
    let text = |id: &'static str, long: &'static str, value: Label, help: Label| {
        Arg::new(id).long(long).value_name(value.said()).help(words.label(help).to_owned())
    };
    [
        text(ON, "on", Label::RecordOptionOnValue, Label::RecordOptionOn),
        text(AT, "at", Label::RecordOptionAtValue, Label::RecordOptionAt),
        text(BY, "by", Label::RecordOptionByValue, Label::RecordOptionBy),
        text(COPIED_FROM, "copied-from", Label::RecordOptionCopiedFromValue, Label::RecordOptionCopiedFrom),
        text(WRITTEN_ON, "written-on", Label::RecordOptionOnValue, Label::RecordOptionWrittenOn),
        Arg::new(YES)
            .long("yes")
            .short('y')
            .action(ArgAction::SetTrue)
            .help(words.label(Label::RecordOptionYes).to_owned()),
    ]
}

fn of_form(words: &Words, kind: Kind, name: &'static str) -> Command {
    let blanks = blanks(kind);
    let place = main_field(&blanks).map(|blank| blank.key.clone());
    let mut command = Command::new(name).about(forms::title(words, kind));
    if kind == Kind::Administration {
        command = command.arg(
            Arg::new(AGAIN)
                .long("again")
                .action(ArgAction::SetTrue)
                .help(words.label(Label::RecordOptionAgain).to_owned()),
        );
    }
    for blank in &blanks {
        command = command.arg(argument(words, kind, blank, place.as_deref() == Some(blank.key.as_str())));
    }
    if blanks.iter().any(|blank| takes_colonies_on_record(blank) && place.as_deref() == Some(&blank.key)) {
        let flag = |id: &'static str, long: &'static str, help: Label| {
            Arg::new(id)
                .long(long)
                .action(ArgAction::SetTrue)
                .help(words.label(help).to_owned())
                .help_heading(Label::RecordHeadingColonies.said())
        };
        command = command
            .arg(
                Arg::new(CHOSEN_AT)
                    .long("apiary")
                    .value_name(Label::RecordOptionApiaryValue.said())
                    .value_parser(crate::args::value::<ApiaryName>)
                    .help(words.label(Label::RecordOptionApiary).to_owned())
                    .help_heading(Label::RecordHeadingColonies.said()),
            )
            .arg(flag(CHOSEN_INSIDE, "all-with-medicine-in", Label::RecordOptionInside))
            .arg(flag(CHOSEN_ALL, "all", Label::RecordOptionAll))
            .group(clap::ArgGroup::new("chosen").args([CHOSEN_AT, CHOSEN_INSIDE, CHOSEN_ALL]));
    }
    command
}

/// The field that is given without an option: what the entry is about.
pub(crate) fn main_field(blanks: &[Blank]) -> Option<&Blank> {
    let colonies = |blank: &&Blank| matches!(blank.input, Input::Names(_) | Input::Name(Named::Colony));
    let name = |blank: &&Blank| matches!(blank.input, Input::Name(_)) && blank.needed;
    blanks.iter().find(colonies).or_else(|| blanks.iter().find(name))
}

fn takes_colonies_on_record(blank: &Blank) -> bool {
    matches!(blank.input, Input::Names(_) | Input::Name(Named::Colony)) && blank.origin != Origin::New
}

/// Whether a field may be given several times.
fn takes_several(blank: &Blank) -> bool {
    match blank.input {
        Input::Names(_) | Input::Parts(_) | Input::Name(Named::Colony) => true,
        Input::Name(Named::Apiary) => blank.origin == Origin::New,
        _ => false,
    }
}

fn argument(words: &Words, kind: Kind, blank: &Blank, is_main: bool) -> Arg {
    let FieldWords { label, hint, example } = forms::field(words, kind, blank);
    let choices = match blank.input {
        Input::Word(list) => list(),
        _ => Vec::new(),
    };
    // What the record has by itself need not be given.
    let needed = blank.needed && !matches!(blank.origin, Origin::InStock | Origin::Inside);
    let help = say::field_help(words, hint, example, &choices, needed);
    let several = takes_several(blank);
    let arg = Arg::new(blank.key.clone()).value_name(label.to_uppercase()).help(help).action(if several {
        ArgAction::Append
    } else {
        ArgAction::Set
    });
    if is_main {
        return if several { arg.num_args(0..) } else { arg };
    }
    arg.long(option_of(&blank.key)).help_heading(Label::RecordHeadingFields.said())
}

fn correction() -> Command {
    Command::new(CORRECTION)
        .about(Label::RecordCorrection.said())
        .arg(number())
        .arg(
            Arg::new(SET)
                .long("set")
                .value_name(Label::RecordOptionSetValue.said())
                .help(Label::RecordOptionSet.said())
                .action(ArgAction::Append)
                .value_parser(change),
        )
        .arg(reason())
}

fn strike_out() -> Command {
    Command::new(STRIKE_OUT).about(Label::RecordStrikeOut.said()).arg(number()).arg(reason())
}

fn number() -> Arg {
    Arg::new(NUMBER).required(true).help(Label::RecordOptionNumber.said())
}

fn reason() -> Arg {
    Arg::new(REASON)
        .long("reason")
        .value_name(Label::RecordOptionReasonValue.said())
        .help(Label::RecordOptionReason.said())
}

/// Reads `field=value`.
fn change(text: &str) -> Result<(String, String), String> {
    let (key, value) = text.split_once('=').ok_or_else(|| Label::RecordSetForm.said())?;
    Ok((key.trim().replace('-', "_"), value.to_owned()))
}

fn form_of(kind: Kind, given: &ArgMatches) -> What {
    let mut texts = BTreeMap::new();
    for blank in blanks(kind) {
        let values: Vec<String> =
            given.get_many::<String>(&blank.key).into_iter().flatten().cloned().collect();
        if !values.is_empty() {
            texts.insert(blank.key, values);
        }
    }
    let flag = |id: &str| given.try_get_one::<bool>(id).ok().flatten().copied().unwrap_or_default();
    let apiary = given.try_get_one::<ApiaryName>(CHOSEN_AT).ok().flatten();
    let chosen = match apiary {
        Some(apiary) => Some(Chosen::At(apiary.clone())),
        None if flag(CHOSEN_INSIDE) => Some(Chosen::WithSomethingIn),
        None => flag(CHOSEN_ALL).then_some(Chosen::All),
    };
    What::Form { kind, texts, chosen }
}
