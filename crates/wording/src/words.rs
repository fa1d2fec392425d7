//! The sentences of one language, and how to format them.

use std::borrow::Cow;
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
use crate::sentences::{self, Sentences, Value};

/// The sentences of one language, made only from its message file.
pub struct Words {
    sentences: &'static Sentences,
    /// The plural rules of the language. The build rejects a language without known rules.
    plurals: Option<PluralRules>,
}

impl Words {
    /// English.
    #[must_use]
    pub fn english() -> &'static Words {
        static ENGLISH: LazyLock<Words> = LazyLock::new(|| Words::of(&sentences::EN));
        &ENGLISH
    }

    /// The language code, as used on pages: `en`.
    #[must_use]
    pub fn language(&self) -> &str {
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
        Words { sentences, plurals }
    }

    /// Formats a message.
    pub(crate) fn say<'a, M: Message<'a>>(&self, message: M) -> String {
        self.put_together(M::PLACE, message.values().as_ref())
    }

    fn put_together(&self, place: usize, values: &[Value<'_>]) -> String {
        // The build gives every message its index.
        let sentence = self.sentences.messages.get(place).copied().unwrap_or_default();
        sentences::said(sentence, values, self.plurals.as_ref())
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

written!(TimeOfDay, Instant, Quantity, Celsius, EntryId, Hash, KeyId);

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
