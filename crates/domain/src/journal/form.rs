//! Each kind of entry as a form: its fields, how each is filled in, and where a value comes from if nobody gives one.
//!
//! A form is declared together with the kind, in [`super::event`]: a field is there once, with its type. Commands,
//! sheets, examples and pages are made from it. Labels and hints are in the message file.

use std::fmt;

use serde::Deserialize;

use super::entry::{EntryId, WhichEntry};
use super::event::{Confirmed, Kind};
use super::places::Places;
use super::seal::Hash;
use crate::basics::calendar::{Day, TimeOfDay};
use crate::basics::degrees::Celsius;
use crate::basics::misread::Misread;
pub use crate::basics::misread::Named;
use crate::basics::node::{Node, Reading};
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    Access, ApiaryName, Brood, ColonyName, CountMethod, FlowStage, Ground, HarvestLotName, Jurisdiction,
    LeafletId, LotName, MediaType, MedicineName, MedicinesInside, Method, NoWithdrawal, Permission, Person,
    Power, PrescriptionName, RemovalNeed, StripsAtSplit, StripsAtUniting, SuperPurpose, SupersDuring,
    TemperatureStage, Unit, Word,
};

/// A field of a form.
#[derive(Clone, Copy)]
pub struct Field {
    /// Its name in JSON.
    pub name: &'static str,
    /// How it is filled in.
    pub input: Input,
    /// Whether there is no entry without it.
    pub needed: bool,
    /// Where its value comes from if nobody gives one.
    pub origin: Origin,
    /// What is wrong with a value for it, if anything.
    pub(super) reads: fn(Node) -> Option<Reading>,
}

/// How a field is filled in.
#[derive(Debug, Clone, Copy)]
pub enum Input {
    /// In words.
    Text,
    /// With one word of a list.
    Word(fn() -> Vec<&'static str>),
    /// With yes or no.
    YesNo,
    /// With a day.
    Day,
    /// With a time of day.
    TimeOfDay,
    /// With a whole number.
    Whole,
    /// With an amount, to a thousandth.
    Amount,
    /// With a temperature in °C, to a tenth.
    Temperature,
    /// With a name.
    Name(Named),
    /// With several names.
    Names(Named),
    /// With the first dose of a course.
    FirstDose,
    /// With fields of its own.
    Part(&'static [Field]),
    /// With fields of its own, as often as needed.
    Parts(&'static [Field]),
    /// By the program only.
    Made,
}

/// Where the value of a field comes from if nobody gives one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// It is asked for, or left out.
    Asked,
    /// It is asked for: a name that is not in the record yet.
    New,
    /// Today.
    Today,
    /// The person who recorded the last entry.
    NamedLast,
    /// The lot of which something is left, if there is only one.
    InStock,
    /// The course that is in the colonies, if there is only one.
    Inside,
    /// It is asked for as it is printed on a pack: a month stands for its last day.
    Printed,
}

impl Field {
    /// Everything that is wrong with a value of this field, with pointers into it.
    fn faults(&self, value: Node) -> Vec<Reading> {
        match (self.input, value) {
            (Input::Part(fields), Node::Object(written)) => faults_in(fields, written),
            (Input::Parts(fields), Node::List(items)) if items.iter().all(Node::is_object) => {
                let each = items.into_iter().enumerate();
                let of_each = each.flat_map(|(index, item)| {
                    let faults = item.into_fields().map(|written| faults_in(fields, written));
                    let faults = faults.unwrap_or_default().into_iter();
                    faults.map(move |fault| fault.within(&index.to_string()))
                });
                of_each.collect()
            }
            (_, value) => (self.reads)(value).into_iter().collect(),
        }
    }
}

impl fmt::Debug for Field {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Field { name, input, needed, origin, reads: _ } = self;
        write!(f, "{name}: {input:?}, needed: {needed}, {origin:?}")
    }
}

/// A field that takes a value itself, with its place in the body of an entry.
#[derive(Debug, Clone)]
pub struct Blank {
    /// The name under which it is filled in. No two blanks of a form have the same.
    pub key: String,
    /// The names that lead to it in the body: one, or the part and the field in it.
    pub path: Vec<&'static str>,
    /// Whether the part is the first of a list.
    pub in_list: bool,
    /// How it is filled in.
    pub input: Input,
    /// Whether there is no entry without it.
    pub needed: bool,
    /// Where its value comes from if nobody gives one.
    pub origin: Origin,
}

/// Whether people fill in entries of a kind. The others are made by a program: an attached document, an archive step.
#[must_use]
pub fn is_filled_in(kind: Kind) -> bool {
    !kind.fields().iter().any(|field| field.needed && matches!(field.input, Input::Made))
}

impl Blank {
    fn of_part(field: &Field, part: &Field, in_list: bool) -> Blank {
        let key = match part.name {
            "name" => field.name.to_owned(),
            "address" => format!("{}_address", field.name),
            name => name.to_owned(),
        };
        Blank {
            key,
            path: vec![field.name, part.name],
            in_list,
            input: part.input,
            needed: field.needed && part.needed,
            origin: part.origin,
        }
    }

