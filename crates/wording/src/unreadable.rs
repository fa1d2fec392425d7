//! Unreadable input, and recorded entries that fail verification, in words.

use combclear_domain::basics::misread::{
    AmountFault, BadName, DateWanted, Found, Misread, NameFault, NotADate, NotATemperature, NotAnAmount,
    TemperatureFault, Wanted,
};
use combclear_domain::journal::Kind;
use combclear_domain::journal::document::{DOCUMENT_MOST, Lacking, Unfit, in_short};
use combclear_domain::journal::entry::EntryFault;
use combclear_domain::journal::fault::{ContentFault, FileKind, HeaderFault, Unreadable};
use combclear_domain::journal::misfit::{Misfit, OptionalColumn};
use combclear_domain::journal::seal::Broken;

use crate::quoted::{QUOTED_MOST, cut};
use crate::refusals::{Refused, did_you_mean};
use crate::words::say;
use crate::{Label, Words};

/// An example of the first line of a journal file.
pub const JOURNAL_HEADER: &str = r#"{"combclear_journal":1,"holding":"...","sealed":false}"#;

/// Why a text or a value cannot be read.
#[must_use]
pub fn misread(words: &Words, why: &Misread) -> String {
    match why {
        Misread::NotJson { says } | Misread::Other { says } => says.clone(),
        Misread::ListForObject => say!(words, MisreadListForObject),
        Misread::MissingField { field } => say!(words, MisreadMissingField, field = field),
        Misread::UnknownField { field, known } if known.is_empty() => {
            say!(words, MisreadNoFields, field = field)
        }
        Misread::UnknownField { field, known } => {
            say!(words, MisreadUnknownField, field = field, known = self::known(words, known))
        }
        Misread::DuplicateField { field } => say!(words, MisreadDuplicateField, field = field),
        Misread::UnknownWord { word, known } => {
            say!(words, MisreadUnknownWord, word = word, known = self::known(words, known))
        }
        Misread::WrongType { found, wanted } => say!(
            words,
            MisreadWrongType,
            found = self::found(words, found),
            wanted = self::wanted(words, wanted)
        ),
        Misread::WrongValue { found, wanted } => say!(
            words,
            MisreadWrongValue,
            found = self::found(words, found),
            wanted = self::wanted(words, wanted)
        ),
        Misread::Name(name) => bad_name(words, name),
        Misread::Date(date) => not_a_date(words, date),
        Misread::Id(id) => say!(words, MisreadId, text = &id.0),
        Misread::Entry(entry) => say!(words, MisreadEntry, text = &entry.0),
        Misread::Hash(hash) => say!(words, MisreadHash, text = &hash.0),
        Misread::Key(key) => say!(words, MisreadKey, text = &key.0),
        Misread::Places(places) => say!(words, MisreadPlaces, text = &places.0),
        Misread::Checkpoint => say!(words, MisreadCheckpoint),
        Misread::Amount(amount) => not_an_amount(words, amount),
        Misread::Temperature(temperature) => not_a_temperature(words, temperature),
        Misread::NothingConfirmed => say!(words, MisreadNothingConfirmed),
        Misread::ConfirmedTwice => say!(words, MisreadConfirmedTwice),
    }
}

pub(crate) fn bad_name(words: &Words, BadName { text, of, why }: &BadName) -> String {
    let of = of.as_str();
    let why = match why {
        NameFault::Empty => "empty",
        NameFault::OuterSpace => "outer-space",
        NameFault::ControlCharacter => "control-character",
        NameFault::Slash => "slash",
        NameFault::TooLong => "too-long",
    };
    say!(words, MisreadName, text = text, of = of, why = why)
}

fn not_a_date(words: &Words, NotADate { text, wanted }: &NotADate) -> String {
    let wanted = match wanted {
        DateWanted::Date => "date",
        DateWanted::DayOfCalendar => "day-of-calendar",
        DateWanted::DayInRange => "day-in-range",
        DateWanted::YearDay => "year-day",
        DateWanted::TimeOfDay => "time-of-day",
        DateWanted::Instant => "instant",
    };
    say!(words, MisreadDate, text = text, wanted = wanted)
}

fn not_an_amount(words: &Words, NotAnAmount { text, why }: &NotAnAmount) -> String {
    let why = match why {
        AmountFault::NotANumber => "not-a-number",
        AmountFault::Decimals => "decimals",
        AmountFault::TooMuch => "too-much",
    };
    say!(words, MisreadAmount, text = text, why = why)
}

