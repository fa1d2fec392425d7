//! How sentences name a course and its terms.

use combclear_domain::Day;
use combclear_domain::facts::history::{Course, Term};

use crate::Words;
use crate::pieces;
use crate::words::say;

/// A course by the name on its pack and its first day.
pub(super) fn named(words: &Words, course: &Course) -> String {
    course_name(words, &pieces::called(words, course.called()), course.placed, course.terms.nothing_stays())
}

/// A course, from the parts of its name.
pub(crate) fn course_name(words: &Words, pack: &str, day: Day, nothing_stays: bool) -> String {
    if nothing_stays {
        return say!(words, SuperingCourseGiven, pack = pack, day = day);
    }
    say!(words, SuperingCoursePlaced, pack = pack, day = day)
}

/// A term, without its article.
pub(crate) fn term(words: &Words, term: Term) -> String {
    say!(words, TermName, term = key(term))
}

/// A term in two or three words, for a line that must be short.
pub(super) fn term_in_brief(words: &Words, term: Term) -> String {
    say!(words, TermBrief, term = key(term))
}

/// A term as a question, if it is not stated.
pub(crate) fn question(words: &Words, term: Term) -> String {
    say!(words, TermQuestion, term = key(term))
}

const fn key(term: Term) -> &'static str {
    match term {
        Term::SupersDuring => "supers-during",
        Term::FlowDuring => "flow-during",
        Term::FlowBefore => "flow-before",
        Term::Withdrawal => "withdrawal",
        Term::Wait => "wait",
        Term::Removal => "removal",
        Term::UsedUp => "used-up",
        Term::StayMin => "stay-min",
        Term::StayMinWithBrood => "stay-min-with-brood",
        Term::StayMax => "stay-max",
        Term::Doses => "doses",
        Term::DoseInterval => "dose-interval",
    }
}

/// Why the earliest day out of a course is not known.
pub(crate) fn no_earliest_day(words: &Words, missing: Term) -> String {
    if missing == Term::StayMin {
        return say!(words, SuperingNoLeastStay);
    }
    say!(words, SuperingEarliestNotKnown, lack = question(words, missing))
}
