//! The kinds of entry and their bodies.
//!
//! A body is read strictly: an unknown field, a missing one or a wrong type is an error with a JSON pointer. Optional
//! fields that are absent are *not known*; they are never filled in with a default that could free a hive.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    Access, ApiaryName, Brood, ColonyName, CountMethod, FlowStage, Ground, HarvestLotName, Jurisdiction,
    LeafletId, LotName, MediaType, MedicineName, MedicinesInside, Method, Person, Power, PrescriptionName,
    StripsAtSplit, StripsAtUniting, SuperPurpose, TemperatureStage, Unit,
};
use crate::journal::entry::EntryId;
use crate::journal::places::Places;
use crate::journal::seal::Hash;

pub use super::body_types::{DayTemperature, Given, MonthNormal, StatedTerms, Supplier};
pub use super::confirmed::Confirmed;
pub use super::read::BodyError;
use super::read::{check_named, read_body};

/// What entries of one kind say.
pub trait Body: Sized {
    /// What this event says, if it is of that kind.
    fn of(event: &Event) -> Option<&Self>;
}

macro_rules! kinds {
    ($($(#[$doc:meta])+ $kind:ident = $text:literal { $($field:tt)* })+) => {
        /// The kind of an entry.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(rename_all = "snake_case"))]
        pub enum Kind {
            $($(#[$doc])+ #[serde(rename = $text)] $kind,)+
        }

        impl Kind {
            /// Every kind, in the order of this file.
            pub const ALL: &[Kind] = &[$(Kind::$kind),+];

            /// The kind as it is written in the journal.
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(Kind::$kind => $text,)+ }
            }

            /// The kind that is written so.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Kind> {
                Kind::ALL.iter().copied().find(|kind| kind.as_str() == word)
            }
        }

        /// What an entry says happened. To copy it costs nothing.
        #[derive(Debug, Clone, PartialEq, Eq)]
        pub enum Event {
            $($(#[$doc])+ $kind(Arc<$kind>),)+
            /// Something of this kind, as an [`Archived`] entry says: what happened stands in an archive file and not here.
            InArchive(Kind),
        }

        $(impl From<$kind> for Event {
            fn from(body: $kind) -> Event {
                Event::$kind(Arc::new(body))
            }
        })+

        $(impl Body for $kind {
            fn of(event: &Event) -> Option<&Self> {
                if let Event::$kind(body) = event { Some(body) } else { None }
            }
        })+

        impl Event {
            /// The kind of this event.
            #[must_use]
            pub const fn kind(&self) -> Kind {
                match self { $(Event::$kind(_) => Kind::$kind,)+ Event::InArchive(kind) => *kind }
            }

            /// Reads the body of an entry of this kind.
            ///
            /// # Errors
            /// A body with a missing, unknown or wrong field; the error points at it.
            pub fn read(kind: Kind, body: &str) -> Result<Event, BodyError> {
                let event = match kind { $(Kind::$kind => read_body::<$kind>(body).map(Event::from),)+ }?;
                // Only a list can stand where an object with named fields belongs.
                if body.contains('[') {
                    check_named(body, &event.to_body())?;
                }
                Ok(event)
            }

            /// The body as it is kept: one line of JSON, fields in the order of this file, absent ones left out; empty if
            /// it is in an archive.
            #[must_use]
            pub fn to_body(&self) -> String {
                let text = match self {
                    $(Event::$kind(body) => serde_json::to_string(&**body),)+
                    Event::InArchive(_) => return String::new(),
                };
                // Bodies hold text, numbers and lists only: writing one to a string cannot fail.
                text.unwrap_or_default()
            }
        }

        $(
            $(#[$doc])+
            #[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
            #[serde(deny_unknown_fields)]
            #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
            pub struct $kind { $($field)* }
        )+
    };
}

kinds! {
    /// Who keeps the holding, and whose rules hold there.
    HoldingDetails = "holding_details" {
        /// The keeper.
        pub keeper: Person,
        /// Postal address.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub address: Option<String>,
        /// Which leaflets and which law hold.
        pub jurisdiction: Jurisdiction,
        /// The number under which the keeper or the holding is registered, where the law gives one.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub registration: Option<String>,
    }

    /// An apiary.
    ApiaryDetails = "apiary_details" {
        /// Its name.
        pub apiary: ApiaryName,
        /// Where it is, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub place: Option<String>,
    }

    /// Power, access and ground at an apiary, from this day until the next entry that states the same, or `until`.
    SiteConditions = "site_conditions" {
        /// The apiary.
        pub apiary: ApiaryName,
        /// Electric power there.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub power: Option<Power>,
        /// How it can be reached.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub access: Option<Access>,
        /// The ground at the stands.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub ground: Option<Ground>,
        /// The last day on which this holds, if known.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub until: Option<Day>,
    }

    /// A nectar flow at an apiary, expected or seen.
    NectarFlow = "nectar_flow" {
        /// The apiary.
        pub apiary: ApiaryName,
        /// What is in flower, such as lime or heather.
        pub forage: String,
        /// Expected or seen.
        pub stage: FlowStage,
        /// First day of the flow; of an expected one, in a usual year.
        pub from: Day,
        /// First day of an expected flow in an early year.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub from_early: Option<Day>,
        /// First day of an expected flow in a late year.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub from_late: Option<Day>,
        /// Last day of the flow, if known.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub to: Option<Day>,
    }

    /// Outside temperatures at an apiary, day by day, as forecast or as measured.
    Temperature = "temperature" {
        /// The apiary.
        pub apiary: ApiaryName,
        /// Forecast or measured.
        pub stage: TemperatureStage,
        /// The days, each once. What is left out is not known.
        #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 400))]
        pub days: Vec<DayTemperature>,
        /// Where they come from, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub origin: Option<String>,
    }

    /// What temperatures an apiary has in usual years, month by month. Days without forecast are expected to be so.
    TemperatureNormals = "temperature_normals" {
        /// The apiary.
        pub apiary: ApiaryName,
        /// The months, each once.
        #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 12))]
        pub months: Vec<MonthNormal>,
        /// Where they come from, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub origin: Option<String>,
    }

    /// A colony comes into the record: bought, taken as a swarm, or kept before the record began.
    ColonyEstablished = "colony_established" {
        /// The colony. The name is never used again.
        pub colony: ColonyName,
        /// Where it stands.
        pub apiary: ApiaryName,
        /// The mark on the hive.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub hive_mark: Option<String>,
        /// Where it came from, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub origin: Option<String>,
        /// Whether it came with medicine in it or a period still running.
        pub medicines: MedicinesInside,
    }

    /// A colony is moved to another apiary.
    ColonyMoved = "colony_moved" {
        /// The colony.
        pub colony: ColonyName,
        /// Where it stands from this day on.
        pub to: ApiaryName,
    }

    /// A new colony is made from part of an old one. It carries the old one's periods and treated comb.
    ColonySplit = "colony_split" {
        /// The old colony.
        pub colony: ColonyName,
        /// The new colony. The name is never used again.
        pub into: ColonyName,
        /// Where the new colony stands; where the old one does, if not said.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub to: Option<ApiaryName>,
        /// The mark on the new hive.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub hive_mark: Option<String>,
        /// Where the strips of an open course went. Not said means not known.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub strips: Option<StripsAtSplit>,
    }

    /// A colony is united into another and ends. The other carries its periods and treated comb.
    ColonyUnited = "colony_united" {
        /// The colony that ends.
        pub colony: ColonyName,
        /// The colony that takes it in.
        pub into: ColonyName,
        /// What became of the strips of an open course. Not said means not known.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub strips: Option<StripsAtUniting>,
    }

    /// A colony ends: it died, was sold or was given away.
    ColonyEnded = "colony_ended" {
        /// The colony.
        pub colony: ColonyName,
        /// Why, in words.
        pub cause: String,
    }

    /// Supers are put on.
    SupersOn = "supers_on" {
        /// On which colonies.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
        /// How many on each.
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 255))]
        pub supers: u8,
        /// What they are for.
        pub purpose: SuperPurpose,
    }

    /// Supers are taken off.
    SupersOff = "supers_off" {
        /// From which colonies.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
        /// How many stay on each.
        #[cfg_attr(feature = "openapi", schema(maximum = 255))]
        pub left_on: u8,
    }

    /// A hive is opened and looked through.
    Inspection = "inspection" {
        /// The colony.
        pub colony: ColonyName,
        /// The brood seen.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub brood: Option<Brood>,
        /// Seams of bees.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 255))]
        pub seams: Option<u8>,
        /// How many bees, as estimated.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 200_000))]
        pub bees: Option<u32>,
        /// Brood boxes.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 255))]
        pub brood_boxes: Option<u8>,
        /// Litres that the brood boxes hold.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 1000))]
        pub hive_litres: Option<u16>,
        /// Whether a feeder is on.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub feeder: Option<bool>,
        /// Anything else.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub note: Option<String>,
    }

    /// Mites are counted in a colony, or on its board.
    MiteCount = "mite_count" {
        /// The colony.
        pub colony: ColonyName,
        /// How they were counted. Counts by different methods are never compared.
        pub method: CountMethod,
        /// How many mites; in opened brood cells, how many infested cells.
        #[cfg_attr(feature = "openapi", schema(maximum = 100_000))]
        pub mites: u32,
        /// On a board: over how many days they fell.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 400))]
        pub days: Option<u16>,
        /// In a sample: how many bees were in it.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 100_000))]
        pub bees: Option<u32>,
        /// In brood: how many cells were opened.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 100_000))]
        pub cells: Option<u32>,
        /// Anything else.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub note: Option<String>,
    }

    /// A medicine as the keeper knows it: pack name and authorisation number, and where its directions are found.
    MedicineDescribed = "medicine_described" {
        /// The keeper's short name for it.
        pub medicine: MedicineName,
        /// The name on the pack.
        pub pack_name: String,
        /// The authorisation number on the pack.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub authorisation: Option<String>,
        /// What it is counted in.
        pub unit: Unit,
        /// The leaflet that holds its directions, if one is built in.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub leaflet: Option<LeafletId>,
        /// The terms as the keeper declares them, for a medicine without leaflet.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub terms: Option<StatedTerms>,
    }

    /// One batch of a medicine is acquired.
    LotAcquired = "lot_acquired" {
        /// The keeper's short name for the lot.
        pub lot: LotName,
        /// The medicine.
        pub medicine: MedicineName,
        /// The batch number as printed.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub batch: Option<String>,
        /// The expiry date as printed.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub expiry: Option<Day>,
        /// How much, in the unit of the medicine.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
        pub quantity: Quantity,
        /// The unit that the amount was counted in. If it is given, it must be the unit of the medicine.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub unit: Option<Unit>,
        /// Who supplied it.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub supplier: Option<Supplier>,
        /// What proves the purchase and where it is kept, such as an invoice number.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub proof: Option<String>,
        /// The revision of the label on the pack, as printed.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub label_revision: Option<String>,
    }

    /// The first pack of a lot is opened: from this day its life in use is counted.
    LotOpened = "lot_opened" {
        /// The lot.
        pub lot: LotName,
    }

    /// A document is kept with a lot or a prescription: what proves the purchase, or a copy of the prescription. Its content
    /// is kept beside the journal under its hash.
    DocumentAttached = "document_attached" {
        /// The SHA-256 hash of the content.
        pub content: Hash,
        /// What the content is, as the content itself shows.
        pub media_type: MediaType,
        /// How long the content is, in bytes; 10 MB at most.
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10_000_000))]
        pub bytes: u32,
        /// The name of the file it came in.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub file_name: Option<String>,
        /// The lot whose purchase it proves.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub lot: Option<LotName>,
        /// The prescription that it is a copy of.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub prescription: Option<PrescriptionName>,
    }

    /// What the keeper read on the leaflet of one lot. It goes before the built-in leaflet.
    LeafletReading = "leaflet_reading" {
        /// The lot whose leaflet was read.
        pub lot: LotName,
        /// The revision or date printed on the leaflet.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub revision: Option<String>,
        /// What it says.
        pub terms: StatedTerms,
        /// What else of the built-in leaflet was found to be the same on it.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        pub confirms: Vec<Confirmed>,
    }

    /// A vet's prescription. Its terms go before every leaflet, for the administrations that name it.
    Prescription = "prescription" {
        /// Its number.
        pub prescription: PrescriptionName,
        /// The vet.
        pub vet: Person,
        /// How the vet is reached.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub contact: Option<String>,
        /// The medicine prescribed.
        pub medicine: MedicineName,
        /// What it says.
        pub terms: StatedTerms,
    }

    /// A medicine is given: a dose, or strips placed. One entry may cover many colonies and several lots.
    Administration = "administration" {
        /// What was given, lot by lot.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub given: Vec<Given>,
        /// How, where the leaflet names several ways.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub method: Option<Method>,
        /// The first dose of the course that this dose goes on with.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub continues: Option<EntryId>,
        /// The withdrawal period for honey as read on the pack, in days, 0 included.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 400))]
        pub withdrawal_days: Option<u16>,
        /// Who gave it.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub given_by: Option<Person>,
        /// The vet, if a vet gave it. The keeper's record then needs the vet's name.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub vet: Option<Person>,
        /// What it was given against: the diagnosis or the reason, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub against: Option<String>,
        /// The number of the licence or certificate of who gave it, where the law asks for one.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub certificate: Option<String>,
        /// The prescription it was given under.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub prescription: Option<PrescriptionName>,
        /// Says that the count of the lot was corrected, so that more may be given than the record says is left.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        pub count_corrected: bool,
    }

    /// What was placed is taken out.
    Removal = "removal" {
        /// The first dose of the course that comes out.
        pub administration: EntryId,
        /// From which colonies.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
        /// How many pieces are known to be still inside each. The course stays open until this is 0.
        #[serde(default, skip_serializing_if = "is_zero")]
        #[cfg_attr(feature = "openapi", schema(maximum = 255))]
        pub left_inside: u8,
        /// How and where what came out was disposed of. It was given once and is no longer stock.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub how_and_where: Option<String>,
    }

    /// Medicine leaves the stock without being given.
    Disposal = "disposal" {
        /// The lot.
        pub lot: LotName,
        /// How much.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
        pub quantity: Quantity,
        /// The unit that the amount was counted in. If it is given, it must be the unit of the medicine.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub unit: Option<Unit>,
        /// How and where.
        pub how_and_where: String,
        /// Says that the count of the lot was corrected.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        pub count_corrected: bool,
    }

    /// Honey is taken.
    Harvest = "harvest" {
        /// The harvest lot it goes into.
        pub harvest_lot: HarvestLotName,
        /// From which colonies.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
        /// How much, in kilograms.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000, example = 2))]
        pub kilograms: Option<Quantity>,
    }

    /// The entry named in `corrects` is struck out: it did not happen. Both stay visible.
    StrikeOut = "strike_out" {}

    /// The bodies of entries that had to be kept no longer were moved into an archive file, for good. Written by the archive
    /// step alone; what else these entries say stays in the journal.
    Archived = "archived" {
        /// By the end of this day nothing of it had to be kept any more.
        pub through: Day,
        /// The places of the entries in the journal, like `12-18,25`.
        #[cfg_attr(feature = "openapi", schema(value_type = String, example = "12-18,25"))]
        pub places: Places,
        /// How many entries.
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
        pub entries: u64,
        /// The SHA-256 hash over what stays of them, so that no change of it goes unseen.
        pub digest: Hash,
        /// The SHA-256 hash of the archive file.
        pub file: Hash,
        /// How many contents of documents went with them.
        #[serde(default, skip_serializing_if = "is_none_of_them")]
        #[cfg_attr(feature = "openapi", schema(maximum = 9_007_199_254_740_991i64))]
        pub contents: u64,
    }
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde passes a reference")]
fn is_none_of_them(count: &u64) -> bool {
    *count == 0
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde passes a reference")]
fn is_zero(count: &u8) -> bool {
    *count == 0
}
