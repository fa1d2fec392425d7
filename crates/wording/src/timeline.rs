//! The words of the picture of a season: its title, what stands beside each row, and all of it in sentences for whoever does not see it.

use combclear_domain::Day;
use combclear_domain::basics::words::ApiaryName;
use combclear_domain::questions::timeline::{Band, Timeline};

use crate::pieces;
use crate::terminal::verdict;
use crate::words::say;
use crate::{Label, Words};

/// The title of the picture of a colony.
#[must_use]
pub fn title(words: &Words, timeline: &Timeline) -> String {
    say!(words, TimelineTitle, colony = &timeline.colony, on = timeline.on)
}

/// The title of the picture of an apiary.
#[must_use]
pub fn title_of_apiary(words: &Words, apiary: &ApiaryName, on: Day) -> String {
    say!(words, TimelineTitleApiary, apiary = apiary, on = on)
}

/// What the picture of a colony shows, in sentences.
#[must_use]
pub fn described(words: &Words, timeline: &Timeline) -> String {
    let runs = timeline.answers.iter().map(|(from, to, answer)| {
        say!(words, TimelineRun, answer = verdict(words, *answer), from = *from, to = *to)
    });
    let runs = runs.collect::<Vec<_>>().join(", ");
    let mut said = vec![
        say!(words, TimelineShown, from = timeline.from, to = timeline.to),
        say!(words, TimelineAnswers, runs = runs),
    ];
    said.extend(timeline.courses.iter().map(|band| course(words, band)));
    said.extend(timeline.supers.iter().map(|span| match span.off {
        Some(off) => say!(words, TimelineSupersOff, from = span.from, off = off),
        None => say!(words, TimelineSupers, from = span.from),
    }));
    said.extend(timeline.flows.iter().map(|(from, to)| say!(words, TimelineFlow, from = *from, to = *to)));
    said.join(". ") + "."
}

/// A course in a line.
#[must_use]
pub fn course(words: &Words, band: &Band) -> String {
    let name = called(words, band);
    if band.leaves_nothing {
        return say!(words, TimelineDose, name = name, placed = band.placed);
    }
    let placed = say!(words, TimelineCourse, name = name, placed = band.placed);
    if let Some(out) = band.out {
        return say!(words, TimelineOut, course = placed, out = out);
    }
    let mut said = if band.inside { say!(words, TimelineInside, course = placed) } else { placed };
    if let Some(day) = band.may_come_out {
        said = say!(words, TimelineMayComeOut, course = said, day = day);
    }
    if let Some(day) = band.must_be_out {
        said = say!(words, TimelineMustBeOut, course = said, day = day);
    }
    said
}

/// What stands beside the answers, the supers and the flows, and what the marks mean.
#[must_use]
pub fn labels(words: &Words) -> [&str; 4] {
    [Label::TimelineAnswers, Label::TimelineSupers, Label::TimelineFlow, Label::TimelineKey]
        .map(|label| words.label(label))
}

fn called(words: &Words, band: &Band) -> String {
    if band.pack_name.is_empty() {
        pieces::medicine(words, &band.medicine).into_owned()
    } else {
        band.pack_name.clone()
    }
}
