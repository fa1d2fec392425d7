//! `combclear pack`: the register of a time in every form, with its proofs, in one file.

use combclear_papers::pack::{Input, pack};

use super::{counted, output, print, register};
use crate::args::{Pack, Place};
use crate::failure::Failure;
use crate::{Outcome, clock};

pub(crate) async fn run(at: &Place, ask: &Pack) -> Result<Outcome, Failure> {
    let report = register::report(at, &ask.time).await?;
    // Documents and gaps join here: the contents that the report names, and the report of the same time.
    let input = Input { report: &report, gaps: None, contents: &[], failing: &[], made: clock::now() };
    let bytes = pack(&input).map_err(register::not_made)?;
    output::save(&ask.file, &bytes)?;
    let administrations = u32::try_from(report.administrations.len()).unwrap_or(u32::MAX);
    let entries = counted(administrations, "administration", "administrations");
    print(&format!("`{}`: the register of {} to {}, {entries}", ask.file.display(), report.from, report.to))?;
    Ok(Outcome::Done)
}
