//! What would be free, and when, if everything that is in came out on one day.

use super::assess::{Standing, spent_on, verdict};
use super::outlook::Outlook;
use super::steps::{doses_due, earliest_out};
use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::facts::history::{Course, Dose, End, History};

/// The earliest day on which everything that bars supers may be out, and the first free day if it comes out then and the doses
/// that are missing are given on their earliest days. None if one of these is not known. `history` ends with `on`.
pub(super) fn once_out(history: &History, on: Day) -> Option<(Day, Day)> {
    let barring = |course: &&Course| verdict(history, course, on) != Verdict::Yes;
    let mut out = None;
    let mut going: Vec<(usize, Vec<Day>)> = Vec::new();
    for (index, course) in history.courses.iter().enumerate() {
        let speaks = course.here_from <= on && course.until.is_none_or(|until| on < until);
        if !speaks || !barring(&course) {
            continue;
        }
        match Standing::of(course, on) {
            Standing::Out(_) => {}
            Standing::NotSaid(..) => return None,
            // It goes by itself.
            Standing::In if spent_on(course, on).is_some() => {}
            Standing::In | Standing::PerhapsSpent => {
                let doses = doses_due(course, on)?;
                let earliest = earliest_out(history, course, on).day?.max(on);
                out = out.max(Some(earliest)).max(doses.last().map(|last| last.next()));
                going.push((index, doses));
            }
        }
    }
    let out = out?;
    let mut then = history.clone();
    for (index, doses) in going {
        let Some(course) = then.courses.get_mut(index) else { continue };
        // What would be recorded has no entry yet: the first dose stands for it.
        let entry = course.entry;
        course.doses.extend(doses.into_iter().map(|on| Dose { on, at: None, entry }));
        course.end = End::Out { on: out, entry };
    }
    let outlook = Outlook::of(&then);
    let free = outlook.blocked(out, out, None).first_free?.max(out);
    Some((out, free))
}
