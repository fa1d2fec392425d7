//! Reads TOML tables key by key. Collects every fault with its place instead of stopping at the first.
//!
//! - `file`: the text, its places, and its faults
//! - `value`: one value, read as the wanted type

mod file;
mod value;

use std::ops::RangeInclusive;
use std::str::FromStr;

use toml::de::{DeTable, DeValue};

use crate::basics::calendar::Day;
use crate::basics::spelling::nearest;
use crate::rules::fault::{Diagnostic, Found, KeyFault, Mend, TableName, ValueFault, Wanted};

pub(crate) use file::DataFile;
pub(crate) use value::{Complaint, WrittenValue, as_name, as_number, as_text, as_whole, as_word};
use value::{as_day, as_list};

/// A table whose keys are taken out one by one; those left over are unknown.
pub(crate) struct Table<'a> {
    name: TableName,
    left: DeTable<'a>,
    asked: Vec<&'static str>,
    /// Missing required keys, with what their values would be.
    missing: Vec<(&'static str, Wanted)>,
    places: KeyPlaces,
}

/// Byte offsets of a table and of the values of its keys. No offset means the file as a whole.
pub(crate) struct KeyPlaces {
    table: Option<usize>,
    keys: Vec<(&'static str, usize)>,
}

impl KeyPlaces {
    /// The offset of a key's value; that of the table, if it has no such key.
    pub(crate) fn of(&self, key: &str) -> Option<usize> {
        self.keys.iter().find(|(known, _)| *known == key).map_or(self.table, |(_, offset)| Some(*offset))
    }
}

impl<'a> Table<'a> {
    /// The table of a whole file; `None` if it is not TOML.
    fn of_file(file: &mut DataFile<'a>, name: TableName) -> Option<Table<'a>> {
        Some(Table::new(name, None, file.parse()?))
    }

    fn new(name: TableName, at: Option<usize>, left: DeTable<'a>) -> Table<'a> {
        let places = KeyPlaces { table: at, keys: Vec::new() };
        Table { name, left, asked: Vec::new(), missing: Vec::new(), places }
    }

    /// Calls one of a list by its name from here on.
    pub(crate) fn rename(&mut self, list: &'static str, name: &str) {
        self.name = TableName::Named { list, name: name.to_owned() };
    }

    /// How it is called.
    pub(crate) fn name(&self) -> TableName {
        self.name.clone()
    }

    /// Whether a key already asked for was there, valid or not.
    pub(crate) fn has(&self, key: &str) -> bool {
        self.places.keys.iter().any(|(known, _)| *known == key)
    }

    /// The offset of a key's value; that of the table, if it has no such key.
    pub(crate) fn at(&self, key: &str) -> Option<usize> {
        self.places.of(key)
    }

    /// Reports every unknown and every missing key.
    pub(crate) fn finish(self, file: &mut DataFile<'_>) -> KeyPlaces {
        self.finish_as(file, true)
    }

    /// The same for a table whose permitted keys are not known.
    pub(crate) fn finish_unread(self, file: &mut DataFile<'_>) -> KeyPlaces {
        self.finish_as(file, false)
    }

    fn finish_as(mut self, file: &mut DataFile<'_>, keys_are_known: bool) -> KeyPlaces {
        for key in std::mem::take(&mut self.left).keys() {
            let written: &str = key.get_ref().as_ref();
            let takes = if keys_are_known { self.asked.clone() } else { Vec::new() };
            let meant = self.take_missing(written).or_else(|| nearest(written, takes.iter().copied()));
            if keys_are_known || meant.is_some() {
                let (table, key_written) = (self.name(), written.to_owned());
                file.fault(key.span().start, KeyFault::Unknown { table, key: key_written, meant, takes });
            }
        }
        for (key, wanted) in std::mem::take(&mut self.missing) {
            file.fault(self.places.table, KeyFault::Missing { table: self.name(), key, wanted });
        }
        self.places
    }

    /// Takes the missing key that was probably meant off the list.
    fn take_missing(&mut self, written: &str) -> Option<&'static str> {
        let meant = nearest(written, self.missing.iter().map(|(key, _)| *key))?;
        let index = self.missing.iter().position(|(key, _)| *key == meant)?;
        Some(self.missing.remove(index).0)
    }

    fn take(&mut self, key: &'static str) -> Option<WrittenValue<'a>> {
        if !self.asked.contains(&key) {
            self.asked.push(key);
        }
        let found = WrittenValue::new(self.left.remove(key)?);
        self.places.keys.push((key, found.span.start));
        Some(found)
    }

    /// Reads a required value.
    pub(crate) fn needed<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: Wanted,
        read: impl FnOnce(&WrittenValue<'a>) -> Result<T, Complaint>,
    ) -> Option<T> {
        if !self.left.contains_key(key) {
            self.missing.push((key, wanted.clone()));
        }
        self.optional(file, key, wanted, read)
    }

    /// Reads an optional value.
    pub(crate) fn optional<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: Wanted,
        read: impl FnOnce(&WrittenValue<'a>) -> Result<T, Complaint>,
    ) -> Option<T> {
        let found = self.take(key)?;
        read(&found).map_err(|mend| self.wrong(file, key, &found, mend.unwrap_or(Mend::Write(wanted)))).ok()
    }

    fn wrong(&self, file: &mut DataFile<'_>, key: &'static str, found: &WrittenValue<'_>, mend: Mend) {
        let shown = match &found.value {
            DeValue::Array(items) if items.is_empty() => Found::EmptyList,
            DeValue::Array(_) => Found::List,
            DeValue::Table(_) => Found::Table,
            DeValue::String(_)
            | DeValue::Integer(_)
            | DeValue::Float(_)
            | DeValue::Boolean(_)
            | DeValue::Datetime(_) => Found::Written(file.written(&found.span).to_owned()),
        };
        file.fault(found.span.start, ValueFault::Wrong { table: self.name(), key, found: shown, mend });
    }

    /// Required text, not empty.
    pub(crate) fn text(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<String> {
        self.needed(file, key, Wanted::Text, as_text)
    }

    /// Optional text.
    pub(crate) fn maybe_text(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<String> {
        self.optional(file, key, Wanted::Text, as_text)
    }

    /// A required word from a list.
    pub(crate) fn word<T: Copy>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        self.needed(file, key, Wanted::one_of(words), |found| as_word(found, words))
    }

    /// The same, may be absent.
    pub(crate) fn maybe_word<T: Copy>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        self.optional(file, key, Wanted::one_of(words), |found| as_word(found, words))
    }

    /// A name: text that must fit a type with rules of its own.
    pub(crate) fn name_of<T: FromStr>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: Wanted,
    ) -> Option<T> {
        self.needed(file, key, wanted, as_name)
    }

    /// An optional name.
    pub(crate) fn maybe_name_of<T: FromStr>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: Wanted,
    ) -> Option<T> {
        self.optional(file, key, wanted, as_name)
    }

