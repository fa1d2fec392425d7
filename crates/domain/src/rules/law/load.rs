//! Reads one law file. Reports every fault with file, line, message and help.

use super::LawFile;
use super::rule::{Basis, Dated, FieldRule, FormRule, RetentionRule, TimeLimitRule};
use super::words::{CountedFrom, Field, FieldNeed, KeepingForce, Occasion, RecordSort};
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::diagnostic::{Diagnostic, nearest};
use crate::basics::words::Jurisdiction;
use crate::rules::sources::{Cited, Sources};
use crate::rules::table::{DataFile, KeyPlaces, Table, check_format, not_a_name, words};

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
    let mut found = Vec::new();
    let mut file = DataFile::new(path, text, &mut found);
    let law = Table::of_file(&mut file, "the law file").and_then(|table| read(&mut file, table));
    found.sort_by_key(|fault| (fault.line, fault.column));
    let sound = found.is_empty();
    faults.append(&mut found);
    law.filter(|_| sound)
}

fn read(file: &mut DataFile<'_>, mut table: Table<'_>) -> Option<ReadLaw> {
    check_format(file, &mut table, FORMAT)?;
    let jurisdiction: Option<Jurisdiction> =
        table.name_of(file, "jurisdiction", "the file name without `.toml`, in double quotes");
    let title = table.text(file, "title");
    let includes = includes(file, &mut table, jurisdiction.as_ref());
    let sources = Sources::read(file, &mut table);
    let mut reader = Reader { sources: &sources, cited: Cited::default(), any: false };
    let fields = reader.rules(file, &mut table, "field", field);
    let retentions = reader.rules(file, &mut table, "retention", retention);
    let time_limits = reader.rules(file, &mut table, "time_limit", time_limit);
    let forms = reader.rules(file, &mut table, "form", form);
    if !reader.any {
        let help = "add at least one [[field]], [[retention]], [[time_limit]] or [[form]]";
        file.fault(None, "the law file holds no rule", help);
    }
    reader.cited.note_unused(file, &sources);
    name_fits_path(file, &table, jurisdiction.as_ref());
    table.finish(file);
    apart(
        file,
        &fields,
        |rule| format!("`{}` at {}", rule.field, rule.occasion),
        |a, b| (a.occasion, a.field) == (b.occasion, b.field),
    );
    apart(
        file,
        &retentions,
        |rule| format!("`years` for {}", listed(&rule.records)),
        |a, b| a.force == b.force && a.records.iter().any(|record| b.records.contains(record)),
    );
    apart(
        file,
        &time_limits,
        |rule| format!("`within_days` at {}", rule.occasion),
        |a, b| a.occasion == b.occasion,
    );
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

fn listed(records: &[RecordSort]) -> String {
    records.iter().map(|record| record.as_str()).collect::<Vec<_>>().join(", ")
}

fn includes(
    file: &mut DataFile<'_>,
    table: &mut Table<'_>,
    own: Option<&Jurisdiction>,
) -> Vec<(Jurisdiction, (u32, u32))> {
    let mut includes: Vec<(Jurisdiction, (u32, u32))> = Vec::new();
    for (at, text) in table.maybe_texts(file, "includes", "a list of jurisdictions, such as [\"eu\"]") {
        match Jurisdiction::new(&text) {
            Err(error) => {
                let message = not_a_name(&error, "the code of a jurisdiction");
                file.fault(at, message, "write the code of a jurisdiction, such as `eu`");
            }
            Ok(of) if own == Some(&of) => {
                file.fault(at, format!("`{of}` includes itself"), "drop it: its own rules hold anyway");
            }
            Ok(of) if includes.iter().any(|(known, _)| *known == of) => {
                file.fault(at, format!("`{of}` is included twice"), "name each jurisdiction once");
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
        let cited = table.texts(file, "source", "a list of keys of sources, such as [\"S1\"]");
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

/// Reports dates that run backwards. False if `until` lies before `from`.
fn dates_in_order(
    file: &mut DataFile<'_>,
    table: &Table<'_>,
    from: Option<Day>,
    until: Option<Day>,
    checked_on: Option<Day>,
) -> bool {
    let backwards = from.zip(until).filter(|(from, until)| until < from);
    if let Some((from, until)) = backwards {
        let message = format!("`until` {until} lies before `from` {from}");
        file.fault(table.at("until"), message, "write the last day in force, or leave `until` out");
    }
    if let Some((from, checked_on)) = from.zip(checked_on).filter(|(from, checked_on)| checked_on < from) {
        let message = format!("`checked_on` {checked_on} lies before `from` {from}");
        let help = "correct the one that is wrong: a value is checked once it is in force";
        file.fault(table.at("checked_on"), message, help);
    }
    backwards.is_none()
}

fn occasion(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Occasion> {
    table.word(file, "occasion", &words(Occasion::ALL, |word| word.as_str()))
}

fn field(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Box<dyn FnOnce(Basis) -> FieldRule>> {
    let occasion = occasion(file, table);
    let field = table.word(file, "field", &words(Field::ALL, |word| word.as_str()));
    if let Some(field) = field {
        table.rename(format!("field `{field}`"));
    }
    let need = table.word(file, "need", &words(FieldNeed::ALL, |word| word.as_str()));
    let (occasion, field, need) = (occasion?, field?, need?);
    Some(Box::new(move |basis| FieldRule { occasion, field, need, basis }))
}

fn retention(
    file: &mut DataFile<'_>,
    table: &mut Table<'_>,
) -> Option<Box<dyn FnOnce(Basis) -> RetentionRule>> {
    let written = table.texts(file, "records", "a list of records, such as [\"acquisition\", \"proof\"]");
    let mut records: Vec<RecordSort> = Vec::new();
    for (at, text) in &written {
        match RecordSort::from_word(text) {
            Some(record) if records.contains(&record) => {
                file.fault(*at, format!("`{record}` is named twice"), "name each sort of record once");
            }
            Some(record) => records.push(record),
            None => {
                let all = || RecordSort::ALL.iter().map(|word| word.as_str());
                let help = nearest(text, all()).map_or_else(
                    || format!("write one of: {}", all().collect::<Vec<_>>().join(", ")),
                    |near| format!("did you mean `{near}`?"),
                );
                file.fault(*at, format!("there is no sort of record `{text}`"), help);
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
    name: impl Fn(&R) -> String,
    same: impl Fn(&R, &R) -> bool,
) {
    for (index, later) in rules.iter().enumerate() {
        for earlier in rules.iter().take(index).filter(|earlier| same(&earlier.rule, &later.rule)) {
            let (one, two) = (earlier.rule.basis(), later.rule.basis());
            if !one.meets(two) {
                continue;
            }
            let on = one.from.max(two.from);
            let name = name(&later.rule);
            let message = format!(
                "two values of {name} are in force on {on}: this one and that of line {}",
                file.line(earlier.places.of(""))
            );
            let (older, newer) = if one.from <= two.from { (one, two) } else { (two, one) };
            let help = if older.from == newer.from {
                "keep one of the two; or, if one replaced the other, give it a later `from`".to_owned()
            } else {
                format!(
                    "write `until = {}` in the one that is in force from {}",
                    newer.from.before(),
                    older.from
                )
            };
            file.fault(later.places.of(""), message, help);
        }
    }
}

/// Reports a file name that does not fit its jurisdiction: `gb.toml` holds the law of `gb`.
fn name_fits_path(file: &mut DataFile<'_>, head: &Table<'_>, jurisdiction: Option<&Jurisdiction>) {
    let name = file.path().rsplit('/').next().unwrap_or_default();
    if let Some(jurisdiction) = jurisdiction.filter(|jurisdiction| name != format!("{jurisdiction}.toml")) {
        let stem = name.strip_suffix(".toml").unwrap_or(name);
        let help = format!("rename the file to `{jurisdiction}.toml`, or write `jurisdiction = \"{stem}\"`");
        let message = format!("the jurisdiction is `{jurisdiction}`, but the file is `{name}`");
        file.fault(head.at("jurisdiction"), message, help);
    }
}
