//! How a leaflet writes the fields of a rule. Each form reads a value, reports its faults, and describes its JSON Schema.

use std::ops::RangeInclusive;

use serde_json::{Value, json};

use super::schema::{self, Keys};
use crate::basics::calendar::YearDay;
use crate::basics::quantity::Quantity;
use crate::basics::says::WithdrawalPeriod;
use crate::basics::words::Word;
use crate::rules::fault::{Mend, RuleFault, ValueFault, Wanted, WordsOf};
use crate::rules::table::{
    Complaint, DataFile, Table, WrittenValue, as_name, as_number, as_text, as_whole, as_word, within,
};

/// Longest plausible period in a leaflet, in days.
pub(super) const DAYS_MOST: i64 = 400;
/// Longest plausible in-use life of an opened pack, in days: three years.
pub(super) const IN_USE_MOST: i64 = 1_100;
/// Bees in a colony: from a mating nucleus to more than any hive holds.
pub(super) const BEES: RangeInclusive<i64> = 100..=200_000;

/// How a field is written.
pub(super) trait Written {
    /// The type of the field.
    type Field;

    /// Reads it; `None`, with a fault reported, if the rule cannot do without it.
    fn read(&self, rule: &mut Reading<'_, '_, '_>, key: &'static str) -> Option<Self::Field>;

    /// Adds its key to those of its table.
    fn describe(&self, keys: Keys, key: &'static str) -> Keys;
}

/// A rule being read, with the values found so far.
pub(super) struct Reading<'r, 'f, 't> {
    pub(super) file: &'r mut DataFile<'f>,
    pub(super) table: &'r mut Table<'t>,
    pub(super) found: Vec<(&'static str, Found)>,
}

/// The value of a key, for constraints between keys.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Found {
    /// A number, in the smallest unit of its key.
    Number(i64),
    /// A word from a list.
    Word(&'static str),
    /// A value that no constraint uses.
    Else,
}

impl Reading<'_, '_, '_> {
    /// Whether one of these keys is there, valid or not.
    pub(super) fn has_any(&self, keys: &[&str]) -> bool {
        keys.iter().any(|key| self.table.has(key))
    }

    /// Reports a fault at a key, or at the rule if it has no such key.
    pub(super) fn fault(&mut self, key: &str, what: RuleFault) {
        self.file.fault(self.table.at(key), what);
    }

    /// The number under a key, if it was read.
    pub(super) fn number(&self, key: &str) -> Option<i64> {
        self.found.iter().find_map(|(of, found)| match found {
            Found::Number(number) if *of == key => Some(*number),
            Found::Number(_) | Found::Word(_) | Found::Else => None,
        })
    }

    /// The word under a key, if it was read.
    pub(super) fn word(&self, key: &str) -> Option<&'static str> {
        self.found.iter().find_map(|(of, found)| match found {
            Found::Word(word) if *of == key => Some(*word),
            Found::Number(_) | Found::Word(_) | Found::Else => None,
        })
    }
}

