//! What to ask somebody who has the leaflet of a lot in hand: each term and each other value, with what is built in.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::Written;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use crate::basics::words::{LotName, NoWithdrawal};
use crate::facts::history::{FlowBefore, Term, TermValue, Terms, label_revision};
use crate::facts::holding::Holding;
use crate::journal::event::{Confirmed, Event, LeafletReading, StatedTerms};
use crate::rules::leaflet::{Force, Leaflet, Leaflets, Rule, Says};

/// The questions for the leaflet of one lot.
#[derive(Debug, Clone)]
pub struct LeafletQuestions {
    /// The built-in leaflet of its medicine, if there is one.
    pub leaflet: Option<Arc<Leaflet>>,
    /// What the built-in leaflet says of each term, by the key of the field. A term that it does not state is not there.
    pub terms: BTreeMap<&'static str, String>,
    /// Whether it bars use right before a flow without saying how many days before.
    pub barred_before_flow: bool,
    /// Its other values that no document for this country states, so that a keeper must confirm them.
    pub others: Vec<Says>,
}

impl LeafletQuestions {
    /// The questions for a lot on a day. None for a lot that is not on record.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, lot: &LotName, on: Day) -> Option<LeafletQuestions> {
        let (_, of) = holding.lot(lot)?;
        let named = holding.medicine(of.medicine).and_then(|(_, medicine)| medicine.leaflet.as_ref());
        let jurisdiction = holding.jurisdiction(on);
        let leaflet = named.zip(jurisdiction).and_then(|(id, jurisdiction)| leaflets.get(jurisdiction, id));
        let Some(leaflet) = leaflet else {
            return Some(LeafletQuestions {
                leaflet: None,
                terms: BTreeMap::new(),
                barred_before_flow: false,
                others: Vec::new(),
            });
        };
        let revision = label_revision(holding, lot, None);
        let terms = Terms::if_given(holding, leaflet, on, None, revision, &[]);
        let flow_before = terms.flow_before.map(|fact| fact.value);
        let of_lot = |rule: &&Rule| {
            let of_revision = rule.revision.is_none() || rule.revision.as_deref() == revision;
            let binds = rule.is_in_force(on) && rule.force != Force::Advice;
            // What was read in a document for this country needs no confirmation.
            let open = rule.confidence != Confidence::Document;
            of_revision && binds && open && decides(rule.says.topic())
        };
        let others = leaflet.rules.iter().filter(of_lot).map(|rule| rule.says.clone()).collect();
        Some(LeafletQuestions {
            leaflet: Some(Arc::clone(leaflet)),
            terms: built_in(&terms),
            barred_before_flow: flow_before == Some(FlowBefore::Barred),
            others,
        })
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

impl Written {
    /// The same with the other values that a reading of a leaflet confirms.
    ///
    /// # Errors
    /// A reading neither states a term or the revision nor confirms a value. Recorded, it would look as if somebody had read the leaflet.
    pub fn confirming(mut self, confirms: &[Confirmed]) -> Result<Written, SaysNothing> {
        for event in &mut self.events {
            if let Event::LeafletReading(reading) = event {
                let reading = LeafletReading { confirms: confirms.to_vec(), ..reading.as_ref().clone() };
                if says_nothing(&reading) {
                    return Err(SaysNothing);
                }
                *event = reading.into();
            }
        }
        Ok(self)
    }
}

/// A reading says nothing of what the leaflet says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SaysNothing;

fn says_nothing(reading: &LeafletReading) -> bool {
    let LeafletReading { lot: _, revision, terms, confirms } = reading;
    revision.is_none() && *terms == StatedTerms::default() && confirms.is_empty()
}

/// The terms of a leaflet as they are filled in, by the key of the field.
fn built_in(terms: &Terms) -> BTreeMap<&'static str, String> {
    fn said<T>(value: &TermValue<T>, text: impl Fn(&T) -> String) -> Option<String> {
        value.known().map(|fact| text(&fact.value))
    }
    let days = |value: &TermValue<u16>| said(value, u16::to_string);
    let (without_brood, with_brood) = (&terms.stay_min.absent_or_lowest, &terms.stay_min.present);
    let of_terms = [
        (Term::SupersDuring, said(&terms.supers_during, |value| value.as_str().to_owned())),
        (Term::FlowDuring, said(&terms.flow_during, |value| value.as_str().to_owned())),
        (Term::Withdrawal, days(&terms.withdrawal).filter(|_| !terms.no_withdrawal_by_label)),
        (Term::FlowBefore, terms.flow_before.and_then(|fact| fact.value.days()).map(|days| days.to_string())),
        // A wait that follows from the withdrawal period is not printed.
        (Term::Wait, days(&terms.wait).filter(|_| !terms.wait_within_withdrawal)),
        (Term::Removal, said(&terms.removal, |value| value.as_str().to_owned())),
        // The field counts with brood too, so a stay that is stated only without brood is not taken for it.
        (Term::StayMin, days(without_brood).filter(|_| with_brood.is_known())),
        (Term::StayMinWithBrood, days(with_brood).filter(|_| without_brood != with_brood)),
        (Term::StayMax, days(&terms.stay_max.absent_or_lowest)),
        (Term::Doses, said(&terms.doses, |value| value.count.to_string())),
    ];
    let none = terms.no_withdrawal_by_label.then(|| ("withdrawal", NoWithdrawal::NoneByLabel.to_string()));
    let of_fields = of_terms.into_iter().filter_map(|(term, text)| Some((term.field()?, text?)));
    of_fields.chain(none).collect()
}
