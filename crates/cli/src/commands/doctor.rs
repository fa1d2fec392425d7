//! `combclear doctor`: what is wrong with a database, and what to do about it.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_store::{Holdings, Journal, StoreError, Verified, Weakness};
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::{care as say, failures, verify};
use combclear_wording::{Label, Words, keeping};
use serde::Serialize;

use super::{print, print_json};
use crate::args::{Doctor, Place};
use crate::failure::{Failure, Said};
use crate::{Outcome, clock, place};

/// A key that ends within so many days is told of.
const SOON: i64 = 30;

/// How much a finding matters.
#[derive(Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
enum Weight {
    /// As it should be.
    Well,
    /// To be known; nothing is wrong yet.
    Note,
    /// Something is to be done.
    Wrong,
}

/// What was looked at, in a word for programs.
#[derive(Clone, Copy, Serialize)]
#[serde(rename_all = "snake_case")]
enum Subject {
    Database,
    FileMode,
    Server,
    Journal,
    Document,
    Clock,
    Key,
}

#[derive(Serialize)]
struct Finding {
    weight: Weight,
    subject: Subject,
    holding: Option<HoldingName>,
    said: String,
    help: Option<String>,
}

#[derive(Serialize)]
struct Report {
    /// Whether nothing is wrong.
    well: bool,
    findings: Vec<Finding>,
}

pub(crate) async fn run(at: &Place, ask: &Doctor) -> Result<Outcome, Failure> {
    let findings = look_at(at).await;
    let wrong = findings.iter().filter(|finding| finding.weight == Weight::Wrong).count();
    let report = Report { well: wrong == 0, findings };
    if ask.json {
        print_json(&report)?;
    } else {
        print(&said(&report, wrong))?;
    }
    Ok(if report.well { Outcome::Done } else { Outcome::No })
}

fn said(report: &Report, wrong: usize) -> String {
    let words = Words::english();
    let mut lines = Vec::new();
    for finding in &report.findings {
        let weight = words.label(match finding.weight {
            Weight::Well => Label::CareWell,
            Weight::Note => Label::CareNote,
            Weight::Wrong => Label::CareWrong,
        });
        lines.push(format!("{weight}: {}", finding.said));
        lines.extend(finding.help.as_ref().map(|help| format!("  {}", failures::help(words, help))));
    }
    lines.push(if wrong == 0 { Label::CareAllWell.said() } else { say::wrong(words, wrong) });
    lines.join("\n")
}

/// What is found, one after the other.
struct Findings(Vec<Finding>);

impl Findings {
    fn add(&mut self, weight: Weight, subject: Subject, holding: Option<&HoldingName>, said: String) {
        self.0.push(Finding { weight, subject, holding: holding.cloned(), said, help: None });
    }

    /// The same with what to do.
    fn add_with(
        &mut self,
        weight: Weight,
        subject: Subject,
        holding: Option<&HoldingName>,
        (said, help): (String, String),
    ) {
        self.0.push(Finding { weight, subject, holding: holding.cloned(), said, help: Some(help) });
    }

    fn fault(&mut self, subject: Subject, holding: Option<&HoldingName>, error: &StoreError) {
        let Refused { message, help } = keeping::store(Words::english(), error);
        self.add_with(Weight::Wrong, subject, holding, (message, help));
    }
}

async fn look_at(at: &Place) -> Vec<Finding> {
    let words = Words::english();
    let mut found = Findings(Vec::new());
    look_at_mode(at, &mut found);
    let journal = match place::open_existing(at).await {
        Ok(journal) => journal,
        Err(failure) => {
            found.add_with(Weight::Wrong, Subject::Database, None, failure.parts());
            return found.0;
        }
    };
    let holdings = Holdings::new(journal);
    let journal = holdings.journal().as_ref();
    match journal.trusted() {
        Ok(()) => found.add(Weight::Well, Subject::Database, None, say::opens(words, &at.db.to_string())),
        Err(error) => found.fault(Subject::Database, None, &error),
    }
    look_at_server(journal, &mut found).await;
    match journal.holdings().await {
        Ok(names) => {
            for name in names {
                look_at_holding(&holdings, &name, &mut found).await;
            }
        }
        Err(error) => found.fault(Subject::Database, None, &error),
    }
    look_at_keys(journal, &mut found).await;
    journal.close().await;
    found.0
}

/// Whether others on this machine can read the file. It holds names, and addresses of bees.
#[cfg(unix)]
fn look_at_mode(at: &Place, found: &mut Findings) {
    use std::os::unix::fs::PermissionsExt;
    let Some(file) = combclear_store::file_of(at.db.whole()) else { return };
    let Ok(metadata) = file.metadata() else { return };
    if metadata.is_file() && metadata.permissions().mode() & 0o077 != 0 {
        let (words, file) = (Words::english(), file.display().to_string());
        let both = (say::open_to_others(words, &file), say::open_to_others_help(words, &file));
        found.add_with(Weight::Wrong, Subject::FileMode, None, both);
    }
}

