//! Divides an administration among lots and colonies of one fate, so that amounts add up.

use combclear_domain::basics::quantity::Quantity;
use combclear_domain::basics::words::ColonyName;
use combclear_domain::questions::register::{AdministrationRow, CoursePart, GivenPart};

/// Colonies treated from one lot whose course went the same way.
pub(crate) struct Share<'r> {
    /// What they were given; absent for those that received the course in a split or a uniting.
    pub(crate) given: Option<&'r GivenPart>,
    /// Their course; absent if not on record.
    pub(crate) course: Option<&'r CoursePart>,
    pub(crate) colonies: Vec<&'r ColonyName>,
}

impl Share<'_> {
    /// The total given to these colonies. The sum over all shares is the total of the entry.
    pub(crate) fn quantity(&self) -> Option<Quantity> {
        let count = u64::try_from(self.colonies.len()).unwrap_or(u64::MAX);
        self.given.map(|given| given.each.times(count))
    }
}

/// The shares of an administration: by lot, then by fate; last the colonies that received the course from another.
pub(crate) fn shares(row: &AdministrationRow) -> Vec<Share<'_>> {
    let mut shares = Vec::new();
    let own = || row.courses.iter().filter(|course| course.came_by.is_none());
    for given in &row.given {
        for course in own() {
            let both = given.colonies.iter().filter(|colony| course.colonies.contains(colony));
            push(&mut shares, Some(given), Some(course), both.collect());
        }
        let untold = given.colonies.iter().filter(|colony| !own().any(|part| part.colonies.contains(colony)));
        push(&mut shares, Some(given), None, untold.collect());
    }
    for course in row.courses.iter().filter(|course| course.came_by.is_some()) {
        push(&mut shares, None, Some(course), course.colonies.iter().collect());
    }
    shares
}

fn push<'r>(
    shares: &mut Vec<Share<'r>>,
    given: Option<&'r GivenPart>,
    course: Option<&'r CoursePart>,
    colonies: Vec<&'r ColonyName>,
) {
    if !colonies.is_empty() {
        shares.push(Share { given, course, colonies });
    }
}
