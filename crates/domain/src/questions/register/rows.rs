//! The rows of the register.

use crate::basics::placeholder::says_something;
use crate::basics::sourced::Authority;
use serde::Serialize;

use super::sent_before::SentBefore;

use crate::basics::calendar::{Day, Instant, Moment, TimeOfDay};
use crate::basics::confidence::Confidence;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    ApiaryName, ColonyName, Jurisdiction, LeafletId, LotName, MediaType, Method, Person, PrescriptionName,
    Unit,
};
use crate::facts::MedicineGiven;
use crate::facts::holding::{Holding, Record};
use crate::journal::copied::CopiedFrom;
use crate::journal::entry::EntryId;
use crate::journal::event::{Kind, Supplier};
use crate::journal::seal::Hash;

/// An archive with entries of the register's period.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ArchivedPart {
    /// The entry that records the archive step.
    pub written: Written,
    /// At the end of this day, none of its entries had to be kept any longer.
    pub through: Day,
    /// Number of its entries that belong to the register's period.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub entries: u64,
    /// The SHA-256 hash of the archive file.
    pub file: Hash,
}

/// Who recorded an entry and when, and the day of the event.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Written {
    /// The entry.
    pub entry: EntryId,
    /// Its position in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub seq: u64,
    /// The day of the event.
    pub on: Day,
    /// The time of day of the event, if recorded.
    pub at: Option<TimeOfDay>,
    /// The person who recorded it.
    pub recorded_by: Person,
    /// When it was recorded.
    pub recorded_at: Instant,
    /// When it was first recorded, before any correction.
    pub first_recorded_at: Instant,
    /// The record on paper from which it was copied. Absent if it was not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub copied_from: Option<CopiedFrom>,
    /// Days between the event and its first record, at least; 0 on the day itself. Counted with the earliest civil
    /// date anywhere on Earth at that instant, so that nobody is wrongly called late. If it was copied from paper, the day on
    /// which it was written there counts.
    #[cfg_attr(feature = "openapi", schema(maximum = 200_000))]
    pub days_late: u32,
    /// The entry that this one corrects, if any.
    pub corrects: Option<EntryId>,
    /// The first entry of its chain of corrections: itself, unless it corrects another.
    pub first_entry: EntryId,
}

impl Written {
    pub(super) fn of(holding: &Holding, record: &Record) -> Written {
        let first = holding.entry(holding.original(record.id));
        let first_recorded_at = first.map_or(record.recorded_at, |first| first.recorded_at);
        // "Copied from -" is copied from nothing.
        let copied = holding.copied_from(record).filter(|copied| says_something(&copied.what));
        let written =
            copied.map_or_else(|| first_recorded_at.earliest_civil_date(), |copied| copied.written_on);
        let late = written.days_since(record.on);
        Written {
            entry: record.id,
            seq: record.seq,
            on: record.on,
            at: record.at,
            recorded_by: record.recorded_by.clone(),
            recorded_at: record.recorded_at,
            first_recorded_at,
            copied_from: copied.cloned(),
            days_late: u32::try_from(late).unwrap_or(0),
            corrects: record.correction.as_ref().map(|correction| correction.of),
            first_entry: holding.original(record.id),
        }
    }
}

/// The keeper of the holding.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeeperPart {
    /// The entry that says so.
    pub entry: EntryId,
    /// The first day.
    pub since: Day,
    /// The keeper.
    pub keeper: Person,
    /// Postal address.
    pub address: Option<String>,
    /// Registration number.
    pub registration: Option<String>,
    /// The jurisdiction whose law applies.
    pub jurisdiction: Jurisdiction,
}

/// A medicine as the keeper described it, with what its leaflet adds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MedicinePart {
    /// The keeper's short name for it.
    #[serde(serialize_with = "Fact::or_null")]
    #[cfg_attr(feature = "openapi", schema(value_type = crate::basics::words::MedicineName))]
    pub medicine: MedicineGiven,
    /// The name on the pack. Absent if the record does not describe the medicine.
    pub pack_name: Option<String>,
    /// The authorisation number on the pack.
    pub authorisation: Option<String>,
    /// The unit of its quantities.
    pub unit: Option<Unit>,
    /// The leaflet named for it.
    pub leaflet: Option<LeafletId>,
    /// Whether that leaflet is known in the holding's jurisdiction on the day.
    pub leaflet_known: bool,
    /// The active substances, if the leaflet is known.
    pub actives: Vec<String>,
    /// The strength in words, if the leaflet is known.
    pub strength: Option<String>,
    /// The withdrawal period that the keeper declared for it, in days.
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
    /// Its media type.
    pub media_type: MediaType,
    /// Its size, in bytes.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10_000_000))]
    pub bytes: u32,
    /// The name of the attached file.
    pub file_name: Option<String>,
}

