//! The options of an apiary, for all its colonies together.

use combclear_domain::basics::words::ColonyName;
use combclear_domain::questions::options::Usability;
use combclear_wording::amounts::amount_of;
use combclear_wording::colonies::colonies;
use combclear_wording::options::{ApiaryOption, ApiaryReport, WhyNot};
use combclear_wording::terminal::options::{self as say, usability};
use combclear_wording::{Label, Words};

use super::{free, gap, head, mixture, starts, with_times};
use crate::layout::Table;

/// All options in order, then the colonies for which each is not usable, and why.
pub(super) fn all(words: &Words, report: &ApiaryReport) -> String {
    let label = |label| words.label(label);
    let what = say::apiary(words, &report.asked.holding, report.colonies.len(), &report.apiary);
    let mut text = head(words, &what, &report.asked);
    for missing in &report.missing {
        text += &format!("  {}: {}\n", label(Label::Missing), gap(words, missing));
    }
    let heads = [
        Label::Blank,
        Label::Option,
        Label::ForAll,
        Label::StartDays,
        Label::Colonies,
        Label::FreeForSupers,
        Label::OneDoseForAll,
    ];
    let mut rows = Table::headed(words, heads);
    for (number, option) in report.options.iter().enumerate() {
        rows.row([
            (number + 1).to_string(),
            name(words, option),
            usability(words, option.answer).to_owned(),
            match option.answer {
                Usability::RuledOut => "-".to_owned(),
                of => starts(words, &option.days, of).join("\n"),
            },
            tally(words, option),
            free(words, option.start.as_ref()),
            dose(words, option),
        ]);
    }
    text += &format!("\n{rows}\n");
    for (number, option) in report.options.iter().enumerate() {
        text += &format!("\n{}. {}\n", number + 1, name(words, option));
        text += &format!("   {}: {}\n", label(Label::OptionsStandsHere), option.order.join("; "));
        for group in &option.colonies {
            let of = usability(words, group.answer);
            text += &format!("   {of}: {}\n", colonies(words, &group.colonies));
            for why in &group.why {
                text += &format!("      {}\n", because(words, why, &group.colonies));
            }
        }
        for missing in &option.not_counted {
            text += &{
                let colonies = colonies(words, &missing.colonies);
                format!("   {}: {}: {colonies}\n", label(Label::NotCounted), missing.why)
            };
        }
        for missing in &option.dose_missing {
            text += &format!("   {}: {}\n", label(Label::NotKnown), gap(words, missing));
        }
        if let Some(solution) = &option.solution {
            let said =
                say::to_mix_for_all(words, solution.mixture.millilitres, &mixture(words, &solution.mixture));
            text += &format!("   {said}\n      {}\n", solution.how);
        }
    }
    text += &format!("\n{}", report.notice);
    text
}

fn name(words: &Words, option: &ApiaryOption) -> String {
    super::name(words, &option.leaflet, option.method.as_ref(), option.revision.as_deref())
}

fn tally(words: &Words, option: &ApiaryOption) -> String {
    let groups = option.colonies.iter();
    groups
        .map(|group| format!("{} {}", group.colonies.len(), usability(words, group.answer)))
        .collect::<Vec<_>>()
        .join("\n")
}

fn dose(words: &Words, option: &ApiaryOption) -> String {
    let stock = say::in_stock(words, &amount_of(words, option.stock.in_date, &option.stock.unit));
    match option.one_dose {
        Some(sum) => {
            // If the doses of a course are not stated, at least one is certain.
            let needed = option.course.unwrap_or(sum);
            let short = needed.minus(option.stock.in_date).filter(|short| !short.is_zero());
            let short = short.filter(|_| option.unit == option.stock.unit);
            let short = short.map(|short| amount_of(words, short, &option.unit));
            let said = if option.course.is_some() { say::short } else { say::short_at_least };
            let mut lines = vec![with_times(words, amount_of(words, sum, &option.unit), option.doses), stock];
            lines.extend(short.map(|short| said(words, &short)));
            lines.join("\n")
        }
        None => format!("{}\n{stock}", words.label(Label::NotCounted)),
    }
}

/// Why not, with the colonies unless it is all of the group.
fn because(words: &Words, why: &WhyNot, group: &[ColonyName]) -> String {
    if why.colonies.len() == group.len() {
        why.why.clone()
    } else {
        format!("{}: {}", colonies(words, &why.colonies), why.why)
    }
}
