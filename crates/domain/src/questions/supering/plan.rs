//! When a colony is free: according to the record, or once everything inside comes out on one day.

use super::FirstFree;
use super::assess::verdict;
use super::outlook::{Blocked, Outlook};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::verdict::Verdict;
use crate::facts::history::{Course, History, Planned, Standing};

/// When a colony is free, as of a day.
pub(crate) struct Ahead {
    /// The last blocked and the first free day according to the record.
    pub(super) on_record: Blocked,
    /// From when it is free.
    pub(super) first_free: FirstFree,
    /// The answer day by day, if everything that bars supers comes out on its earliest day. `None` if no first free
    /// day is known.
    pub(crate) outlook: Option<Outlook>,
}

impl Ahead {
    pub(crate) fn of(history: &History, on: Day) -> Ahead {
        let known = history.clone().up_to(on);
        let outlook = Outlook::of(&known);
        let out = known.courses_on(on).filter_map(|course| course.out_since(on)).max();
        let none = Blocked { last: None, first_free: None };
        let on_record = match known.begun {
            Some((begun, _)) if known.archived_on(on).is_none() => {
                // What is in an archive is not on record.
                let first = known.archived_through.map_or(begun, |(through, _)| begun.max(through.next()));
                outlook.blocked(on, first, out)
            }
            Some(_) | None => none,
        };
        let colony_is_open =
            known.may_be_supered(on) != Verdict::Yes && known.colony_verdict(on) != Verdict::Yes;
        let (first_free, outlook) = match (colony_is_open, on_record.first_free) {
            (true, _) => (FirstFree::NotKnown, None),
            (false, Some(free)) => (FirstFree::OnRecord(free), Some(outlook)),
            (false, None) => match once_out(&known, on) {
                Some((out, free, outlook)) => (FirstFree::OnceOut { out, free }, Some(outlook)),
                None => (FirstFree::NotKnown, None),
            },
        };
        Ahead { on_record, first_free, outlook }
    }
}

/// The earliest day on which everything that bars supers may be out; the first free day if it comes out then and the
/// missing doses are given on their earliest days; and the answer day by day. `None` if one of these is not known.
/// `history` ends with `on`.
fn once_out(history: &History, on: Day) -> Option<(Day, Day, Outlook)> {
    let mut out = None;
    let mut going: Vec<(&Course, Vec<Day>)> = Vec::new();
    let mut rest: Vec<&Course> = Vec::new();
    for course in &history.courses {
        rest.push(course);
        if !course.speaks_on(on) || verdict(history, course, on) == Verdict::Yes {
            continue;
        }
        match course.standing(on) {
            Standing::Out(_) => {}
            Standing::NotSaid(..) => return None,
            // It is used up in the hive and need not come out.
            Standing::In if course.spent_on(on).is_some() => {}
            Standing::In | Standing::PerhapsSpent(_) => {
                let Fact::Known(doses) = course.doses_due(on) else { return None };
                let Fact::Known(earliest) = history.earliest_out(course, on).day else { return None };
                out = out.max(Some(earliest.max(on)));
                going.extend(rest.pop().map(|course| (course, doses)));
            }
        }
    }
    let out = out?;
    let going: Vec<Planned<'_>> =
        going.into_iter().map(|(course, doses)| course.gone_on_with(doses, out)).collect();
    let outlook = Outlook::of_colony(history)
        .and(&Outlook::of_lines(history, &rest))
        .and(&Outlook::of_lines(history, &going.iter().collect::<Vec<_>>()));
    let free = outlook.free_from(out)?;
    Some((out, free, outlook))
}