/// One batch of a medicine, as acquired.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AcquisitionRow {
    /// The record of it.
    pub written: Written,
    /// Whether it was acquired before the period and is listed because it was used in it.
    pub earlier: bool,
    /// The keeper's short name for the lot.
    pub lot: LotName,
    /// The medicine.
    pub medicine: MedicinePart,
    /// The batch number as printed.
    pub batch: Option<String>,
    /// The expiry date as printed.
    pub expiry: Option<Day>,
    /// The quantity acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub quantity: Quantity,
    /// The supplier.
    pub supplier: Option<Supplier>,
    /// The proof of purchase, in words.
    pub proof: Option<String>,
    /// The documents that prove the purchase.
    pub documents: Vec<DocumentPart>,
}

/// A prescription.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PrescriptionRow {
    /// The record of it.
    pub written: Written,
    /// Whether it is older than the period and is listed because it was used in it.
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

/// A prescription, by its number and vet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PrescriptionPart {
    /// Its number.
    pub number: PrescriptionName,
    /// The vet.
    pub vet: Option<Person>,
    /// How to reach the vet.
    pub contact: Option<String>,
}

/// A medicine given, as recorded by one entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AdministrationRow {
    /// The record of it.
    pub written: Written,
    /// Whether it was given before the period and is listed because it was in, or had a running period, during it.
    /// The totals leave it out.
    pub earlier: bool,
    /// The medicine.
    pub medicine: MedicinePart,
    /// The quantities given, lot by lot.
    pub given: Vec<GivenPart>,
    /// The total quantity.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub total: Quantity,
    /// The method.
    pub method: Option<Method>,
    /// Whether its leaflet has a single method, so that the method need not be stated.
    pub one_way: bool,
    /// Number of the dose in its course, counted from 1.
    pub dose: u8,
    /// The first dose of its course; this entry itself if it is the first.
    pub first_dose: EntryId,
    /// The outcome, grouped by colonies with the same outcome.
    pub courses: Vec<CoursePart>,
    /// The withdrawal period that this entry states, in days; may be 0.
    pub withdrawal_stated: Option<u16>,
    /// The person who gave it.
    pub given_by: Option<Person>,
    /// The vet, if a vet gave it: as this entry says, else the one whose lot it was.
    pub vet: Option<Person>,
    /// The diagnosis or reason, in words.
    pub against: Option<String>,
    /// The licence or certificate of the person who gave it.
    pub certificate: Option<String>,
    /// The prescription it was given under.
    pub prescription: Option<PrescriptionPart>,
    /// What a program may have been sent of it before.
    #[serde(skip)]
    pub sent_before: SentBefore,
}

/// The quantities given from one lot.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GivenPart {
    /// The lot.
    pub lot: LotName,
    /// Its batch number.
    pub batch: Option<String>,
    /// Its expiry date.
    pub expiry: Option<Day>,
    /// Whether it is of the vet's own stock: the keeper never acquired it.
    pub of_vet: bool,
    /// The withdrawal period read on the leaflet of this lot, in days, if any.
    pub withdrawal_read: Option<u16>,
    /// The quantity for each colony.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub each: Quantity,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// The total quantity.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub total: Quantity,
}

/// The outcome of a course in some colonies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CoursePart {
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// The entry that brought the course from another colony, if they were not given it themselves.
    pub came_by: Option<EntryId>,
    /// The day it came, in that case.
    pub came_on: Option<Day>,
    /// Their apiary on the day of this dose, or when the course came to them.
    pub apiary: Option<ApiaryName>,
    /// Later moves to other apiaries, until the withdrawal period was over.
    pub later_apiaries: Vec<ApiaryStay>,
    /// The day of the first dose.
    pub first: Day,
    /// The day of the last dose, or the day the last of it came out. Absent while it is in or if that is not known.
    pub last: Option<Day>,
    /// The time of day of that last dose or removal, if recorded for all of them.
    pub last_at: Option<TimeOfDay>,
    /// Whether it is still in.
    pub still_in: bool,
    /// While it is in: from when it may come out.
    pub may_come_out_from: Option<Day>,
    /// While it is in: the last day on which it may be, whatever the brood that nobody saw.
    pub must_be_out_by: Option<Day>,
    /// The day since which it is not known whether it is in: a split or uniting did not say, or it may be used up by
    /// then.
    pub not_known_since: Option<Day>,
    /// Length of the treatment, in days (inclusive): from placing to removal, or from the first dose to the last.
    #[cfg_attr(feature = "openapi", schema(maximum = 200_000))]
    pub duration_days: Option<u32>,
    /// The withdrawal period for honey. Absent if not stated.
    pub withdrawal: Option<WithdrawalPart>,
    /// Further days between removal and supers. 0 if none, or if a withdrawal period stated by a person covers them.
    /// Absent if not stated, which frees nothing.
    pub wait_days: Option<u16>,
    /// The last day that the later of both blocks, at least: an unknown period is left out. Absent for zero days, and
    /// while it is in.
    pub last_blocked_day: Option<Day>,
    /// The first day free of both. Absent while it is in, or if a period is not known or not documented.
    pub first_free_day: Option<Day>,
    /// The moment from which it is free of both, counting full days of 24 hours. Present if that was requested, the
    /// time of day was recorded and a first free day is known. The days above are always civil days.
    pub free_at: Option<Moment>,
}

