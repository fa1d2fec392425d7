//! Reads one law file. Reports every fault with file, line, message and help.

use super::LawFile;
use super::rule::{Basis, Dated, FieldRule, FormRule, RetentionRule, TimeLimitRule};
use super::words::{CountedFrom, Field, FieldNeed, KeepingForce, Occasion, RecordSort};
use crate::basics::confidence::Confidence;
use crate::basics::words::Jurisdiction;
use crate::rules::fault::{
    Diagnostic, KeepApart, LawFault, Listed, RuleFault, TableName, ValueFault, ValueOf, Wanted, WordsOf,
};
use crate::rules::sources::{Cited, Sources};
use crate::rules::table::{
    DataFile, KeyPlaces, Table, check_file_name, check_format, dates_in_order, read_file, words,
};

/// The version of the law format that this program reads.
pub const FORMAT: i64 = 1;

/// A law file that was read, and the places of its includes.
pub(super) struct ReadLaw {
    pub(super) file: LawFile,
    /// The line and column of each include.
    pub(super) includes: Vec<(Jurisdiction, (u32, u32))>,
}

/// Reads a law file; `None` if it has any fault. The path ends in `<jurisdiction>.toml`.
///
/// Faults come in line order, after those of the file as a whole.
pub(super) fn law(path: &str, text: &str, faults: &mut Vec<Diagnostic>) -> Option<ReadLaw> {
    read_file(path, text, faults, TableName::LawFile, read)
}

fn read(file: &mut DataFile<'_>, mut table: Table<'_>) -> Option<ReadLaw> {
    check_format(file, &mut table, FORMAT)?;
    let jurisdiction: Option<Jurisdiction> = table.name_of(file, "jurisdiction", Wanted::FileName);
    let title = table.text(file, "title");
    let includes = includes(file, &mut table, jurisdiction.as_ref());
    let sources = Sources::read(file, &mut table);
    let mut reader = Reader { sources: &sources, cited: Cited::default(), any: false };
    let fields = reader.rules(file, &mut table, "field", field);
    let retentions = reader.rules(file, &mut table, "retention", retention);
    let time_limits = reader.rules(file, &mut table, "time_limit", time_limit);
    let forms = reader.rules(file, &mut table, "form", form);
    if !reader.any {
        file.fault(None, LawFault::NoRule);
    }
    reader.cited.note_unused(file, &sources);
    check_file_name(file, &table, "jurisdiction", jurisdiction.as_ref().map(Jurisdiction::as_str));
    table.finish(file);
    apart(
        file,
        &fields,
        |rule| ValueOf::Field { field: rule.field, occasion: rule.occasion },
        |a, b| (a.occasion, a.field) == (b.occasion, b.field),
    );
    apart(
        file,
        &retentions,
        |rule| ValueOf::Years(rule.records.clone()),
        |a, b| a.force == b.force && a.records.iter().any(|record| b.records.contains(record)),
    );
    apart(file, &time_limits, |rule| ValueOf::WithinDays(rule.occasion), |a, b| a.occasion == b.occasion);
    let (jurisdiction, title) = (jurisdiction?, title?);
    let law = LawFile {
        jurisdiction,
        title,
        includes: includes.iter().map(|(of, _)| of.clone()).collect(),
        sources: sources.defined,
        fields: bare(fields),
        retentions: bare(retentions),
        time_limits: bare(time_limits),
        forms: bare(forms),
    };
    Some(ReadLaw { file: law, includes })
}

/// A rule, and the places of its values in the file.
struct Placed<R> {
    places: KeyPlaces,
    rule: R,
}

fn bare<R>(placed: Vec<Placed<R>>) -> Vec<R> {
    placed.into_iter().map(|placed| placed.rule).collect()
}

fn includes(
    file: &mut DataFile<'_>,
    table: &mut Table<'_>,
    own: Option<&Jurisdiction>,
) -> Vec<(Jurisdiction, (u32, u32))> {
    let mut includes: Vec<(Jurisdiction, (u32, u32))> = Vec::new();
    for (at, name) in table.maybe_texts(file, "includes", Wanted::Jurisdictions) {
        match Jurisdiction::new(&name) {
            Err(bad) => file.fault(at, LawFault::IncludeName(bad)),
            Ok(of) if own == Some(&of) => file.fault(at, LawFault::IncludesItself { jurisdiction: of }),
            Ok(of) if includes.iter().any(|(known, _)| *known == of) => {
                file.fault(at, ValueFault::Twice { of: Listed::Include, name });
            }
            Ok(of) => includes.push((of, file.place(at))),
        }
    }
    includes
}

/// Reads the rules of a file, list by list.
struct Reader<'s> {
    sources: &'s Sources,
    cited: Cited<'s>,
    any: bool,
}

