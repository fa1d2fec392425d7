//! `combclear pack`: the register of a period in every format, with gaps and proofs, in one file.

use std::io::Write;

use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::gaps::Gaps;
use combclear_domain::questions::register::Register;
use combclear_papers::pack::{Failing, Input, Why, pack};
use combclear_store::{ContentState, contents_of};
use combclear_wording::gaps::GapsReport;
use combclear_wording::register::RegisterReport;
use combclear_wording::terminal::documents::{self as say, Packed};
use combclear_wording::{Label, Words};

use super::gaps::not_kept;
use super::{output, print, register, seen};
use crate::args::{Pack, Place};
use crate::failure::Failure;
use crate::{Outcome, clock, place, typesetter};

pub(crate) async fn run(at: &Place, ask: &Pack) -> Result<Outcome, Failure> {
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let (period, as_of) = register::period(&ask.time)?;
    output::must_be_new([ask.file.as_path()])?;
    let (report, gaps, contents, failing) = place::with_holding(at, async |holdings, holding| {
        let not_kept = not_kept(holdings, &holding).await?;
        // Both come from one state of the journal.
        let both = |holding: &Holding| {
            let register = Register::of(holding, leaflets, period, as_of);
            let gaps = Gaps::in_register(holding, leaflets, laws, &register, &not_kept);
            let words = Words::english();
            (RegisterReport::of(words, register), GapsReport::of(words, &gaps))
        };
        let both = holdings.read(&holding, both).await?;
        let (report, gaps) =
            both.ok_or_else(|| Failure::new(Label::JournalIsEmpty, Label::JournalTakeOneIn))?;
        let wanted = Input::wanted(&report);
        let (contents, failing) = contents_of(holdings.journal().as_ref(), &holding, &wanted).await?;
        Ok((report, gaps, contents, failing))
    })
    .await?;
    let failing: Vec<Failing> =
        failing.into_iter().map(|(hash, state)| Failing { hash, why: why(state) }).collect();
    let typesetter = typesetter::built_in();
    let input = Input {
        report: &report,
        gaps: Some(&gaps),
        contents: &contents,
        failing: &failing,
        typesetter: typesetter.as_deref(),
        made: clock::now(),
    };
    let bytes = pack(&input).map_err(register::not_made)?;
    output::write(&ask.file, &bytes)?;
    let said = said(ask, &report, &gaps, contents.len(), failing.len());
    if output::is_standard_output(&ask.file) {
        // The pack is complete. Whoever closed standard error does not want to know.
        let _ = writeln!(std::io::stderr(), "{}", seen(&said));
    } else {
        print(&said)?;
    }
    Ok(if failing.is_empty() { Outcome::Done } else { Outcome::InPart })
}

fn why(state: ContentState) -> Why {
    match state {
        ContentState::Missing => Why::Missing,
        ContentState::Kept | ContentState::Altered => Why::Altered,
    }
}

fn said(ask: &Pack, report: &RegisterReport, gaps: &GapsReport, kept: usize, failing: usize) -> String {
    let words = Words::english();
    let earlier = report.administrations.iter().filter(|row| row.earlier).count();
    let packed = Packed {
        file: &ask.file.display().to_string(),
        holding: &report.holding,
        from: report.from,
        to: report.to,
        administrations: report.administrations.len() - earlier,
        earlier,
        documents: kept,
    };
    let mut lines = vec![say::packed(words, &packed)];
    if failing > 0 {
        lines.push(say::lost(words, failing));
    }
    lines.extend(gaps.summary.iter().cloned());
    lines.join("\n")
}
