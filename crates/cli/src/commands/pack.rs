//! `combclear pack`: the register of a time in every form, with its gaps and proofs, in one file.

use std::io::Write;

use combclear_domain::questions::register::Register;
use combclear_papers::pack::{Failing, Input, Why, pack};
use combclear_store::{ContentState, contents_of};
use combclear_wording::gaps::GapsReport;

use super::{counted, output, print, register, seen};
use crate::args::{Pack, Place};
use crate::failure::Failure;
use crate::{Outcome, clock, place, typesetter};

pub(crate) async fn run(at: &Place, ask: &Pack) -> Result<Outcome, Failure> {
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let time = register::period(&ask.time)?;
    output::must_be_new([ask.file.as_path()])?;
    let (register, gaps, contents, failing) = place::with_holding(at, async |holdings, holding| {
        let (register, gaps) = register::both(holdings, &holding, leaflets, laws, time).await?;
        let wanted = Input::wanted(&register);
        let (contents, failing) = contents_of(holdings.journal().as_ref(), &holding, &wanted).await?;
        Ok((register, gaps, contents, failing))
    })
    .await?;
    let failing: Vec<Failing> =
        failing.into_iter().map(|(hash, state)| Failing { hash, why: why(state) }).collect();
    let typesetter = typesetter::built_in();
    let input = Input {
        register: &register,
        gaps: Some(&gaps),
        contents: &contents,
        failing: &failing,
        typesetter: typesetter.as_deref(),
        made: clock::now(),
    };
    let bytes = pack(&input).map_err(register::not_made)?;
    output::write(&ask.file, &bytes)?;
    let said = said(ask, &register, &gaps, contents.len(), failing.len());
    if output::is_standard_output(&ask.file) {
        // The pack is there already. Whoever closed standard error does not want to know.
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
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let before = register.administrations.iter().filter(|row| row.earlier).count();
    let within = register.administrations.len() - before;
    let mut administrations = counted(count(within), "administration", "administrations");
    if before > 0 {
        administrations
            .push_str(&format!(" and {before} given before and still in or with a period running"));
    }
    let documents = counted(count(kept), "document", "documents");
    let lost = match failing {
        0 => String::new(),
        failing => format!(
            "\n{} missing or altered; the index names what it proved",
            counted(count(failing), "document is", "documents are")
        ),
    };
    let (file, from, to) = (ask.file.display(), register.from, register.to);
    format!(
        "`{file}`: the register of {} from {from} to {to}, {administrations}, {documents}{lost}\n{}",
        register.holding,
        gaps.summary.join("\n")
    )
}
