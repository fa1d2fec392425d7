//! The options of one colony as a table, and one of them with all its conditions.

use combclear_domain::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::spelling::nearest;
use combclear_domain::questions::options::{State, Usability};
use combclear_wording::amounts::amount_of;
use combclear_wording::options::{
    ConditionReport, DoseOfColony, DoseSum, OptionReport, OptionsReport, RunReport, StartReport, Visit,
};
use combclear_wording::terminal::options::{self as say, usability};
use combclear_wording::terminal::{about, confidence, days_counted_by, failures};
use combclear_wording::{Label, Words, paper};

use super::{free, gap, head, mixture, range, starts, with_times};
use crate::failure::Failure;
use crate::layout::Table;

/// All options in order, then the reasons for each.
pub(super) fn all(words: &Words, report: &OptionsReport) -> String {
    let label = |label| words.label(label);
    let mut text = top(words, report);
    for missing in &report.missing {
        text += &format!("  {}: {}\n", label(Label::Missing), gap(words, missing));
    }
    let heads = [
        Label::Blank,
        Label::Option,
        Label::Answer,
        Label::StartDays,
        Label::FreeForSupers,
        Label::Visits,
        Label::Dose,
    ];
    let mut rows = Table::headed(words, heads);
    for (number, option) in report.options.iter().enumerate() {
        let mut days = starts(words, &option.days, option.answer);
        if option.answer == Usability::RuledOut {
            let not_before = |day| say::not_before(words, day);
            let no_day = || label(Label::OptionsNoDay).to_owned();
            days = vec![option.first_open_day.map_or_else(no_day, not_before)];
        }
        rows.row([
            (number + 1).to_string(),
            name(words, option),
            usability(words, option.answer).to_owned(),
            days.join("\n"),
            free(words, option.starts.first()),
            option.starts.first().map_or_else(|| "-".to_owned(), |start| start.visits.len().to_string()),
            dose(words, &option.dose),
        ]);
    }
    text += &format!("\n{rows}\n");
    for (number, option) in report.options.iter().enumerate() {
        text += &format!("\n{}. {}: {}\n", number + 1, name(words, option), usability(words, option.answer));
        text += &format!("   {}: {}\n", label(Label::OptionsStandsHere), option.order.join("; "));
        if let Some(day) = option.nearest_day {
            text += &format!("   {}\n", say::nearest(words, day));
            for change in &option.would_have_to_change {
                text += &format!("   {}: {change}\n", label(Label::OptionsWouldHaveToChange));
            }
        }
        // For a usable option, facts that would open more days are listed with its conditions.
        for missing in option.missing.iter().filter(|_| option.answer == Usability::Unknown) {
            text += &format!("   {}: {}\n", label(Label::NotKnown), gap(words, missing));
        }
        for condition in warnings(words, option) {
            text += &format!("   {condition}\n");
        }
    }
    let first = label(Label::OptionsFirstDayShown);
    text += &format!("\n{}. {first}\n{}", count(words, report), report.notice);
    text
}

pub(super) fn top(words: &Words, report: &OptionsReport) -> String {
    let OptionsReport { asked, colony, apiary, .. } = report;
    let what = match apiary {
        Some(apiary) => say::colony_at(words, &asked.holding, colony, apiary),
        None => say::colony(words, &asked.holding, colony),
    };
    head(words, &what, asked)
}

pub(super) fn count(words: &Words, report: &OptionsReport) -> String {
    let count = |of| report.options.iter().filter(|option| option.answer == of).count();
    let [usable, unknown, ruled_out] =
        [Usability::Usable, Usability::Unknown, Usability::RuledOut].map(count);
    say::sums(words, report.options.len(), usable, unknown, ruled_out)
}

fn name(words: &Words, option: &OptionReport) -> String {
    super::name(words, &option.leaflet, option.method.as_ref(), option.revision.as_deref())
}

