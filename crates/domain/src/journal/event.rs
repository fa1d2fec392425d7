//! The kinds of entry and their bodies.
//!
//! Bodies are read strictly: an unknown field, a missing one or a wrong type is an error with a JSON pointer. An absent
//! optional field means *not known*. It is never filled in with a default that could free a hive.

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
use super::form::{Field, field};
pub use super::read::BodyError;
use super::read::{check_named, read_body};

/// The body of entries of one kind.
pub trait Body: Sized {
    /// The body of this event, if it is of that kind.
    fn of(event: &Event) -> Option<&Self>;
}

macro_rules! kinds {
    ($(
        $(#[$doc:meta])+
        $kind:ident = $text:literal {
            $($(#[$($attribute:tt)+])* pub $field:ident : $type:ty $([$origin:ident])? ,)*
        }
    )+) => {
        /// The kind of an entry.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(rename_all = "snake_case"))]
        pub enum Kind {
            $($(#[$doc])+ #[serde(rename = $text)] $kind,)+
        }

        impl Kind {
            /// Every kind, in the order of this file.
            pub const ALL: &[Kind] = &[$(Kind::$kind),+];

            /// The kind as written in the journal.
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(Kind::$kind => $text,)+ }
            }

            /// Its form.
            #[must_use]
            pub const fn fields(self) -> &'static [Field] {
                match self { $(Kind::$kind => $kind::FIELDS,)+ }
            }

            /// The kind with this name.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Kind> {
                Kind::ALL.iter().copied().find(|kind| kind.as_str() == word)
            }
        }

        #[cfg(feature = "openapi")]
        impl Kind {
            /// The name of the schema of its bodies.
            #[must_use]
            pub fn schema_name(self) -> String {
                match self { $(Kind::$kind => <$kind as utoipa::ToSchema>::name().into_owned(),)+ }
            }

            /// Adds the schema of its bodies, and those to which it refers.
            pub fn add_schemas(self, schemas: &mut Vec<(String, utoipa::openapi::RefOr<utoipa::openapi::Schema>)>) {
                let own = match self { $(Kind::$kind => {
                    <$kind as utoipa::ToSchema>::schemas(schemas);
                    <$kind as utoipa::PartialSchema>::schema()
                })+ };
                schemas.push((self.schema_name(), own));
            }
        }

        /// What an entry says happened. Cheap to clone.
        #[derive(Debug, Clone, PartialEq, Eq)]
        pub enum Event {
            $($(#[$doc])+ $kind(Arc<$kind>),)+
            /// An event of this kind whose body is in an archive file, as an [`Archived`] entry says.
            InArchive(Kind),
        }

        $(impl $kind {
            /// Its fields, as a form.
            pub const FIELDS: &'static [Field] =
                &[$(field!($(#[$($attribute)+])* $field: $type $([$origin])?),)*];
        })+

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
            /// A field is missing, unknown or wrong; the error points at it.
            pub fn read(kind: Kind, body: &str) -> Result<Event, BodyError> {
                let event = match kind { $(Kind::$kind => read_body::<$kind>(body).map(Event::from),)+ }?;
                // Only a list can stand where an object with named fields belongs.
                if body.contains('[') {
                    check_named(body, &event.to_body())?;
                }
                Ok(event)
            }

            /// The body in canonical form: one line of JSON, fields in the order of this file, without absent ones. Empty if
            /// it is in an archive.
            #[must_use]
            pub fn to_body(&self) -> String {
                let text = match self {
                    $(Event::$kind(body) => serde_json::to_string(&**body),)+
                    Event::InArchive(_) => return String::new(),
                };
                // Text, numbers and lists always serialize.
                text.unwrap_or_default()
            }
        }

        $(
            $(#[$doc])+
            #[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
            #[serde(deny_unknown_fields)]
            #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
            pub struct $kind {
                $($(#[$($attribute)+])* pub $field: $type,)*
            }
        )+
    };
}

kinds! {
    /// Who keeps the holding, and its jurisdiction.
    HoldingDetails = "holding_details" {
        /// The keeper.
        pub keeper: Person,
        /// Postal address.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub address: Option<String>,
        /// Selects the leaflets and the law that apply.
        pub jurisdiction: Jurisdiction,
        /// The registration number of the keeper or the holding, where the law gives one.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub registration: Option<String>,
    }

    /// An apiary.
    ApiaryDetails = "apiary_details" {
        /// Its name.
        pub apiary: ApiaryName [New],
        /// Its location, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub place: Option<String>,
    }

    /// Power, access and ground at an apiary, from this day until `until` or the next entry that states the same.
    SiteConditions = "site_conditions" {
        /// The apiary.
        pub apiary: ApiaryName,
        /// Electric power, if stated.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub power: Option<Power>,
        /// How it can be reached, if stated.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub access: Option<Access>,
        /// The ground at the stands, if stated.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub ground: Option<Ground>,
        /// The last day of these conditions, if known.
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
        /// First day of the flow; if expected, in a usual year.
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

    /// Outside temperatures at an apiary by day, forecast or measured.
    Temperature = "temperature" {
        /// The apiary.
        pub apiary: ApiaryName,
        /// Forecast or measured.
        pub stage: TemperatureStage,
        /// The days, each once. Days left out are not known.
        #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 400))]
        pub days: Vec<DayTemperature>,
        /// Their source, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub origin: Option<String>,
    }

    /// Usual temperatures at an apiary by month. They are expected on days without a forecast.
    TemperatureNormals = "temperature_normals" {
        /// The apiary.
        pub apiary: ApiaryName,
        /// The months, each once.
        #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 12))]
        pub months: Vec<MonthNormal>,
        /// Their source, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub origin: Option<String>,
    }

    /// A colony comes into the record: bought, taken as a swarm, or kept before the record began.
    ColonyEstablished = "colony_established" {
        /// The colony. Its name is never reused.
        pub colony: ColonyName [New],
        /// Where it stands.
        pub apiary: ApiaryName,
        /// The mark on the hive.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub hive_mark: Option<String>,
        /// Where it came from, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub origin: Option<String>,
        /// Whether it came with medicine inside or a period still running.
        pub medicines: MedicinesInside,
    }

    /// A colony is moved to another apiary.
    ColonyMoved = "colony_moved" {
        /// The colony.
        pub colony: ColonyName,
        /// Its apiary from this day on.
        pub to: ApiaryName,
    }

    /// A new colony is made from part of an old one. It carries the old one's periods and treated comb.
    ColonySplit = "colony_split" {
        /// The old colony.
        pub colony: ColonyName,
        /// The new colony. Its name is never reused.
        pub into: ColonyName [New],
        /// The apiary of the new colony; if absent, that of the old one.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub to: Option<ApiaryName>,
        /// The mark on the new hive.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub hive_mark: Option<String>,
        /// Where the strips of an open course went. Absent means not known.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub strips: Option<StripsAtSplit>,
    }

    /// A colony is united into another and ends. The other carries its periods and treated comb.
    ColonyUnited = "colony_united" {
        /// The colony that ends.
        pub colony: ColonyName,
        /// The colony that receives it.
        pub into: ColonyName,
        /// What became of the strips of an open course. Absent means not known.
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
        /// The colonies.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
        /// Supers put on each.
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 255))]
        pub supers: u8,
        /// Their purpose.
        pub purpose: SuperPurpose,
    }

    /// Supers are taken off.
    SupersOff = "supers_off" {
        /// The colonies.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
        /// Supers left on each.
        #[cfg_attr(feature = "openapi", schema(maximum = 255))]
        pub left_on: u8,
    }

    /// A hive is inspected.
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
        /// Estimated number of bees.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 200_000))]
        pub bees: Option<u32>,
        /// Brood boxes.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 255))]
        pub brood_boxes: Option<u8>,
        /// Volume of the brood boxes in litres.
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
        /// The counting method. Counts by different methods are never compared.
        pub method: CountMethod,
        /// Number of mites; for opened brood cells, of infested cells.
        #[cfg_attr(feature = "openapi", schema(maximum = 100_000))]
        pub mites: u32,
        /// On a board: days over which they fell.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 400))]
        pub days: Option<u16>,
        /// In a sample: number of bees in it.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 100_000))]
        pub bees: Option<u32>,
        /// In brood: number of cells opened.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 100_000))]
        pub cells: Option<u32>,
        /// Anything else.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub note: Option<String>,
    }

    /// A medicine as the keeper knows it: name and authorisation number on the pack, and the source of its directions.
    MedicineDescribed = "medicine_described" {
        /// The keeper's short name for it.
        pub medicine: MedicineName [New],
        /// The name on the pack.
        pub pack_name: String,
        /// The authorisation number on the pack.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub authorisation: Option<String>,
        /// The unit in which it is counted.
        pub unit: Unit,
        /// The built-in leaflet with its directions, if there is one.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub leaflet: Option<LeafletId>,
        /// Terms declared by the keeper, for a medicine without a leaflet.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub terms: Option<StatedTerms>,
    }

    /// One batch of a medicine is acquired.
    LotAcquired = "lot_acquired" {
        /// The keeper's short name for the lot.
        pub lot: LotName [New],
        /// The medicine.
        pub medicine: MedicineName,
        /// The batch number as printed.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub batch: Option<String>,
        /// The expiry date as printed.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub expiry: Option<Day> [Printed],
        /// Amount acquired, in the unit of the medicine.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
        pub quantity: Quantity,
        /// The unit of the amount. If stated, it must be the unit of the medicine.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub unit: Option<Unit>,
        /// Who supplied it.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub supplier: Option<Supplier>,
        /// The proof of purchase and where it is kept, such as an invoice number.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub proof: Option<String>,
        /// The label revision printed on the pack.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub label_revision: Option<String>,
    }

    /// One batch of a medicine that a vet gave from the vet's own stock. The keeper did not acquire it, and the vet kept the
    /// rest.
    VetLot = "vet_lot" {
        /// The keeper's short name for the lot.
        pub lot: LotName [New],
        /// The medicine.
        pub medicine: MedicineName,
        /// The vet.
        pub vet: Person,
        /// Contact details of the vet.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub contact: Option<String>,
        /// The batch number as printed.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub batch: Option<String>,
        /// The expiry date as printed.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub expiry: Option<Day> [Printed],
        /// The label revision printed on the pack.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub label_revision: Option<String>,
    }

    /// The first pack of a lot is opened: its life in use counts from this day.
    LotOpened = "lot_opened" {
        /// The lot.
        pub lot: LotName [InStock],
    }

    /// A document is attached to a lot or a prescription: a proof of purchase, a copy of the prescription, or what a vet
    /// handed over in writing. Its content is stored beside the journal under its hash.
    DocumentAttached = "document_attached" {
        /// The SHA-256 hash of the content.
        pub content: Hash,
        /// The type of the content, read from its bytes.
        pub media_type: MediaType,
        /// The length of the content in bytes, at most 10 MB.
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10_000_000))]
        pub bytes: u32,
        /// The name of the original file.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub file_name: Option<String>,
        /// The lot whose purchase it proves, or the vet's lot of which it tells.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub lot: Option<LotName>,
        /// The prescription of which it is a copy.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub prescription: Option<PrescriptionName>,
    }

    /// What the keeper read on the leaflet of one lot. It has precedence over the built-in leaflet.
    LeafletReading = "leaflet_reading" {
        /// The lot whose leaflet was read.
        pub lot: LotName [InStock],
        /// The revision or date printed on the leaflet.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub revision: Option<String>,
        /// The terms it states.
        pub terms: StatedTerms,
        /// Other values of the built-in leaflet that it states too.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        pub confirms: Vec<Confirmed>,
    }

    /// A vet's prescription. Its terms have precedence over every leaflet, for the administrations that name it.
    Prescription = "prescription" {
        /// Its number.
        pub prescription: PrescriptionName [New],
        /// The vet.
        pub vet: Person,
        /// Contact details of the vet.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub contact: Option<String>,
        /// The medicine prescribed.
        pub medicine: MedicineName,
        /// The terms it states.
        pub terms: StatedTerms,
    }

    /// A medicine is given: a dose, or strips placed. One entry may cover many colonies and several lots.
    Administration = "administration" {
        /// The amounts given, by lot.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub given: Vec<Given>,
        /// The method, if the leaflet names several.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub method: Option<Method>,
        /// The first dose of the course that this dose continues. Over HTTP also its number in the journal.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(value_type = Option<crate::journal::entry::WhichEntry>))]
        pub continues: Option<EntryId> [Inside],
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
        /// The diagnosis or reason, in words.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub against: Option<String>,
        /// The licence or certificate number of the person who gave it, where the law asks for one.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub certificate: Option<String>,
        /// The prescription under which it was given.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub prescription: Option<PrescriptionName>,
        /// States that the stock count was corrected, so that more may be given than the record says is left.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        pub count_corrected: bool,
    }

    /// Carriers are taken out.
    Removal = "removal" {
        /// The first dose of the course that is taken out. Over HTTP also its number in the journal.
        #[cfg_attr(feature = "openapi", schema(value_type = crate::journal::entry::WhichEntry))]
        pub administration: EntryId [Inside],
        /// The colonies.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
        /// Pieces known to be still inside each. The course stays open until this is 0.
        #[serde(default, skip_serializing_if = "is_zero")]
        #[cfg_attr(feature = "openapi", schema(maximum = 255))]
        pub left_inside: u8,
        /// How and where the removed carriers were disposed of. They were given once and are no longer stock.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub how_and_where: Option<String>,
    }

    /// Medicine leaves the stock without being given.
    Disposal = "disposal" {
        /// The lot.
        pub lot: LotName [InStock],
        /// Amount disposed of.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
        pub quantity: Quantity,
        /// The unit of the amount. If stated, it must be the unit of the medicine.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub unit: Option<Unit>,
        /// How and where it was disposed of.
        pub how_and_where: String,
        /// States that the stock count was corrected.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        pub count_corrected: bool,
    }

    /// Honey is harvested.
    Harvest = "harvest" {
        /// The harvest lot.
        pub harvest_lot: HarvestLotName [New],
        /// The colonies.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
        /// Amount in kilograms.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000, example = 2))]
        pub kilograms: Option<Quantity>,
    }

    /// The entry named in `corrects` did not happen. Both entries stay visible.
    StrikeOut = "strike_out" {}

    /// Bodies of entries that no longer had to be kept were moved into an archive file, for good. Only the archive step
    /// writes this entry. Everything else of those entries stays in the journal.
    Archived = "archived" {
        /// The day by whose end none of them had to be kept any more.
        pub through: Day,
        /// The places of the entries in the journal, such as `12-18,25`.
        #[cfg_attr(feature = "openapi", schema(value_type = String, pattern = "^[1-9][0-9]*(-[1-9][0-9]*)?(,[1-9][0-9]*(-[1-9][0-9]*)?)*$", example = "12-18,25"))]
        pub places: Places,
        /// Number of entries.
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
        pub entries: u64,
        /// The SHA-256 hash over what the journal keeps of them, so that any change to it is detected.
        pub digest: Hash,
        /// The SHA-256 hash of the archive file.
        pub file: Hash,
        /// Number of document contents moved with them.
        #[serde(default, skip_serializing_if = "is_none_of_them")]
        #[cfg_attr(feature = "openapi", schema(maximum = 9_007_199_254_740_991i64))]
        pub contents: u64,
        /// Where the keeper looked up the law on keeping them, if it is known here only second hand or from memory.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub law_checked: Option<String>,
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
