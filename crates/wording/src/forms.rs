//! The words of forms: what an entry of a kind records, and label, hint and example of each field.

use combclear_domain::journal::Kind;
use combclear_domain::journal::form::{Blank, Field};

use crate::Words;

/// The words of one field.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FieldWords {
    /// Its label.
    pub label: &'static str,
    /// What to fill in.
    pub hint: &'static str,
    /// An example of what is filled in.
    pub example: &'static str,
}

/// What an entry of a kind records.
#[must_use]
pub fn title(words: &Words, kind: Kind) -> &'static str {
    words.named(&format!("form-{}", kind.as_str())).unwrap_or_default()
}

/// The name of the tab of a spreadsheet that takes entries of a kind; empty if people do not fill in such entries.
#[must_use]
pub fn tab(words: &Words, kind: Kind) -> &'static str {
    words.named(&format!("tab-{}", kind.as_str())).unwrap_or_default()
}

/// The words of a field of a form.
#[must_use]
pub fn field(words: &Words, kind: Kind, blank: &Blank) -> FieldWords {
    of_key(words, kind, &blank.key)
}

/// The words of a field around the body, which every form has.
#[must_use]
pub fn around(words: &Words, kind: Kind, field: &Field) -> FieldWords {
    of_key(words, kind, field.name)
}

/// What a choice of a form means, by the word under which it is filled in.
#[must_use]
pub fn choice(words: &Words, word: &str) -> &'static str {
    words.named(&format!("choice-{word}")).unwrap_or_default()
}

fn of_key(words: &Words, kind: Kind, key: &str) -> FieldWords {
    let own = format!("field-{}-{key}", kind.as_str());
    let shared = format!("field-{key}");
    // A label, its hint and its example stand together: those of one form are not mixed with those of all.
    let id = if words.named(&own).is_some() { own } else { shared };
    FieldWords {
        label: words.named(&id).unwrap_or_default(),
        hint: words.named(&format!("{id}-hint")).unwrap_or_default(),
        example: words.named(&format!("{id}-example")).unwrap_or_default(),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use combclear_domain::journal::form::{Input, blanks, is_filled_in};

    use super::*;
    use crate::sentences::EN;

    #[test]
    fn every_field_of_every_form_has_its_words_and_no_other_field_has() {
        let words = Words::english();
        let mut used: BTreeSet<String> = BTreeSet::new();
        let mut tabs: BTreeSet<&str> = BTreeSet::new();
        for kind in Kind::ALL {
            assert!(!title(words, *kind).is_empty(), "form-{}", kind.as_str());
            used.insert(format!("form-{}", kind.as_str()));
            used.insert(format!("tab-{}", kind.as_str()));
            // A spreadsheet takes no longer name, and shows every tab by its own. A strike-out names an entry.
            let tab = tab(words, *kind);
            assert!(tab.len() <= 31 && tabs.insert(tab) || tab.is_empty(), "{tab}");
            assert_eq!(!tab.is_empty(), is_filled_in(*kind) && *kind != Kind::StrikeOut, "{kind:?}");
            let keys = blanks(*kind).into_iter().map(|blank| blank.key);
            for key in keys.chain(Field::ENVELOPE.iter().map(|field| field.name.to_owned())) {
                let FieldWords { label, hint, example } = of_key(words, *kind, &key);
                assert!(!label.is_empty() && !hint.is_empty() && !example.is_empty(), "{kind:?} {key}");
                let own = format!("field-{}-{key}", kind.as_str());
                let id = if words.named(&own).is_some() { own } else { format!("field-{key}") };
                used.extend([id.clone(), format!("{id}-hint"), format!("{id}-example")]);
            }
        }
        let lists = Kind::ALL.iter().flat_map(|kind| blanks(*kind)).filter_map(|blank| match blank.input {
            Input::Word(choices) => Some(choices()),
            _ => None,
        });
        used.extend(lists.flatten().map(|word| format!("choice-{word}")));
        // The page has words of its own, which its own test looks for.
        let of_forms = EN.named.iter().map(|(id, _)| *id);
        let of_forms = of_forms.filter(|id| !id.starts_with("page-") && !id.starts_with("mark-"));
        let known: BTreeSet<String> = of_forms.map(str::to_owned).collect();
        let unsaid: Vec<&String> =
            used.iter().filter(|id| id.starts_with("choice-")).filter(|id| !known.contains(*id)).collect();
        assert_eq!(unsaid, Vec::<&String>::new());
        let unused: Vec<&String> = known.iter().filter(|id| !used.contains(*id)).collect();
        assert_eq!(unused, Vec::<&String>::new());
    }
}
