//! The days and colonies that the laws ask about.

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::ColonyName;
use combclear_domain::facts::holding::Holding;

/// Days of plans count from here.
const FIRST_DAY: &str = "2026-03-01";
/// Days in a plan.
pub(super) const SPAN: u16 = 90;
/// Leaflets of strips that must come out, keep supers off meanwhile, and are fully documented.
pub(super) const PLAIN_STRIPS: [&str; 2] = ["strip-42-56", "strip-withdrawal-10"];

/// A day of a plan.
pub(crate) fn day(ahead: u16) -> Day {
    FIRST_DAY.parse::<Day>().unwrap().plus(ahead)
}

/// Every day of a plan, with some before and many after it.
pub(super) fn days() -> impl Iterator<Item = Day> {
    let before = ["2024-12-31", "2025-01-01", "2026-02-28"].map(|day| day.parse().unwrap());
    before.into_iter().chain((0..SPAN + 45).map(day))
}

/// Every colony of a holding, and one that is not in it.
pub(super) fn colonies(holding: &Holding) -> Vec<ColonyName> {
    holding.colonies().cloned().chain(["nobody".parse().unwrap()]).collect()
}
