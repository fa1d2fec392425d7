//! Names and closed word lists of the trade, spelt the same in journal, leaflets, API and pages.

use std::fmt;

use ecow::EcoString;
use serde::{Deserialize, Serialize};

pub use super::misread::BadName;
use super::misread::{NameFault, Named};
use super::text::text_in_json;

/// Longest name, in characters.
const NAME_MOST: usize = 80;

fn name_fault(text: &str) -> Option<NameFault> {
    match text {
        "" => Some(NameFault::Empty),
        _ if text.trim() != text => Some(NameFault::OuterSpace),
        _ if text.chars().any(char::is_control) => Some(NameFault::ControlCharacter),
        _ if text.contains('/') => Some(NameFault::Slash),
        _ if text.len() > NAME_MOST && text.chars().count() > NAME_MOST => Some(NameFault::TooLong),
        _ => None,
    }
}

macro_rules! names {
    ($($(#[$doc:meta])+ $name:ident = $what:ident;)+) => {$(
        $(#[$doc])+
        #[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[cfg_attr(
            feature = "openapi",
            derive(utoipa::ToSchema),
            schema(
                value_type = String,
                min_length = 1,
                max_length = 80,
                pattern = r"^[^\s/\x00-\x1f\x7f-\x9f]([^/\x00-\x1f\x7f-\x9f]*[^\s/\x00-\x1f\x7f-\x9f])?$"
            )
        )]
        pub struct $name(EcoString);

        text_in_json!($name);

        impl $name {
            /// Takes text as a name.
            ///
            /// # Errors
            /// Empty text, outer spaces, control characters, a `/`, or more than 80 characters.
            pub fn new(text: &str) -> Result<Self, BadName> {
                match name_fault(text) {
                    Some(why) => Err(BadName { text: text.to_owned(), of: Named::$what, why }),
                    None => Ok(Self(text.into())),
                }
            }

            /// The name as text.
            #[must_use]
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl std::str::FromStr for $name {
            type Err = BadName;

            fn from_str(text: &str) -> Result<Self, BadName> {
                Self::new(text)
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.pad(&self.0)
            }
        }

        impl fmt::Debug for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                fmt::Debug::fmt(self.as_str(), f)
            }
        }
    )+};
}

names! {
    /// One keeper's whole operation.
    HoldingName = Holding;
    /// A place where colonies stand.
    ApiaryName = Apiary;
    /// A colony: the animals. The hive is only its box. Never used again for another colony.
    ColonyName = Colony;
    /// What was bought, under the keeper's own short name for it.
    MedicineName = Medicine;
    /// One acquired batch of a medicine, under the keeper's own short name for it.
    LotName = Lot;
    /// A vet's prescription, under its number.
    PrescriptionName = Prescription;
    /// One lot of harvested honey. Never called a batch.
    HarvestLotName = HarvestLot;
    /// The directions of one authorised form, kept as data: `amitraz-strip-500mg-a`.
    LeafletId = Leaflet;
    /// A way of giving a medicine that its leaflet names, such as `trickle` or `sublimation`.
    Method = Method;
    /// The country or union whose rules hold, as a lower-case code: `gb`, `eu`, `us`.
    Jurisdiction = Jurisdiction;
    /// A person, as written in the record.
    Person = Person;
}

impl Jurisdiction {
    /// Other names of jurisdictions, with their codes.
    const ALSO_CALLED: [(&'static str, &'static str); 18] = [
        ("uk", "gb"),
        ("gbr", "gb"),
        ("en", "gb"),
        ("united kingdom", "gb"),
        ("great britain", "gb"),
        ("england", "gb"),
        ("scotland", "gb"),
        ("wales", "gb"),
        ("northern ireland", "ni"),
        ("usa", "us"),
        ("united states", "us"),
        ("switzerland", "ch"),
        ("france", "fr"),
        ("italy", "it"),
        ("germany", "de"),
        ("ireland", "ie"),
        ("austria", "at"),
        ("poland", "pl"),
    ];