fn not_a_temperature(words: &Words, NotATemperature { text, why }: &NotATemperature) -> String {
    let why = match why {
        TemperatureFault::NotANumber => "not-a-number",
        TemperatureFault::Decimals => "decimals",
        TemperatureFault::OutOfRange { from_fahrenheit: None } => "out-of-range",
        TemperatureFault::OutOfRange { from_fahrenheit: Some(tenths) } => {
            let celsius = format!("{}.{}", tenths / 10, (tenths % 10).abs());
            return say!(words, MisreadFahrenheit, text = text, why = "out-of-range", celsius = celsius);
        }
    };
    say!(words, MisreadTemperature, text = text, why = why)
}

/// The allowed values, in backticks: `one of` several.
#[must_use]
pub fn known(words: &Words, known: &[String]) -> String {
    match quoted(words, known).as_slice() {
        [one] => one.clone(),
        [one, other] => say!(words, MisreadEither, one = one, other = other),
        several => say!(words, MisreadOneOf, names = several.join(", ")),
    }
}

/// Each in backticks.
pub(crate) fn quoted(words: &Words, names: &[impl AsRef<str>]) -> Vec<String> {
    names.iter().map(|name| say!(words, MisreadInBackticks, name = name.as_ref())).collect()
}

fn found(words: &Words, found: &Found) -> String {
    let (kind, value) = match found {
        Found::Null => ("null", String::new()),
        Found::Boolean(value) => ("boolean", value.to_string()),
        Found::Whole(number) | Found::Decimal(number) => ("number", number.clone()),
        Found::Text(text) => ("text", format!("{:?}", cut(text, QUOTED_MOST))),
        Found::List => ("list", String::new()),
        Found::Object => ("object", String::new()),
        Found::Other(says) => return cut(says, QUOTED_MOST).into_owned(),
    };
    say!(words, MisreadFound, found = kind, value = value)
}

fn wanted(words: &Words, wanted: &Wanted) -> String {
    let (kind, most) = match wanted {
        Wanted::Text => ("text", 0),
        Wanted::Whole { most: None } => ("whole", 0),
        Wanted::Whole { most: Some(most) } => ("whole-to", *most),
        Wanted::List => ("list", 0),
        Wanted::Object => ("object", 0),
        Wanted::Entry => ("entry", 0),
        Wanted::Other(says) => return says.clone(),
    };
    say!(words, MisreadWanted, wanted = kind, most = most)
}

/// Why an entry or a line cannot be read, with the character near the fault, for a file of lines.
#[must_use]
pub fn line(words: &Words, fault: &EntryFault) -> Refused {
    entry_at(words, fault, true)
}

/// The same without the character, if the pointer is more precise.
#[must_use]
pub fn entry(words: &Words, fault: &EntryFault) -> Refused {
    entry_at(words, fault, false)
}

fn entry_at(words: &Words, EntryFault { pointer: _, what }: &EntryFault, place: bool) -> Refused {
    let near = |near: Option<usize>| near.filter(|_| place);
    let label = |message: Label, help: Label| Refused {
        message: words.label(message).to_owned(),
        help: words.label(help).to_owned(),
    };
    match what {
        Unreadable::NotText => label(Label::UnreadableNotText, Label::UnreadableNotTextHelp),
        Unreadable::Envelope { why, near: at } => Refused {
            message: said_near(words, why, near(*at)),
            help: words.label(envelope_help(why)).to_owned(),
        },
        Unreadable::Body { kind, why } => {
            Refused { message: misread(words, why), help: body_help(words, *kind, why) }
        }
        Unreadable::UnknownKind { written, near } => Refused {
            message: say!(words, UnreadableKind, written = written),
            help: did_you_mean(words, near.map(Kind::as_str), || {
                let kinds: Vec<&str> = Kind::ALL.iter().map(|kind| kind.as_str()).collect();
                say!(words, UnreadableKindsHelp, kinds = kinds.join(", "))
            }),
        },
        Unreadable::NoId => label(Label::UnreadableNoId, Label::UnreadableNoIdHelp),
        Unreadable::NullCharacter => {
            label(Label::UnreadableNullCharacter, Label::UnreadableNullCharacterHelp)
        }
        Unreadable::NoReason => label(Label::UnreadableNoReason, Label::UnreadableNoReasonHelp),
        Unreadable::NothingCorrected => {
            label(Label::UnreadableNothingCorrected, Label::UnreadableNothingCorrectedHelp)
        }
        Unreadable::NothingStruckOut => {
            label(Label::UnreadableNothingStruckOut, Label::UnreadableNothingStruckOutHelp)
        }
        Unreadable::CopiedFromNothing => {
            label(Label::UnreadableCopiedFromNothing, Label::UnreadableCopiedFromNothingHelp)
        }
        Unreadable::NotSaidWhenWritten => {
            label(Label::UnreadableNotSaidWhenWritten, Label::UnreadableNotSaidWhenWrittenHelp)
        }
        Unreadable::NumberedNowhere => {
            label(Label::UnreadableNumberedNowhere, Label::UnreadableNumberedNowhereHelp)
        }
        Unreadable::NoEntryNumbered { number, last } => no_entry_numbered(words, *number, *last),
        Unreadable::OtherSpelling => {
            label(Label::UnreadableOtherSpelling, Label::UnreadableOtherSpellingHelp)
        }
        Unreadable::Header { of, what } => header(words, *of, what, place),
        Unreadable::Content(what) => content(words, what, place),
    }
}