/// Advice that is not kept on the first start day shown.
pub(super) fn warnings(words: &Words, option: &OptionReport) -> Vec<String> {
    let first = option.days.iter().find(|days| days.answer == option.answer).map(|days| days.from);
    let advice = option.conditions.iter().filter(|condition| !condition.binds);
    let broken = advice.filter_map(|condition| {
        let on_first = |run: &&RunReport| first.is_some_and(|day| run.from <= day && day <= run.to);
        let run = condition.runs.iter().find(on_first).filter(|run| run.state == State::Broken)?;
        let says = condition.says.as_deref().map(|says| format!("{says}: ")).unwrap_or_default();
        Some(format!("{}: {says}{}", words.label(Label::OptionsAdviceNotKept), run.why))
    });
    broken.collect()
}

fn dose(words: &Words, report: &DoseOfColony) -> String {
    let stock = say::in_stock(words, &amount_of(words, report.stock.in_date, &report.stock.unit));
    let missing: Vec<&str> = report.missing.iter().map(|missing| missing.fact.as_str()).collect();
    match &report.dose {
        Some(DoseSum { portion: dose, .. }) => {
            let amount = amount_of(words, dose.each_at_most.unwrap_or(dose.each), &dose.unit);
            let amount = match dose.each_at_most {
                Some(_) => say::range(words, dose.each, &amount),
                None => amount,
            };
            let amount = match dose.confidence {
                Confidence::Document => amount,
                sure @ (Confidence::SecondHand | Confidence::Unconfirmed) => {
                    format!("{amount} ({})", confidence(words, sure))
                }
            };
            format!("{}\n{stock}", with_times(words, amount, dose.doses))
        }
        None if missing.is_empty() => stock,
        None => format!("{}\n{stock}", missing.join("\n")),
    }
}

/// The options of one leaflet, if one is named.
pub(super) fn only(mut report: OptionsReport, leaflet: Option<&str>) -> Result<OptionsReport, Failure> {
    let Some(leaflet) = leaflet else { return Ok(report) };
    if report.options.iter().all(|option| option.leaflet.as_str() != leaflet) {
        let words = Words::english();
        let ids = report.options.iter().map(|option| option.leaflet.as_str());
        let help = nearest(leaflet, ids).map_or_else(
            || words.label(Label::AskedLeaveLeafletOut).to_owned(),
            |near| failures::did_you_mean(words, near),
        );
        return Err(Failure::new(failures::no_option(words, leaflet), help));
    }
    report.options.retain(|option| option.leaflet.as_str() == leaflet);
    Ok(report)
}

/// The options with all their conditions.
pub(super) fn in_full(words: &Words, report: &OptionsReport) -> String {
    let mut text = top(words, report);
    for option in &report.options {
        text += &whole(words, option);
    }
    text += &format!("\n{}", days_counted_by(words, &report.notice, report.policy));
    text
}

