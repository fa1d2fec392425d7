//! The rows of the register.

use crate::basics::sourced::Authority;
use serde::Serialize;

use crate::basics::calendar::{Day, Instant, Moment, TimeOfDay};
use crate::basics::confidence::Confidence;
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    ApiaryName, ColonyName, Jurisdiction, LeafletId, LotName, MediaType, MedicineName, Method, Person,
    PrescriptionName, Unit,
};
use crate::facts::holding::{Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::{Kind, Supplier};
use crate::journal::seal::Hash;

/// An archive that entries of the register's time were moved into.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ArchivedPart {
    /// The entry that tells of it.
    pub written: Written,
    /// By the end of this day nothing of it had to be kept any more.
    pub through: Day,
    /// How many entries of the time of this register went into it.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub entries: u64,
    /// The SHA-256 hash of the archive file.
    pub file: Hash,
}

/// Who wrote an entry down and when, and the day it speaks of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Written {
    /// The entry.
    pub entry: EntryId,
    /// Its place in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub place: u64,
    /// The day on which it happened.
    pub on: Day,
    /// The time of day, if it was noted.
    pub at: Option<TimeOfDay>,
    /// Who wrote it down.
    pub recorded_by: Person,
    /// When it was written down.
    pub recorded_at: Instant,
    /// When it was first written down, before any correction.
    pub first_recorded_at: Instant,
    /// How many days after it happened it was first written down, at the least: 0 on the day itself. Counted with the earliest
    /// civil date anywhere on Earth at that instant, so that nobody is called late who was not.
    #[cfg_attr(feature = "openapi", schema(maximum = 200_000))]
    pub days_late: u32,
    /// The entry that this one corrects.
    pub corrects: Option<EntryId>,
}

impl Written {
    pub(super) fn of(holding: &Holding, record: &Record) -> Written {
        let first = holding.entry(holding.original(record.id));
        let first_recorded_at = first.map_or(record.recorded_at, |first| first.recorded_at);
        let late = first_recorded_at.earliest_civil_date().days_since(record.on);
        Written {
            entry: record.id,
            place: record.seq,
            on: record.on,
            at: record.at,
            recorded_by: record.recorded_by.clone(),
            recorded_at: record.recorded_at,
            first_recorded_at,
            days_late: u32::try_from(late).unwrap_or(0),
            corrects: record.correction.as_ref().map(|correction| correction.of),
        }
    }
}

/// Who keeps the holding.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeeperPart {
    /// The entry that says so.
    pub entry: EntryId,
    /// From this day on.
    pub since: Day,
    /// The keeper.
    pub keeper: Person,
    /// Postal address.
    pub address: Option<String>,
    /// The registration number.
    pub registration: Option<String>,
    /// Whose law holds.
    pub jurisdiction: Jurisdiction,
}

/// A medicine as the keeper described it, and what its leaflet adds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MedicinePart {
    /// The keeper's short name for it.
    pub medicine: MedicineName,
    /// The name on the pack; absent for a medicine that the record does not describe.
    pub pack_name: Option<String>,
    /// The authorisation number on the pack.
    pub authorisation: Option<String>,
    /// What it is counted in.
    pub unit: Option<Unit>,
    /// The leaflet it points to.
    pub leaflet: Option<LeafletId>,
    /// Whether that leaflet is known for the holding's jurisdiction on the day.
    pub leaflet_known: bool,
    /// The active substances, if the leaflet is known.
    pub actives: Vec<String>,
    /// The strength in words, if the leaflet is known.
    pub strength: Option<String>,
    /// The withdrawal period in days that the keeper declared for it.
    pub withdrawal_declared: Option<u16>,
}

/// A document kept with a lot or a prescription.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DocumentPart {
    /// The entry that attached it.
    pub entry: EntryId,
    /// The hash of its content.
    pub content: Hash,
    /// What it is.
    pub media_type: MediaType,
    /// How long it is, in bytes.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10_000_000))]
    pub bytes: u32,
    /// The name of the file it came in.
    pub file_name: Option<String>,
}

/// One batch of a medicine, as it was acquired.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AcquisitionRow {
    /// When, and who wrote it down.
    pub written: Written,
    /// Whether it was acquired before the time of the register, and stands here because it was used in it.
    pub earlier: bool,
    /// The keeper's short name for the lot.
    pub lot: LotName,
    /// The medicine.
    pub medicine: MedicinePart,
    /// The batch number as printed.
    pub batch: Option<String>,
    /// The expiry date as printed.
    pub expiry: Option<Day>,
    /// How much.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub quantity: Quantity,
    /// Who supplied it.
    pub supplier: Option<Supplier>,
    /// What proves the purchase, in words.
    pub proof: Option<String>,
    /// The documents that prove it.
    pub documents: Vec<DocumentPart>,
}

