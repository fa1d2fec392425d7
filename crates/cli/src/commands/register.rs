//! `combclear register`: the legal register for a time.

use combclear_domain::calendar::Day;
use combclear_domain::register::{Period, RegisterReport};

use super::print_json;
use crate::args::{Place, Register, Time};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &Register) -> Result<Outcome, Failure> {
    let leaflets = &place::leaflets(at)?;
    let (period, as_of) = period(&ask.time)?;
    let report = place::with_holding(at, async |register, holding| {
        let read = |holding: &_| RegisterReport::of(holding, leaflets, period, as_of);
        let report = register.read(&holding, read).await?;
        report.ok_or_else(|| Failure::new("the journal is empty", "take a journal in first"))
    })
    .await?;
    print_json(&report)?;
    Ok(Outcome::Done)
}

/// The time that is meant, and the day whose knowledge counts.
pub(super) fn period(time: &Time) -> Result<(Period, Day), Failure> {
    let today = clock::today();
    let to = time.to.unwrap_or(today);
    let from = time.from.unwrap_or_else(|| to.first_of_year());
    let period = Period::new(from, to)
        .map_err(|fault| Failure::new(fault.to_string(), "swap --from and --to, or correct one of them"))?;
    Ok((period, time.as_of.unwrap_or(today)))
}