fn whole(words: &Words, option: &OptionReport) -> String {
    let mut text =
        format!("\n{} ({}): {}\n", name(words, option), option.title, usability(words, option.answer));
    let mut line = |indent: usize, said: &str| {
        text.push_str(&" ".repeat(indent));
        text.push_str(said);
        text.push('\n');
    };
    let label = |label| words.label(label);
    line(2, &format!("{}:", label(Label::StartDays)));
    for of in [Usability::Usable, Usability::Unknown, Usability::RuledOut] {
        for range in starts(words, &option.days, of) {
            line(4, &format!("{range}: {}", usability(words, of)));
        }
    }
    line(2, &format!("{}:", label(Label::Conditions)));
    for condition in &option.conditions {
        for said in lines(words, condition) {
            line(4, &said);
        }
    }
    for start in &option.starts {
        let head = say::if_started(words, start.start.start, usability(words, start.start.answer));
        line(2, &format!("{head}:"));
        for said in meaning(words, start) {
            line(4, &said);
        }
    }
    for latest in &option.latest_start {
        let answer = latest.answer.map_or("", |answer| usability(words, answer));
        let none = || label(Label::OptionsNoneOfTheseDays).to_owned();
        let day = latest.start.map_or_else(none, |day: Day| format!("{day} ({answer})"));
        line(2, &say::latest_start(words, latest.flow, latest.year, &day));
    }
    if let Some(dose) = &option.dose.dose {
        line(2, &format!("{}: {}", label(Label::Dose), dose.sum));
        for otherwise in &dose.otherwise {
            line(4, &format!("{}: {otherwise}", label(Label::Otherwise)));
        }
    }
    for missing in &option.dose.missing {
        line(2, &format!("{}: {}", label(Label::NotKnown), gap(words, missing)));
    }
    if let Some(solution) = &option.dose.solution {
        let mixture = mixture(words, &solution.mixture);
        line(2, &say::to_mix(words, solution.mixture.millilitres, &mixture, &solution.recipe));
        line(4, &solution.how);
    }
    let stock = &option.dose.stock;
    let in_date = amount_of(words, stock.in_date, &stock.unit);
    line(2, &format!("{}: {in_date}", label(Label::OptionsInStockAndInDate)));
    for (lots, why) in
        [(&stock.not_counted, Label::OptionsExpired), (&stock.label_not_recorded, Label::OptionsNoLabel)]
    {
        for lot in lots {
            line(4, &format!("{}: {lot}, {}", label(Label::NotCounted), label(why)));
        }
    }
    let mut list = |head: Label, said: &[String]| {
        if !said.is_empty() {
            line(2, &format!("{}:", label(head)));
            for said in said {
                line(4, said);
            }
        }
    };
    let missing: Vec<String> = option.missing.iter().map(|missing| gap(words, missing)).collect();
    list(Label::NotKnown, &missing);
    list(Label::OptionsWouldHaveToChange, &option.would_have_to_change);
    list(Label::ToCarry, &option.carry);
    list(Label::SeeTo, &option.see_to);
    list(Label::Cautions, &option.cautions);
    text
}

fn lines(words: &Words, condition: &ConditionReport) -> Vec<String> {
    let subject = about(words, condition.about);
    let says = condition.says.as_deref().map(|says| format!(": {says}")).unwrap_or_default();
    let said = format!("{subject}{says}");
    let advice = || format!("{said}, {}", words.label(Label::Advice));
    let mut lines = vec![if condition.binds { said.clone() } else { advice() }];
    if let Some(sure) = condition.confidence {
        lines.push(format!("    {}: {}", confidence(words, sure), condition.sources.join("; ")));
    }
    for run in &condition.runs {
        let state = say::state(words, run.state, run.in_a_usual_year);
        lines.push(format!("    {}: {state}, {}", range(words, run.from, run.to), run.why));
    }
    lines
}

fn meaning(words: &Words, report: &StartReport) -> Vec<String> {
    let start = &report.start;
    let mut lines = vec![report.supers.clone()];
    let out = match (start.out_from, start.out_by) {
        (Some(from), Some(by)) => say::out_between(words, from, by),
        (Some(from), None) => say::out_from(words, from),
        (None, Some(by)) => say::out_by(words, by),
        (None, None) => words.label(Label::OptionsStayNotStated).to_owned(),
    };
    lines.push(out);
    lines.extend(start.out_from_without_brood.map(|day| say::out_without_brood(words, day)));
    lines.extend(start.out_from_if_brood_is_seen.map(|day| say::not_before_if_brood(words, day)));
    for margin in &start.before_flow {
        let spare = say::to_spare(words, margin.days_to_spare);
        lines.push(say::margin(words, margin.flow, margin.year, &spare));
    }
    for Visit { visit, what } in &report.visits {
        let when = match (visit.from, visit.by) {
            (Some(from), Some(by)) => paper::period(words, from, by),
            (Some(from), None) => from.to_string(),
            (None, Some(by)) => say::by(words, by),
            (None, None) => words.label(Label::OnUnknownDay).to_owned(),
        };
        let said = if visit.hive_opened { say::visit_opened } else { say::visit };
        lines.push(said(words, &when, what));
    }
    lines
}
