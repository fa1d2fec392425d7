//! Reads values as the wanted type. A wrong value is refused with fitting help.

use std::ops::{Range, RangeInclusive};
use std::str::FromStr;

use toml::Spanned;
use toml::de::DeValue;

use crate::basics::calendar::Day;
use crate::basics::spelling::nearest;
use crate::rules::fault::Mend;

/// A value and its span.
pub(crate) struct WrittenValue<'a> {
    pub(crate) span: Range<usize>,
    pub(crate) value: DeValue<'a>,
}

impl<'a> WrittenValue<'a> {
    pub(crate) fn new(value: Spanned<DeValue<'a>>) -> WrittenValue<'a> {
        WrittenValue { span: value.span(), value: value.into_inner() }
    }
}

/// Why a value is refused: how it is mended, or `None` if by writing what was wanted.
pub(crate) type Complaint = Option<Mend>;

pub(crate) fn as_text(found: &WrittenValue<'_>) -> Result<String, Complaint> {
    found.value.as_str().filter(|text| !text.trim().is_empty()).map(str::to_owned).ok_or(None)
}

pub(crate) fn as_word<T: Copy>(
    found: &WrittenValue<'_>,
    words: &[(&'static str, T)],
) -> Result<T, Complaint> {
    let written = found.value.as_str().ok_or(None)?;
    let meant = words.iter().find(|(word, _)| *word == written).map(|(_, meant)| *meant);
    meant.ok_or_else(|| nearest(written, words.iter().map(|(word, _)| *word)).map(Mend::Meant))
}

pub(crate) fn as_name<T: FromStr>(found: &WrittenValue<'_>) -> Result<T, Complaint> {
    as_text(found)?.parse().map_err(|_| None)
}

pub(crate) fn as_whole<T: TryFrom<i64>>(
    found: &WrittenValue<'_>,
    bounds: &RangeInclusive<i64>,
) -> Result<T, Complaint> {
    let bounded = |number: &i64| bounds.contains(number);
    if let Some(quoted) = found.value.as_str().and_then(|text| text.parse().ok()).filter(bounded) {
        return Err(Some(Mend::DropQuotes(quoted.to_string())));
    }
    let number =
        found.value.as_integer().and_then(|number| i64::from_str_radix(number.as_str(), number.radix()).ok());
    number.filter(bounded).and_then(|number| T::try_from(number).ok()).ok_or(None)
}

pub(crate) fn as_number<T>(
    found: &WrittenValue<'_>,
    read: impl FnOnce(&str) -> Result<T, Complaint>,
) -> Result<T, Complaint> {
    match &found.value {
        DeValue::Integer(number) if number.radix() == 10 => read(number.as_str()),
        DeValue::Float(number) => read(number.as_str()),
        DeValue::String(text) => Err(read(text).ok().map(|_| Mend::DropQuotes(text.to_string()))),
        DeValue::Integer(_)
        | DeValue::Boolean(_)
        | DeValue::Datetime(_)
        | DeValue::Array(_)
        | DeValue::Table(_) => Err(None),
    }
}

pub(crate) fn as_day(found: &WrittenValue<'_>) -> Result<Day, Complaint> {
    if let Some(quoted) = found.value.as_str().and_then(|text| text.parse::<Day>().ok()) {
        return Err(Some(Mend::DropQuotes(quoted.to_string())));
    }
    let datetime = found.value.as_datetime().ok_or(None)?;
    // The parser gives an empty date for one that does not exist in the calendar.
    let date = datetime.date.ok_or_else(|| datetime.time.is_none().then_some(Mend::DayOfCalendar))?;
    if datetime.time.is_some() {
        return Err(Some(Mend::DateAlone(date.to_string())));
    }
    Day::new(date.year.into(), date.month.into(), date.day.into()).ok_or(Some(Mend::DayInRange))
}

pub(crate) fn as_list<'a>(found: &WrittenValue<'a>) -> Result<Vec<WrittenValue<'a>>, Complaint> {
    if let Some(text) = found.value.as_str() {
        return Err(Some(Mend::InBrackets(text.to_owned())));
    }
    let items = found.value.as_array().filter(|items| !items.is_empty()).ok_or(None)?;
    Ok(items.iter().cloned().map(WrittenValue::new).collect())
}
