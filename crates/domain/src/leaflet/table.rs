//! Reading TOML tables key by key, collecting every fault with its place instead of stopping at the first.

use std::ops::RangeInclusive;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::calendar::Day;
use crate::diagnostic::{Diagnostic, nearest};

/// One file being read, and what was found wrong with it so far.
pub(super) struct File<'a> {
    path: &'a str,
    text: &'a str,
    faults: &'a mut Vec<Diagnostic>,
}

impl<'a> File<'a> {
    pub(super) fn new(path: &'a str, text: &'a str, faults: &'a mut Vec<Diagnostic>) -> File<'a> {
        File { path, text, faults }
    }

    pub(super) fn path(&self) -> &'a str {
        self.path
    }

    /// How many faults were found so far, in all files.
    pub(super) fn fault_count(&self) -> usize {
        self.faults.len()
    }

    /// Notes a fault at a byte offset.
    pub(super) fn fault(&mut self, offset: usize, message: impl Into<String>, help: impl Into<String>) {
        let (line, column) = self.place(offset);
        let (file, message, help) = (self.path.to_owned(), message.into(), help.into());
        self.faults.push(Diagnostic { file, line, column, message, help });
    }

    /// The line of a byte offset, counted from 1.
    pub(super) fn line(&self, offset: usize) -> u32 {
        self.place(offset).0
    }

    fn place(&self, offset: usize) -> (u32, u32) {
        let before = self.text.get(..offset).unwrap_or(self.text);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        (u32::try_from(line).unwrap_or(u32::MAX), u32::try_from(column).unwrap_or(u32::MAX))
    }

    /// Parses the file as TOML. Syntax faults are noted; what could be read is returned all the same.
    pub(super) fn parse(&mut self) -> Table<'a> {
        let (table, errors) = DeTable::parse_recoverable(self.text);
        for error in errors {
            let offset = error.span().map_or(0, |span| span.start);
            let message = error.message().lines().next().unwrap_or("this is not TOML").to_lowercase();
            self.fault(offset, message, "write it as TOML: key = value, text in double quotes, dates bare");
        }
        Table::new("the leaflet", 0, table.into_inner())
    }
}

/// A table whose keys are taken out one by one; what is left at the end is unknown.
pub(super) struct Table<'a> {
    name: String,
    offset: usize,
    left: DeTable<'a>,
    asked: Vec<&'static str>,
}

/// A value and where it stands.
struct Found<'a> {
    offset: usize,
    value: DeValue<'a>,
}

