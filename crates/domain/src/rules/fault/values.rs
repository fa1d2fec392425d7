//! What is wrong with single values, and how they are mended.

use super::keys::TableName;
use crate::basics::calendar::Day;
use crate::basics::spelling::nearest;

/// What is wrong with a value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ValueFault {
    /// A value that its key cannot have.
    Wrong {
        /// The table.
        table: TableName,
        /// The key.
        key: &'static str,
        /// What was found.
        found: Found,
        /// How it is mended.
        mend: Mend,
    },
    /// A word that is not of its list.
    Unlisted {
        /// The list.
        of: WordsOf,
        /// The word.
        written: String,
        /// The word of the list that was probably meant.
        meant: Option<&'static str>,
        /// The list.
        known: Vec<&'static str>,
    },
    /// Something is named twice in one list.
    Twice {
        /// What.
        of: Listed,
        /// Its name.
        name: String,
    },
    /// The last day lies before the first.
    UntilBeforeFrom {
        /// The last.
        until: Day,
        /// The first.
        from: Day,
    },
    /// A value was checked before it was in force.
    CheckedBeforeFrom {
        /// The day on which it was checked.
        checked_on: Day,
        /// The first day in force.
        from: Day,
    },
    /// A file that is not called as its content says.
    NotTheFile {
        /// The key of that content.
        key: &'static str,
        /// The content.
        name: String,
        /// The name of the file.
        file: String,
    },
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
    /// By writing degrees Celsius.
    Celsius {
        /// What was written, probably in Fahrenheit.
        fahrenheit: String,
        /// The same in tenths of a degree Celsius.
        tenths: i16,
    },
    /// By writing the format that this program reads.
    Format(i64),
    /// By giving each a table of its own, as in `[[rule]]`.
    OwnTables,
}

/// What a value would have to be.
#[derive(Debug, Clone, PartialEq, Eq)]
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
    Whole {
        /// At least.
        least: i64,
        /// At most.
        most: i64,
    },
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
