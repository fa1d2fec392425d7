//! A gap: which row it is about, what is missing or amiss there, and how to supply it.

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    ColonyName, Jurisdiction, LeafletId, LotName, MedicineName, PrescriptionName, Unit,
};
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::rules::law::Field;

/// A law that was asked.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = LawAsked))]
pub struct LawPart {
    /// Where it holds.
    pub jurisdiction: Jurisdiction,
    /// What it is called.
    pub title: String,
}

/// Why the law of some day could not be asked, or only in part; in the order in which a keeper is told.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum LawNotAsked {
    /// No law of the jurisdiction is known here.
    NotKnown {
        /// Whose law.
        jurisdiction: Jurisdiction,
        /// The day on which none that is known was in force; absent where none is known at all.
        in_force_on: Option<Day>,
    },
    /// Only the Union's part of it is known here; a member state may ask for more.
    UnionsPartOnly {
        /// Whose law.
        jurisdiction: Jurisdiction,
    },
    /// The record does not say whose law holds.
    NotSaid,
}

/// How much a gap weighs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum GapWeight {
    /// The law requires it, and it is missing.
    Required,
    /// The record is there, and shows that something was not as it should be. No entry can mend it.
    Amiss,
    /// The law requires it where it applies, and the record does not tell whether it does.
    WhereApplicable,
    /// Practice advises it.
    Advised,
}

/// Something that is missing or amiss.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = GapEntry))]
pub struct Gap {
    /// How much it weighs.
    pub weight: GapWeight,
    /// What is missing or amiss.
    #[serde(skip)]
    pub finding: Finding,
    /// The row that it is about.
    #[serde(skip)]
    pub about: About,
    /// The entry that it is about.
    pub entry: EntryId,
    /// The place of that entry in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub place: u64,
    /// The kind of that entry.
    pub kind: Kind,
    /// The day of that entry.
    pub on: Day,
    /// How to supply what is missing.
    #[serde(skip)]
    pub supply: Supply,
    /// Where the law says so.
    #[serde(skip)]
    pub law: Vec<LawPlace>,
}

/// A place in a law, for a person to look up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LawPlace {
    /// The title of the source.
    pub title: String,
    /// Where in it.
    pub locator: Option<String>,
}

/// The row that a gap is about. A medicine goes by the name on its pack, or by the keeper's own where that is not recorded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum About {
    /// A medicine, whatever was given of it.
    Medicine {
        /// Its name.
        medicine: String,
    },
    /// A lot acquired.
    Acquisition {
        /// The lot.
        lot: LotName,
        /// The name of its medicine.
        medicine: String,
    },
    /// A medicine given.
    Administration {
        /// Its name.
        medicine: String,
        /// The colonies it was given to, each once, by name.
        colonies: Vec<ColonyName>,
    },
    /// What was disposed of.
    Disposal {
        /// Of which lot.
        lot: LotName,
        /// How much.
        quantity: Quantity,
        /// What it is counted in.
        unit: Option<Unit>,
    },
}

