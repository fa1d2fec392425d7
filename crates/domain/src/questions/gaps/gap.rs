//! A gap: its row, what is missing or irregular, and how to fix it.

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    ColonyName, Jurisdiction, LeafletId, LotName, MedicineName, PrescriptionName, Unit,
};
use crate::facts::{Balance, Left, NotOnRecord};
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::rules::law::Field;

/// A law that was checked.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = LawAsked))]
pub struct LawPart {
    /// Where it applies.
    pub jurisdiction: Jurisdiction,
    /// Its title.
    pub title: String,
}

/// Why the law of some day could not be checked, or only in part; in the order shown to the keeper.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum LawNotAsked {
    /// No law of the jurisdiction is loaded.
    NotKnown {
        /// The jurisdiction.
        jurisdiction: Jurisdiction,
        /// The day on which no loaded law was in force. Absent if none is loaded at all.
        in_force_on: Option<Day>,
    },
    /// Only the Union's law is loaded; a member state may require more.
    UnionsPartOnly {
        /// The jurisdiction.
        jurisdiction: Jurisdiction,
    },
    /// The record does not say which law applies.
    NotSaid,
}

/// How serious a gap is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum GapWeight {
    /// The law requires it, and it is missing.
    Required,
    /// The record is complete but shows an irregularity. No entry can fix it.
    Irregular,
    /// The law requires it where it applies, and the record does not show whether it does.
    WhereApplicable,
    /// Good practice.
    Advised,
}

/// Something missing or irregular.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = GapEntry))]
pub struct Gap {
    /// How serious it is.
    pub weight: GapWeight,
    /// What is missing or irregular.
    #[serde(skip)]
    pub finding: Finding,
    /// The row concerned.
    #[serde(skip)]
    pub about: About,
    /// The entry concerned.
    pub entry: EntryId,
    /// The position of that entry in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub seq: u64,
    /// The kind of that entry.
    pub kind: Kind,
    /// The day of that entry.
    pub on: Day,
    /// How to fix it.
    #[serde(skip)]
    pub supply: Supply,
    /// Where the law requires it.
    #[serde(skip)]
    pub law: Vec<LawPlace>,
}

/// A reference to a law.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LawPlace {
    /// The title of the source.
    pub title: String,
    /// The place in the source.
    pub locator: Option<String>,
}

/// The row that a gap is about. A medicine is named as on its pack, or by the keeper's name if that is not recorded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum About {
    /// A medicine, in all its uses.
    Medicine {
        /// Its name.
        medicine: Fact<String, NotOnRecord>,
    },
    /// A lot acquired.
    Acquisition {
        /// The lot.
        lot: LotName,
        /// The name of its medicine.
        medicine: Fact<String, NotOnRecord>,
    },
    /// A lot of a vet's own stock.
    VetLot {
        /// The lot.
        lot: LotName,
        /// The name of its medicine.
        medicine: Fact<String, NotOnRecord>,
    },
    /// A medicine given.
    Administration {
        /// The name of the medicine.
        medicine: Fact<String, NotOnRecord>,
        /// The colonies it was given to, without repeats, by name.
        colonies: Vec<ColonyName>,
    },
    /// A disposal.
    Disposal {
        /// The lot.
        lot: LotName,
        /// The quantity.
        quantity: Quantity,
        /// The unit of the quantity.
        unit: Option<Unit>,
    },
}

