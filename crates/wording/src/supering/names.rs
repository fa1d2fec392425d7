//! How sentences name a course and its terms.

use combclear_domain::Day;
use combclear_domain::facts::history::Course;
use combclear_domain::questions::supering::Term;
use combclear_domain::rules::leaflet::Release;

use crate::Words;
use crate::words::say;

/// A course by the name on its pack and its first day.
pub(super) fn named(words: &Words, course: &Course) -> String {
    let pack = if course.pack_name.is_empty() { course.medicine.as_str() } else { &course.pack_name };
    course_name(words, pack, course.placed, course.terms.release() == Some(Release::Single))
}

/// The same, from the parts of the name.
pub(crate) fn course_name(words: &Words, pack: &str, day: Day, nothing_stays: bool) -> String {
    if nothing_stays {
        return say!(words, SuperingCourseGiven, pack = pack, day = day);
    }
    say!(words, SuperingCoursePlaced, pack = pack, day = day)
}

/// A term, as it follows its article in a sentence.
pub(crate) fn term(words: &Words, term: Term) -> String {
    match term {
        Term::SupersDuring => say!(words, SuperingTermSupersDuring),
        Term::Withdrawal => say!(words, SuperingTermWithdrawal),
        Term::Wait => say!(words, SuperingTermWait),
        Term::Removal => say!(words, SuperingTermRemoval),
        Term::UsedUp => say!(words, SuperingTermUsedUp),
        Term::StayMin => say!(words, SuperingTermStayMin),
        Term::StayMax => say!(words, SuperingTermStayMax),
        Term::FlowBefore => say!(words, SuperingTermFlowBefore),
    }
}