    /// Whether a JSON pointer into the body leads to it, or to something in it.
    #[must_use]
    pub fn is_at(&self, pointer: &str) -> bool {
        let mut parts =
            pointer.split('/').skip(1).filter(|part| !self.in_list || part.parse::<usize>().is_err());
        self.path.iter().all(|name| parts.next() == Some(*name))
    }
}

/// The blanks of a form, in order. What only the program makes is left out.
#[must_use]
pub fn blanks(kind: Kind) -> Vec<Blank> {
    let mut found = Vec::new();
    if !is_filled_in(kind) {
        return found;
    }
    for field in kind.fields() {
        match field.input {
            Input::Made => {}
            Input::Part(parts) => found.extend(parts.iter().map(|part| Blank::of_part(field, part, false))),
            // A list within a list cannot be written down in one place: one group is enough for one entry.
            Input::Parts(parts) if parts.iter().any(|part| matches!(part.input, Input::Names(_))) => {
                found.extend(parts.iter().map(|part| Blank::of_part(field, part, true)));
            }
            input @ (Input::Text
            | Input::Word(_)
            | Input::YesNo
            | Input::Day
            | Input::TimeOfDay
            | Input::Whole
            | Input::Amount
            | Input::Temperature
            | Input::Name(_)
            | Input::Names(_)
            | Input::FirstDose
            | Input::Parts(_)) => found.push(Blank {
                key: field.name.to_owned(),
                path: vec![field.name],
                in_list: false,
                input,
                needed: field.needed,
                origin: field.origin,
            }),
        }
    }
    found
}

/// Everything that is wrong with the body of an entry of a kind; nothing if it can be read.
#[must_use]
pub fn faults(kind: Kind, body: &str) -> Vec<Reading> {
    match serde_json::from_str(body) {
        Ok(Node::Object(written)) => faults_in(kind.fields(), written),
        Ok(_) => vec![Misread::ListForObject.into()],
        Err(error) => vec![Misread::not_json(&error).into()],
    }
}

/// Everything that is wrong with an object of these fields, in the order in which it is written; then what is missing.
pub(super) fn faults_in(fields: &[Field], written: Vec<(String, Node)>) -> Vec<Reading> {
    let known = || fields.iter().map(|field| field.name.to_owned()).collect::<Vec<_>>();
    let mut faults: Vec<Reading> = Vec::new();
    let mut seen: Vec<&str> = Vec::new();
    for (name, value) in written {
        match fields.iter().find(|field| field.name == name) {
            None => {
                let fault = Misread::UnknownField { field: name.clone(), known: known() };
                faults.push(Reading::from(fault).within(&name));
            }
            Some(field) if seen.contains(&field.name) => {
                faults.push(Misread::DuplicateField { field: name }.into());
            }
            Some(field) => {
                seen.push(field.name);
                faults.extend(field.faults(value).into_iter().map(|fault| fault.within(&name)));
            }
        }
    }
    let missing = fields.iter().filter(|field| field.needed && !seen.contains(&field.name));
    faults.extend(missing.map(|field| Misread::MissingField { field: field.name.to_owned() }.into()));
    faults
}

/// A type of which a field may be.
pub(super) trait Entered: for<'de> Deserialize<'de> {
    /// How it is filled in.
    const INPUT: Input;
    /// Whether it must be there.
    const NEEDED: bool = true;
}

/// A part of a body with fields of its own.
pub(super) trait Part: for<'de> Deserialize<'de> {
    /// Its fields.
    const FIELDS: &'static [Field];
}

impl<T: Entered> Entered for Option<T> {
    const INPUT: Input = T::INPUT;
    const NEEDED: bool = false;
}

impl<T: Part> Entered for Vec<T> {
    const INPUT: Input = Input::Parts(T::FIELDS);
}

impl Entered for Vec<ColonyName> {
    const INPUT: Input = Input::Names(Named::Colony);
}

macro_rules! entered {
    ($($($type:ty),+ => $input:expr;)+) => {
        $($(impl Entered for $type {
            const INPUT: Input = $input;
        })+)+
    };
}

entered! {
    String => Input::Text;
    bool => Input::YesNo;
    u8, u16, u32 => Input::Whole;
    Day => Input::Day;
    TimeOfDay => Input::TimeOfDay;
    Quantity => Input::Amount;
    Celsius => Input::Temperature;
    EntryId => Input::FirstDose;
    WhichEntry => Input::Made;
    u64, Hash, Places, MediaType, Vec<Confirmed> => Input::Made;
    ApiaryName => Input::Name(Named::Apiary);
    ColonyName => Input::Name(Named::Colony);
    MedicineName => Input::Name(Named::Medicine);
    LotName => Input::Name(Named::Lot);
    PrescriptionName => Input::Name(Named::Prescription);
    HarvestLotName => Input::Name(Named::HarvestLot);
    LeafletId => Input::Name(Named::Leaflet);
    Method => Input::Name(Named::Method);
    Jurisdiction => Input::Name(Named::Jurisdiction);
    Person => Input::Name(Named::Person);
}

macro_rules! words {
    ($($list:ty),+ $(,)?) => {
        $(impl Entered for $list {
            const INPUT: Input = Input::Word(|| <$list as Word>::LIST.iter().map(|word| word.word()).collect());
        })+
    };
}

words!(
    Access,
    Brood,
    CountMethod,
    FlowStage,
    Ground,
    MedicinesInside,
    NoWithdrawal,
    Permission,
    Power,
    RemovalNeed,
    StripsAtSplit,
    StripsAtUniting,
    SuperPurpose,
    SupersDuring,
    TemperatureStage,
    Unit,
);

/// A field by its declaration: attributes, name, type and origin.
macro_rules! field {
    ($(#[$($attribute:tt)+])* $name:ident : $type:ty $([$origin:ident])?) => {
        $crate::journal::form::Field {
            name: stringify!($name),
            input: <$type as $crate::journal::form::Entered>::INPUT,
            needed: <$type as $crate::journal::form::Entered>::NEEDED
                && !$crate::journal::form::has_default!($(#[$($attribute)+])*),
            origin: $crate::journal::form::origin!($($origin)?),
            reads: |value| <$type as serde::Deserialize>::deserialize(value).err(),
        }
    };
}

/// Whether a field may be left out because it has a default.
macro_rules! has_default {
    () => { false };
    (#[serde(default $($more:tt)*)] $(#[$($rest:tt)+])*) => { true };
    (#[$($other:tt)+] $(#[$($rest:tt)+])*) => { $crate::journal::form::has_default!($(#[$($rest)+])*) };
}

macro_rules! origin {
    () => {
        $crate::journal::form::Origin::Asked
    };
    ($origin:ident) => {
        $crate::journal::form::Origin::$origin
    };
}

/// Structs that are parts of bodies, each with its fields.
macro_rules! parts {
    ($(
        $(#[$($about:tt)+])*
        pub struct $part:ident {
            $($(#[$($attribute:tt)+])* pub $field:ident : $type:ty $([$origin:ident])? ,)*
        }
    )+) => {$(
        $(#[$($about)+])*
        pub struct $part {
            $($(#[$($attribute)+])* pub $field: $type,)*
        }

        impl $crate::journal::form::Part for $part {
            const FIELDS: &'static [$crate::journal::form::Field] = &[
                $($crate::journal::form::field!($(#[$($attribute)+])* $field: $type $([$origin])?),)*
            ];
        }

        impl $crate::journal::form::Entered for $part {
            const INPUT: $crate::journal::form::Input =
                $crate::journal::form::Input::Part(<$part as $crate::journal::form::Part>::FIELDS);
        }
    )+};
}

pub(super) use {field, has_default, origin, parts};

impl Field {
    /// The fields of the envelope, which every form has.
    pub const ENVELOPE: &'static [Field] = &[
        field!(on: Day [Today]),
        field!(at: Option<TimeOfDay>),
        field!(recorded_by: Person [NamedLast]),
        field!(copied_from: Option<String>),
        field!(written_on: Option<Day>),
    ];
}
