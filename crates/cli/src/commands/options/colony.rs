//! The options of one colony, as a table, and one of them with all its conditions.

use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::diagnostic::nearest;
use combclear_domain::questions::options::{State, Usability};
use combclear_wording::Words;
use combclear_wording::amounts::amount_of;
use combclear_wording::options::{
    ConditionReport, DoseOfColony, OptionReport, OptionsReport, RunReport, StartReport,
};

use super::{answer, flow, free, gap, head, mixture, range, starts, times, to_spare};
use crate::commands::{counted, table};
use crate::failure::Failure;

/// All options in order, then what each of them turns on.
pub(super) fn all(report: &OptionsReport) -> String {
    let mut text = top(report);
    for missing in &report.missing {
        text += &format!("  missing: {}\n", gap(missing));
    }
    let mut rows = table(["", "option", "answer", "start days", "free for supers", "visits", "dose"]);
    for (number, option) in report.options.iter().enumerate() {
        let mut days = starts(&option.days, option.answer);
        if option.answer == Usability::RuledOut {
            days = vec![
                option
                    .first_open_day
                    .map_or_else(|| "no day in sight".to_owned(), |day| format!("not before {day}")),
            ];
        }
        rows.add_row([
            (number + 1).to_string(),
            name(option),
            answer(option.answer).to_owned(),
            days.join("\n"),
            free(option.starts.first()),
            option.starts.first().map_or_else(|| "-".to_owned(), |start| start.visits.len().to_string()),
            dose(&option.dose),
        ]);
    }
    text += &format!("\n{}\n", rows.trim_fmt());
    for (number, option) in report.options.iter().enumerate() {
        text += &format!("\n{}. {}: {}\n", number + 1, name(option), answer(option.answer));
        text += &format!("   stands here because: {}\n", option.order.join("; "));
        if let Some(day) = option.nearest_day {
            text += &format!("   nearest to usable on {day}\n");
            for change in &option.would_have_to_change {
                text += &format!("   would have to change: {change}\n");
            }
        }
        // What would open more days of one that is usable stands with its conditions.
        for missing in option.missing.iter().filter(|_| option.answer == Usability::Unknown) {
            text += &format!("   not known: {}\n", gap(missing));
        }
        for condition in warnings(option) {
            text += &format!("   {condition}\n");
        }
    }
    text += &format!("\n{}\n{}", count(report), report.notice);
    text
}

fn top(report: &OptionsReport) -> String {
    let apiary = report.apiary.as_ref().map(|apiary| format!(" at {apiary}")).unwrap_or_default();
    let what = format!("Holding {}, colony {}{apiary}", report.holding, report.colony);
    head(&what, report.from, report.to, report.what_if.as_ref()) + &flow(report.flow.as_ref())
}

fn count(report: &OptionsReport) -> String {
    let count = |of| report.options.iter().filter(|option| option.answer == of).count();
    let [usable, unknown, ruled_out] =
        [Usability::Usable, Usability::Unknown, Usability::RuledOut].map(count);
    let options = counted(report.options.len(), "option", "options");
    format!(
        "{options}: {usable} usable, {unknown} unknown, {ruled_out} ruled out. The first free day holds for a start on the first \
         day shown. See one with all its conditions: --leaflet ID."
    )
}

fn name(option: &OptionReport) -> String {
    super::name(&option.leaflet, option.method.as_ref(), option.revision.as_deref())
}

/// Advice that does not hold on the first of the start days that are shown.
fn warnings(option: &OptionReport) -> Vec<String> {
    let first = option.days.iter().find(|days| days.answer == option.answer).map(|days| days.from);
    let advice = option.conditions.iter().filter(|condition| !condition.binds);
    let broken = advice.filter_map(|condition| {
        let on_first = |run: &&RunReport| first.is_some_and(|day| run.from <= day && day <= run.to);
        let run = condition.runs.iter().find(on_first).filter(|run| run.state == State::Broken)?;
        let says = condition.says.as_deref().map(|says| format!("{says}: ")).unwrap_or_default();
        Some(format!("advice not kept: {says}{}", run.why))
    });
    broken.collect()
}

fn dose(report: &DoseOfColony) -> String {
    let stock = format!("in stock {}", amount_of(Words::english(), report.stock.in_date, &report.stock.unit));
    let missing: Vec<&str> = report.missing.iter().map(|missing| missing.fact.as_str()).collect();
    match &report.dose {
        Some(dose) => {
            let least = dose.each_at_most.map(|_| format!("{} to ", dose.each)).unwrap_or_default();
            let amount = amount_of(Words::english(), dose.each_at_most.unwrap_or(dose.each), &dose.unit);
            let sure = match dose.confidence {
                Confidence::Document => "",
                Confidence::SecondHand => " (second hand)",
                Confidence::Unconfirmed => " (unconfirmed)",
            };
            format!("{least}{amount}{sure}{}\n{stock}", times(dose.doses))
        }
        None if missing.is_empty() => stock,
        None => format!("{}\n{stock}", missing.join("\n")),
    }
}

/// The options of one leaflet only, if one is named.
pub(super) fn only(mut report: OptionsReport, leaflet: Option<&str>) -> Result<OptionsReport, Failure> {
    let Some(leaflet) = leaflet else { return Ok(report) };
    if report.options.iter().all(|option| option.leaflet.as_str() != leaflet) {
        let ids = report.options.iter().map(|option| option.leaflet.as_str());
        let help = nearest(leaflet, ids).map_or_else(
            || "leave --leaflet out to see them all".to_owned(),
            |near| format!("did you mean `{near}`?"),
        );
        return Err(Failure::new(format!("there is no option `{leaflet}` here"), help));
    }
    report.options.retain(|option| option.leaflet.as_str() == leaflet);
    Ok(report)
}