#[cfg(not(unix))]
fn look_at_mode(_at: &Place, _found: &mut Findings) {}

async fn look_at_server(journal: &dyn Journal, found: &mut Findings) {
    let words = Words::english();
    let weaknesses = match journal.weaknesses().await {
        Ok(weaknesses) => weaknesses,
        Err(error) => return found.fault(Subject::Server, None, &error),
    };
    for weakness in weaknesses {
        let both = match weakness {
            Weakness::SettingOff { setting } => {
                (say::setting_off(words, &setting), say::setting_off_help(words, &setting))
            }
            Weakness::NoRight { right, table } => {
                (say::no_right(words, &right, &table), say::no_right_help(words, &right, &table))
            }
        };
        found.add_with(Weight::Wrong, Subject::Server, None, both);
    }
}

async fn look_at_holding(holdings: &Holdings, name: &HoldingName, found: &mut Findings) {
    let words = Words::english();
    let journal = holdings.journal().as_ref();
    let verified = match journal.verify(name, None).await {
        Ok(verified) => verified,
        // It was told of the whole database already.
        Err(error) if journal.trusted().err().as_ref() == Some(&error) => return,
        Err(error) => return found.fault(Subject::Journal, Some(name), &error),
    };
    let lacking = match verified {
        Verified::Sound { entries, head } => {
            let documents = journal.contents(name).await.map_or(0, |contents| contents.len());
            let head = head.map(|head| head.to_string()).unwrap_or_default();
            let said = say::journal_holds(words, name, entries, documents, &head);
            found.add(Weight::Well, Subject::Journal, Some(name), said);
            Vec::new()
        }
        Verified::Lacking { documents, .. } => documents,
        Verified::Broken(broken) => {
            let error = StoreError::Broken { holding: name.clone(), broken: Box::new(broken) };
            return found.fault(Subject::Journal, Some(name), &error);
        }
        Verified::CheckpointMissed(missed) => {
            // No checkpoint was asked for.
            let said = keeping::missed(words, &missed);
            return found.add(Weight::Wrong, Subject::Journal, Some(name), said);
        }
    };
    for fault in &lacking {
        let Refused { message, help } = keeping::document(words, fault);
        found.add_with(Weight::Wrong, Subject::Document, Some(name), (message, help));
    }
    look_at_clock(holdings, name, found).await;
}

async fn look_at_clock(holdings: &Holdings, name: &HoldingName, found: &mut Findings) {
    let (words, today) = (Words::english(), clock::today());
    let behind = holdings.read(name, |holding| {
        let entry = holding.recorded_after(today)?;
        Some(failures::clock_is_behind(words, today, entry.seq, entry.recorded_at))
    });
    match behind.await {
        Ok(Some(Some(said))) => {
            let both = (said, Label::ClockIsBehindHelp.said());
            found.add_with(Weight::Wrong, Subject::Clock, Some(name), both);
        }
        Ok(_) => {}
        Err(error) => found.fault(Subject::Journal, Some(name), &error),
    }
    // An entry is never changed, so this stays to be known for good.
    match super::verify::clock_set_back(holdings.journal().as_ref(), name).await {
        Ok(set_back) => {
            for one in set_back {
                let said = verify::clock_set_back(words, one.seq, one.recorded_at, one.before);
                found.add(Weight::Note, Subject::Clock, Some(name), said);
            }
        }
        Err(error) => found.fault(Subject::Journal, Some(name), &error),
    }
}

async fn look_at_keys(journal: &dyn Journal, found: &mut Findings) {
    let words = Words::english();
    let keys = match journal.keys().await {
        Ok(keys) => keys,
        Err(error) if journal.trusted().err().as_ref() == Some(&error) => return,
        Err(error) => return found.fault(Subject::Key, None, &error),
    };
    let today: Day = clock::today();
    for key in keys.iter().filter(|key| key.ended_at.is_none()) {
        let Some(until) = key.until else { continue };
        let both = if until < today {
            (say::key_ran_out(words, key.id, &key.holder, until), say::key_ran_out_help(words, key.id))
        } else if until.days_since(today) <= SOON {
            (say::key_ends_soon(words, key.id, &key.holder, until), Label::CareKeyEndsSoonHelp.said())
        } else {
            continue;
        };
        found.add_with(Weight::Note, Subject::Key, key.holding.as_ref(), both);
    }
}
