//! What would be free, and when, if everything inside came out on one day.

use super::assess::verdict;
use super::outlook::Outlook;
use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::facts::history::{Course, History, Standing};

/// The earliest day on which everything that bars supers may be out, and the first free day if it comes out then and
/// the missing doses are given on their earliest days. None if one of these is not known. `history` ends with `on`.
pub(super) fn once_out(history: &History, on: Day) -> Option<(Day, Day)> {
    let barring = |course: &&Course| verdict(history, course, on) != Verdict::Yes;
    let mut out = None;
    let mut going: Vec<(usize, Vec<Day>)> = Vec::new();
    for (index, course) in history.courses.iter().enumerate() {
        if !course.speaks_on(on) || !barring(&course) {
            continue;
        }
        match course.standing(on) {
            Standing::Out(_) => {}
            Standing::NotSaid(..) => return None,
            // It is used up by itself.
            Standing::In if course.spent_on(on).is_some() => {}
            Standing::In | Standing::PerhapsSpent(_) => {
                let doses = course.doses_due(on)?;
                let earliest = history.earliest_out(course, on).day?.max(on);
                out = out.max(Some(earliest)).max(doses.last().map(|last| last.next()));
                going.push((index, doses));
            }
        }
    }
    let out = out?;
    let mut then = history.clone();
    for (index, doses) in going {
        if let Some(course) = then.courses.get_mut(index) {
            *course = course.clone().gone_on_with(doses, out);
        }
    }
    let outlook = Outlook::of(&then);
    let free = outlook.blocked(out, out, None).first_free?.max(out);
    Some((out, free))
}