/// What is missing or irregular.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Finding {
    /// A field that the law requires is not recorded.
    FieldNotRecorded(Field),
    /// The withdrawal period of a dose is not recorded.
    WithdrawalNotRecorded {
        /// The longest period in the built-in leaflet, in days, which is not the keeper's record. Absent if it states
        /// none.
        leaflet_says: Option<u16>,
    },
    /// A field that depends on the end of a treatment is not known.
    EndNotKnown {
        /// The field.
        field: Field,
        /// Why the treatment has no end. Absent if the end is recorded and a period is not known.
        open: Option<OpenEnd>,
    },
    /// It was recorded later than the law allows.
    WrittenLate {
        /// Days between the event and its record, at least.
        days_late: u32,
        /// Days that the law allows; 0 for the same day.
        within_days: u16,
    },
    /// A medicine has no authorisation number on record.
    MedicineAuthorisation,
    /// The leaflet of a medicine is not known in the holding's jurisdiction.
    MedicineLeaflet(LeafletId),
    /// A medicine has neither a leaflet nor terms on record.
    MedicineDirections,
    /// The prescription is dated later than the dose given under it.
    PrescribedAfter {
        /// The prescription.
        number: PrescriptionName,
        /// Its day. Absent if it is after the as-of day.
        on: Option<Day>,
    },
    /// An earlier entry records the same dose.
    SameDoseTwice {
        /// The number of the earlier entry in the journal.
        earlier: u64,
        /// The colonies of both.
        colonies: Vec<ColonyName>,
    },
    /// Nothing is recorded as given of a vet's lot.
    VetLotNotGiven,
    /// A lot was used after its expiry date.
    UseAfterExpiry {
        /// The lot.
        lot: LotName,
        /// Its expiry date.
        expiry: Day,
    },
    /// A lot was used after its in-use life.
    PastLifeInUse {
        /// The lot.
        lot: LotName,
        /// The day it was opened.
        opened: Day,
        /// The last day to use it after opening.
        until: Day,
        /// Whether that day is documented.
        documented: bool,
        /// The leaflet's words.
        says: String,
    },
    /// It is not recorded whether it is still in.
    WhereaboutsNotRecorded {
        /// The day since which that is not known.
        since: Day,
        /// The colonies concerned.
        colonies: Vec<ColonyName>,
    },
    /// No removal is recorded.
    RemovalNotRecorded {
        /// The colonies concerned.
        colonies: Vec<ColonyName>,
        /// The day by which it had to be out, now past. Absent if no longest stay is stated.
        by: Option<Day>,
    },
    /// A document is attached, but its content is missing or altered.
    DocumentNotKept {
        /// The name of the attached file.
        file_name: Option<String>,
    },
    /// No document is kept for a lot.
    NoDocument {
        /// Whether the proof of purchase is described in words.
        told_in_words: bool,
    },
    /// A lot has no expiry date on record.
    ExpiryNotTold,
    /// A lot had expired when it was acquired.
    ExpiredWhenAcquired {
        /// Its expiry date.
        expiry: Day,
    },
    /// More of a lot was used than acquired.
    MoreGoneThanAcquired {
        /// The stock account of the lot.
        book: LotCheck,
        /// The excess quantity.
        over: Quantity,
    },
    /// The stock account of a lot was corrected after a count.
    CountCorrected {
        /// The lot.
        lot: LotName,
    },
}

/// A treatment without a recorded end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenEnd {
    /// The colonies concerned.
    pub colonies: Vec<ColonyName>,
    /// The reason.
    pub why: WhyOpen,
}

/// Why a treatment has no end on record.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhyOpen {
    /// It is not recorded where it went.
    Lost,
    /// Its removal is not recorded, and it should be out.
    Late,
}

impl Finding {
    /// The identifier used on the wire: a field of the law such as `supplier_address`, or `use_after_expiry` and the
    /// like.
    #[must_use]
    pub const fn as_str(&self) -> &'static str {
        match self {
            Finding::FieldNotRecorded(field) | Finding::EndNotKnown { field, .. } => field.as_str(),
            Finding::WithdrawalNotRecorded { .. } => Field::WithdrawalPeriod.as_str(),
            Finding::WrittenLate { .. } => "written_late",
            Finding::MedicineAuthorisation => "medicine_authorisation",
            Finding::MedicineLeaflet(_) => "medicine_leaflet",
            Finding::MedicineDirections => "medicine_directions",
            Finding::PrescribedAfter { .. } => "prescribed_after",
            Finding::SameDoseTwice { .. } => "same_dose_twice",
            Finding::VetLotNotGiven => "vet_lot_not_given",
            Finding::UseAfterExpiry { .. } => "use_after_expiry",
            Finding::PastLifeInUse { .. } => "past_life_in_use",
            Finding::WhereaboutsNotRecorded { .. } => "whereabouts_not_recorded",
            Finding::RemovalNotRecorded { .. } => "removal_not_recorded",
            Finding::DocumentNotKept { .. } => "document_not_kept",
            Finding::NoDocument { .. } => "document",
            Finding::ExpiryNotTold => "expiry_not_told",
            Finding::ExpiredWhenAcquired { .. } => "expired_when_acquired",
            Finding::MoreGoneThanAcquired { .. } => "more_gone_than_acquired",
            Finding::CountCorrected { .. } => "count_corrected",
        }
    }
}

