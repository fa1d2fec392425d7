//! The words of law files: occasions, fields, sorts of record, and the start of a retention period.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::basics::words::word_lists;

word_lists! {
    /// The occasion of a record.
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

    /// A field of a record, or a document to keep.
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
        /// Proof of purchase, or a record of how else it was acquired.
        ProofOfPurchase = "proof_of_purchase",
        /// A copy of the prescription, or the number of the document that replaces it.
        PrescriptionCopy = "prescription_copy",
        /// The prescriber, with contact details.
        Prescriber = "prescriber",
        /// The date on which it was given, or first given.
        DateFirstGiven = "date_first_given",
        /// The date on which it was last given, or taken out.
        DateLastGiven = "date_last_given",
        /// How long the treatment lasted.
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
        /// The apiary where they stood during the withdrawal period.
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

    /// How necessary a field is; the strictest first.
    FieldNeed {
        /// Always.
        Required = "required",
        /// In the case described in the note.
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
        /// Of administrations, with their basis and their removal.
        Administration = "administration",
        /// Prescriptions.
        Prescription = "prescription",
        /// Of disposals.
        Disposal = "disposal",
    }

    /// The moment from which retention years are counted.
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

    /// How binding a retention period is.
    KeepingForce {
        /// Law.
        Law = "law",
        /// A scheme that the keeper may have joined, or advice. It counts like law: the longest period wins.
        Scheme = "scheme",
    }
}