type Read<T> = Box<dyn Fn(&WrittenValue<'_>) -> Result<(T, Found), Complaint>>;

/// A single value: what it would have to be, its reader, its JSON Schema.
pub(super) struct One<T> {
    wanted: Wanted,
    read: Read<T>,
    schema: Value,
}

impl<T> One<T> {
    fn new(
        wanted: Wanted,
        schema: Value,
        read: impl Fn(&WrittenValue<'_>) -> Result<(T, Found), Complaint> + 'static,
    ) -> One<T> {
        One { wanted, read: Box::new(read), schema }
    }
}

/// Some text.
pub(super) fn text() -> One<String> {
    One::new(Wanted::Text, schema::text(), |found| Ok((as_text(found)?, Found::Else)))
}

/// A word from a list.
pub(super) fn word<T: Word>() -> One<T> {
    one_of(T::LIST)
}

/// One of these words.
pub(super) fn one_of<T: Word>(list: &'static [T]) -> One<T> {
    let words = words_of(list);
    let schema = schema::words(words.iter().map(|(word, _)| *word));
    One::new(Wanted::one_of(&words), schema, move |found| {
        let meant = as_word(found, &words)?;
        Ok((meant, Found::Word(meant.word())))
    })
}

/// A whole number within bounds.
pub(super) fn whole<T: TryFrom<i64>>(bounds: RangeInclusive<i64>) -> One<T> {
    One::new(within(&bounds), schema::whole(&bounds), move |found| {
        let number = as_whole(found, &bounds)?;
        Ok((T::try_from(number).map_err(|_| None)?, Found::Number(number)))
    })
}

/// An amount above zero.
pub(super) fn amount() -> One<Quantity> {
    One::new(Wanted::Amount, schema::amount(), |found| {
        let read =
            |written: &str| Quantity::parse(written).ok().filter(|amount| !amount.is_zero()).ok_or(None);
        let amount = as_number(found, read)?;
        Ok((amount, i64::try_from(amount.thousandths()).map_or(Found::Else, Found::Number)))
    })
}

/// Degrees with at most one decimal, read as tenths. Leaflets stay within -30 to 60 °C; a higher number is probably °F.
pub(super) fn degrees() -> One<i16> {
    One::new(Wanted::Degrees, schema::degrees(), |found| {
        let tenths = as_number(found, tenths)?;
        Ok((tenths, Found::Number(tenths.into())))
    })
}

fn tenths(written: &str) -> Result<i16, Complaint> {
    let (sign, digits) = written.strip_prefix('-').map_or((1, written), |digits| (-1, digits));
    let (whole, decimal) = digits.split_once('.').unwrap_or((digits, "0"));
    let value = match (whole.parse::<i16>(), decimal.parse::<i16>(), decimal.len()) {
        (Ok(whole), Ok(decimal), 1) if whole < 1000 => Some(sign * (whole * 10 + decimal)),
        _ => None,
    };
    let within = value.filter(|tenths| (-300..=600).contains(tenths));
    within.ok_or_else(|| {
        let tenths =
            value.filter(|tenths| *tenths <= 1400 && sign > 0).map(|tenths| (tenths - 320) * 5 / 9)?;
        Some(Mend::Celsius { fahrenheit: written.to_owned(), tenths })
    })
}

/// Month and day.
pub(super) fn year_day() -> One<YearDay> {
    One::new(Wanted::YearDay, schema::year_day(), |found| Ok((as_name(found)?, Found::Else)))
}

/// A single value as a field: `F` is `T`, or `Option<T>` where it may be absent.
pub(super) struct Single<T, F> {
    one: One<T>,
    needed: bool,
    field: fn(Option<T>) -> Option<F>,
}

/// A required value.
pub(super) fn must<T>(one: One<T>) -> Single<T, T> {
    Single { one, needed: true, field: |read| read }
}

/// An optional value.
pub(super) fn may<T>(one: One<T>) -> Single<T, Option<T>> {
    Single { one, needed: false, field: Some }
}

impl<T, F> Written for Single<T, F> {
    type Field = F;

    fn read(&self, rule: &mut Reading<'_, '_, '_>, key: &'static str) -> Option<F> {
        let One { wanted, read, .. } = &self.one;
        let read = if self.needed {
            rule.table.needed(rule.file, key, wanted.clone(), read)
        } else {
            rule.table.optional(rule.file, key, wanted.clone(), read)
        };
        (self.field)(read.map(|(value, found)| {
            rule.found.push((key, found));
            value
        }))
    }

    fn describe(&self, keys: Keys, key: &'static str) -> Keys {
        let schema = self.one.schema.clone();
        if self.needed { keys.must(key, schema) } else { keys.may(key, schema) }
    }
}

/// A list of words.
pub(super) struct List<T: 'static> {
    words: Vec<(&'static str, T)>,
    of: WordsOf,
    needed: bool,
}

/// A required list of words.
pub(super) fn must_list<T: Word>(of: WordsOf) -> List<T> {
    List { words: words_of(T::LIST), of, needed: true }
}

/// An optional list of words.
pub(super) fn may_list<T: Word>(of: WordsOf) -> List<T> {
    List { words: words_of(T::LIST), of, needed: false }
}

impl<T: Word> Written for List<T> {
    type Field = Vec<T>;

    fn read(&self, rule: &mut Reading<'_, '_, '_>, key: &'static str) -> Option<Vec<T>> {
        let known: Vec<&'static str> = self.words.iter().map(|(word, _)| *word).collect();
        let wanted = Wanted::AnyOf(known.clone());
        let written = if self.needed {
            rule.table.texts(rule.file, key, wanted)
        } else {
            rule.table.maybe_texts(rule.file, key, wanted)
        };
        let mut list = Vec::new();
        for (offset, written) in written {
            if let Some((_, meant)) = self.words.iter().find(|(known, _)| *known == written) {
                list.push(*meant);
            } else {
                rule.file.fault(offset, ValueFault::unlisted(self.of, written, known.clone()));
            }
        }
        Some(list)
    }

    fn describe(&self, keys: Keys, key: &'static str) -> Keys {
        let schema = schema::list(schema::words(self.words.iter().map(|(word, _)| *word)));
        if self.needed { keys.must(key, schema) } else { keys.may(key, schema) }
    }
}

/// A withdrawal period: days, or `none_by_label = true`.
pub(super) struct DaysOrNone;

impl Written for DaysOrNone {
    type Field = WithdrawalPeriod;

    fn read(&self, rule: &mut Reading<'_, '_, '_>, key: &'static str) -> Option<WithdrawalPeriod> {
        let (file, table) = (&mut *rule.file, &mut *rule.table);
        let none = table.maybe_true(file, "none_by_label");
        if !table.has("none_by_label") {
            return table.whole(file, key, 0..=DAYS_MOST).map(WithdrawalPeriod::Days);
        }
        if table.maybe_whole::<u16>(file, key, 0..=DAYS_MOST).is_some() {
            rule.fault(key, RuleFault::DaysBesideNone { key });
        }
        none.map(|()| WithdrawalPeriod::NONE_BY_LABEL)
    }

    fn describe(&self, keys: Keys, key: &'static str) -> Keys {
        let none = schema::described(json!({ "const": true }), "The label knows no withdrawal period.");
        keys.may(key, schema::whole(&(0..=DAYS_MOST)))
            .may("none_by_label", none)
            .any_of(&[key, "none_by_label"])
            .all_of(json!({ "not": { "required": [key, "none_by_label"] } }))
    }
}

fn words_of<T: Word>(list: &[T]) -> Vec<(&'static str, T)> {
    list.iter().map(|word| (word.word(), *word)).collect()
}