/// How to supply a missing fact or handle an irregularity.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Supply {
    /// Correct an entry and fill in a field.
    CorrectEntry {
        /// The position of the entry in the journal, counted from 1.
        seq: u64,
        /// The field.
        field: Field,
    },
    /// Correct the description of the medicine.
    DescribeMedicine,
    /// Attach the proof of purchase, or describe it in the acquisition.
    ProvePurchase,
    /// Attach a copy to the prescription.
    AttachPrescription,
    /// Add the vet's contact to the prescription.
    ReachOfVet,
    /// Add the contact of the vet to the vet's lot.
    ReachOfLotsVet {
        /// The position of the entry in the journal, counted from 1.
        seq: u64,
    },
    /// Say who prescribed, dispensed or gave it.
    WhoDispensedOrGave {
        /// The position of the entry in the journal, counted from 1.
        seq: u64,
    },
    /// State the withdrawal period from the pack, or record a reading of its leaflet.
    WithdrawalDays {
        /// The position of the entry to correct, counted from 1.
        seq: u64,
    },
    /// Record the removal.
    Removal,
    /// Record the removal, and the withdrawal period.
    RemovalAndWithdrawal,
    /// Record the keeper's address.
    KeeperAddress,
    /// Nothing fixes a late entry.
    NothingMends,
    /// Record what the vet gave.
    RecordWhatVetGave,
    /// Read the missing description of the medicine on the pack.
    ReadOnPack,
    /// Check whether the medicine is authorised here, and correct its leaflet or add one.
    CheckAuthorisation,
    /// Name a leaflet, or declare the terms on the pack.
    PointToDirections,
    /// It stays on record as it is.
    StaysOnRecord,
    /// Strike one of the two out, unless it was given twice.
    StrikeOneOut,
    /// No action is needed if it came from a pack opened later.
    PerhapsAnotherPack,
    /// Find out where it is, and record that.
    LookWhereItIs,
    /// Take it out, and record that.
    TakeOut,
    /// Look and record the removal, or read how long it may stay.
    LookOrReadStay,
    /// Attach the same file again.
    AttachAgain,
    /// Attach the invoice.
    AttachInvoice,
    /// Read the expiry date on the pack.
    ReadExpiry,
    /// Count again, and correct the wrong entry.
    CountAgain,
    /// Explain the difference.
    ExplainDifference,
}

/// The stock account of a lot: acquired = given + disposed + left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotCheck {
    /// The lot.
    pub lot: LotName,
    /// The medicine, by the keeper's name.
    pub medicine: MedicineName,
    /// The unit of the quantities.
    pub unit: Option<Unit>,
    /// The quantity acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub acquired: Quantity,
    /// The quantity given.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub given: Quantity,
    /// The quantity disposed of.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub disposed: Quantity,
    /// The quantity left by the account. Absent if more is gone than was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    left: Option<Quantity>,
    /// The quantity gone beyond what was acquired. Absent if the account balances.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    over: Option<Quantity>,
    /// The entries that corrected the account after a count: the other entries alone do not explain it.
    pub count_corrected_by: Vec<EntryId>,
}

impl LotCheck {
    /// The stock account of a lot with this balance.
    #[must_use]
    pub fn of(
        lot: LotName,
        medicine: MedicineName,
        unit: Option<Unit>,
        balance: Balance,
        count_corrected_by: Vec<EntryId>,
    ) -> LotCheck {
        let Balance { acquired, given, disposed, of_a_vet: _ } = balance;
        let left = balance.left();
        LotCheck {
            lot,
            medicine,
            unit,
            acquired,
            given,
            disposed,
            left: left.known().copied(),
            over: left.missing().map(|overdrawn| overdrawn.by),
            count_corrected_by,
        }
    }

    const fn balance(&self) -> Balance {
        Balance { acquired: self.acquired, given: self.given, disposed: self.disposed, of_a_vet: false }
    }

    /// The quantity left by the account.
    #[must_use]
    pub fn left(&self) -> Left {
        self.balance().left()
    }
}
