//! `combclear today`: the morning's page of a keeper.

use combclear_domain::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Hash;
use combclear_domain::questions::due::Due;
use combclear_domain::questions::gaps::Gaps;
use combclear_domain::questions::options::Span;
use combclear_domain::questions::register::Period;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::due::DueReport;
use combclear_wording::supering::{SuperingReport, in_order};
use combclear_wording::terminal::{day, today as say};
use combclear_wording::today::TodayReport;
use combclear_wording::{Label, Words};

use super::gaps::not_kept;
use super::supering::{alive, together};
use super::{due, show};
use crate::args::{Place, Today};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

/// Days of work on the page, today among them.
const DAYS: u16 = 7;

pub(crate) async fn run(at: &Place, ask: &Today) -> Result<Outcome, Failure> {
    let words = Words::english();
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let on = ask.on.unwrap_or_else(clock::today);
    let report = place::with_holding(at, async |holdings, holding| {
        let not_kept = not_kept(holdings, &holding).await?;
        place::read(holdings, &holding, |holding| report(words, holding, leaflets, laws, on, &not_kept))
            .await?
    })
    .await?;
    show(ask.json, &report, |report| written(words, report))
}

fn report(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    laws: &Laws,
    on: Day,
    not_kept: &[Hash],
) -> Result<TodayReport, Failure> {
    let span = Span::new(on, on.plus(DAYS - 1))?;
    let due = DueReport::of(words, holding, Due::of(holding, leaflets, laws, span, None));
    let mut board = SuperingReport::board(words, holding, leaflets, &alive(holding, on), on);
    in_order(&mut board);
    let year = Period::new(on.first_of_year(), on)?;
    let gaps = Gaps::of(holding, leaflets, laws, year, on, not_kept);
    Ok(TodayReport::of(words, on, due, &board, &gaps))
}

fn written(words: &Words, report: &TodayReport) -> String {
    let label = |label| words.label(label);
    let mut text = say::head(words, &report.holding, &day(words, report.on)) + "\n";
    text.push('\n');
    if report.visits.is_empty() {
        let more = !report.not_known.is_empty() || report.records.required > 0;
        let nothing = if more { Label::TodayNothingElseDue } else { Label::TodayNothingDue };
        text.push_str(&format!("{}\n", label(nothing)));
    }
    for visit in &report.visits {
        text.push_str(&format!("{}\n{}", due::heading(words, visit), due::brief(words, visit, report.on)));
    }
    let mut section = |head: Label, lines: Vec<String>| {
        text.push_str(&format!("\n{}\n{}", label(head), lines.concat()));
    };
    section(Label::TodayFree, free(words, report));
    if !report.not_known.is_empty() {
        section(Label::TodayUnknown, report.not_known.iter().map(|group| together(words, group)).collect());
    }
    section(Label::TodayRecords, vec![format!("  {}\n", records(words, report))]);
    text + "\n" + &report.notice
}

fn free(words: &Words, report: &TodayReport) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for group in &report.may_be_supered {
        lines.push(together(words, group));
    }
    if lines.is_empty() {
        lines.push(format!("  {}\n", words.label(Label::TodayNoneFree)));
    }
    if !report.free_from_today.is_empty() {
        let new: Vec<String> = report.free_from_today.iter().map(|place| place.said(words)).collect();
        lines.push(format!("  {}\n", say::new(words, &new.join("; "))));
    }
    if report.may_not_be_supered > 0 {
        lines.push(format!("  {}\n", say::not_free(words, report.may_not_be_supered)));
    }
    lines
}

fn records(words: &Words, report: &TodayReport) -> String {
    let records = &report.records;
    match records.complete {
        Verdict::Yes => say::complete(words, records.irregular),
        Verdict::No => say::incomplete(words, records.required, records.irregular),
        Verdict::Unknown => say::not_checked(words),
    }
}
