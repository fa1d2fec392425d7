//! `combclear verify`: that nothing was changed since it was recorded.

use combclear_domain::journal::Checkpoint;
use combclear_store::Verified;
use serde::Serialize;

use super::{print, print_json};
use crate::args::{Place, Verify};
use crate::failure::Failure;
use crate::{Outcome, place};

#[derive(Serialize)]
struct Report {
    holding: String,
    sound: bool,
    entries: Option<u64>,
    head: Option<String>,
    fault: Option<String>,
    first_bad_entry: Option<u64>,
}

pub(crate) async fn run(at: &Place, verify: &Verify) -> Result<Outcome, Failure> {
    let (register, holding) = place::open_holding(at).await?;
    let since = verify.since.as_ref().map(checkpoint).transpose()?;
    let verified = register.journal().verify(&holding, since.as_ref()).await?;
    let mut report = Report {
        holding: holding.to_string(),
        sound: false,
        entries: None,
        head: None,
        fault: None,
        first_bad_entry: None,
    };
    let said = match &verified {
        Verified::Sound { entries, head } => {
            report.sound = true;
            report.entries = Some(*entries);
            report.head = head.map(|head| head.to_string());
            let kept = head.map(|head| Checkpoint { holding: holding.clone(), entries: *entries, head });
            let kept = kept.map(|kept| format!("\nKeep these three lines elsewhere as a checkpoint:\n{kept}"));
            let before = if since.is_some() { ", and it agrees with the checkpoint" } else { "" };
            format!("The journal of {holding} holds: {entries} entries, each as it was recorded{before}.{}", kept.unwrap_or_default())
        }
        Verified::Broken(broken) => {
            report.first_bad_entry = Some(broken.seq);
            report.fault = Some(broken.to_string());
            format!("The journal of {holding} DOES NOT HOLD. First bad one: {broken}")
        }
        Verified::CheckpointMissed(missed) => {
            report.fault = Some(missed.to_string());
            format!("The journal of {holding} DOES NOT HOLD against the checkpoint: {missed}")
        }
    };
    if verify.json { print_json(&report)? } else { print(said.trim_end())? }
    Ok(if report.sound { Outcome::Done } else { Outcome::No })
}

fn checkpoint(file: &std::path::PathBuf) -> Result<Checkpoint, Failure> {
    let help = "give the three lines that `combclear verify` printed";
    let text = std::fs::read_to_string(file)
        .map_err(|error| Failure::new(format!("cannot read `{}`: {error}", file.display()), help))?;
    text.parse().map_err(|error| Failure::new(format!("`{}`: {error}", file.display()), help))
}
