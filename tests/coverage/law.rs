//! Writes LAW.md: what each law asks for, with how well it is known and where it was read.
//!
//! The words are those of `combclear law`.

use std::fmt::Write;

use combclear_domain::Day;
use combclear_domain::rules::law::{Dated, Field, FieldNeed, LawFile, Laws, Occasion};
use combclear_testkit::files::root;
use combclear_wording::law::{self, LawBasis, LawReport};
use combclear_wording::terminal::law as say;
use combclear_wording::{Label, Words};

use super::{is_shown_in, letter};

#[test]
fn the_tables_show_what_each_law_asks_for() {
    is_shown_in("crates/leaflets/LAW.md", &tables());
}

fn tables() -> String {
    let laws = combclear_leaflets::laws().unwrap_or_else(|faults| panic!("{faults:#?}"));
    // The laws are shown as they stood when they were last checked: no clock, and a later check moves the day.
    let checked = laws.iter().flat_map(LawFile::bases).map(|basis| basis.checked_on).max().unwrap();
    let mut text = format!("\nIn force on {checked}, the day of the last check.\n");
    for file in laws.iter() {
        text += &one(laws, file, checked);
    }
    text.push('\n');
    text
}

fn one(laws: &Laws, file: &LawFile, on: Day) -> String {
    let words = Words::english();
    let profile = laws.profile(&file.jurisdiction, on).unwrap();
    let report = LawReport::of(words, &profile);
    let mut text = format!("\n## `{}`: {}\n\n{}\n", file.jurisdiction, file.title, what_was_read(file));
    if !file.includes.is_empty() {
        let included: Vec<String> = file.includes.iter().map(|other| format!("`{other}`")).collect();
        writeln!(text, "\nIt includes the rules of {}.", included.join(" and ")).unwrap();
    }
    let heads: Vec<String> = Occasion::ALL.iter().map(|occasion| law::occasion(words, *occasion)).collect();
    writeln!(text, "\n| | {} |\n|{}", heads.join(" | "), " --- |".repeat(heads.len() + 1)).unwrap();
    for field in Field::ALL {
        let cells: Vec<String> = Occasion::ALL.iter().map(|on| cell(&report, *on, *field)).collect();
        if cells.iter().any(|cell| cell != NOTHING) {
            writeln!(text, "| {} | {} |", law::field(words, *field), cells.join(" | ")).unwrap();
        }
    }
    text += &notes(file, &report);

    let soon = report.time_limits.iter().map(|limit| {
        let within = say::within(words, limit.within_days);
        line(&report, &limit.by, &format!("{}: {within}", law::occasion(words, limit.occasion)))
    });
    text += &list(words, Label::LawHowSoon, soon);
    let forms = report.forms.iter().map(|form| line(&report, &form.by, &form.text));
    text += &list(words, Label::LawInWhatForm, forms);
    let kept = report.retentions.iter().map(|kept| {
        let records: Vec<String> =
            kept.rule.records.iter().map(|sort| law::record_sort(words, *sort)).collect();
        let from = law::counted_from(words, kept.rule.counted_from);
        let keep = say::keep(words, kept.rule.years, &from, kept.rule.force);
        line(&report, &kept.by, &format!("{}: {keep}", records.join(", ")))
    });
    text += &list(words, Label::LawHowLong, kept);
    let sources = file.sources.iter().map(|source| format!("`{}`: {source}", source.id));
    text + &list(words, Label::Sources, sources)
}

/// What no rule asks for.
const NOTHING: &str = "–";

/// The rules on a field on one occasion, by how much they need it.
fn cell(report: &LawReport, occasion: Occasion, field: Field) -> String {
    let asked = |asked: &&law::LawField| asked.occasion == occasion && asked.field == field;
    let Some(found) = report.fields.iter().find(asked) else { return NOTHING.to_owned() };
    let needs = FieldNeed::ALL.iter().filter_map(|need| {
        let of = found.by.iter().filter(|by| by.need == Some(*need));
        let marks: Vec<String> = of.map(|by| mark(report, by)).collect();
        (!marks.is_empty()).then(|| format!("{} {}", law::need(Words::english(), *need), marks.join(", ")))
    });
    needs.collect::<Vec<_>>().join("; ")
}

/// How well a rule is known, and where it was read: a source of another law with the code of that law.
fn mark(report: &LawReport, by: &LawBasis) -> String {
    let of = if by.jurisdiction == report.jurisdiction { "" } else { by.jurisdiction.as_str() };
    let read_in = format!("**{}** {of} {}", letter(by.basis.confidence), by.basis.source.join(" "));
    read_in.replace("  ", " ")
}

/// A rule in a line, with its note unless that stands with another law.
fn line(report: &LawReport, by: &LawBasis, says: &str) -> String {
    let own = by.jurisdiction == report.jurisdiction;
    let note = by.basis.note.as_ref().filter(|_| own).map(|note| format!(" {note}")).unwrap_or_default();
    format!("{} ({}).{note}", says.trim_end_matches('.'), mark(report, by))
}

/// The notes on the fields of a law, each once with the fields that have it.
fn notes(file: &LawFile, report: &LawReport) -> String {
    let words = Words::english();
    let mut notes: Vec<(&str, Vec<String>)> = Vec::new();
    for rule in file.fields.iter().filter(|rule| rule.basis().is_in_force(report.on)) {
        let Some(note) = &rule.basis.note else { continue };
        let name = law::field(words, rule.field);
        match notes.iter_mut().find(|(known, _)| known == note) {
            Some((_, names)) if names.contains(&name) => {}
            Some((_, names)) => names.push(name),
            None => notes.push((note, vec![name])),
        }
    }
    if notes.is_empty() {
        return String::new();
    }
    let lines: Vec<String> =
        notes.iter().map(|(note, names)| format!("- {}: {note}\n", names.join("; "))).collect();
    format!("\n{}", lines.concat())
}

fn list(words: &Words, head: Label, lines: impl Iterator<Item = String>) -> String {
    let lines: Vec<String> = lines.collect();
    if lines.is_empty() {
        return String::new();
    }
    format!("\n{}:\n\n- {}\n", words.label(head).trim_end_matches(':'), lines.join("\n- "))
}

/// The comment at the head of a law file: what was read, and what was not.
fn what_was_read(file: &LawFile) -> String {
    let path = root().join(format!("crates/leaflets/law/{}.toml", file.jurisdiction));
    let text = std::fs::read_to_string(path).unwrap();
    let lines: Vec<&str> = text.lines().map_while(|line| line.strip_prefix("# ")).collect();
    lines.join("\n")
}