/// An entry named by a number that the journal does not have.
#[must_use]
pub fn no_entry_numbered(words: &Words, number: u64, last: u64) -> Refused {
    Refused {
        message: say!(words, RecordingNoEntry, text = number, last = last),
        help: words.label(Label::HttpNoEntryNumberedHelp).to_owned(),
    }
}

fn said_near(words: &Words, why: &Misread, near: Option<usize>) -> String {
    let message = misread(words, why);
    match near {
        None => message,
        Some(near) => say!(words, MisreadNear, message = message, near = near),
    }
}

fn envelope_help(why: &Misread) -> Label {
    match why {
        Misread::Date(NotADate { wanted: DateWanted::DayOfCalendar, .. }) => Label::UnreadableCalendarHelp,
        Misread::NotJson { .. } | Misread::ListForObject => Label::UnreadableJsonHelp,
        _ => Label::UnreadableEnvelopeHelp,
    }
}

fn body_help(words: &Words, kind: Kind, why: &Misread) -> String {
    let kind = kind.as_str();
    match why {
        Misread::MissingField { .. } | Misread::NothingConfirmed => {
            say!(words, UnreadableMissingHelp, kind = kind)
        }
        Misread::DuplicateField { .. } => words.label(Label::UnreadableDuplicateHelp).to_owned(),
        Misread::UnknownField { .. } => say!(words, UnreadableUnknownHelp, kind = kind),
        _ => say!(words, UnreadableBodyHelp, kind = kind),
    }
}

fn header(words: &Words, of: FileKind, what: &HeaderFault, place: bool) -> Refused {
    let help = || match of {
        FileKind::Journal => say!(words, UnreadableHeaderJournalHelp, header = JOURNAL_HEADER),
        FileKind::Archive => words.label(Label::HeaderArchiveHelp).to_owned(),
    };
    let label = |message: Label, help: Label| Refused {
        message: words.label(message).to_owned(),
        help: words.label(help).to_owned(),
    };
    match what {
        HeaderFault::NotAHeader => {
            let message = match of {
                FileKind::Journal => Label::HeaderJournal,
                FileKind::Archive => Label::HeaderArchive,
            };
            Refused { message: words.label(message).to_owned(), help: help() }
        }
        HeaderFault::Version { found, known } => {
            let file = match of {
                FileKind::Journal => "journal",
                FileKind::Archive => "archive",
            };
            Refused {
                message: say!(words, HeaderVersion, file = file, found = *found, known = *known),
                help: words.label(Label::HeaderVersionHelp).to_owned(),
            }
        }
        HeaderFault::Misread { why, near } => {
            let message = misread(words, why);
            let message = match near.filter(|_| place) {
                None => message,
                Some(near) => say!(words, MisreadNear, message = message, near = near),
            };
            Refused { message, help: help() }
        }
        HeaderFault::NoNumber => label(Label::HeaderNoNumber, Label::HeaderExportAgain),
        HeaderFault::ContentsInDrafts => {
            label(Label::HeaderContentsInDrafts, Label::HeaderContentsInDraftsHelp)
        }
    }
}

fn content(words: &Words, what: &ContentFault, place: bool) -> Refused {
    let message = match what {
        ContentFault::Misread { why, near } => {
            return Refused {
                message: said_near(words, why, near.filter(|_| place)),
                help: words.label(Label::ContentLineHelp).to_owned(),
            };
        }
        ContentFault::NotBase64 => words.label(Label::ContentNotBase64).to_owned(),
        ContentFault::OtherLength { found, promised } => {
            say!(words, ContentOtherLength, found = *found, promised = *promised)
        }
        ContentFault::Size { bytes } => say!(words, ContentSize, bytes = *bytes),
        ContentFault::OtherHash { promised } => say!(words, ContentOtherHash, hash = promised),
        ContentFault::OtherSpelling => words.label(Label::ContentOtherSpelling).to_owned(),
    };
    Refused { message, help: words.label(Label::ContentAgain).to_owned() }
}

