//! What is wrong with a form as it was filled in. The sentences are made elsewhere.

use super::Chosen;
use crate::basics::calendar::Day;
use crate::basics::misread::Misread;
use crate::basics::node::Reading;
use crate::basics::words::{ColonyName, LotName};
use crate::facts::MedicineGiven;
use crate::journal::form::{Blank, Input};

/// Something that is wrong with a form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wrong {
    /// The key of the field; empty for the form as a whole.
    pub key: String,
    /// What is wrong with it.
    pub with: WrongWith,
}

impl Wrong {
    /// What was filled in is no field of this kind.
    #[must_use]
    pub fn no_such_field(key: &str) -> Wrong {
        Wrong::at(key, WrongWith::NoSuchField)
    }

    pub(super) fn at(key: &str, with: WrongWith) -> Wrong {
        Wrong { key: key.to_owned(), with }
    }

    /// A fault in the body that was made from the form, at the field that it is about.
    pub(super) fn of_fault(blanks: &[Blank], Reading { pointer, what }: Reading) -> Wrong {
        // In a group of a list, what is missing is a part of what was written.
        let in_group = |blank: &Blank| matches!(blank.input, Input::Parts(_)) && blank.is_at(&pointer);
        let missing = if let Misread::MissingField { field } = &what
            && !blanks.iter().any(in_group)
        {
            Some(format!("{pointer}/{field}"))
        } else {
            None
        };
        let (pointer, with) = match missing {
            Some(pointer) => (pointer, WrongWith::Missing),
            None => (pointer.clone(), WrongWith::Misread(what)),
        };
        // A part of which nothing was filled in is missing where its first field is.
        let within =
            |blank: &&Blank| blank.is_at(&pointer) || pointer == format!("/{}", blank.path.join("/"));
        let part = |blank: &&Blank| blank.path.first().is_some_and(|part| pointer == format!("/{part}"));
        let at = blanks.iter().find(within).or_else(|| blanks.iter().find(part));
        Wrong { key: at.map_or_else(String::new, |blank| blank.key.clone()), with }
    }
}

/// What is wrong with a field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WrongWith {
    /// It must be filled in.
    Missing,
    /// There is no such field in this form.
    NoSuchField,
    /// What is written there cannot be read.
    Misread(Misread),
    /// It takes one value.
    OneOnly {
        /// How many were given.
        given: usize,
    },
    /// A range that runs backwards.
    RangeIsBackwards {
        /// The range as written.
        text: String,
    },
    /// A range of too many names.
    RangeTooLong {
        /// The range as written.
        text: String,
        /// The limit.
        most: u64,
    },
    /// The end of a range is not on record.
    RangeEndNotOnRecord {
        /// The range as written.
        text: String,
        /// The colony that there is not.
        colony: String,
        /// The colony that is written much like it.
        near: Option<ColonyName>,
    },
    /// None of the colonies of a range is alive on the day.
    NobodyInRange {
        /// The range as written.
        text: String,
    },
    /// There is no colony to choose.
    NobodyThere(Chosen),
    /// Nobody has recorded an entry yet, so somebody must be named.
    NobodyYet,
    /// No lot has anything left.
    NoLotInStock,
    /// Several lots have something left.
    SeveralLots {
        /// The lots.
        lots: Vec<LotName>,
    },
    /// There is no entry with this number.
    NoSuchEntry {
        /// The number, or the id, as written.
        text: String,
        /// The number of the last entry.
        last: u64,
    },
    /// Nothing is recorded as in these colonies.
    NothingInside {
        /// The colonies.
        colonies: Vec<ColonyName>,
    },
    /// More than one course is in a colony.
    SeveralInside {
        /// The colony.
        colony: ColonyName,
        /// The courses.
        courses: Vec<InsideCourse>,
    },
}

/// A course that is in a colony.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct InsideCourse {
    /// The number of its first entry.
    pub number: u64,
    /// The medicine.
    pub medicine: MedicineGiven,
    /// The day of the first dose.
    pub placed: Day,
}

/// A colony of a range that is left out, with the reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LeftOut {
    /// It is not on record.
    NotOnRecord {
        /// The name.
        colony: String,
    },
    /// It came into the record later.
    NotYetThere {
        /// The colony.
        colony: ColonyName,
        /// The day.
        begun: Day,
    },
    /// It ended before.
    Ended {
        /// The colony.
        colony: ColonyName,
        /// The day.
        ended: Day,
    },
}
