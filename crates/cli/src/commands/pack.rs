//! `combclear pack`: the register of a period in every format, with gaps and proofs, in one file.

use std::io::Write;

use combclear_domain::journal::Content;
use combclear_domain::questions::register::Register;
use combclear_papers::pack::{Failing, Input, Why, pack};
use combclear_store::{ContentState, contents_of};
use combclear_wording::Words;
use combclear_wording::gaps::GapsReport;
use combclear_wording::terminal::documents::{self as say, Packed};

use super::gaps::not_kept;
use super::{output, print, register, seen};
use crate::args::{Pack, Place};
use crate::failure::Failure;
use crate::{Outcome, clock, place, typesetter};

pub(crate) async fn run(at: &Place, ask: &Pack) -> Result<Outcome, Failure> {
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let time = register::period(&ask.time)?;
    output::must_be_new([ask.file.as_path()])?;
    let (register, gaps, contents, failing) = place::with_holding(at, async |holdings, holding| {
        let not_kept = not_kept(holdings, &holding).await?;
        let read = |holding: &_| register::both(holding, leaflets, laws, time, &not_kept);
        let ((register, gaps), mut contents) =
            place::read_with_documents(holdings, &holding, &ask.read_back, read).await?;
        let mut wanted = Input::wanted(&register);
        contents.retain(|content: &Content| wanted.contains(&content.hash()));
        wanted.retain(|wanted| !contents.iter().any(|content| content.hash() == *wanted));
        let (stored, failing) = contents_of(holdings.journal().as_ref(), &holding, &wanted).await?;
        contents.extend(stored);
        Ok((register, gaps, contents, failing))
    })
    .await?;
    let failing: Vec<Failing> =
        failing.into_iter().map(|(hash, state)| Failing { hash, why: why(state) }).collect();
    let typesetter = typesetter::built_in();
    let input = Input {
        register: &register,
        gaps: ask.with_gaps.then_some(&gaps),
        contents: &contents,
        failing: &failing,
        typesetter: typesetter.as_deref(),
        made: clock::now(),
    };
    let bytes = pack(&input).map_err(register::not_made)?;
    output::write(&ask.file, &bytes)?;
    let said = said(ask, &register, &gaps, contents.len(), failing.len());
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

fn said(ask: &Pack, register: &Register, gaps: &GapsReport, kept: usize, failing: usize) -> String {
    let words = Words::english();
    let earlier = register.administrations.iter().filter(|row| row.earlier).count();
    let packed = Packed {
        file: &ask.file.display().to_string(),
        holding: &register.holding,
        from: register.from,
        to: register.to,
        administrations: register.administrations.len() - earlier,
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
