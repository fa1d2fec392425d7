//! Options at a glance: a title and two lines for each that is not ruled out, one line for each reason to rule out.

use combclear_domain::basics::words::{LeafletId, Method};
use combclear_domain::questions::options::{StartDays, StockOfMedicine, Usability};
use combclear_wording::amounts::amount_of;
use combclear_wording::colonies::colonies;
use combclear_wording::options::{ApiaryOption, ApiaryReport, OptionReport, OptionsReport, StartReport};
use combclear_wording::terminal::options::{self as say};
use combclear_wording::terminal::{about, label_revision};
use combclear_wording::{Label, Words};

use super::{colony, gap, head};
use crate::layout::width;

/// Blanks before the lines of an option.
const INDENT: usize = 3;

/// The options of one colony.
pub(super) fn of_colony(words: &Words, report: &OptionsReport) -> String {
    let mut text = colony::top(words, report);
    for missing in &report.missing {
        text += &format!("  {}: {}\n", words.label(Label::Missing), gap(words, missing));
    }
    let unknown = || report.options.iter().filter(|option| option.answer == Usability::Unknown);
    let hows = |option: &OptionReport| option.missing.iter().map(|missing| missing.how.clone()).collect();
    let common = common(unknown().map(hows));
    text += &listed(words.label(Label::OptionsFirstFindOut), &common);
    let mut number = 0;
    for answer in [Usability::Usable, Usability::Unknown] {
        for (place, option) in report.options.iter().filter(|option| option.answer == answer).enumerate() {
            if place == 0 {
                text += &format!("\n{}\n", say::answer(words, answer));
            }
            number += 1;
            let OptionReport { title, method, revision, .. } = option;
            text += &format!("{number}. {}\n", name(words, title, method.as_ref(), revision.as_deref()));
            text += &format!("   {}\n", start(words, &option.days, answer, option.starts.first()));
            text += &format!("   {}\n", colony_needs(words, option, &common));
        }
    }
    let reasons = report.options.iter().filter(|option| option.answer == Usability::RuledOut).map(|option| {
        let not_before = option.first_open_day.map(|day| say::not_before(words, day));
        let changes = option.would_have_to_change.iter().cloned();
        let reason: Vec<String> = changes.chain(not_before).collect();
        (reason.join("; "), id(&option.leaflet, option.method.as_ref()))
    });
    text += &ruled_out(words, reasons.collect());
    text + &format!(
        "\n{}. {}\n{}",
        colony::count(words, report),
        words.label(Label::OptionsMore),
        report.notice
    )
}

/// What is in stock, and what has to be found out, in a line.
fn colony_needs(words: &Words, option: &OptionReport, common: &[String]) -> String {
    let mut topics: Vec<String> = Vec::new();
    for missing in option.missing.iter().filter(|missing| !common.contains(&missing.how)) {
        let topic = about(words, missing.about);
        if !topics.contains(&topic) {
            topics.push(topic);
        }
    }
    let stock = stock(words, &option.dose.stock);
    if option.answer == Usability::Usable {
        let visits = option.starts.first().map(|start| say::visits(words, start.visits.len()));
        let broken = colony::warnings(words, option).len();
        let advice = (broken > 0).then(|| say::advice_not_kept(words, broken));
        return [Some(stock), visits, advice].into_iter().flatten().collect::<Vec<_>>().join("; ");
    }
    if topics.is_empty() { stock } else { find_out(words, &stock, &topics) }
}

/// The options of an apiary.
pub(super) fn of_apiary(words: &Words, report: &ApiaryReport) -> String {
    let what = say::apiary(words, &report.asked.holding, report.colonies.len(), &report.apiary);
    let mut text = head(words, &what, &report.asked);
    for missing in &report.missing {
        text += &format!("  {}: {}\n", words.label(Label::Missing), gap(words, missing));
    }
    let unknown = || report.options.iter().filter(|option| option.answer == Usability::Unknown);
    let common = common(unknown().map(|option| {
        let groups = option.colonies.iter().filter(|group| group.answer == Usability::Unknown);
        let of_all = groups.flat_map(|group| group.why.iter().filter(|why| why.colonies == group.colonies));
        of_all.map(|why| why.why.clone()).collect()
    }));
    text += &listed(words.label(Label::OptionsForAllUnknown), &common);
    let mut number = 0;
    for answer in [Usability::Usable, Usability::Unknown] {
        for (place, option) in report.options.iter().filter(|option| option.answer == answer).enumerate() {
            if place == 0 {
                text += &format!("\n{}\n", say::answer(words, answer));
            }
            number += 1;
            let ApiaryOption { title, method, revision, .. } = option;
            text += &format!("{number}. {}\n", name(words, title, method.as_ref(), revision.as_deref()));
            text += &format!("   {}\n", start(words, &option.days, answer, option.start.as_ref()));
            text += &format!("   {}\n", apiary_needs(words, report, option, &common));
        }
    }
    let reasons = report.options.iter().filter(|option| option.answer == Usability::RuledOut).map(|option| {
        let group = option.colonies.iter().find(|group| group.answer == Usability::RuledOut);
        let why = group.and_then(|group| group.why.first());
        let reason = why.map(|why| {
            if why.colonies.len() == report.colonies.len() {
                return why.why.clone();
            }
            format!("{}: {}", colonies(words, &why.colonies), why.why)
        });
        (reason.unwrap_or_default(), id(&option.leaflet, option.method.as_ref()))
    });
    text += &ruled_out(words, reasons.collect());
    text + &format!("\n{}\n{}", words.label(Label::OptionsApiaryMore), report.notice)
}