/// A prescription.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PrescriptionRow {
    /// When, and who wrote it down.
    pub written: Written,
    /// Whether it is older than the time of the register, and stands here because it was used in it.
    pub earlier: bool,
    /// Its number and the vet.
    pub prescription: PrescriptionPart,
    /// The medicine.
    pub medicine: MedicinePart,
    /// The withdrawal period that it states, in days.
    pub withdrawal_days: Option<u16>,
    /// Copies of it.
    pub documents: Vec<DocumentPart>,
}

/// A prescription, by what identifies it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PrescriptionPart {
    /// Its number.
    pub number: PrescriptionName,
    /// The vet.
    pub vet: Option<Person>,
    /// How the vet is reached.
    pub contact: Option<String>,
}

/// A medicine given, as one entry records it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AdministrationRow {
    /// When, and who wrote it down.
    pub written: Written,
    /// Whether it was given before the time of the register, and stands here because it was in, or a period of it ran, in
    /// that time. It is not in the totals.
    pub earlier: bool,
    /// The medicine.
    pub medicine: MedicinePart,
    /// What was given, lot by lot.
    pub given: Vec<GivenPart>,
    /// How much in all.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub total: Quantity,
    /// How it was given.
    pub method: Option<Method>,
    /// Whether its leaflet knows one way of giving it only, so that the way needs no telling.
    pub one_way: bool,
    /// Which dose of its course it is, counted from 1.
    pub dose: u8,
    /// The first dose of its course; the entry itself for a first dose.
    pub first_dose: EntryId,
    /// What became of it, colonies of one fate together.
    pub courses: Vec<CoursePart>,
    /// The withdrawal period that this entry states, in days, 0 included.
    pub withdrawal_stated: Option<u16>,
    /// Who gave it.
    pub given_by: Option<Person>,
    /// The vet, if a vet gave it.
    pub vet: Option<Person>,
    /// What it was given against.
    pub against: Option<String>,
    /// The licence or certificate of who gave it.
    pub certificate: Option<String>,
    /// The prescription it was given under.
    pub prescription: Option<PrescriptionPart>,
}

/// What was given from one lot.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GivenPart {
    /// The lot.
    pub lot: LotName,
    /// Its batch number.
    pub batch: Option<String>,
    /// Its expiry date.
    pub expiry: Option<Day>,
    /// The withdrawal period in days that was read on the leaflet of this lot, if anybody read it.
    pub withdrawal_read: Option<u16>,
    /// How much each colony got.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub each: Quantity,
    /// Which colonies.
    pub colonies: Vec<ColonyName>,
    /// How much that is in all.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub total: Quantity,
}

/// What became of a course in some colonies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CoursePart {
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// The entry by which the course came to them from another colony, if they were not given it themselves.
    pub came_by: Option<EntryId>,
    /// The day on which it came to them, if it did.
    pub came_on: Option<Day>,
    /// Where they stood on the day of this dose, or when the course came to them.
    pub apiary: Option<ApiaryName>,
    /// Where they stood afterwards, until the withdrawal period was over: each move.
    pub later_apiaries: Vec<ApiaryStay>,
    /// The day of the first dose.
    pub first: Day,
    /// The day of the last dose, or on which the last of it came out; absent while it is in or that is not known.
    pub last: Option<Day>,
    /// The time of day of that last dose or removal, if it was noted of all of them.
    pub last_at: Option<TimeOfDay>,
    /// Whether it is still in.
    pub still_in: bool,
    /// While it is in: the first day on which it may come out, by the longest of the least stays that anybody states.
    pub may_come_out_from: Option<Day>,
    /// While it is in: the last day on which it may be, by the longest stay that anybody states.
    pub must_be_out_by: Option<Day>,
    /// Since when it is not known whether it is in: a split or a uniting did not say, or it may be used up by then.
    pub not_known_since: Option<Day>,
    /// How long the treatment took, in days: from placing to removal, or from the first dose to the last, both counted.
    #[cfg_attr(feature = "openapi", schema(maximum = 200_000))]
    pub duration_days: Option<u32>,
    /// The withdrawal period for honey; absent where nobody has stated it.
    pub withdrawal: Option<WithdrawalPart>,
    /// Days between removal and supers that must pass besides, 0 included; absent where nobody has stated them, which frees
    /// nothing. 0 as well where the withdrawal period that a person stated covers them.
    pub wait_days: Option<u16>,
    /// The last day that the later of both blocks, at the least: a period that is not known is not in it. Absent for zero
    /// days, and while it is in.
    pub last_blocked_day: Option<Day>,
    /// The first day free of both; absent while it is in, or where a period is not known or not documented.
    pub first_free_day: Option<Day>,
    /// From when it is free of both if full days of 24 hours are counted, where that was asked for, the time of day was noted
    /// and a first free day is known. The days above are always civil days.
    pub free_at: Option<Moment>,
}