/// Why a content cannot be stored as a document.
#[must_use]
pub fn unfit(words: &Words, unfit: &Unfit) -> Refused {
    let label = |label: Label| words.label(label).to_owned();
    let (message, help) = match unfit {
        Unfit::Empty => (label(Label::UnfitEmpty), Label::UnfitEmptyHelp),
        Unfit::TooLarge => (say!(words, UnfitTooLarge, most = DOCUMENT_MOST), Label::UnfitTooLargeHelp),
        Unfit::OtherType(Some(other)) => {
            (say!(words, UnfitOtherType, of = *other), Label::UnfitOtherTypeHelp)
        }
        Unfit::OtherType(None) => (label(Label::UnfitUnknownType), Label::UnfitOtherTypeHelp),
        Unfit::CutOff { media_type, lacks } => {
            let lacks = match lacks {
                Lacking::EndOfPdf => "end-of-pdf",
                Lacking::EndOfJpeg => "end-of-jpeg",
                Lacking::EndOfPng => "end-of-png",
                Lacking::RestOfBox => "rest-of-box",
                Lacking::Description => "description",
            };
            (say!(words, UnfitCutOff, kind = in_short(*media_type), lacks = lacks), Label::UnfitCutOffHelp)
        }
    };
    Refused { message, help: label(help) }
}

/// The first entry of a journal that fails verification.
#[must_use]
pub fn broken(words: &Words, Broken { seq, id, what }: &Broken) -> String {
    say!(words, MisfitEntry, seq = *seq, id = id, what = misfit(words, what))
}

/// Why an entry fails verification.
#[must_use]
pub fn misfit(words: &Words, what: &Misfit) -> String {
    let label = |label: Label| words.label(label).to_owned();
    match what {
        Misfit::OutOfPlace { last, next } => say!(words, MisfitOutOfPlace, last = *last, next = *next),
        Misfit::OtherPrev => label(Label::MisfitOtherPrev),
        Misfit::Changed => label(Label::MisfitChanged),
        Misfit::BodyGone => label(Label::MisfitBodyGone),
        Misfit::NumberDiffers => label(Label::MisfitNumberDiffers),
        Misfit::NotBorneOut { seq } => say!(words, MisfitNotBorneOut, seq = *seq),
        Misfit::DigestDiffers { places } => say!(words, MisfitDigestDiffers, places = places.to_string()),
        Misfit::NoArchive => label(Label::MisfitNoArchive),
        Misfit::OtherEntry => label(Label::MisfitOtherEntry),
        Misfit::OtherMeaning => label(Label::MisfitOtherMeaning),
        Misfit::MovesNothing => label(Label::MisfitMovesNothing),
        Misfit::ContentsDiffer => label(Label::MisfitContentsDiffer),
        Misfit::NothingToMove { seq } => say!(words, MisfitNothingToMove, seq = *seq),
        Misfit::WentBefore => label(Label::MisfitWentBefore),
        Misfit::NoDocument { hash } => say!(words, MisfitNoDocument, hash = hash),
        Misfit::EmptyColumn { column: OptionalColumn::HappenedAt } => label(Label::MisfitEmptyTime),
        Misfit::EmptyColumn { column: OptionalColumn::Corrects } => label(Label::MisfitEmptyCorrects),
        Misfit::HalfACorrection => label(Label::MisfitHalfACorrection),
        Misfit::HalfCopied => label(Label::MisfitHalfCopied),
        Misfit::Bytes { column, found, wanted } => {
            say!(words, MisfitBytes, column = *column, found = *found, wanted = *wanted)
        }
        Misfit::NotText { column } => say!(words, MisfitNotText, column = *column),
        Misfit::Misread { column, why } => {
            say!(words, MisfitMisread, column = *column, why = misread(words, why))
        }
        Misfit::UnknownKind { kind } => say!(words, MisfitUnknownKind, kind = kind),
        Misfit::UnknownRole { role } => say!(words, MisfitUnknownRole, role = role),
        Misfit::Body(fault) => {
            let why = misread(words, &fault.what);
            say!(words, MisfitBody, why = why, pointer = &fault.pointer)
        }
        Misfit::Place { seq } => say!(words, MisfitPlace, seq = *seq),
    }
}
