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
use crate::basics::diagnostic::nearest;

pub(crate) use file::DataFile;
pub(crate) use value::{
    Complaint, TEXT, WrittenValue, as_name, as_number, as_text, as_whole, as_word, not_a_name, one_of, within,
};
use value::{DATE, as_day, as_list};

/// A table whose keys are taken out one by one; those left over are unknown.
pub(crate) struct Table<'a> {
    name: String,
    left: DeTable<'a>,
    asked: Vec<&'static str>,
    /// Missing required keys, with a description of their values.
    missing: Vec<(&'static str, String)>,
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
    pub(crate) fn of_file(file: &mut DataFile<'a>, name: &str) -> Option<Table<'a>> {
        Some(Table::new(name, None, file.parse()?))
    }

    fn new(name: impl Into<String>, at: Option<usize>, left: DeTable<'a>) -> Table<'a> {
        let places = KeyPlaces { table: at, keys: Vec::new() };
        Table { name: name.into(), left, asked: Vec::new(), missing: Vec::new(), places }
    }

    /// Sets a more specific name for messages.
    pub(crate) fn rename(&mut self, name: impl Into<String>) {
        self.name = name.into();
    }

    /// Its name in messages.
    pub(crate) fn name(&self) -> &str {
        &self.name
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
    pub(crate) fn finish(mut self, file: &mut DataFile<'_>) -> KeyPlaces {
        for key in std::mem::take(&mut self.left).keys() {
            let written: &str = key.get_ref().as_ref();
            let meant = self.take_missing(written).or_else(|| nearest(written, self.asked.iter().copied()));
            let help = meant.map_or_else(
                || format!("{} takes the keys: {}", self.name, self.asked.join(", ")),
                |near| format!("did you mean `{near}`?"),
            );
            file.fault(key.span().start, format!("{} has no key `{written}`", self.name), help);
        }
        self.note_missing(file)
    }

    /// The same for a table whose permitted keys are not known.
    pub(crate) fn finish_unread(mut self, file: &mut DataFile<'_>) -> KeyPlaces {
        for key in std::mem::take(&mut self.left).keys() {
            let written: &str = key.get_ref().as_ref();
            if let Some(near) = self.take_missing(written) {
                let message = format!("{} has no key `{written}`", self.name);
                file.fault(key.span().start, message, format!("did you mean `{near}`?"));
            }
        }
        self.note_missing(file)
    }

    /// Takes the missing key that was probably meant off the list.
    fn take_missing(&mut self, written: &str) -> Option<&'static str> {
        let meant = nearest(written, self.missing.iter().map(|(key, _)| *key))?;
        let index = self.missing.iter().position(|(key, _)| *key == meant)?;
        Some(self.missing.remove(index).0)
    }

    fn note_missing(self, file: &mut DataFile<'_>) -> KeyPlaces {
        for (key, wanted) in self.missing {
            file.fault(
                self.places.table,
                format!("{} lacks `{key}`", self.name),
                format!("add `{key}`, {wanted}"),
            );
        }
        self.places
    }

    fn take(&mut self, key: &'static str) -> Option<WrittenValue<'a>> {
        if !self.asked.contains(&key) {
            self.asked.push(key);
        }
        let found = WrittenValue::new(self.left.remove(key)?);
        self.places.keys.push((key, found.span.start));
        Some(found)
    }

    /// Reads a required value. `wanted` completes "write …" and "add `key`, …".
    pub(crate) fn needed<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
        read: impl FnOnce(&WrittenValue<'a>) -> Result<T, Complaint>,
    ) -> Option<T> {
        if !self.left.contains_key(key) {
            self.missing.push((key, wanted.to_owned()));
        }
        self.optional(file, key, wanted, read)
    }

    /// Reads an optional value.
    pub(crate) fn optional<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
        read: impl FnOnce(&WrittenValue<'a>) -> Result<T, Complaint>,
    ) -> Option<T> {
        let found = self.take(key)?;
        read(&found)
            .map_err(|help| self.wrong(file, key, &found, &help.unwrap_or(format!("write {wanted}"))))
            .ok()
    }

    fn wrong(&self, file: &mut DataFile<'_>, key: &str, found: &WrittenValue<'_>, help: &str) {
        let shown = match &found.value {
            DeValue::Array(items) if items.is_empty() => "an empty list".to_owned(),
            DeValue::Array(_) => "a list".to_owned(),
            DeValue::Table(_) => "a single table".to_owned(),
            DeValue::String(_)
            | DeValue::Integer(_)
            | DeValue::Float(_)
            | DeValue::Boolean(_)
            | DeValue::Datetime(_) => format!("`{}`", file.written(&found.span)),
        };
        file.fault(found.span.start, format!("`{key}` of {} cannot be {shown}", self.name), help);
    }

    /// Required text, not empty.
    pub(crate) fn text(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<String> {
        self.needed(file, key, TEXT, as_text)
    }

    /// Optional text.
    pub(crate) fn maybe_text(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<String> {
        self.optional(file, key, TEXT, as_text)
    }

    /// A required word from a list.
    pub(crate) fn word<T: Copy>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        words: &[(&str, T)],
    ) -> Option<T> {
        self.needed(file, key, &one_of(words), |found| as_word(found, words))
    }

    /// The same, may be absent.
    pub(crate) fn maybe_word<T: Copy>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        words: &[(&str, T)],
    ) -> Option<T> {
        self.optional(file, key, &one_of(words), |found| as_word(found, words))
    }

    /// A name: text that must fit a type with rules of its own.
    pub(crate) fn name_of<T: FromStr>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
    ) -> Option<T> {
        self.needed(file, key, wanted, as_name)
    }

    /// An optional name.
    pub(crate) fn maybe_name_of<T: FromStr>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
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
        self.needed(file, key, &within(&bounds), |found| as_whole(found, &bounds))
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
        self.optional(file, key, &within(&bounds), |found| as_whole(found, &bounds))
    }

    /// A required number, whole or decimal, read from its digits as written.
    pub(crate) fn number<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
        read: impl FnOnce(&str) -> Result<T, Complaint>,
    ) -> Option<T> {
        self.needed(file, key, wanted, |found| as_number(found, read))
    }

    /// A required civil date.
    pub(crate) fn day(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<Day> {
        self.needed(file, key, DATE, as_day)
    }

    /// An optional civil date.
    pub(crate) fn maybe_day(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<Day> {
        self.optional(file, key, DATE, as_day)
    }

    /// A required list of at least one text, each with its offset. Empty if the list is faulty.
    pub(crate) fn texts(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
    ) -> Vec<(usize, String)> {
        let items = self.needed(file, key, wanted, as_list).unwrap_or_default();
        self.each_text(file, key, items)
    }

    /// The same, but optional.
    pub(crate) fn maybe_texts(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
    ) -> Vec<(usize, String)> {
        let items = self.optional(file, key, wanted, as_list).unwrap_or_default();
        self.each_text(file, key, items)
    }

    fn each_text(
        &self,
        file: &mut DataFile<'_>,
        key: &str,
        items: Vec<WrittenValue<'a>>,
    ) -> Vec<(usize, String)> {
        let mut texts = Vec::new();
        for item in items {
            match as_text(&item) {
                Ok(text) => texts.push((item.span.start, text)),
                Err(_) => self.wrong(file, key, &item, &format!("write {TEXT}")),
            }
        }
        texts
    }

    /// The word `true`; optional.
    pub(crate) fn maybe_true(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<()> {
        self.optional(file, key, "true, or leave the key out", |found| {
            if let DeValue::Boolean(true) = found.value { Ok(()) } else { Err(None) }
        })
    }

    /// The tables written as `[[key]]`, in order. `None` if the key holds something else.
    pub(crate) fn tables(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<Vec<Table<'a>>> {
        let Some(found) = self.take(key) else { return Some(Vec::new()) };
        let mut tables = Vec::new();
        let help = format!("write each {key} under a line of its own with two pairs of brackets: [[{key}]]");
        let DeValue::Array(items) = found.value else {
            self.wrong(file, key, &found, &help);
            return None;
        };
        for item in items.into_iter().map(WrittenValue::new) {
            let DeValue::Table(table) = item.value else {
                self.wrong(file, key, &item, &help);
                return None;
            };
            tables.push(Table::new(format!("this {key}"), Some(item.span.start), table));
        }
        Some(tables)
    }
}

/// Checks the `format` of a file. `None` for another format, which has other keys. A missing one is reported with the other
/// keys.
pub(crate) fn check_format(file: &mut DataFile<'_>, table: &mut Table<'_>, format: i64) -> Option<()> {
    let wanted = format!("the number {format}");
    let read = table.number(file, "format", &wanted, |written| {
        let other = || Some(format!("write {wanted}; a later format needs a later version of this program"));
        if written == format.to_string() { Ok(()) } else { Err(other()) }
    });
    (read.is_some() || !table.has("format")).then_some(())
}

/// The words of a list with their meanings.
pub(crate) fn words<T: Copy>(all: &[T], as_str: impl Fn(&T) -> &'static str) -> Vec<(&'static str, T)> {
    all.iter().map(|word| (as_str(word), *word)).collect()
}
