//! The options of an apiary, for all its colonies together.

use combclear_domain::basics::words::ColonyName;
use combclear_domain::questions::options::Usability;
use combclear_wording::Words;
use combclear_wording::amounts::amount_of;
use combclear_wording::options::{ApiaryOption, ApiaryReport, WhyNot};

use super::{answer, flow, free, gap, head, mixture, starts, times};
use crate::commands::{counted, table};

/// All options in order, then for which colonies not and why.
pub(super) fn all(report: &ApiaryReport) -> String {
    let colonies = counted(report.colonies.len(), "colony", "colonies");
    let what = format!("Holding {}, the {colonies} at {}", report.holding, report.apiary);
    let mut text = head(&what, report.from, report.to, report.what_if.as_ref());
    text.push_str(&flow(report.flow.as_ref()));
    for missing in &report.missing {
        text += &format!("  missing: {}\n", gap(missing));
    }
    let mut rows =
        table(["", "option", "for all", "start days", "colonies", "free for supers", "one dose for all"]);
    for (number, option) in report.options.iter().enumerate() {
        rows.add_row([
            (number + 1).to_string(),
            name(option),
            answer(option.answer).to_owned(),
            match option.answer {
                Usability::RuledOut => "-".to_owned(),
                of => starts(&option.days, of).join("\n"),
            },
            tally(option),
            free(option.start.as_ref()),
            dose(option),
        ]);
    }
    text += &format!("\n{}\n", rows.trim_fmt());
    for (number, option) in report.options.iter().enumerate() {
        text += &format!("\n{}. {}\n", number + 1, name(option));
        text += &format!("   stands here because: {}\n", option.order.join("; "));
        for group in &option.colonies {
            let of = answer(group.answer);
            text += &format!("   {of}: {}\n", names(&group.colonies));
            for why in &group.why {
                text += &format!("      {}\n", because(why, &group.colonies));
            }
        }
        for missing in &option.not_counted {
            text += &format!("   not counted: {} ({})\n", missing.why, names(&missing.colonies));
        }
        for missing in &option.dose_missing {
            text += &format!("   not known: {}\n", gap(missing));
        }
        if let Some(solution) = &option.solution {
            let (ml, mixture, how) = (solution.millilitres, mixture(solution), &solution.how);
            text += &format!("   to mix {ml} ml for all: {mixture}\n      {how}\n");
        }
    }
    text += &format!("\n{}", report.notice);
    text
}

fn name(option: &ApiaryOption) -> String {
    super::name(&option.leaflet, option.method.as_ref(), option.revision.as_deref())
}

fn tally(option: &ApiaryOption) -> String {
    let groups = option.colonies.iter();
    groups
        .map(|group| format!("{} {}", group.colonies.len(), answer(group.answer)))
        .collect::<Vec<_>>()
        .join("\n")
}

fn dose(option: &ApiaryOption) -> String {
    let stock = format!("in stock {}", amount_of(Words::english(), option.stock.in_date, &option.stock.unit));
    let times = times(option.doses);
    match option.one_dose {
        Some(sum) => {
            // Of a course of which nobody stated the doses one is sure.
            let needed = option.course.unwrap_or(sum);
            let short = needed.minus(option.stock.in_date).filter(|short| !short.is_zero());
            let at_least = if option.course.is_some() { "" } else { "at least " };
            let short = short.filter(|_| option.unit == option.stock.unit);
            let short = short
                .map(|short| {
                    format!("\nshort of {at_least}{}", amount_of(Words::english(), short, &option.unit))
                })
                .unwrap_or_default();
            format!("{}{times}\n{stock}{short}", amount_of(Words::english(), sum, &option.unit))
        }
        None => format!("not counted\n{stock}"),
    }
}

fn names(colonies: &[ColonyName]) -> String {
    colonies.iter().map(ColonyName::as_str).collect::<Vec<_>>().join(", ")
}

/// Why not, with the colonies where it is not all of the group.
fn because(why: &WhyNot, group: &[ColonyName]) -> String {
    if why.colonies.len() == group.len() {
        why.why.clone()
    } else {
        format!("{}: {}", names(&why.colonies), why.why)
    }
}