    /// Those known apart from the member states.
    const OTHERS: [&'static str; 5] = ["gb", "ni", "eu", "ch", "us"];

    /// The member states of the European Union by country code; Greece by both of its codes.
    ///
    /// Source: the Union's published list of member states, 27 states in 2026.
    const MEMBER_STATES: [&'static str; 28] = [
        "at", "be", "bg", "hr", "cy", "cz", "dk", "ee", "fi", "fr", "de", "el", "gr", "hu", "ie", "it", "lv",
        "lt", "lu", "mt", "nl", "pl", "pt", "ro", "sk", "si", "es", "se",
    ];

    /// The union whose rules apply if this jurisdiction has none of its own: `eu` for a member state.
    #[must_use]
    pub fn wider(&self) -> Option<Jurisdiction> {
        self.is_member_state().then(|| Jurisdiction("eu".into()))
    }

    /// Whether it is a member state of the European Union.
    #[must_use]
    pub(crate) fn is_member_state(&self) -> bool {
        Jurisdiction::MEMBER_STATES.contains(&self.as_str())
    }

    /// Whether it is the European Union as a whole.
    #[must_use]
    pub(crate) fn is_union(&self) -> bool {
        self.as_str() == "eu"
    }

    /// Where leaflets for this jurisdiction are looked up, nearest first.
    ///
    /// - A member state uses the leaflets of the Union where it has none of its own.
    /// - Northern Ireland has none of its own. It uses those of Great Britain, whose authority authorises its medicines too, and
    ///   otherwise those of the Union, whose medicines law applies there. No value of either was read in a text for Northern
    ///   Ireland, so none counts as a document there: see `Leaflets::get`.
    #[must_use]
    pub(crate) fn leaflets_from(&self) -> Vec<Jurisdiction> {
        let others: &[&str] = match self.as_str() {
            "ni" => &["gb", "eu"],
            _ if self.is_member_state() => &["eu"],
            _ => &[],
        };
        std::iter::once(self.clone()).chain(others.iter().map(|code| Jurisdiction((*code).into()))).collect()
    }

    /// The jurisdictions whose leaflets, or their confidence, may come from elsewhere.
    pub(crate) fn looking_elsewhere() -> impl Iterator<Item = Jurisdiction> {
        ["ni", "eu"].into_iter().chain(Jurisdiction::MEMBER_STATES).map(|code| Jurisdiction(code.into()))
    }

    /// Whether a holding may name it: this program has leaflets or law for it, or it is one of the codes that ISO 3166-1 leaves
    /// to users, for leaflets of one's own.
    ///
    /// Source: ISO 3166-1, user-assigned code elements: AA, QM to QZ, XA to XZ, ZZ.
    #[must_use]
    pub fn is_known(&self) -> bool {
        Jurisdiction::OTHERS.contains(&self.as_str()) || self.is_member_state() || self.is_private()
    }

    /// The known code that an unknown one is meant for, if that can be told.
    pub(crate) fn meant(&self) -> Option<&'static str> {
        let written = self.as_str().to_lowercase();
        let known = Jurisdiction::OTHERS.into_iter().chain(Jurisdiction::MEMBER_STATES);
        // Similar spelling means nothing for two letters: `uk` is nearest to `us`.
        let also = Jurisdiction::ALSO_CALLED.into_iter();
        known
            .map(|code| (code, code))
            .chain(also)
            .find(|(called, _)| *called == written)
            .map(|(_, code)| code)
    }

    fn is_private(&self) -> bool {
        match self.as_str().as_bytes() {
            b"aa" | b"zz" => true,
            [b'q', second] => (b'm'..=b'z').contains(second),
            [b'x', second] => second.is_ascii_lowercase(),
            _ => false,
        }
    }
}

macro_rules! word_lists {
    ($($(#[$doc:meta])+ $list:ident { $($(#[$word_doc:meta])+ $word:ident = $text:literal,)+ })+) => {$(
        $(#[$doc])+
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        // The derive does not see a word that comes through this macro: it is named by rule, and by hand where it differs.
        #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(rename_all = "snake_case"))]
        pub enum $list {
            $($(#[$word_doc])+ #[serde(rename = $text)] $word,)+
        }

        impl $list {
            /// Every word of the list, in order.
            pub const ALL: &[$list] = &[$($list::$word),+];

            /// The word as it is written in journal, leaflets and API.
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $($list::$word => $text,)+ }
            }

            /// The entry of the list that is written so.
            #[must_use]
            pub fn from_word(word: &str) -> Option<$list> {
                $list::ALL.iter().copied().find(|entry| entry.as_str() == word)
            }
        }

        impl fmt::Display for $list {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.pad(self.as_str())
            }
        }

        impl $crate::basics::words::Word for $list {
            const LIST: &'static [$list] = $list::ALL;

            fn word(self) -> &'static str {
                self.as_str()
            }
        }
    )+};
}

pub(crate) use word_lists;

/// A word of a closed list.
pub(crate) trait Word: Copy + 'static {
    /// Every word of the list, in order.
    const LIST: &'static [Self];

    /// The word as it is written in journal, leaflets and API.
    fn word(self) -> &'static str;
}

