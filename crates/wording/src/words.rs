//! The sentences of one language, and how to format them.

use std::borrow::Cow;
use std::fmt;
use std::sync::LazyLock;

use combclear_domain::basics::degrees::Celsius;
use combclear_domain::basics::words::{
    ApiaryName, ColonyName, HoldingName, Jurisdiction, LeafletId, LotName, MedicineName, Method, Person,
    PrescriptionName,
};
use combclear_domain::journal::{EntryId, Hash, KeyId};
use combclear_domain::{Day, Instant, Quantity, TimeOfDay};
use intl_pluralrules::{PluralRuleType, PluralRules};
use unic_langid::LanguageIdentifier;

use crate::Label;
use crate::messages::Message;
use crate::sentences::{self, Marks, Sentences, Value};

/// The sentences of one language, made only from its message file.
pub struct Words {
    sentences: &'static Sentences,
    marks: Marks,
}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Words").field(&self.language()).finish()
    }
}

/// There is one of each language.
impl PartialEq for Words {
    fn eq(&self, other: &Words) -> bool {
        self.language() == other.language()
    }
}

impl Eq for Words {}

impl Words {
    /// English.
    #[must_use]
    pub fn english() -> &'static Words {
        static ENGLISH: LazyLock<Words> = LazyLock::new(|| Words::of(&sentences::EN));
        &ENGLISH
    }

    /// German.
    #[must_use]
    pub fn german() -> &'static Words {
        static GERMAN: LazyLock<Words> = LazyLock::new(|| Words::of(&sentences::DE));
        &GERMAN
    }

    /// Every language that there are words in.
    #[must_use]
    pub fn all() -> [&'static Words; 2] {
        [Words::english(), Words::german()]
    }

    /// The words of a language, by its code; English if there are none.
    #[must_use]
    pub fn of_language(code: &str) -> &'static Words {
        Words::all().into_iter().find(|words| words.language() == code).unwrap_or_else(Words::english)
    }

    /// The language code, as used on pages: `en`.
    #[must_use]
    pub fn language(&self) -> &'static str {
        self.sentences.language
    }

    /// The text of a label.
    #[must_use]
    pub fn label(&self, label: Label) -> &str {
        self.sentences.labels.get(label as usize).copied().unwrap_or_default()
    }

    /// The text with an id, if there is one.
    pub(crate) fn named(&self, id: &str) -> Option<&'static str> {
        let named = self.sentences.named;
        let place = named.binary_search_by_key(&id, |(id, _)| *id).ok()?;
        named.get(place).map(|(_, text)| *text)
    }

    /// The words of the page at the hive, by the names under which it asks for them.
    #[must_use = "iterators are lazy"]
    pub fn of_the_page(&self) -> impl Iterator<Item = (&'static str, &'static str)> {
        self.sentences.named.iter().filter_map(|(id, text)| Some((id.strip_prefix("page-")?, *text)))
    }

    fn of(sentences: &'static Sentences) -> Words {
        let language = sentences.language.parse::<LanguageIdentifier>().ok();
        let plurals =
            language.and_then(|language| PluralRules::create(language, PluralRuleType::CARDINAL).ok());
        let marks = Marks { plurals, decimal: ".", day: "[year]-[month]-[day]" };
        let words = Words { sentences, marks };
        let (decimal, day) = (words.named("mark-decimal"), words.named("page-date"));
        let Words { sentences, marks } = words;
        let marks =
            Marks { decimal: decimal.unwrap_or(marks.decimal), day: day.unwrap_or(marks.day), ..marks };
        Words { sentences, marks }
    }

    /// A day as it is written in this language.
    pub(crate) fn day(&self, day: Day) -> String {
        self.marks.day(day)
    }

    /// A number as it is written in this language.
    pub(crate) fn decimal<'t>(&self, number: &'t str) -> Cow<'t, str> {
        self.marks.decimal(number)
    }

    /// A label as it stands inside a sentence. German nouns keep their capital.
    pub(crate) fn inside(&self, label: &str) -> String {
        if self.language() == "de" { label.to_owned() } else { label.to_lowercase() }
    }

    /// Formats a message.
    pub(crate) fn say<'a, M: Message<'a>>(&self, message: M) -> String {
        self.put_together(M::PLACE, message.values().as_ref())
    }

    fn put_together(&self, place: usize, values: &[Value<'_>]) -> String {
        // The build gives every message its index.
        let sentence = self.sentences.messages.get(place).copied().unwrap_or_default();
        sentences::said(sentence, values, &self.marks)
    }
}

