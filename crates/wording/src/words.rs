//! The sentences of one language, and how to say them.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use combclear_domain::basics::degrees::Celsius;
use combclear_domain::basics::words::{
    ApiaryName, ColonyName, HoldingName, Jurisdiction, LeafletId, LotName, MedicineName, Method, Person,
    PrescriptionName,
};
use combclear_domain::journal::{EntryId, Hash};
use combclear_domain::{Day, Instant, Quantity, TimeOfDay};
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::{LanguageIdentifier, langid};

use crate::Label;
use crate::messages::Message;

/// The sentences of one language, made from its message file alone.
pub struct Words {
    bundle: FluentBundle<FluentResource>,
    /// Labels are said over and over, so they are said once for all.
    labels: BTreeMap<Label, String>,
}

impl Words {
    /// English.
    #[must_use]
    pub fn english() -> &'static Words {
        static ENGLISH: LazyLock<Words> =
            LazyLock::new(|| Words::of(langid!("en"), include_str!("../messages/en.ftl")));
        &ENGLISH
    }

    /// The language, as a page names it: `en`.
    #[must_use]
    pub fn language(&self) -> &str {
        self.bundle.locales.first().map_or("", |known| known.language.as_str())
    }

    /// Says a label.
    #[must_use]
    pub fn label(&self, label: Label) -> &str {
        self.labels.get(&label).map_or("", String::as_str)
    }

    fn of(language: LanguageIdentifier, text: &str) -> Words {
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        // Isolating marks around arguments would end up in tables, files and hashes.
        bundle.set_use_isolating(false);
        // The build has read the file: it would not have compiled otherwise.
        let (Ok(resource) | Err((resource, _))) = FluentResource::try_new(text.to_owned());
        bundle.add_resource_overriding(resource);
        let labels = Label::ALL.into_iter().map(|(label, id)| (label, said(&bundle, id, None)));
        let labels = labels.collect();
        Words { bundle, labels }
    }

    /// Says a message.
    pub(crate) fn say<'a, M: Message<'a>>(&self, message: M) -> String {
        said(&self.bundle, M::ID, Some(&message.arguments()))
    }
}

fn said(bundle: &FluentBundle<FluentResource>, id: &str, arguments: Option<&FluentArgs<'_>>) -> String {
    let pattern = bundle.get_message(id).and_then(|message| message.value());
    // The build made types and labels from the file, so the message is there.
    let Some(pattern) = pattern else { return id.to_owned() };
    bundle.format_pattern(pattern, arguments, &mut Vec::new()).into_owned()
}

/// A value that can be an argument of a sentence.
pub(crate) trait Put<'a> {
    fn put(self) -> FluentValue<'a>;
}

impl<'a> Put<'a> for &'a str {
    fn put(self) -> FluentValue<'a> {
        FluentValue::String(self.into())
    }
}

impl<'a> Put<'a> for &'a String {
    fn put(self) -> FluentValue<'a> {
        self.as_str().put()
    }
}

impl<'a> Put<'a> for String {
    fn put(self) -> FluentValue<'a> {
        FluentValue::String(self.into())
    }
}

/// Numbers stay numbers, so that a sentence can choose between singular and plural.
macro_rules! numbers {
    ($($number:ty),+) => {$(
        impl<'a> Put<'a> for $number {
            fn put(self) -> FluentValue<'a> {
                FluentValue::from(self)
            }
        }
    )+};
}

numbers!(u8, u16, u32, i64, usize);

/// Places and numbers of entries. A number of a sentence holds whole numbers up to 2^53 to the digit; larger ones go in as text.
impl<'a> Put<'a> for u64 {
    fn put(self) -> FluentValue<'a> {
        if self <= 1 << 53 { FluentValue::from(self) } else { self.to_string().put() }
    }
}

/// Everything else appears in a sentence as it is written everywhere.
macro_rules! written {
    ($($written:ty),+ $(,)?) => {$(
        impl<'a> Put<'a> for $written {
            fn put(self) -> FluentValue<'a> {
                self.to_string().put()
            }
        }

        impl<'a> Put<'a> for &$written {
            fn put(self) -> FluentValue<'a> {
                self.to_string().put()
            }
        }
    )+};
}

written!(
    Day,
    TimeOfDay,
    Instant,
    Quantity,
    Celsius,
    EntryId,
    Hash,
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

/// Says a message of the message file: `say!(words, SuperingStillIn, name = name)`.
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