impl Reader<'_> {
    fn rules<R>(
        &mut self,
        file: &mut DataFile<'_>,
        table: &mut Table<'_>,
        key: &'static str,
        read: impl Fn(&mut DataFile<'_>, &mut Table<'_>) -> Option<Box<dyn FnOnce(Basis) -> R>>,
    ) -> Vec<Placed<R>> {
        let Some(entries) = table.tables(file, key) else {
            self.any = true;
            self.cited.some_unread();
            return Vec::new();
        };
        let mut rules = Vec::new();
        for mut entry in entries {
            self.any = true;
            let rule = read(file, &mut entry);
            let basis = self.basis(file, &mut entry);
            let places = entry.finish(file);
            rules.extend(rule.zip(basis).map(|(rule, basis)| Placed { places, rule: rule(basis) }));
        }
        rules
    }

    fn basis(&mut self, file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Basis> {
        let from = table.day(file, "from");
        let until = table.maybe_day(file, "until");
        let cited = table.texts(file, "source", Wanted::SourceKeys);
        self.cited.by_rule(file, &cited, self.sources);
        let confidence = table.word(file, "confidence", &words(Confidence::ALL, |word| word.as_str()));
        let checked_on = table.day(file, "checked_on");
        let note = table.maybe_text(file, "note");
        let in_order = dates_in_order(file, table, from, until, checked_on);
        let line = file.line(table.at(""));
        let source = cited.into_iter().map(|(_, key)| key).collect();
        let (from, confidence, checked_on) = (from?, confidence?, checked_on?);
        in_order.then_some(Basis { from, until, source, confidence, checked_on, note, line })
    }
}

fn occasion(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Occasion> {
    table.word(file, "occasion", &words(Occasion::ALL, |word| word.as_str()))
}

fn field(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Box<dyn FnOnce(Basis) -> FieldRule>> {
    let occasion = occasion(file, table);
    let field = table.word(file, "field", &words(Field::ALL, |word| word.as_str()));
    if let Some(field) = field {
        table.rename("field", field.as_str());
    }
    let need = table.word(file, "need", &words(FieldNeed::ALL, |word| word.as_str()));
    let (occasion, field, need) = (occasion?, field?, need?);
    Some(Box::new(move |basis| FieldRule { occasion, field, need, basis }))
}

fn retention(
    file: &mut DataFile<'_>,
    table: &mut Table<'_>,
) -> Option<Box<dyn FnOnce(Basis) -> RetentionRule>> {
    let written = table.texts(file, "records", Wanted::Records);
    let mut records: Vec<RecordSort> = Vec::new();
    for (at, text) in &written {
        match RecordSort::from_word(text) {
            Some(record) if records.contains(&record) => {
                file.fault(*at, ValueFault::Twice { of: Listed::Record, name: text.clone() });
            }
            Some(record) => records.push(record),
            None => {
                let known = RecordSort::ALL.iter().map(|word| word.as_str()).collect();
                file.fault(*at, ValueFault::unlisted(WordsOf::Records, text.clone(), known));
            }
        }
    }
    let years = table.whole(file, "years", 1..=30);
    let counted_from = table.word(file, "counted_from", &words(CountedFrom::ALL, |word| word.as_str()));
    let force = table.word(file, "force", &words(KeepingForce::ALL, |word| word.as_str()));
    let (years, counted_from, force) = (years?, counted_from?, force?);
    Some(Box::new(move |basis| RetentionRule { records, years, counted_from, force, basis }))
}

fn time_limit(
    file: &mut DataFile<'_>,
    table: &mut Table<'_>,
) -> Option<Box<dyn FnOnce(Basis) -> TimeLimitRule>> {
    let occasion = occasion(file, table);
    let within_days = table.whole(file, "within_days", 0..=400);
    let (occasion, within_days) = (occasion?, within_days?);
    Some(Box::new(move |basis| TimeLimitRule { occasion, within_days, basis }))
}

fn form(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Box<dyn FnOnce(Basis) -> FormRule>> {
    let text = table.text(file, "text")?;
    Some(Box::new(move |basis| FormRule { text, basis }))
}

/// Reports every pair of values of one rule that are in force on the same day.
fn apart<R: Dated>(
    file: &mut DataFile<'_>,
    rules: &[Placed<R>],
    value_of: impl Fn(&R) -> ValueOf,
    same: impl Fn(&R, &R) -> bool,
) {
    for (index, later) in rules.iter().enumerate() {
        for earlier in rules.iter().take(index).filter(|earlier| same(&earlier.rule, &later.rule)) {
            let (one, two) = (earlier.rule.basis(), later.rule.basis());
            if !one.meets(two) {
                continue;
            }
            let fault = RuleFault::TwoInForce {
                of: value_of(&later.rule),
                on: Some(one.from.max(two.from)),
                line: file.line(earlier.places.of("")),
                apart: KeepApart::by_days(Some(one.from), Some(two.from)),
            };
            file.fault(later.places.of(""), fault);
        }
    }
}
