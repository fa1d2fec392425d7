//! Each row of the register against the law of its day, field by field.

use std::collections::BTreeSet;

use super::report::{Gap, GapWeight, LawPart};
use super::supplied::{Lookup, Supplied};
use super::wording::{self, About};
use crate::basics::calendar::Day;
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::seal::Hash;
use crate::questions::register::{AcquisitionRow, AdministrationRow, RegisterReport, Written};
use crate::rules::law::{Field, FieldNeed, FieldNeeded, LawStanding, Laws, Occasion, Profile};

/// What came of asking the laws.
pub(super) struct Asked<'r> {
    holding: &'r Holding,
    laws_known: &'r Laws,
    register: &'r RegisterReport,
    not_kept: &'r [Hash],
    /// The laws that were asked.
    pub(super) laws: BTreeSet<LawPart>,
    /// Jurisdictions of which no law is known for some day, in words.
    pub(super) without_law: BTreeSet<String>,
    /// What is missing.
    pub(super) gaps: Vec<Gap>,
    /// What was told already: a lot without batch is one gap, however often it was used.
    told: BTreeSet<(&'static str, EntryId)>,
}

impl<'r> Asked<'r> {
    pub(super) fn of(
        holding: &'r Holding,
        laws: &'r Laws,
        register: &'r RegisterReport,
        not_kept: &'r [Hash],
    ) -> Asked<'r> {
        let mut asked = Asked {
            holding,
            laws_known: laws,
            register,
            not_kept,
            laws: BTreeSet::new(),
            without_law: BTreeSet::new(),
            gaps: Vec::new(),
            told: BTreeSet::new(),
        };
        let lookup = Lookup { register, not_kept };
        // Also where there is no row: that no law is known must show.
        asked.law_on(register.to.min(register.as_of));
        for row in &register.acquisitions {
            asked.row(Occasion::Acquisition, &row.written, &About::acquisition(row), |field, _| {
                lookup.of_acquisition(field, row)
            });
        }
        for row in &register.administrations {
            let occasion =
                if row.vet.is_some() { Occasion::VetAdministration } else { Occasion::Administration };
            asked.row(occasion, &row.written, &About::administration(row), |field, need| {
                lookup.of_administration(field, need, row)
            });
        }
        for row in &register.disposals {
            asked.row(Occasion::Disposal, &row.written, &About::disposal(row), |field, _| {
                lookup.of_disposal(field, row)
            });
        }
        asked
    }

    /// One row: every field that the law of its day wants, and whether it was written down in time.
    fn row(
        &mut self,
        occasion: Occasion,
        written: &Written,
        about: &About<'r>,
        supplied: impl Fn(Field, FieldNeed) -> Supplied,
    ) {
        let Some(profile) = self.law_on(written.on) else { return };
        for duty in profile.fields(occasion) {
            match supplied(duty.field, duty.need) {
                Supplied::Missing => self.missing(&duty, about, false),
                Supplied::NotKnown => self.missing(&duty, about, true),
                Supplied::There | Supplied::NotYet | Supplied::DoesNotApply => {}
            }
        }
        self.written_late(&profile, occasion, written, about);
    }

    /// The law of the holding on a day. One that is not known is noted.
    fn law_on(&mut self, on: Day) -> Option<Profile<'r>> {
        let Some(jurisdiction) = self.holding.jurisdiction(on) else {
            self.without_law.insert("the record does not say whose law holds".to_owned());
            return None;
        };
        let Some(profile) = self.laws_known.profile(jurisdiction, on) else {
            self.without_law.insert(format!("no law of `{jurisdiction}` is known here"));
            return None;
        };
        if profile.standing() != LawStanding::InForce {
            self.without_law.insert(format!("no law of `{jurisdiction}` is known that was in force on {on}"));
            return None;
        }
        // Member states may add to what the Union asks.
        if profile.parts().first().is_some_and(|part| part.file.jurisdiction != *jurisdiction) {
            let fault = format!("of the law of `{jurisdiction}` only the Union's part is known here");
            self.without_law.insert(fault);
        }
        for part in profile.parts().iter().filter(|part| part.standing == LawStanding::InForce) {
            let (jurisdiction, title) = (part.file.jurisdiction.clone(), part.file.title.clone());
            self.laws.insert(LawPart { jurisdiction, title });
        }
        Some(profile)
    }

    fn missing(&mut self, duty: &FieldNeeded<'_>, about: &About<'r>, perhaps: bool) {
        // Of a prescription that the record names it is known that it applies.
        let applies = matches!(duty.field, Field::Prescriber | Field::PrescriptionCopy);
        let weight = match duty.need {
            FieldNeed::Required if perhaps => GapWeight::WhereApplicable,
            FieldNeed::Required => GapWeight::Required,
            FieldNeed::WhereApplicable if applies && !perhaps => GapWeight::Required,
            FieldNeed::WhereApplicable => GapWeight::WhereApplicable,
            FieldNeed::Advised => GapWeight::Advised,
        };
        for about in self.where_it_is_recorded(duty.field, about) {
            if self.told.insert((duty.field.as_str(), about.written.entry)) {
                self.gaps.push(Gap {
                    weight,
                    missing: duty.field.as_str(),
                    about: about.in_words(),
                    entry: about.written.entry,
                    place: about.written.place,
                    kind: about.kind,
                    on: about.written.on,
                    statement: wording::not_recorded(&about, duty.field, self.register),
                    supply: wording::supply(&about, duty.field),
                    law: wording::law(duty),
                });
            }
        }
    }

    /// The rows in which a field is recorded: what is known of a dose through its lots is missing in the acquisitions.
    fn where_it_is_recorded(&self, field: Field, about: &About<'r>) -> Vec<About<'r>> {
        let of_lot = [
            Field::Batch,
            Field::Expiry,
            Field::SupplierName,
            Field::SupplierAddress,
            Field::ProofOfPurchase,
        ];
        let administration = about.administration.filter(|_| of_lot.contains(&field));
        let Some(row) = administration else { return vec![*about] };
        let lookup = Lookup { register: self.register, not_kept: self.not_kept };
        let lacks = |lot: &&'r AcquisitionRow| lookup.of_acquisition(field, lot) == Supplied::Missing;
        let lots = acquisitions_of(self.register, row).into_iter().filter(lacks);
        lots.map(About::acquisition).collect()
    }

    fn written_late(
        &mut self,
        profile: &Profile<'_>,
        occasion: Occasion,
        written: &Written,
        about: &About<'r>,
    ) {
        let Some(limit) = profile.time_limit(occasion) else { return };
        if written.days_late <= u32::from(limit.rule.within_days) {
            return;
        }
        let wanted = match limit.rule.within_days {
            0 => "on the same day".to_owned(),
            1 => "within a day".to_owned(),
            days => format!("within {days} days"),
        };
        self.gaps.push(Gap {
            weight: GapWeight::Amiss,
            missing: "written_late",
            about: about.in_words(),
            entry: written.entry,
            place: written.place,
            kind: about.kind,
            on: written.on,
            statement: format!(
                "{}: written down {} later; the law wants it {wanted}",
                about.in_words(),
                wording::days(written.days_late)
            ),
            supply: "nothing can mend it; the register shows when it was written down".to_owned(),
            law: wording::sources(limit.file, &limit.rule.basis),
        });
    }
}

/// The acquisitions of the lots of an administration.
pub(super) fn acquisitions_of<'r>(
    register: &'r RegisterReport,
    row: &AdministrationRow,
) -> Vec<&'r AcquisitionRow> {
    let of_row = |lot: &&AcquisitionRow| row.given.iter().any(|part| part.lot == lot.lot);
    register.acquisitions.iter().filter(of_row).collect()
}