/// The options with all their conditions.
pub(super) fn in_full(report: &OptionsReport) -> String {
    let mut text = top(report);
    for option in &report.options {
        text += &whole(option);
    }
    text += &format!("\n{} Days counted by {}.", report.notice, report.policy);
    text
}

fn whole(option: &OptionReport) -> String {
    let mut text = format!("\n{} ({}): {}\n", name(option), option.title, answer(option.answer));
    let mut line = |indent: usize, said: &str| {
        text.push_str(&" ".repeat(indent));
        text.push_str(said);
        text.push('\n');
    };
    line(2, "start days:");
    for of in [Usability::Usable, Usability::Unknown, Usability::RuledOut] {
        for range in starts(&option.days, of) {
            line(4, &format!("{range}: {}", answer(of)));
        }
    }
    line(2, "conditions:");
    for condition in &option.conditions {
        for said in lines(condition) {
            line(4, &said);
        }
    }
    for start in &option.starts {
        line(2, &format!("if started on {} ({}):", start.start, answer(start.answer)));
        for said in meaning(start) {
            line(4, &said);
        }
    }
    for latest in &option.latest_start {
        let day = latest.start.map_or_else(
            || "none of these days".to_owned(),
            |day| format!("{day} ({})", latest.answer.map_or("", answer)),
        );
        line(2, &format!("latest start before the flow of {} ({} year): {day}", latest.flow, latest.year));
    }
    if let Some(dose) = &option.dose.dose {
        line(2, &format!("dose: {}", dose.sum));
        dose.otherwise.iter().for_each(|otherwise| line(4, &format!("otherwise: {otherwise}")));
    }
    for missing in &option.dose.missing {
        line(2, &format!("not known: {}", gap(missing)));
    }
    if let Some(solution) = &option.dose.solution {
        let (ml, mixture, recipe) = (solution.millilitres, mixture(solution), &solution.recipe);
        line(2, &format!("to mix {ml} ml: {mixture} (recipe: {recipe})"));
        line(4, &solution.how);
    }
    let stock = &option.dose.stock;
    line(2, &format!("in stock and in date: {}", amount_of(Words::english(), stock.in_date, &stock.unit)));
    for (lots, why) in [
        (&stock.not_counted, "expired by then, or without an expiry on record"),
        (&stock.label_not_recorded, "the label revision is not on record, or is none that the leaflet knows"),
    ] {
        for lot in lots {
            line(4, &format!("not counted: {lot}, {why}"));
        }
    }
    let mut list = |head: &str, said: &[String]| {
        if !said.is_empty() {
            line(2, head);
            for said in said {
                line(4, said);
            }
        }
    };
    list("not known:", &option.missing.iter().map(gap).collect::<Vec<_>>());
    list("would have to change:", &option.would_have_to_change);
    list("to carry:", &option.carry);
    list("to see to:", &option.see_to);
    list("cautions:", &option.cautions);
    text
}

fn lines(condition: &ConditionReport) -> Vec<String> {
    let binds = if condition.binds { "" } else { ", advice" };
    let about = condition.about.replace('_', " ");
    let says = condition.says.as_deref().map(|says| format!(": {says}")).unwrap_or_default();
    let mut lines = vec![format!("{about}{says}{binds}")];
    if let Some(confidence) = condition.confidence {
        let sources = condition.sources.join("; ");
        lines.push(format!("    {}: {sources}", confidence.as_str().replace('_', " ")));
    }
    for run in &condition.runs {
        let state = match (run.state, run.in_a_usual_year) {
            (State::Met, _) => "met",
            (State::Broken, _) => "broken",
            (State::Unknown, Some(true)) => "unknown, met in a usual year",
            (State::Unknown, Some(false)) => "unknown, broken in a usual year",
            (State::Unknown, None) => "unknown",
        };
        lines.push(format!("    {}: {state}, {}", range(run.from, run.to), run.why));
    }
    lines
}

fn meaning(start: &StartReport) -> Vec<String> {
    let mut lines = vec![start.supers.clone()];
    let out = match (start.out_from, start.out_by) {
        (Some(from), Some(by)) => format!("may be out from {from}, must be out by {by}"),
        (Some(from), None) => format!("may be out from {from}"),
        (None, Some(by)) => format!("must be out by {by}; the least stay is not stated"),
        (None, None) => "how long it stays is not stated".to_owned(),
    };
    lines.push(out);
    lines.extend(start.out_from_without_brood.map(|day| {
        format!("without brood, or with the least, it might be out from {day}: the brood was not seen for that day")
    }));
    lines.extend(
        start
            .out_from_if_brood_is_seen
            .map(|day| format!("if brood is seen while it is in, not before {day}")),
    );
    for margin in &start.before_flow {
        let spare = to_spare(margin.days_to_spare);
        lines.push(format!("flow of {} ({} year): {spare}", margin.flow, margin.year));
    }
    for visit in &start.visits {
        let when = match (visit.from, visit.by) {
            (Some(from), Some(by)) => format!("{from} to {by}"),
            (Some(from), None) => from.to_string(),
            (None, Some(by)) => format!("by {by}, from a day that is not known"),
            (None, None) => "on a day that is not known".to_owned(),
        };
        let opened = if visit.hive_opened { ", hive opened" } else { "" };
        lines.push(format!("visit {when}: {}{opened}", visit.what));
    }
    lines
}