word_lists! {
    /// What a medicine is counted in.
    Unit {
        /// Bee-hive strips.
        Strip = "strip",
        /// Gel trays.
        Tray = "tray",
        /// Tablets.
        Tablet = "tablet",
        /// Wafers.
        Wafer = "wafer",
        /// Grams.
        #[cfg_attr(feature = "openapi", schema(rename = "g"))]
        Gram = "g",
        /// Millilitres.
        #[cfg_attr(feature = "openapi", schema(rename = "ml"))]
        Millilitre = "ml",
        /// Anything else that is counted.
        Piece = "piece",
    }

    /// The brood seen at an inspection.
    Brood {
        /// No brood at all.
        Absent = "absent",
        /// Brood at the lowest level of the year.
        Lowest = "lowest",
        /// Brood as in the season.
        Present = "present",
    }

    /// How mites are counted.
    CountMethod {
        /// Mites that fell on a board by themselves.
        NaturalFall = "natural_fall",
        /// A sample of bees washed in alcohol or soapy water.
        Wash = "wash",
        /// A sample of bees shaken in icing sugar.
        SugarRoll = "sugar_roll",
        /// Opened brood cells.
        OpenedBrood = "opened_brood",
    }

    /// What a document is. The words are media types (RFC 6838).
    MediaType {
        /// A PDF document.
        #[cfg_attr(feature = "openapi", schema(rename = "application/pdf"))]
        Pdf = "application/pdf",
        /// A photograph as JPEG.
        #[cfg_attr(feature = "openapi", schema(rename = "image/jpeg"))]
        Jpeg = "image/jpeg",
        /// A picture as PNG.
        #[cfg_attr(feature = "openapi", schema(rename = "image/png"))]
        Png = "image/png",
        /// A photograph as HEIC.
        #[cfg_attr(feature = "openapi", schema(rename = "image/heic"))]
        Heic = "image/heic",
    }

    /// What supers are for.
    SuperPurpose {
        /// Honey for people.
        Harvest = "harvest",
        /// Room or stores for the bees only; never harvested.
        BeesOnly = "bees_only",
    }

    /// Whether a colony came into the record with medicine in it.
    MedicinesInside {
        /// Nothing inside, and no withdrawal period or wait still running.
        None = "none",
        /// Not known, as with a bought colony whose seller gave no record.
        NotKnown = "not_known",
    }

    /// Where the strips of an open course went when a colony was split.
    StripsAtSplit {
        /// All stayed with the old colony.
        Stayed = "stayed",
        /// All went with the new colony.
        Went = "went",
        /// Some are in each.
        Both = "both",
    }

    /// What became of the strips of an open course when a colony was united into another.
    StripsAtUniting {
        /// They went along.
        WentAlong = "went_along",
        /// They were taken out before.
        TakenOut = "taken_out",
    }

    /// Whether a nectar flow is expected or was seen.
    FlowStage {
        /// Expected.
        Expected = "expected",
        /// Seen.
        Seen = "seen",
    }

    /// Whether temperatures were forecast or measured.
    TemperatureStage {
        /// Forecast.
        Forecast = "forecast",
        /// Measured.
        Measured = "measured",
    }

    /// Electric power at an apiary.
    Power {
        /// None.
        None = "none",
        /// A 12 V battery.
        Battery = "battery",
        /// A generator.
        Generator = "generator",
        /// Mains.
        Mains = "mains",
    }

    /// How an apiary can be reached.
    Access {
        /// By vehicle.
        Vehicle = "vehicle",
        /// On foot only.
        OnFoot = "on_foot",
        /// Not at all.
        None = "none",
    }

    /// The ground at the stands.
    Ground {
        /// Dry.
        Dry = "dry",
        /// Wet.
        Wet = "wet",
        /// Flooded.
        Flooded = "flooded",
    }

    /// May honey supers be on the hive while the medicine is in.
    SupersDuring {
        /// They must be off.
        Off = "off",
        /// They may be on.
        On = "on",
        /// They may be on, but no honey may be taken meanwhile.
        OnNoHarvest = "on_no_harvest",
    }

    /// Something a leaflet allows or forbids.
    Permission {
        /// Forbidden.
        Forbidden = "forbidden",
        /// Allowed.
        Allowed = "allowed",
    }

    /// That a label knows no withdrawal period.
    NoWithdrawal {
        /// It knows none.
        NoneByLabel = "none_by_label",
    }

    /// Whose text a source is.
    SourceKind {
        /// The authority of its country: a summary of product characteristics, a package leaflet, an accepted label, a law; or a
        /// faithful copy.
        Authority = "authority",
        /// The same of a body of the European Union.
        Union = "union",
        /// Associations, shops, makers, magazines.
        Trade = "trade",
        /// Studies, universities, bee institutes.
        Research = "research",
        /// Nothing was read: a note from memory.
        Memory = "memory",
    }

    /// Whether what was placed has to be taken out.
    RemovalNeed {
        /// It must come out.
        Needed = "needed",
        /// It is used up in the hive, and may stay.
        NotNeeded = "not_needed",
        /// One dose at one moment: nothing stays in the hive.
        NothingStays = "nothing_stays",
    }
}