/// An apiary to which colonies were moved.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryStay {
    /// From this day on.
    pub from: Day,
    /// The apiary.
    pub apiary: ApiaryName,
}

/// A withdrawal period and who said it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WithdrawalPart {
    /// Days, 0 included.
    pub days: u16,
    /// Who said it.
    pub said_by: SaidBy,
    /// The entry in which it was said; absent for the built-in leaflet.
    pub entry: Option<EntryId>,
    /// How well it is established. Only a document can carry a first free day.
    pub confidence: Confidence,
}

/// The origin of a value, highest authority first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum SaidBy {
    /// A vet's prescription.
    Prescription,
    /// The keeper's reading of the lot's leaflet.
    LeafletReading,
    /// The keeper's reading of the pack, recorded with the treatment.
    Pack,
    /// The built-in leaflet: nobody wrote it into the record.
    Leaflet,
    /// Terms declared by the keeper for a medicine.
    Declared,
}

impl SaidBy {
    /// Who said it, and the entry in which it was said.
    #[must_use]
    pub fn of(authority: Authority) -> (SaidBy, Option<EntryId>) {
        match authority {
            Authority::Prescription(entry) => (SaidBy::Prescription, Some(entry)),
            Authority::Reading(entry) => (SaidBy::LeafletReading, Some(entry)),
            Authority::Pack(entry) => (SaidBy::Pack, Some(entry)),
            Authority::Declared(entry) => (SaidBy::Declared, Some(entry)),
            Authority::Leaflet(_) => (SaidBy::Leaflet, None),
        }
    }
}

/// What was placed and comes out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RemovalRow {
    /// When, and who wrote it down.
    pub written: Written,
    /// The medicine.
    pub medicine: MedicinePart,
    /// The first dose of the course that came out.
    pub first_dose: EntryId,
    /// The day of that dose.
    pub placed: Option<Day>,
    /// From which colonies.
    pub colonies: Vec<ColonyName>,
    /// How many pieces are known to be still inside each.
    pub left_inside: u8,
    /// How and where what came out was disposed of.
    pub how_and_where: Option<String>,
}

/// Medicine that left the stock without being given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalRow {
    /// When, and who wrote it down.
    pub written: Written,
    /// The lot.
    pub lot: LotName,
    /// The medicine.
    pub medicine: MedicinePart,
    /// Its batch number.
    pub batch: Option<String>,
    /// How much.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub quantity: Quantity,
    /// How and where.
    pub how_and_where: String,
}

/// An entry that a row names, and where it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NamedEntry {
    /// The entry.
    pub entry: EntryId,
    /// Its place in the journal, counted from 1.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub place: u64,
}

/// An entry that was corrected or struck out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CorrectionRow {
    /// The entry that corrects: who wrote it and when.
    pub written: Written,
    /// The entry that was wrong.
    pub of: EntryId,
    /// Its place in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub of_place: u64,
    /// The kind of the entry that was wrong.
    pub kind: Kind,
    /// Whether it was struck out as a whole.
    pub struck_out: bool,
    /// Why.
    pub reason: String,
    /// What was changed: the struck value and the new one.
    pub changes: Vec<Change>,
}

/// A value that was changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Change {
    /// The field, such as `expiry` or `given/0/each`.
    pub field: String,
    /// The struck value; absent if there was none.
    pub was: Option<String>,
    /// The new value; absent if there is none any more.
    pub now: Option<String>,
}

/// What went in and out of a lot in the time of the register.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotTotal {
    /// The lot.
    pub lot: LotName,
    /// The medicine, by the keeper's name.
    pub medicine: MedicineName,
    /// What it is counted in.
    pub unit: Option<Unit>,
    /// How much was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub acquired: Quantity,
    /// How much was given.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub given: Quantity,
    /// How much was disposed of.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub disposed: Quantity,
}
