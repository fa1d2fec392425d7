//! A text as the JSON value that its field takes. What does not fit stays text, so that the reader of the entry says why.

use serde_json::{Map, Number, Value};

use crate::basics::calendar::Day;
use crate::journal::form::{Blank, Field, Input, Origin};

/// The value for what is written in a field.
pub(super) fn value(blank: &Blank, text: &str) -> Value {
    match (blank.input, blank.origin) {
        (Input::Day, Origin::Printed) => {
            last_of_month(text).map_or_else(|| text.into(), |day| day.to_string().into())
        }
        (input, _) => of_input(input, text),
    }
}

fn of_input(input: Input, text: &str) -> Value {
    match input {
        Input::Word(words) => {
            let word = text.to_lowercase().replace([' ', '-'], "_");
            let known = words().contains(&word.as_str());
            if known { word.into() } else { text.into() }
        }
        Input::YesNo => match text.to_lowercase().as_str() {
            "yes" | "y" | "true" => true.into(),
            "no" | "n" | "false" => false.into(),
            _ => text.into(),
        },
        Input::Whole | Input::Amount | Input::Temperature => number(text),
        Input::Parts(fields) => rows(fields, text),
        Input::Text
        | Input::Day
        | Input::TimeOfDay
        | Input::Name(_)
        | Input::Names(_)
        | Input::FirstDose
        | Input::Part(_)
        | Input::Made => text.into(),
    }
}

/// A number, with a point or a comma before its decimals. A comma before three digits may as well part thousands: `1,500` is no
/// number, and `0,125` is.
fn number(text: &str) -> Value {
    let may_be_thousands =
        |(whole, rest): (&str, &str)| rest.len() == 3 && whole.trim_start_matches('-') != "0";
    if text.split_once(',').is_some_and(may_be_thousands) {
        return text.into();
    }
    let written = text.replace(',', ".");
    let number = serde_json::from_str::<Number>(&written);
    number.map_or_else(|_| text.into(), Value::Number)
}

/// Groups of values: a semicolon between groups, spaces between values, in the order of the fields.
fn rows(fields: &[Field], text: &str) -> Value {
    let rows = text.split(';').map(str::trim).filter(|row| !row.is_empty()).map(|row| {
        let mut object = Map::new();
        let mut fields = fields.iter();
        for value in row.split_whitespace() {
            let field = fields.next();
            let name = field.map_or(value, |field| field.name);
            object.insert(name.to_owned(), field.map_or(Value::Null, |field| of_input(field.input, value)));
        }
        Value::Object(object)
    });
    Value::Array(rows.collect())
}

/// The last day of a month written as 2028-05.
fn last_of_month(text: &str) -> Option<Day> {
    let (year, month) = text.split_once('-')?;
    let (year, month): (i32, u32) = (year.parse().ok()?, month.parse().ok()?);
    let next = if month == 12 {
        Day::new(year.checked_add(1)?, 1, 1)
    } else {
        Day::new(year, month.checked_add(1)?, 1)
    };
    (text.len() == 7 && (1..=12).contains(&month)).then_some(next?.before())
}