/// What is missing or amiss.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Finding {
    /// A field of the law is not recorded.
    FieldNotRecorded(Field),
    /// The withdrawal period of a dose is not recorded.
    WithdrawalNotRecorded {
        /// The longest period in days that the built-in leaflet says, which is no record of the keeper's; absent where it says
        /// none.
        leaflet_says: Option<u16>,
    },
    /// A field that the end of a treatment tells is not known.
    EndNotKnown {
        /// The field.
        field: Field,
        /// Where the treatment has no end; absent where the end is recorded and a period is not known.
        open: Option<OpenEnd>,
    },
    /// It was written down later than the law wants.
    WrittenLate {
        /// How many days after it happened, at the least.
        days_late: u32,
        /// Within how many days the law wants it; 0 for the same day.
        within_days: u16,
    },
    /// No authorisation number of a medicine is recorded.
    MedicineAuthorisation,
    /// The leaflet that a medicine points to is not known where the holding is.
    MedicineLeaflet(LeafletId),
    /// Neither a leaflet nor terms of a medicine are recorded.
    MedicineDirections,
    /// The prescription bears a later day than what was given under it.
    PrescribedAfter {
        /// The prescription.
        number: PrescriptionName,
        /// Its day; absent where it lies after the as-of day.
        on: Option<Day>,
    },
    /// A lot was used after its expiry date.
    UseAfterExpiry {
        /// The lot.
        lot: LotName,
        /// Its expiry date.
        expiry: Day,
    },
    /// A lot was used after its life in use was over.
    PastLifeInUse {
        /// The lot.
        lot: LotName,
        /// The day on which it was opened.
        opened: Day,
        /// The last day on which what was opened was to be used.
        until: Day,
        /// Whether a document carries that.
        documented: bool,
        /// What the leaflet says, in its words.
        says: String,
    },
    /// Since a day nobody recorded whether it is still in.
    WhereaboutsNotRecorded {
        /// Since when.
        since: Day,
        /// In which colonies.
        colonies: Vec<ColonyName>,
    },
    /// No removal is recorded.
    RemovalNotRecorded {
        /// From which colonies.
        colonies: Vec<ColonyName>,
        /// The day by which it had to be out, which is over; absent where nobody stated how long it may stay.
        by: Option<Day>,
    },
    /// A document is attached, but its content is missing or altered.
    DocumentNotKept {
        /// The name of the file it came in.
        file_name: Option<String>,
    },
    /// No document is kept with a lot.
    NoDocument {
        /// Whether what proves the purchase is told in words.
        told_in_words: bool,
    },
    /// A lot has no expiry date on record.
    ExpiryNotTold,
    /// A lot had expired when it was acquired.
    ExpiredWhenAcquired {
        /// Its expiry date.
        expiry: Day,
    },
    /// More of a lot is gone than was acquired.
    MoreGoneThanAcquired {
        /// The book of the lot.
        book: LotCheck,
        /// How much more.
        over: Quantity,
    },
    /// The book of a lot rests on a count.
    CountCorrected {
        /// The lot.
        lot: LotName,
    },
}

/// Where a treatment has no end on record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenEnd {
    /// In which colonies.
    pub colonies: Vec<ColonyName>,
    /// Why.
    pub why: WhyOpen,
}

/// Why a treatment has no end on record.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhyOpen {
    /// Nobody recorded where it went.
    Lost,
    /// Its removal is not recorded, and it had to be out.
    Late,
}

impl Finding {
    /// What is missing, as a word for programs: a field of the law such as `supplier_address`, or `use_after_expiry` and the
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

/// How to supply what is missing, or what to do about what is amiss.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Supply {
    /// Correct an entry and give a field.
    CorrectEntry {
        /// Its place in the journal, counted from 1.
        place: u64,
        /// The field.
        field: Field,
    },
    /// Correct the description of the medicine.
    DescribeMedicine,
    /// Attach what proves the purchase, or say in the acquisition what does.
    ProvePurchase,
    /// Attach a copy to the prescription.
    AttachPrescription,
    /// Say in the prescription how the vet is reached.
    ReachOfVet,
    /// Give the days of the withdrawal period that the pack states, or record what its leaflet says.
    WithdrawalDays {
        /// The place of the entry to correct, counted from 1.
        place: u64,
    },
    /// Record the removal.
    Removal,
    /// Record the removal, and the withdrawal period.
    RemovalAndWithdrawal,
    /// Record the keeper's address.
    KeeperAddress,
    /// Nothing mends what was written late.
    NothingMends,
    /// Read on the pack what the description of the medicine lacks.
    ReadOnPack,
    /// See whether the medicine is authorised here, and correct its leaflet or add one.
    CheckAuthorisation,
    /// Point to a leaflet, or declare the terms that the pack states.
    PointToDirections,
    /// It stays on record as it was.
    StaysOnRecord,
    /// All is well if it came from a pack that was opened later.
    PerhapsAnotherPack,
    /// Look where it is, and record that.
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
    /// Count again, and correct what is wrong.
    CountAgain,
    /// Say what became of the difference.
    ExplainDifference,
}

/// The book of a lot: acquired = given + disposed + left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotCheck {
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
    /// What is left by the book; absent when more is gone than was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub left: Option<Quantity>,
    /// How much more is gone than was acquired; absent when the book comes out even.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub over: Option<Quantity>,
    /// The entries that say that the count was corrected: the book is then not explained by the record alone.
    pub count_corrected_by: Vec<EntryId>,
}
