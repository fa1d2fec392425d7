//! What to ask somebody who has the leaflet of a lot in hand: each term and each other value, with what is built in.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::fact::Fact;
use crate::basics::topic::Topic;
use crate::basics::words::LotName;
use crate::facts::history::{FlowBefore, TermValue, Terms, label_revision};
use crate::facts::holding::Holding;
use crate::journal::event::{Confirmed, LeafletReading};
use crate::rules::leaflet::{Force, Leaflet, Leaflets, Says};

/// The questions for the leaflet of one lot.
#[derive(Debug, Clone)]
pub struct LeafletQuestions {
    /// The built-in leaflet of its medicine, if there is one.
    pub leaflet: Option<Arc<Leaflet>>,
    /// What the built-in leaflet says of each term, by the key of the field. A term that it does not state is not there.
    pub terms: BTreeMap<&'static str, String>,
    /// Its other values that no document for this country states, so that a keeper must confirm them.
    pub others: Vec<Says>,
}

impl LeafletQuestions {
    /// The questions for a lot on a day. None for a lot that is not on record.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, lot: &LotName, on: Day) -> Option<LeafletQuestions> {
        let (_, acquired) = holding.lot(lot)?;
        let named = holding.medicine(&acquired.medicine).and_then(|(_, medicine)| medicine.leaflet.as_ref());
        let jurisdiction = holding.jurisdiction(on);
        let leaflet = named.zip(jurisdiction).and_then(|(id, jurisdiction)| leaflets.get(jurisdiction, id));
        let Some(leaflet) = leaflet else {
            return Some(LeafletQuestions { leaflet: None, terms: BTreeMap::new(), others: Vec::new() });
        };
        let revision = label_revision(holding, lot, None);
        let terms = built_in(&Terms::if_given(holding, leaflet, on, None, revision, &[]));
        let of_lot = |rule: &&crate::rules::leaflet::Rule| {
            let of_revision = rule.revision.is_none() || rule.revision.as_deref() == revision;
            let binds = rule.is_in_force(on) && rule.force != Force::Advice;
            // What was read in a document for this country needs no confirmation.
            let open = rule.confidence != Confidence::Document;
            of_revision && binds && open && decides(rule.says.topic())
        };
        let others = leaflet.rules.iter().filter(of_lot).map(|rule| rule.says.clone()).collect();
        Some(LeafletQuestions { leaflet: Some(Arc::clone(leaflet)), terms, others })
    }
}

/// Whether an answer may rest on a value of a topic that is confirmed. The others inform whoever handles the medicine.
const fn decides(topic: Topic) -> bool {
    let informs = matches!(
        topic,
        Topic::CombRule | Topic::Class | Topic::Recipe | Topic::UserSafety | Topic::Storage | Topic::Disposal
    );
    !informs && !topic.is_stated()
}

/// The other values that a reading confirms.
#[must_use]
pub fn confirming(reading: LeafletReading, confirmed: impl IntoIterator<Item = Says>) -> LeafletReading {
    LeafletReading { confirms: confirmed.into_iter().map(Confirmed::Value).collect(), ..reading }
}

/// The terms of a leaflet as they are filled in, by the key of the field.
fn built_in(terms: &Terms) -> BTreeMap<&'static str, String> {
    fn said<T>(value: &TermValue<T>, text: impl Fn(&T) -> String) -> Option<String> {
        value.known().map(|fact| text(&fact.value))
    }
    let days = |value: &TermValue<u16>| said(value, u16::to_string);
    let with_brood =
        days(&terms.stay_min.present).filter(|_| terms.stay_min.absent_or_lowest != terms.stay_min.present);
    let withdrawal = days(&terms.withdrawal).filter(|_| !terms.no_withdrawal_by_label);
    let none = terms.no_withdrawal_by_label.then(|| "none_by_label".to_owned());
    // A wait that follows from the withdrawal period is not printed.
    let wait = days(&terms.wait).filter(|_| !terms.wait_within_withdrawal);
    let flow_before = match terms.flow_before.map(|fact| fact.value) {
        Some(FlowBefore::BarredDays(days)) => Some(days.to_string()),
        Some(FlowBefore::Barred) | None => None,
    };
    let least = match terms.stay_min.absent_or_lowest {
        Fact::Known(_) => days(&terms.stay_min.absent_or_lowest),
        Fact::NotKnown(_) => None,
    };
    let all = [
        ("supers_during", said(&terms.supers_during, |value| value.as_str().to_owned())),
        ("flow_during", said(&terms.flow_during, |value| value.as_str().to_owned())),
        ("withdrawal_days", withdrawal),
        ("withdrawal", none),
        ("flow_before_days", flow_before),
        ("wait_after_removal_days", wait),
        ("removal", said(&terms.removal, |value| value.as_str().to_owned())),
        ("stay_min_days", least),
        ("stay_min_days_with_brood", with_brood),
        ("stay_max_days", days(&terms.stay_max.absent_or_lowest)),
        ("doses", said(&terms.doses, |value| value.count.to_string())),
    ];
    all.into_iter().filter_map(|(key, text)| Some((key, text?))).collect()
}