impl<'a> Table<'a> {
    fn new(name: impl Into<String>, offset: usize, left: DeTable<'a>) -> Table<'a> {
        Table { name: name.into(), offset, left, asked: Vec::new() }
    }

    /// Where the table begins, as a byte offset.
    pub(super) fn offset(&self) -> usize {
        self.offset
    }

    /// Names the table more closely in later messages.
    pub(super) fn rename(&mut self, name: impl Into<String>) {
        self.name = name.into();
    }

    /// Notes every key that nobody asked for.
    pub(super) fn finish(self, file: &mut File<'_>) {
        for key in self.left.keys() {
            let written: &str = key.get_ref().as_ref();
            let help = nearest(written, self.asked.iter().copied()).map_or_else(
                || format!("{} takes the keys: {}", self.name, self.asked.join(", ")),
                |near| format!("did you mean `{near}`?"),
            );
            file.fault(key.span().start, format!("{} has no key `{written}`", self.name), help);
        }
    }

    fn take(&mut self, key: &'static str) -> Option<Found<'a>> {
        if !self.asked.contains(&key) {
            self.asked.push(key);
        }
        let found = self.left.remove(key)?;
        Some(Found { offset: found.span().start, value: found.into_inner() })
    }

    fn need(&mut self, file: &mut File<'_>, key: &'static str) -> Option<Found<'a>> {
        let found = self.take(key);
        if found.is_none() {
            file.fault(self.offset, format!("{} lacks `{key}`", self.name), format!("add `{key} = …`"));
        }
        found
    }

    fn wrong(&self, file: &mut File<'_>, key: &str, found: &Found<'_>, help: &str) {
        let written = shown(&found.value);
        file.fault(found.offset, format!("`{key}` of {} cannot be `{written}`", self.name), help);
    }

    /// Text that must be there and not be empty.
    pub(super) fn text(&mut self, file: &mut File<'_>, key: &'static str) -> Option<String> {
        let found = self.need(file, key)?;
        self.as_text(file, key, &found)
    }

    /// Text that may be absent.
    pub(super) fn maybe_text(&mut self, file: &mut File<'_>, key: &'static str) -> Option<String> {
        let found = self.take(key)?;
        self.as_text(file, key, &found)
    }

    fn as_text(&self, file: &mut File<'_>, key: &str, found: &Found<'_>) -> Option<String> {
        match found.value.as_str() {
            Some(text) if !text.trim().is_empty() => Some(text.to_owned()),
            _ => {
                self.wrong(file, key, found, "write some text in double quotes");
                None
            }
        }
    }

    /// Text that must be one of a list.
    pub(super) fn word<T>(&mut self, file: &mut File<'_>, key: &'static str, words: &[(&str, T)]) -> Option<T>
    where
        T: Copy,
    {
        let found = self.need(file, key)?;
        self.as_word(file, key, &found, words)
    }

    /// Text that may be absent, else must be one of a list.
    pub(super) fn maybe_word<T>(
        &mut self,
        file: &mut File<'_>,
        key: &'static str,
        words: &[(&str, T)],
    ) -> Option<T>
    where
        T: Copy,
    {
        let found = self.take(key)?;
        self.as_word(file, key, &found, words)
    }

    fn as_word<T: Copy>(
        &self,
        file: &mut File<'_>,
        key: &str,
        found: &Found<'_>,
        words: &[(&str, T)],
    ) -> Option<T> {
        let written = found.value.as_str().unwrap_or_default();
        let meant = words.iter().find(|(word, _)| *word == written).map(|(_, meant)| *meant);
        if meant.is_none() {
            let all = words.iter().map(|(word, _)| *word).collect::<Vec<_>>().join(", ");
            self.wrong(file, key, found, &format!("write one of: {all}"));
        }
        meant
    }

    /// Text that must fit a type with rules of its own, such as a name.
    pub(super) fn parsed<T>(&mut self, file: &mut File<'_>, key: &'static str) -> Option<T>
    where
        T: std::str::FromStr<Err: std::fmt::Display>,
    {
        let found = self.need(file, key)?;
        self.as_parsed(file, key, &found)
    }

    /// The same, may be absent.
    pub(super) fn maybe_parsed<T>(&mut self, file: &mut File<'_>, key: &'static str) -> Option<T>
    where
        T: std::str::FromStr<Err: std::fmt::Display>,
    {
        let found = self.take(key)?;
        self.as_parsed(file, key, &found)
    }

    fn as_parsed<T>(&self, file: &mut File<'_>, key: &str, found: &Found<'_>) -> Option<T>
    where
        T: std::str::FromStr<Err: std::fmt::Display>,
    {
        let text = self.as_text(file, key, found)?;
        text.parse().map_err(|error: T::Err| self.wrong(file, key, found, &error.to_string())).ok()
    }

    /// A whole number within bounds.
    pub(super) fn whole<T>(
        &mut self,
        file: &mut File<'_>,
        key: &'static str,
        bounds: RangeInclusive<i64>,
    ) -> Option<T>
    where
        T: TryFrom<i64>,
    {
        let found = self.need(file, key)?;
        self.as_whole(file, key, &found, &bounds)
    }

    /// A whole number within bounds, may be absent.
    pub(super) fn maybe_whole<T>(
        &mut self,
        file: &mut File<'_>,
        key: &'static str,
        bounds: RangeInclusive<i64>,
    ) -> Option<T>
    where
        T: TryFrom<i64>,
    {
        let found = self.take(key)?;
        self.as_whole(file, key, &found, &bounds)
    }

    fn as_whole<T: TryFrom<i64>>(
        &self,
        file: &mut File<'_>,
        key: &str,
        found: &Found<'_>,
        bounds: &RangeInclusive<i64>,
    ) -> Option<T> {
        let number = found
            .value
            .as_integer()
            .and_then(|number| i64::from_str_radix(number.as_str(), number.radix()).ok());
        let within =
            number.filter(|number| bounds.contains(number)).and_then(|number| T::try_from(number).ok());
        if within.is_none() {
            let help = format!("write a whole number from {} to {}", bounds.start(), bounds.end());
            self.wrong(file, key, found, &help);
        }
        within
    }

    /// A number as it is written, whole or decimal.
    pub(super) fn number(&mut self, file: &mut File<'_>, key: &'static str) -> Option<(usize, String)> {
        let found = self.need(file, key)?;
        self.as_number(file, key, &found)
    }

    /// The same, may be absent.
    pub(super) fn maybe_number(&mut self, file: &mut File<'_>, key: &'static str) -> Option<(usize, String)> {
        let found = self.take(key)?;
        self.as_number(file, key, &found)
    }

    fn as_number(&self, file: &mut File<'_>, key: &str, found: &Found<'_>) -> Option<(usize, String)> {
        let digits = match &found.value {
            DeValue::Integer(number) if number.radix() == 10 => Some(number.as_str()),
            DeValue::Float(number) => Some(number.as_str()),
            _ => None,
        };
        if digits.is_none() {
            self.wrong(file, key, found, "write a number");
        }
        digits.map(|digits| (found.offset, digits.to_owned()))
    }

    /// A civil date.
    pub(super) fn day(&mut self, file: &mut File<'_>, key: &'static str) -> Option<Day> {
        let found = self.need(file, key)?;
        self.as_day(file, key, &found)
    }

    /// A civil date, may be absent.
    pub(super) fn maybe_day(&mut self, file: &mut File<'_>, key: &'static str) -> Option<Day> {
        let found = self.take(key)?;
        self.as_day(file, key, &found)
    }

    fn as_day(&self, file: &mut File<'_>, key: &str, found: &Found<'_>) -> Option<Day> {
        let day = found
            .value
            .as_datetime()
            .filter(|datetime| datetime.time.is_none())
            .and_then(|datetime| datetime.date);
        let day = day.and_then(|date| Day::new(date.year.into(), date.month.into(), date.day.into()));
        if day.is_none() {
            self.wrong(file, key, found, "write a date without quotes, like 2026-04-11");
        }
        day
    }

    /// A list of texts; absent means empty.
    pub(super) fn texts(&mut self, file: &mut File<'_>, key: &'static str) -> Vec<(usize, String)> {
        let Some(found) = self.take(key) else { return Vec::new() };
        let Some(items) = found.value.as_array() else {
            self.wrong(file, key, &found, "write a list of texts in square brackets");
            return Vec::new();
        };
        let mut texts = Vec::new();
        for item in items.iter() {
            let item = Found { offset: item.span().start, value: item.get_ref().clone() };
            texts.extend(self.as_text(file, key, &item).map(|text| (item.offset, text)));
        }
        texts
    }

    /// The tables written as `[[key]]`, in order.
    pub(super) fn tables(&mut self, file: &mut File<'_>, key: &'static str) -> Vec<Table<'a>> {
        let Some(found) = self.take(key) else { return Vec::new() };
        let DeValue::Array(items) = found.value else {
            self.wrong(file, key, &found, &format!("write each one as a table of its own, under [[{key}]]"));
            return Vec::new();
        };
        let mut tables = Vec::new();
        for item in items {
            let offset = item.span().start;
            match Spanned::into_inner(item) {
                DeValue::Table(table) => tables.push(Table::new(format!("this {key}"), offset, table)),
                value => {
                    self.wrong(file, key, &Found { offset, value }, &format!("write it under [[{key}]]"))
                }
            }
        }
        tables
    }
}

/// A value as a reader of the file would recognise it.
fn shown(value: &DeValue<'_>) -> String {
    match value {
        DeValue::String(text) => text.to_string(),
        DeValue::Integer(number) => number.to_string(),
        DeValue::Float(number) => number.to_string(),
        DeValue::Boolean(flag) => flag.to_string(),
        DeValue::Datetime(datetime) => datetime.to_string(),
        DeValue::Array(_) => "a list".to_owned(),
        DeValue::Table(_) => "a table".to_owned(),
    }
}
