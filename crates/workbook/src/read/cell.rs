//! The content of a cell as the text of its field. Nothing is guessed: a cell that can be read in two ways is refused.

use combclear_domain::journal::form::{Input, Origin};
use combclear_domain::{Day, TimeOfDay};
use combclear_wording::{Label, Words};

use crate::columns::Column;
use crate::faults::{CellFault, What};

/// What is in a cell. Empty cells are left out.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Raw {
    Text(String),
    Number(f64),
    YesNo(bool),
    Moment(Moment),
    Error(String),
    Formula,
}

/// A cell that is formatted as a day, as a time of day or as both.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moment {
    pub(super) year: i32,
    pub(super) month: u32,
    pub(super) day: u32,
    pub(super) hour: u32,
    pub(super) minute: u32,
    /// Whether it has a time of day other than midnight.
    pub(super) has_time: bool,
    /// Whether it is a time of day alone.
    pub(super) is_time_only: bool,
}

impl Moment {
    fn on(self) -> Option<Day> {
        Day::new(self.year, self.month, self.day)
    }

    fn in_words(self) -> String {
        let Moment { year, month, day, hour, minute, has_time, is_time_only } = self;
        match (is_time_only, has_time) {
            (true, _) => format!("{hour:02}:{minute:02}"),
            (false, true) => format!("{year:04}-{month:02}-{day:02} {hour:02}:{minute:02}"),
            (false, false) => format!("{year:04}-{month:02}-{day:02}"),
        }
    }
}

impl Raw {
    /// The cell as a text, whatever it should hold.
    pub(super) fn in_words(&self) -> String {
        match self {
            Raw::Text(text) | Raw::Error(text) => text.trim().to_owned(),
            Raw::Number(number) => number.to_string(),
            Raw::YesNo(yes) => yes.to_string(),
            Raw::Moment(moment) => moment.in_words(),
            Raw::Formula => String::new(),
        }
    }

    /// The text of a field.
    pub(super) fn text(&self, words: &Words, column: &Column) -> Result<String, What> {
        let read = match self {
            Raw::Formula => Err(CellFault::Formula),
            Raw::Error(text) => Err(CellFault::Error(text.clone())),
            Raw::Text(_) | Raw::Number(_) | Raw::YesNo(_) | Raw::Moment(_) => match column.input {
                Input::Day => self.day(column.origin),
                Input::TimeOfDay => self.time_of_day(),
                _ => self.other(words),
            },
        };
        read.map_err(|why| What::Cell { field: column.label, why })
    }

    fn day(&self, origin: Origin) -> Result<String, CellFault> {
        let printed = origin == Origin::Printed;
        match self {
            Raw::Moment(moment) => {
                let text = moment.in_words();
                if moment.has_time || moment.is_time_only {
                    return Err(CellFault::DayWithTime(text));
                }
                // A spreadsheet program makes the first day of a month that is typed as 2028-05.
                if printed && moment.day == 1 {
                    return Err(CellFault::PrintedFirst(text));
                }
                moment.on().map(|day| day.to_string()).ok_or(CellFault::NotADay(text))
            }
            Raw::Number(_) => Err(CellFault::DayOfNumber(self.in_words())),
            _ => {
                let text = self.in_words();
                // Whether there is such a day is said where the entry is read.
                let is_month = printed && is_shaped(&text, "0000-00");
                match (is_month || is_shaped(&text, "0000-00-00"), printed) {
                    (true, _) => Ok(text),
                    (false, true) => Err(CellFault::NotPrinted(text)),
                    (false, false) => Err(CellFault::NotADay(text)),
                }
            }
        }
    }

    fn time_of_day(&self) -> Result<String, CellFault> {
        let text = self.in_words();
        match self {
            Raw::Moment(moment) if !moment.is_time_only => Err(CellFault::NotATime(text)),
            _ => match text.parse::<TimeOfDay>() {
                Ok(time) => Ok(time.to_string()),
                Err(_) => Err(CellFault::NotATime(text)),
            },
        }
    }

    fn other(&self, words: &Words) -> Result<String, CellFault> {
        match self {
            Raw::Moment(moment) => Err(CellFault::DateInText(moment.in_words())),
            Raw::YesNo(true) => Ok(words.label(Label::RecordingYes).to_owned()),
            Raw::YesNo(false) => Ok(words.label(Label::RecordingNo).to_owned()),
            _ => Ok(self.in_words()),
        }
    }
}

/// Whether a text has digits where the shape has, and otherwise its characters.
fn is_shaped(text: &str, shape: &str) -> bool {
    let fits = |(one, wanted): (u8, u8)| if wanted == b'0' { one.is_ascii_digit() } else { one == wanted };
    text.len() == shape.len() && text.bytes().zip(shape.bytes()).all(fits)
}