    /// A required whole number within bounds.
    pub(crate) fn whole<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        bounds: RangeInclusive<i64>,
    ) -> Option<T>
    where
        T: TryFrom<i64>,
    {
        self.needed(file, key, within(&bounds), |found| as_whole(found, &bounds))
    }

    /// An optional whole number within bounds.
    pub(crate) fn maybe_whole<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        bounds: RangeInclusive<i64>,
    ) -> Option<T>
    where
        T: TryFrom<i64>,
    {
        self.optional(file, key, within(&bounds), |found| as_whole(found, &bounds))
    }

    /// A required number, whole or decimal, read from its digits as written.
    pub(crate) fn number<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: Wanted,
        read: impl FnOnce(&str) -> Result<T, Complaint>,
    ) -> Option<T> {
        self.needed(file, key, wanted, |found| as_number(found, read))
    }

    /// A required civil date.
    pub(crate) fn day(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<Day> {
        self.needed(file, key, Wanted::Date, as_day)
    }

    /// An optional civil date.
    pub(crate) fn maybe_day(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<Day> {
        self.optional(file, key, Wanted::Date, as_day)
    }

    /// A required list of at least one text, each with its offset. Empty if the list is faulty.
    pub(crate) fn texts(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: Wanted,
    ) -> Vec<(usize, String)> {
        let items = self.needed(file, key, wanted, as_list).unwrap_or_default();
        self.each_text(file, key, items)
    }

    /// The same, but optional.
    pub(crate) fn maybe_texts(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: Wanted,
    ) -> Vec<(usize, String)> {
        let items = self.optional(file, key, wanted, as_list).unwrap_or_default();
        self.each_text(file, key, items)
    }

    fn each_text(
        &self,
        file: &mut DataFile<'_>,
        key: &'static str,
        items: Vec<WrittenValue<'a>>,
    ) -> Vec<(usize, String)> {
        let mut texts = Vec::new();
        for item in items {
            match as_text(&item) {
                Ok(text) => texts.push((item.span.start, text)),
                Err(_) => self.wrong(file, key, &item, Mend::Write(Wanted::Text)),
            }
        }
        texts
    }

    /// The word `true`; optional.
    pub(crate) fn maybe_true(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<()> {
        self.optional(file, key, Wanted::True, |found| {
            if let DeValue::Boolean(true) = found.value { Ok(()) } else { Err(None) }
        })
    }

    /// The tables written as `[[key]]`, in order. `None` if the key holds something else.
    pub(crate) fn tables(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<Vec<Table<'a>>> {
        let Some(found) = self.take(key) else { return Some(Vec::new()) };
        let mut tables = Vec::new();
        let DeValue::Array(items) = found.value else {
            self.wrong(file, key, &found, Mend::OwnTables);
            return None;
        };
        for item in items.into_iter().map(WrittenValue::new) {
            let DeValue::Table(table) = item.value else {
                self.wrong(file, key, &item, Mend::OwnTables);
                return None;
            };
            tables.push(Table::new(TableName::One { list: key }, Some(item.span.start), table));
        }
        Some(tables)
    }
}

/// Reads a file; `None` if it has any fault. Faults come in line order, after those of the file as a whole.
pub(crate) fn read_file<T>(
    path: &str,
    text: &str,
    faults: &mut Vec<Diagnostic>,
    name: TableName,
    read: impl FnOnce(&mut DataFile<'_>, Table<'_>) -> Option<T>,
) -> Option<T> {
    let mut found = Vec::new();
    let mut file = DataFile::new(path, text, &mut found);
    let made = Table::of_file(&mut file, name).and_then(|table| read(&mut file, table));
    found.sort_by_key(|fault| (fault.line, fault.column));
    let sound = found.is_empty();
    faults.append(&mut found);
    made.filter(|_| sound)
}

/// Checks the `format` of a file. `None` for another format, which has other keys. A missing one is reported with the other
/// keys.
pub(crate) fn check_format(file: &mut DataFile<'_>, table: &mut Table<'_>, format: i64) -> Option<()> {
    let read = table.number(file, "format", Wanted::Format(format), |written| {
        if written == format.to_string() { Ok(()) } else { Err(Some(Mend::Format(format))) }
    });
    (read.is_some() || !table.has("format")).then_some(())
}

/// Reports a file that is not called as the value of this key.
pub(crate) fn check_file_name(
    file: &mut DataFile<'_>,
    table: &Table<'_>,
    key: &'static str,
    name: Option<&str>,
) {
    let file_name = file.path().rsplit('/').next().unwrap_or_default();
    if let Some(name) = name.filter(|name| file_name != format!("{name}.toml")) {
        let (name, file_name) = (name.to_owned(), file_name.to_owned());
        file.fault(table.at(key), ValueFault::NotTheFile { key, name, file: file_name });
    }
}

/// Reports dates that run backwards. False if `until` lies before `from`.
pub(crate) fn dates_in_order(
    file: &mut DataFile<'_>,
    table: &Table<'_>,
    from: Option<Day>,
    until: Option<Day>,
    checked_on: Option<Day>,
) -> bool {
    let before = |day: Option<Day>| day.zip(from).filter(|(day, from)| day < from);
    if let Some((until, from)) = before(until) {
        file.fault(table.at("until"), ValueFault::UntilBeforeFrom { until, from });
    }
    if let Some((checked_on, from)) = before(checked_on) {
        file.fault(table.at("checked_on"), ValueFault::CheckedBeforeFrom { checked_on, from });
    }
    before(until).is_none()
}

/// A whole number within these bounds.
pub(crate) fn within(bounds: &RangeInclusive<i64>) -> Wanted {
    Wanted::Whole { least: *bounds.start(), most: *bounds.end() }
}

/// The words of a list with their meanings.
pub(crate) fn words<T: Copy>(all: &[T], as_str: impl Fn(&T) -> &'static str) -> Vec<(&'static str, T)> {
    all.iter().map(|word| (as_str(word), *word)).collect()
}