/// A value that can be an argument of a sentence.
pub(crate) trait Put<'a> {
    fn put(self) -> Value<'a>;
}

impl<'a> Put<'a> for &'a str {
    fn put(self) -> Value<'a> {
        Value::Text(Cow::Borrowed(self))
    }
}

impl<'a> Put<'a> for &'a String {
    fn put(self) -> Value<'a> {
        self.as_str().put()
    }
}

impl<'a> Put<'a> for String {
    fn put(self) -> Value<'a> {
        Value::Text(Cow::Owned(self))
    }
}

/// Numbers stay numbers, so that a sentence can choose between singular and plural.
macro_rules! numbers {
    ($($number:ty),+) => {$(
        impl<'a> Put<'a> for $number {
            fn put(self) -> Value<'a> {
                Value::Number(i64::from(self))
            }
        }
    )+};
}

numbers!(u8, u16, u32, i64);

/// A count.
impl<'a> Put<'a> for usize {
    fn put(self) -> Value<'a> {
        Value::Number(i64::try_from(self).unwrap_or(i64::MAX))
    }
}

/// Positions and numbers of entries. A number too large for a plural choice is passed as text.
impl<'a> Put<'a> for u64 {
    fn put(self) -> Value<'a> {
        i64::try_from(self).map_or_else(|_| self.to_string().put(), Value::Number)
    }
}

impl<'a> Put<'a> for Day {
    fn put(self) -> Value<'a> {
        Value::Day(self)
    }
}

impl<'a> Put<'a> for &Day {
    fn put(self) -> Value<'a> {
        Value::Day(*self)
    }
}

/// Names are inserted as they are.
macro_rules! names {
    ($($name:ty),+ $(,)?) => {$(
        impl<'a> Put<'a> for &'a $name {
            fn put(self) -> Value<'a> {
                self.as_str().put()
            }
        }
    )+};
}

names!(
    Person,
    ApiaryName,
    ColonyName,
    HoldingName,
    LotName,
    MedicineName,
    PrescriptionName,
    LeafletId,
    Jurisdiction,
    Method,
);

/// Every other value is inserted in its usual text form.
macro_rules! written {
    ($($written:ty),+ $(,)?) => {$(
        impl<'a> Put<'a> for $written {
            fn put(self) -> Value<'a> {
                self.to_string().put()
            }
        }

        impl<'a> Put<'a> for &$written {
            fn put(self) -> Value<'a> {
                self.to_string().put()
            }
        }
    )+};
}

written!(TimeOfDay, Instant, EntryId, Hash, KeyId);

/// Numbers with decimals, as the language writes them.
macro_rules! decimals {
    ($($number:ty),+) => {$(
        impl<'a> Put<'a> for $number {
            fn put(self) -> Value<'a> {
                Value::Decimal(self.to_string())
            }
        }

        impl<'a> Put<'a> for &$number {
            fn put(self) -> Value<'a> {
                Value::Decimal(self.to_string())
            }
        }
    )+};
}

decimals!(Quantity, Celsius);

/// Formats a message of the message file: `say!(words, SuperingStillIn, name = name)`.
macro_rules! say {
    ($words:expr, $message:ident $(, $argument:ident = $value:expr)* $(,)?) => {
        $words.say($crate::messages::$message { $($argument: $crate::words::Put::put($value)),* })
    };
}

pub(crate) use say;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_chooses_between_one_and_several() {
        let words = Words::english();
        assert_eq!(say!(words, Days, days = 1_u16), "1 day");
        assert_eq!(say!(words, Days, days = 1_500_u16), "1500 days");
    }
}
