//! `combclear pack`: the register of a period in every format, with gaps and proofs, in one file.

use std::path::Path;

use combclear_domain::questions::register::Register;
use combclear_papers::pack::{FILES, Found, Input, NotPacked, Packer, seasons, wanted};
use combclear_store::content_of;
use combclear_wording::gaps::GapsReport;
use combclear_wording::terminal::documents::{self as say, Packed};
use combclear_wording::{Label, Words};

use super::gaps::not_kept;
use super::output::{self, Unfinished};
use super::{print, progress, register, seen};
use crate::args::{Pack, Place};
use crate::failure::Failure;
use crate::layout::tell;
use crate::{Outcome, clock, place, typesetter};

pub(crate) async fn run(at: &Place, ask: &Pack) -> Result<Outcome, Failure> {
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let words = Words::english();
    let time = register::period(&ask.time)?;
    output::must_be_new([ask.file.as_path()])?;
    let (unfinished, file) = Unfinished::begin(&ask.file)?;
    let mut packer = Packer::begin(file, clock::now());
    let bar = progress::spinner(Label::PackReading);
    let (register, gaps, seasons, kept, failing) = place::with_holding(at, async |holdings, holding| {
        let not_kept = not_kept(holdings, &holding).await?;
        let read = |holding: &_| {
            let (register, gaps) = register::both(holding, leaflets, laws, time, &not_kept);
            let seasons = seasons(words, holding, leaflets, register.to.min(register.as_of));
            (register, gaps, seasons)
        };
        let ((register, gaps, seasons), of_archives) =
            place::read_with_documents(holdings, &holding, &ask.read_back, read).await?;
        let documents = wanted(&register);
        progress::of_steps(&bar, documents.len() + FILES);
        let (mut kept, mut failing) = (0, 0);
        for document in documents {
            bar.inc(1);
            let of_archive = of_archives.iter().find(|content| content.hash() == document.content);
            let found = match of_archive {
                Some(content) => Found::Kept(content.clone()),
                None => content_of(holdings.journal().as_ref(), &holding, document.content).await?.into(),
            };
            *(if matches!(found, Found::Kept(_)) { &mut kept } else { &mut failing }) += 1;
            packer.document(document, &found).map_err(|why| not_packed(&ask.file, why))?;
        }
        Ok((register, gaps, seasons, kept, failing))
    })
    .await?;
    let typesetter = typesetter::built_in();
    let gaps_asked = ask.with_gaps.then_some(&gaps);
    let typesetter = typesetter.as_deref();
    let input = Input { words, register: &register, gaps: gaps_asked, seasons: &seasons, typesetter };
    let file = packer
        .finish(&input, |name| {
            bar.inc(1);
            bar.set_message(name.to_owned());
        })
        .map_err(|why| not_packed(&ask.file, why))?;
    bar.finish_and_clear();
    unfinished.done(file)?;
    let said = said(ask, &register, &gaps, kept, failing);
    if output::is_standard_output(&ask.file) {
        tell(&seen(&said));
    } else {
        print(&said)?;
    }
    Ok(if failing == 0 { Outcome::Done } else { Outcome::InPart })
}

/// The failure for a pack: of its file, or of what goes into it.
fn not_packed(path: &Path, why: NotPacked) -> Failure {
    match why {
        NotPacked::Write(error) => output::cannot_write(path, &error),
        other => register::not_made(other),
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
