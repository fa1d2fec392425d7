//! What due says of a gap, until its own words are made at the edge with those of the gaps.

use crate::basics::words::ColonyName;
use crate::questions::gaps::{About, Finding, Gap, Supply, WhyOpen};
use crate::rules::law::Field;

/// What a required gap is, and how to supply it.
pub(super) fn text(gap: &Gap) -> String {
    format!("{}: {}", statement(gap), supply(gap.supply))
}

fn statement(gap: &Gap) -> String {
    let subject = about(gap);
    let Gap { finding, .. } = gap;
    if let Finding::WithdrawalNotRecorded { leaflet_says } = finding {
        let but = leaflet_says.map(|days| {
            let days = if days == 1 { "1 day".to_owned() } else { format!("{days} days") };
            format!("; the built-in leaflet says {days}, but that is no record of yours")
        });
        return format!("{subject}: the withdrawal period is not recorded{}", but.unwrap_or_default());
    }
    if let Finding::EndNotKnown { field, open } = finding {
        let open = open.as_ref().map(|open| {
            let what = match open.why {
                WhyOpen::Lost => "nobody recorded where it went",
                WhyOpen::Late => "its removal is not recorded, and it had to be out",
            };
            format!(": in {} {what}", some(&open.colonies))
        });
        return format!("{subject}: the {} is not known{}", name(*field), open.unwrap_or_default());
    }
    if let Finding::FieldNotRecorded(field) = finding {
        return format!("{subject}: {} is not recorded", with_article(*field));
    }
    format!("{subject}: {}", finding.as_str())
}

fn about(gap: &Gap) -> String {
    let on = gap.on;
    match &gap.about {
        About::Medicine { medicine } => format!("the medicine {medicine}"),
        About::Acquisition { lot, medicine } => format!("lot {lot} of {medicine}, acquired on {on}"),
        About::Administration { medicine, colonies } => {
            format!("{medicine} given on {on} to {}", some(colonies))
        }
        About::Disposal { lot, quantity, unit } => {
            let amount = unit.map_or_else(
                || quantity.to_string(),
                |unit| crate::questions::options::amount_of(*quantity, unit.as_str()),
            );
            format!("{amount} of lot {lot} disposed of on {on}")
        }
    }
}

fn some(colonies: &[ColonyName]) -> String {
    if colonies.len() > 4 {
        return format!("{} colonies", colonies.len());
    }
    colonies.iter().map(ColonyName::as_str).collect::<Vec<_>>().join(", ")
}

#[expect(clippy::wildcard_enum_match_arm, reason = "a required gap has no other")]
fn supply(supply: Supply) -> String {
    match supply {
        Supply::CorrectEntry { place, field } => {
            format!("correct entry no. {place} and give the {}", name(field))
        }
        Supply::WithdrawalDays { place } => format!(
            "correct entry no. {place} and give the days that the pack states, 0 too; or record what its leaflet says"
        ),
        Supply::ProvePurchase => {
            "attach the invoice or receipt to the lot, or correct the acquisition and say what proves it and where it is kept"
                .to_owned()
        }
        Supply::AttachPrescription => "attach a copy to the prescription".to_owned(),
        Supply::ReachOfVet => "correct the prescription and say how the vet is reached".to_owned(),
        Supply::Removal => "record the removal with the day on which it came out".to_owned(),
        Supply::RemovalAndWithdrawal => {
            "record the removal, and the withdrawal period that the pack states".to_owned()
        }
        Supply::KeeperAddress => "record the holding's details with the keeper's address".to_owned(),
        _ => "correct the description of the medicine: pack name, authorisation number, leaflet".to_owned(),
    }
}

fn with_article(field: Field) -> String {
    let name = name(field);
    let bare = matches!(
        field,
        Field::ProofOfPurchase
            | Field::Prescriber
            | Field::Route
            | Field::Colonies
            | Field::DisposalHowAndWhere
    );
    if bare { name.to_owned() } else { format!("the {name}") }
}

const fn name(field: Field) -> &'static str {
    match field {
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
