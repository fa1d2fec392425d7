//! A second, simpler way to the same answers, for strips that must come out: walks the entries day by day and notes for each
//! colony whether a course is in, perhaps in, or out since some day. The program must agree on every day.

use combclear_domain::basics::verdict::Verdict;
use std::collections::BTreeMap;

use combclear_domain::basics::calendar::{Day, first_free_day};
use combclear_domain::basics::words::{ColonyName, LotName, StripsAtSplit, StripsAtUniting};
use combclear_domain::facts::history::History;
use combclear_domain::journal::{Draft, EntryId, Event};
use proptest::prelude::*;

use super::leaflets;
use super::making::{PLAIN_STRIPS, days};
use super::plans::journals_of_strips;
use crate::some;

/// The strips of a course in one colony. After a uniting, some may be in and others out.
#[derive(Debug, Clone, Copy, Default)]
struct Strips {
    are_in: bool,
    may_be_in: bool,
    out_since: Option<Day>,
    /// The day since which it is not stated whether they are in.
    not_said_since: Option<Day>,
}

#[derive(Debug, Default)]
struct Model {
    begun: BTreeMap<ColonyName, Day>,
    ended: BTreeMap<ColonyName, Day>,
    inside: BTreeMap<(ColonyName, EntryId), Strips>,
    /// Days of withdrawal of a course.
    periods: BTreeMap<EntryId, u16>,
    /// Colonies in which something stated to be out was taken out: their record contradicts itself.
    contradicted: Vec<ColonyName>,
}

impl Model {
    fn take(&mut self, draft: &Draft) {
        let on = draft.on;
        match &draft.event {
            Event::ColonyEstablished(body) => {
                self.begun.insert(body.colony.clone(), on);
            }
            Event::ColonyEnded(body) => {
                self.ended.insert(body.colony.clone(), on);
            }
            Event::Administration(body) => {
                let course = body.continues.unwrap_or(draft.id);
                for part in &body.given {
                    self.periods.insert(course, withdrawal_of(&part.lot));
                    for colony in &part.colonies {
                        self.inside.entry((colony.clone(), course)).or_default().are_in = true;
                    }
                }
            }
            Event::Removal(body) => {
                for colony in &body.colonies {
                    let strips = self.inside.entry((colony.clone(), body.administration)).or_default();
                    if !strips.are_in && !strips.may_be_in {
                        self.contradicted.push(colony.clone());
                    }
                    let cleared = Strips { out_since: Some(on), ..Strips::default() };
                    *strips =
                        if body.left_inside == 0 { cleared } else { Strips { are_in: true, ..*strips } };
                }
            }
            Event::ColonySplit(body) => {
                self.begun.insert(body.into.clone(), on);
                let both = |here, there| (Some(here), Some(there));
                let (stay, went) = match body.strips {
                    None => (None, None),
                    Some(StripsAtSplit::Stayed) => both(true, false),
                    Some(StripsAtSplit::Went) => both(false, true),
                    Some(StripsAtSplit::Both) => both(true, true),
                };
                self.carry(&body.colony, &body.into, went, on);
                self.part(&body.colony, stay, on);
            }
            Event::ColonyUnited(body) => {
                self.ended.insert(body.colony.clone(), on);
                let went = body.strips.map(|strips| strips == StripsAtUniting::WentAlong);
                self.carry(&body.colony, &body.into, went, on);
            }
            _ => {}
        }
    }

    fn part(&mut self, colony: &ColonyName, here: Option<bool>, on: Day) {
        for ((of, _), strips) in &mut self.inside {
            if of == colony {
                *strips = parted(*strips, here, on);
            }
        }
    }

    fn carry(&mut self, from: &ColonyName, to: &ColonyName, went: Option<bool>, on: Day) {
        let carried: Vec<_> = self
            .inside
            .iter()
            .filter(|((of, _), _)| of == from)
            .map(|((_, course), strips)| (*course, *strips))
            .collect();
        for (course, strips) in carried {
            let brought = parted(strips, went, on);
            let here = self.inside.entry((to.clone(), course)).or_default();
            *here = Strips {
                are_in: here.are_in || brought.are_in,
                may_be_in: here.may_be_in || brought.may_be_in,
                out_since: here.out_since.max(brought.out_since),
                not_said_since: here.not_said_since.max(brought.not_said_since),
            };
        }
        if self.contradicted.contains(from) {
            self.contradicted.push(to.clone());
        }
    }

    fn verdict(&self, colony: &ColonyName, on: Day) -> Verdict {
        if self.ended.get(colony).is_some_and(|ended| *ended <= on) {
            return Verdict::No;
        }
        if self.begun.get(colony).is_none_or(|begun| on < *begun) {
            return Verdict::Unknown;
        }
        let of_course = |(course, strips): (&EntryId, &Strips)| {
            let runs = strips.out_since.is_some_and(|out| on < first_free_day(out, self.periods[course]));
            // If it was removed at the unstated moment, a period runs from then: in or out, supers are barred.
            let since = strips.not_said_since.filter(|_| strips.may_be_in);
            let either = since.is_some_and(|since| on < first_free_day(since, self.periods[course]));
            match (strips.are_in || runs || either, strips.may_be_in) {
                (true, _) => Verdict::No,
                (false, true) => Verdict::Unknown,
                (false, false) => Verdict::Yes,
            }
        };
        let here = self
            .inside
            .iter()
            .filter(|((of, _), _)| of == colony)
            .map(|((_, course), strips)| (course, strips));
        here.map(of_course).fold(Verdict::Yes, Verdict::and)
    }
}

/// The strips after an event that says they are here, or not, or does not say.
fn parted(strips: Strips, here: Option<bool>, on: Day) -> Strips {
    match here {
        _ if !strips.are_in && !strips.may_be_in => strips,
        Some(true) => strips,
        Some(false) => Strips { out_since: Some(on), ..Strips::default() },
        None => Strips {
            are_in: false,
            may_be_in: true,
            not_said_since: if strips.are_in { Some(on) } else { strips.not_said_since.or(Some(on)) },
            ..strips
        },
    }
}

fn withdrawal_of(lot: &LotName) -> u16 {
    let [none, ten] = PLAIN_STRIPS;
    match lot.as_str() {
        name if name.starts_with(none) => 0,
        name if name.starts_with(ten) => 10,
        other => panic!("{other} is no lot of plain strips"),
    }
}

proptest! {
    #![proptest_config(some(192))]

    #[test]
    fn strips_followed_day_by_day_give_the_same_answers(journal in journals_of_strips()) {
        let holding = journal.holding();
        let mut model = Model::default();
        let mut left = journal.0.iter().peekable();
        let histories: Vec<History> = holding.colonies().map(|colony| History::of(&holding, leaflets(), colony)).collect();
        let mut whole = Model::default();
        journal.0.iter().for_each(|draft| whole.take(draft));
        for on in days() {
            while let Some(draft) = left.next_if(|draft| draft.on <= on) {
                model.take(draft);
            }
            for history in histories.iter().filter(|history| !whole.contradicted.contains(&history.colony)) {
                let (program, plain) = (history.may_be_supered(on), model.verdict(&history.colony, on));
                prop_assert_eq!(program, plain, "{} on {}: {:?}", &history.colony, on, &model.inside);
            }
        }
    }
}