/// An apiary to which colonies were moved.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryStay {
    /// The first day there.
    pub from: Day,
    /// The apiary.
    pub apiary: ApiaryName,
}

/// A withdrawal period with its source.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WithdrawalPart {
    /// Days; may be 0.
    pub days: u16,
    /// Who stated it.
    pub said_by: SaidBy,
    /// The entry that stated it. Absent for the built-in leaflet.
    pub entry: Option<EntryId>,
    /// How well it is established. Only a documented value can support a first free day.
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
    /// The built-in leaflet; not part of the keeper's record.
    Leaflet,
    /// Terms declared by the keeper for a medicine.
    Declared,
}

impl SaidBy {
    /// The source of a value, and the entry that stated it.
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

/// A course taken out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RemovalRow {
    /// The record of it.
    pub written: Written,
    /// The medicine.
    pub medicine: MedicinePart,
    /// The first dose of the course.
    pub first_dose: EntryId,
    /// The day of that dose.
    pub placed: Option<Day>,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// Pieces known to be left inside each colony.
    pub left_inside: u8,
    /// How and where the removed pieces were disposed of.
    pub how_and_where: Option<String>,
}

/// Medicine that left the stock without being given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalRow {
    /// The record of it.
    pub written: Written,
    /// The lot.
    pub lot: LotName,
    /// The medicine.
    pub medicine: MedicinePart,
    /// Its batch number.
    pub batch: Option<String>,
    /// The quantity.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000))]
    pub quantity: Quantity,
    /// How and where it was disposed of.
    pub how_and_where: String,
}

/// An entry that was corrected or struck out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CorrectionRow {
    /// The correcting entry.
    pub written: Written,
    /// The entry that was wrong.
    pub of: EntryId,
    /// Its position in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub of_seq: u64,
    /// The kind of the entry that was wrong.
    pub kind: Kind,
    /// Whether it was struck out as a whole.
    pub struck_out: bool,
    /// The reason.
    pub reason: String,
    /// The changed values.
    pub changes: Vec<Change>,
}

/// A value that was changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Change {
    /// The field, such as `expiry` or `given/0/each`.
    pub field: String,
    /// The old value. Absent if there was none.
    pub was: Option<String>,
    /// The new value. Absent if there is none now.
    pub now: Option<String>,
}

/// The stock account of a lot for the period: what was carried in, came in, went out and is left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotTotal {
    /// The lot.
    pub lot: LotName,
    /// The medicine.
    pub medicine: MedicinePart,
    /// The batch number as printed.
    pub batch: Option<String>,
    /// The expiry date as printed.
    pub expiry: Option<Day>,
    /// The quantity left when the period began. Null if more was gone than had been acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub carried_in: Option<Quantity>,
    /// The quantity acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub acquired: Quantity,
    /// The quantity given.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub given: Quantity,
    /// The quantity disposed of.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub disposed: Quantity,
    /// The quantity left at the end of the period, or of the as-of day if that is earlier. Null if more is gone than was
    /// acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub left: Option<Quantity>,
    /// Whether it had expired by then.
    pub expired: bool,
    /// The number of entries up to then that corrected the account after a count.
    #[cfg_attr(feature = "openapi", schema(maximum = 9_007_199_254_740_991i64))]
    pub counts_corrected: u64,
}

/// An apiary that a row names.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryKey {
    /// The apiary.
    pub apiary: ApiaryName,
    /// Where it is, as the keeper describes it: a place, a grid reference, coordinates.
    pub place: Option<String>,
}

/// A colony that a row names.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ColonyKey {
    /// The colony.
    pub colony: ColonyName,
    /// The mark on its hive, as first recorded.
    pub hive_mark: Option<String>,
    /// Its apiary at the end of the period, or of the as-of day if that is earlier. Null if it had ended by then.
    pub apiary: Option<ApiaryName>,
}
