//! What is wrong with single values, and how they are mended.

use super::keys::TableName;
use crate::basics::calendar::Day;
use crate::basics::spelling::nearest;

/// What is wrong with a value.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of the fault")]
pub enum ValueFault {
    /// A value that its key cannot have.
    Wrong { table: TableName, key: &'static str, found: Found, mend: Mend },
    /// A word that is not of its list. Another was probably meant; those of the list.
    Unlisted { of: WordsOf, written: String, meant: Option<&'static str>, known: Vec<&'static str> },
    /// Something is named twice in one list.
    Twice { of: Listed, name: String },
    /// The last day lies before the first.
    UntilBeforeFrom { until: Day, from: Day },
    /// A value was checked before it was in force.
    CheckedBeforeFrom { checked_on: Day, from: Day },
    /// A file that is not called as the value of this key.
    NotTheFile { key: &'static str, name: String, file: String },
}

impl ValueFault {
    /// A word that is not of its list.
    pub(in crate::rules) fn unlisted(of: WordsOf, written: String, known: Vec<&'static str>) -> ValueFault {
        let meant = nearest(&written, known.iter().copied());
        ValueFault::Unlisted { of, written, meant, known }
    }
}

/// What was found in place of a value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Found {
    /// A list with nothing in it.
    EmptyList,
    /// A list.
    List,
    /// One table.
    Table,
    /// A single value, as it is written.
    Written(String),
}

/// How a wrong value is mended.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of it")]
pub enum Mend {
    /// By writing what was wanted.
    Write(Wanted),
    /// By writing the word that was probably meant.
    Meant(&'static str),
    /// By dropping the quotes around this.
    DropQuotes(String),
    /// By a date that the calendar has.
    DayOfCalendar,
    /// By a date in the range that this program knows.
    DayInRange,
    /// By leaving the time of day out, so that this date stays.
    DateAlone(String),
    /// By putting this text in square brackets.
    InBrackets(String),
    /// By writing degrees Celsius, of which these are the tenths; what was written is probably in Fahrenheit.
    Celsius { fahrenheit: String, tenths: i16 },
    /// By writing the format that this program reads.
    Format(i64),
    /// By giving each a table of its own, as in `[[rule]]`.
    OwnTables,
}

/// What a value would have to be.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are its bounds")]
pub enum Wanted {
    /// Text.
    Text,
    /// A date.
    Date,
    /// The word `true`.
    True,
    /// The format that this program reads.
    Format(i64),
    /// One of these words.
    OneOf(Vec<&'static str>),
    /// A list of these words.
    AnyOf(Vec<&'static str>),
    /// A whole number within bounds.
    Whole { least: i64, most: i64 },
    /// An amount above zero.
    Amount,
    /// Degrees Celsius.
    Degrees,
    /// Month and day.
    YearDay,
    /// The name of the file without its end.
    FileName,
    /// The name of the folder.
    FolderName,
    /// The code of a country, or of the Union.
    Country,
    /// One of the methods of the leaflet.
    Method,
    /// A list of active substances.
    Actives,
    /// A list of methods.
    Methods,
    /// A list of member states.
    States,
    /// A list of label revisions.
    Revisions,
    /// A list of keys of sources.
    SourceKeys,
    /// A list of jurisdictions.
    Jurisdictions,
    /// A list of sorts of record.
    Records,
}

impl Wanted {
    /// One of these words.
    pub(in crate::rules) fn one_of<T>(words: &[(&'static str, T)]) -> Wanted {
        Wanted::OneOf(words.iter().map(|(word, _)| *word).collect())
    }
}

/// A list of words, each of which a leaflet or a law may name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WordsOf {
    /// What giving a medicine needs.
    Needs,
    /// What must not be in at the same time, as far as the record tells it.
    Others,
    /// Sorts of record.
    Records,
}

/// What a list of a file names.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Listed {
    /// A method.
    Method,
    /// A member state.
    State,
    /// A label revision.
    Revision,
    /// A sort of record.
    Record,
    /// A jurisdiction whose law is included.
    Include,
}