/// What is in stock, and for which colonies it is usable, or the main reason why it is not known for all of them.
fn apiary_needs(words: &Words, report: &ApiaryReport, option: &ApiaryOption, common: &[String]) -> String {
    let mut said = vec![stock(words, &option.stock)];
    for group in option.colonies.iter().filter(|group| group.colonies.len() < report.colonies.len()) {
        said.push(say::answer_for(words, group.answer, &colonies(words, &group.colonies)));
    }
    if said.len() > 1 {
        return said.join("; ");
    }
    let groups = option.colonies.iter().filter(|group| group.answer != Usability::Usable);
    let others = || groups.clone().flat_map(|group| &group.why).filter(|why| !common.contains(&why.why));
    if let Some(first) = others().next() {
        let more = others().count() - 1;
        said.push(if more == 0 { first.why.clone() } else { say::reason_and_more(words, &first.why, more) });
    }
    said.join("; ")
}

/// Lines below a heading, if there are any.
fn listed(head: &str, lines: &[String]) -> String {
    if lines.is_empty() {
        return String::new();
    }
    lines.iter().fold(format!("\n{head}\n"), |text, line| text + &format!("  {line}\n"))
}

/// What is common to all of several lists.
fn common(mut lists: impl Iterator<Item = Vec<String>>) -> Vec<String> {
    let Some(first) = lists.next() else { return Vec::new() };
    let mut lists = lists.peekable();
    if lists.peek().is_none() {
        return Vec::new();
    }
    let mut common = first;
    for list in lists {
        common.retain(|one| list.contains(one));
    }
    common.dedup();
    common
}

/// The title, with method and label revision if the leaflet has several.
fn name(words: &Words, title: &str, method: Option<&Method>, revision: Option<&str>) -> String {
    let mut parts = vec![title.to_owned()];
    parts.extend(method.map(ToString::to_string));
    parts.extend(revision.map(|revision| label_revision(words, revision)));
    parts.join(", ")
}

/// The id of a leaflet, as it is given to `--leaflet`, and its method.
fn id(leaflet: &LeafletId, method: Option<&Method>) -> String {
    method.map_or_else(|| leaflet.to_string(), |method| format!("{leaflet} {method}"))
}

fn stock(words: &Words, stock: &StockOfMedicine) -> String {
    if stock.in_date.is_zero() {
        return words.label(Label::OptionsNoneInStock).to_owned();
    }
    say::in_stock(words, &amount_of(words, stock.in_date, &stock.unit))
}

/// The first start day, when it is out then, when supers may go on, and how long before the flow, in a line.
fn start(words: &Words, days: &[StartDays], answer: Usability, report: Option<&StartReport>) -> String {
    let Some(first) = days.iter().find(|days| days.answer == answer) else {
        return words.label(Label::OptionsNoneOfTheseDays).to_owned();
    };
    let Some(report) = report else { return say::start(words, first.from, "") };
    let start = &report.start;
    let spare = || start.before_flow.iter().map(|margin| margin.days_to_spare);
    let margin = spare().min().zip(spare().max()).map(|(least, most)| say::before_flow(words, least, most));
    let out = start.out_from.map(|out| say::out(words, out));
    let out = match (out, margin) {
        (Some(out), Some(margin)) => Some(say::out_and_margin(words, &out, &margin)),
        (out, margin) => out.or(margin),
    };
    let mut parts: Vec<String> = out.into_iter().collect();
    parts.push(match (start.first_free_day, &report.supers_all_along) {
        (None, _) => words.label(Label::OptionsSupersNotKnown).to_owned(),
        (Some(_), Some(_)) => words.label(Label::OptionsSupersStay).to_owned(),
        (Some(day), None) => say::supers(words, day),
    });
    say::start(words, start.start, &parts.join(", "))
}

/// What is in stock, and as many of the topics as the line holds.
fn find_out(words: &Words, stock: &str, topics: &[String]) -> String {
    let line = |named: usize| {
        let said = topics.iter().take(named).cloned().collect::<Vec<_>>().join(", ");
        let said = match topics.len().saturating_sub(named) {
            0 => say::find_out(words, &said),
            more => say::find_out_and_more(words, &said, more),
        };
        format!("{stock}; {said}")
    };
    let fits = |said: &String| INDENT + said.chars().count() <= width();
    (1..=topics.len()).rev().map(line).find(fits).unwrap_or_else(|| line(1))
}

/// Each reason with the options that it rules out.
fn ruled_out(words: &Words, options: Vec<(String, String)>) -> String {
    let mut groups: Vec<(String, Vec<String>)> = Vec::new();
    for (reason, id) in options {
        match groups.iter_mut().find(|(known, _)| *known == reason) {
            Some((_, ids)) => ids.push(id),
            None => groups.push((reason, vec![id])),
        }
    }
    if groups.is_empty() {
        return String::new();
    }
    let mut text = format!("\n{}\n", say::answer(words, Usability::RuledOut));
    for (reason, ids) in groups {
        text += &format!("  {reason}\n    {}\n", ids.join(", "));
    }
    text
}
