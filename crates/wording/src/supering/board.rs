//! The board of a holding at a glance: colonies with the same answer, reason and next step together.

use combclear_domain::basics::natural::{natural_order, sort_naturally};
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, ColonyName};
use serde::Serialize;

use super::SuperingReport;
use crate::Words;
use crate::colonies::colonies;
use crate::words::say;

/// Colonies with the same answer, reason and next step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BoardGroup {
    /// Yes, no or unknown.
    pub answer: Verdict,
    /// The main reason, in a line. Absent for a yes without reservation.
    pub why: Option<String>,
    /// The next step towards a yes, or what would settle the answer.
    pub next: Option<String>,
    /// The colonies, apiary by apiary.
    pub places: Vec<ColoniesAt>,
}

/// Colonies at one apiary.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ColoniesAt {
    /// The apiary, if it is on record.
    pub apiary: Option<ApiaryName>,
    /// The colonies, in the order in which people count.
    pub colonies: Vec<ColonyName>,
}

impl BoardGroup {
    /// Groups the answers: those that may be supered first, then those that may not, then the unknown; larger groups first.
    #[must_use]
    pub fn all(reports: &[SuperingReport]) -> Vec<BoardGroup> {
        let mut groups: Vec<BoardGroup> = Vec::new();
        for report in reports {
            let (answer, said) = (report.in_brief.answer, &report.at_a_glance);
            let same = |group: &&mut BoardGroup| {
                group.answer == answer && group.why == said.why && group.next == said.next
            };
            match groups.iter_mut().find(same) {
                Some(group) => group.add(report),
                None => groups.push(BoardGroup {
                    answer,
                    why: said.why.clone(),
                    next: said.next.clone(),
                    places: vec![ColoniesAt::of(report)],
                }),
            }
        }
        for place in groups.iter_mut().flat_map(|group| &mut group.places) {
            sort_naturally(&mut place.colonies, ColonyName::as_str);
        }
        groups.sort_by_key(|group| (rank(group.answer), usize::MAX - group.count()));
        groups
    }

    /// How many colonies there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.places.iter().map(|place| place.colonies.len()).sum()
    }

    /// The colonies and where they stand: `R1-R15 (15) at Moor; O1-O15 (15) at Orchard`.
    #[must_use]
    pub fn said(&self, words: &Words) -> String {
        self.places.iter().map(|place| place.said(words)).collect::<Vec<_>>().join("; ")
    }

    fn add(&mut self, report: &SuperingReport) {
        match self.places.iter_mut().find(|place| place.apiary == report.apiary) {
            Some(place) => place.colonies.push(report.colony.clone()),
            None => self.places.push(ColoniesAt::of(report)),
        }
    }
}

impl ColoniesAt {
    fn of(report: &SuperingReport) -> ColoniesAt {
        ColoniesAt { apiary: report.apiary.clone(), colonies: vec![report.colony.clone()] }
    }

    /// The colonies, and their apiary if it is on record.
    #[must_use]
    pub fn said(&self, words: &Words) -> String {
        let colonies = colonies(words, &self.colonies);
        match &self.apiary {
            Some(apiary) => say!(words, GlanceAt, colonies = colonies, apiary = apiary),
            None => colonies,
        }
    }
}

/// Sorts reports by apiary, then in the order in which people count their colonies.
pub fn in_order(reports: &mut [SuperingReport]) {
    reports.sort_by(|one, other| {
        let [left, right] = [one, other].map(|report| report.apiary.as_ref().map_or("", ApiaryName::as_str));
        let colonies = || natural_order(one.colony.as_str(), other.colony.as_str());
        natural_order(left, right).then_with(colonies)
    });
}

const fn rank(answer: Verdict) -> u8 {
    match answer {
        Verdict::Yes => 0,
        Verdict::No => 1,
        Verdict::Unknown => 2,
    }
}
