//! Reading TOML tables key by key, collecting every fault with its place instead of stopping at the first.
//!
//! - `file`: the text, its lines, and what was found wrong with it
//! - `value`: the value of one key, as what it should be

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

/// A table whose keys are taken out one by one; what is left at the end is unknown.
pub(crate) struct Table<'a> {
    name: String,
    left: DeTable<'a>,
    asked: Vec<&'static str>,
    /// Keys that must be there and are not, with what they take.
    missing: Vec<(&'static str, String)>,
    places: KeyPlaces,
}

/// Where a table and the values of its keys stand, as byte offsets. No offset means the file as a whole.
pub(crate) struct KeyPlaces {
    table: Option<usize>,
    keys: Vec<(&'static str, usize)>,
}

impl KeyPlaces {
    /// Where the value of a key stands; where the table begins, if it has no such key.
    pub(crate) fn of(&self, key: &str) -> Option<usize> {
        self.keys.iter().find(|(known, _)| *known == key).map_or(self.table, |(_, offset)| Some(*offset))
    }
}

impl<'a> Table<'a> {
    /// The whole of a file. None if it is not TOML.
    pub(crate) fn of_file(file: &mut DataFile<'a>, name: &str) -> Option<Table<'a>> {
        Some(Table::new(name, None, file.parse()?))
    }

    fn new(name: impl Into<String>, at: Option<usize>, left: DeTable<'a>) -> Table<'a> {
        let places = KeyPlaces { table: at, keys: Vec::new() };
        Table { name: name.into(), left, asked: Vec::new(), missing: Vec::new(), places }
    }

    /// Names the table more closely in messages.
    pub(crate) fn rename(&mut self, name: impl Into<String>) {
        self.name = name.into();
    }

    /// What the table is called in messages.
    pub(crate) fn name(&self) -> &str {
        &self.name
    }

    /// Whether a key that was asked for is there, however it is written.
    pub(crate) fn has(&self, key: &str) -> bool {
        self.places.keys.iter().any(|(known, _)| *known == key)
    }

    /// Where the value of a key stands; where the table begins, if it has no such key.
    pub(crate) fn at(&self, key: &str) -> Option<usize> {
        self.places.of(key)
    }

    /// Notes every key that nobody asked for and every one that is missing.
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

    /// The same for a table of which it is not known what keys it takes.
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

    /// The missing key that is meant by what was written. It is then missing no longer.
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

    /// Reads a value that must be there. `wanted` completes "write …" and "add `key`, …".
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

    /// Reads a value that may be absent.
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

    /// Text that must be there and not be empty.
    pub(crate) fn text(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<String> {
        self.needed(file, key, TEXT, as_text)
    }

    /// Text that may be absent.
    pub(crate) fn maybe_text(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<String> {
        self.optional(file, key, TEXT, as_text)
    }

    /// Text that must be one of a list.
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

    /// The same, may be absent.
    pub(crate) fn maybe_name_of<T: FromStr>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
    ) -> Option<T> {
        self.optional(file, key, wanted, as_name)
    }

    /// A whole number within bounds.
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

    /// A whole number within bounds, may be absent.
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

    /// A number, whole or decimal, read from its digits as they are written.
    pub(crate) fn number<T>(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
        read: impl FnOnce(&str) -> Result<T, Complaint>,
    ) -> Option<T> {
        self.needed(file, key, wanted, |found| as_number(found, read))
    }

    /// A civil date.
    pub(crate) fn day(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<Day> {
        self.needed(file, key, DATE, as_day)
    }

    /// A civil date, may be absent.
    pub(crate) fn maybe_day(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<Day> {
        self.optional(file, key, DATE, as_day)
    }

    /// A list of at least one text, each with its place; empty if anything is wrong with it.
    pub(crate) fn texts(
        &mut self,
        file: &mut DataFile<'_>,
        key: &'static str,
        wanted: &str,
    ) -> Vec<(usize, String)> {
        let items = self.needed(file, key, wanted, as_list).unwrap_or_default();
        self.each_text(file, key, items)
    }

    /// The same, may be absent.
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

    /// The word `true`, may be absent; what is not so is left out.
    pub(crate) fn maybe_true(&mut self, file: &mut DataFile<'_>, key: &'static str) -> Option<()> {
        self.optional(file, key, "true, or leave the key out", |found| {
            if let DeValue::Boolean(true) = found.value { Ok(()) } else { Err(None) }
        })
    }

    /// The tables written as `[[key]]`, in order. None if there is something else under that key.
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

/// Reads the `format` of a file. None if it is another one: that has other keys. A missing one is noted with the other keys.
pub(crate) fn check_format(file: &mut DataFile<'_>, table: &mut Table<'_>, format: i64) -> Option<()> {
    let wanted = format!("the number {format}");
    let read = table.number(file, "format", &wanted, |written| {
        let other = || Some(format!("write {wanted}; a later format needs a later version of this program"));
        if written == format.to_string() { Ok(()) } else { Err(other()) }
    });
    (read.is_some() || !table.has("format")).then_some(())
}

/// The words of a list, each with what it means.
pub(crate) fn words<T: Copy>(all: &[T], as_str: impl Fn(&T) -> &'static str) -> Vec<(&'static str, T)> {
    all.iter().map(|word| (as_str(word), *word)).collect()
}
