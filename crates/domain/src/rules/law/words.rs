//! The words of the law files: occasions, fields, records, and from when a time to keep them is counted.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::basics::words::word_lists;

word_lists! {
    /// On what occasion something must be written down.
    Occasion {
        /// A medicine is acquired.
        Acquisition = "acquisition",
        /// The keeper gives it.
        Administration = "administration",
        /// A vet gives it.
        VetAdministration = "vet_administration",
        /// It leaves the stock without being given.
        Disposal = "disposal",
    }

    /// What must be written down or kept.
    Field {
        /// The name of the product.
        ProductName = "product_name",
        /// The active substance.
        ActiveSubstance = "active_substance",
        /// The number of its authorisation or registration.
        AuthorisationNumber = "authorisation_number",
        /// The batch number.
        Batch = "batch",
        /// The expiry date.
        Expiry = "expiry",
        /// The date of acquisition.
        DateAcquired = "date_acquired",
        /// The quantity acquired.
        QuantityAcquired = "quantity_acquired",
        /// The name of the supplier.
        SupplierName = "supplier_name",
        /// The address of the supplier.
        SupplierAddress = "supplier_address",
        /// Proof of purchase, or how else it was acquired.
        ProofOfPurchase = "proof_of_purchase",
        /// A copy of the prescription, or the number of the document that stands for it.
        PrescriptionCopy = "prescription_copy",
        /// Who prescribed it, and how that person is reached.
        Prescriber = "prescriber",
        /// The date on which it was given, or first given.
        DateFirstGiven = "date_first_given",
        /// The date on which it was last given, or taken out.
        DateLastGiven = "date_last_given",
        /// How long the treatment went on.
        Duration = "duration",
        /// The time of day.
        TimeOfDay = "time_of_day",
        /// The quantity given.
        QuantityGiven = "quantity_given",
        /// The quantity given to each colony.
        QuantityPerColony = "quantity_per_colony",
        /// How it was given.
        Route = "route",
        /// Which colonies got it.
        Colonies = "colonies",
        /// How many got it.
        NumberTreated = "number_treated",
        /// The apiary where they stood.
        Apiary = "apiary",
        /// The apiary where they stood while the withdrawal period ran.
        ApiaryDuringWithdrawal = "apiary_during_withdrawal",
        /// The withdrawal period.
        WithdrawalPeriod = "withdrawal_period",
        /// The date on which it ends.
        WithdrawalEnd = "withdrawal_end",
        /// Why it was given.
        Reason = "reason",
        /// Who gave it.
        GivenBy = "given_by",
        /// The name of the vet.
        VetName = "vet_name",
        /// The number of the applicator's certificate.
        CertificateNumber = "certificate_number",
        /// The date of disposal.
        DateDisposed = "date_disposed",
        /// The quantity disposed of.
        QuantityDisposed = "quantity_disposed",
        /// How and where it was disposed of.
        DisposalHowAndWhere = "disposal_how_and_where",
        /// The name and address of the keeper.
        KeeperNameAndAddress = "keeper_name_and_address",
    }

    /// How much a field is needed; the strictest word first.
    FieldNeed {
        /// Always.
        Required = "required",
        /// Where the case is as the note says.
        WhereApplicable = "where_applicable",
        /// Not by law: a scheme or guidance asks for it.
        Advised = "advised",
    }

    /// A sort of record that must be kept for a time.
    RecordSort {
        /// Of acquisitions.
        Acquisition = "acquisition",
        /// Proof of purchase.
        Proof = "proof",
        /// Of what was given, with what it rests on and when it came out.
        Administration = "administration",
        /// Prescriptions.
        Prescription = "prescription",
        /// Of disposals.
        Disposal = "disposal",
    }

    /// From when the years of keeping are counted.
    CountedFrom {
        /// The last day on which something of the lot was used, taken out of a hive or disposed of.
        LastUseOrDisposalOfLot = "last_use_or_disposal_of_lot",
        /// The day on which the entry was made.
        EntryMade = "entry_made",
        /// The end of the year of the last entry.
        EndOfYearOfLastEntry = "end_of_year_of_last_entry",
        /// The day on which it happened.
        Event = "event",
    }

    /// How much a time to keep records binds.
    KeepingForce {
        /// Law.
        Law = "law",
        /// A scheme that the keeper may have joined, or advice. It is counted all the same: the longest time wins.
        Scheme = "scheme",
    }
}

impl Occasion {
    /// The occasion in the words of the trade.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Occasion::Acquisition => "acquisition",
            Occasion::Administration => "administration by the keeper",
            Occasion::VetAdministration => "administration by a vet",
            Occasion::Disposal => "disposal",
        }
    }
}

impl Field {
    /// The field in the words of the trade, for pages.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Field::ProductName => "name of the product",
            Field::ActiveSubstance => "active substance",
            Field::AuthorisationNumber => "authorisation number",
            Field::Batch => "batch number",
            Field::Expiry => "expiry date",
            Field::DateAcquired => "date of acquisition",
            Field::QuantityAcquired => "quantity acquired",
            Field::SupplierName => "name of the supplier",
            Field::SupplierAddress => "address of the supplier",
            Field::ProofOfPurchase => "proof of purchase",
            Field::PrescriptionCopy => "copy of the prescription",
            Field::Prescriber => "who prescribed it, with contact",
            Field::DateFirstGiven => "date of (first) administration",
            Field::DateLastGiven => "date of last administration",
            Field::Duration => "duration of the treatment",
            Field::TimeOfDay => "time of day",
            Field::QuantityGiven => "quantity given",
            Field::QuantityPerColony => "quantity given to each colony",
            Field::Route => "how it was given",
            Field::Colonies => "which colonies were treated",
            Field::NumberTreated => "number of colonies treated",
            Field::Apiary => "apiary at the time of treatment",
            Field::ApiaryDuringWithdrawal => "apiary during the withdrawal period",
            Field::WithdrawalPeriod => "withdrawal period",
            Field::WithdrawalEnd => "end of the withdrawal period",
            Field::Reason => "reason for the treatment",
            Field::GivenBy => "name of the person who gave it",
            Field::VetName => "name of the vet",
            Field::CertificateNumber => "number of the applicator's certificate",
            Field::DateDisposed => "date of disposal",
            Field::QuantityDisposed => "quantity disposed of",
            Field::DisposalHowAndWhere => "how and where it was disposed of",
            Field::KeeperNameAndAddress => "name and address of the keeper",
        }
    }
}

impl FieldNeed {
    /// The need in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            FieldNeed::Required => "required",
            FieldNeed::WhereApplicable => "where applicable",
            FieldNeed::Advised => "advised",
        }
    }
}

impl RecordSort {
    /// The sort of record in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            RecordSort::Acquisition => "records of acquisition",
            RecordSort::Proof => "proof of purchase",
            RecordSort::Administration => "records of administration",
            RecordSort::Prescription => "prescriptions",
            RecordSort::Disposal => "records of disposal",
        }
    }
}

impl CountedFrom {
    /// From when, in words: completes "5 years from".
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            CountedFrom::LastUseOrDisposalOfLot => "the last use or disposal of the lot",
            CountedFrom::EntryMade => "the day the entry was made",
            CountedFrom::EndOfYearOfLastEntry => "the end of the year of the last entry",
            CountedFrom::Event => "the day it happened",
        }
    }
}
