//! Reading what a `[[rule]]` says: the keys of its kind.

use super::rule::{
    BroodState, DosePer, Need, Other, Says, TemperatureWindow, Timing, WithdrawalPeriod, YearCounting,
};
use crate::basics::calendar::YearDay;
use crate::basics::diagnostic::nearest;
use crate::basics::quantity::Quantity;
use crate::basics::topic::Topic;
use crate::basics::words::{Brood, Permission, RemovalNeed, SupersDuring};
use crate::rules::table::{Complaint, DataFile, Table, words};

/// Longest period in days that any leaflet is believed to state.
pub(super) const DAYS_MOST: i64 = 400;
/// Most days that a leaflet may let an opened pack be used: three years.
pub(super) const IN_USE_MOST: i64 = 1_100;

/// Reads what a rule of a kind says.
pub(super) fn says(file: &mut DataFile<'_>, table: &mut Table<'_>, topic: Topic) -> Option<Says> {
    let permission = words(Permission::ALL, |word| word.as_str());
    Some(match topic {
        Topic::SupersDuring => {
            let value = table.word(file, "value", &words(SupersDuring::ALL, |word| word.as_str()))?;
            Says::SupersDuring { value }
        }
        Topic::FlowDuring => Says::FlowDuring { value: table.word(file, "value", &permission)? },
        Topic::HarvestDuring => Says::HarvestDuring { value: table.word(file, "value", &permission)? },
        Topic::FlowBefore => {
            let value = table.word(file, "value", &words(&[Permission::Forbidden], |word| word.as_str()));
            let days = table.maybe_whole(file, "days", 1..=DAYS_MOST);
            Says::FlowBefore { value: value?, days }
        }
        Topic::Withdrawal => withdrawal(file, table)?,
        Topic::WaitAfterRemoval => Says::WaitAfterRemoval { days: table.whole(file, "days", 0..=DAYS_MOST)? },
        Topic::Removal => {
            let in_leaflets = words(&[RemovalNeed::Needed, RemovalNeed::NotNeeded], |word| word.as_str());
            Says::Removal { value: table.word(file, "value", &in_leaflets)? }
        }
        Topic::StayMin | Topic::StayMax => stay(file, table, topic)?,
        Topic::Doses => doses(file, table)?,
        Topic::CoursesPerYear => {
            let count = table.whole(file, "count", 1..=12);
            let counted = table.maybe_word(file, "counted", &words(YearCounting::ALL, |word| word.as_str()));
            Says::CoursesPerYear { count: count?, counted }
        }
        Topic::CoursesPerBroodlessPeriod => {
            Says::CoursesPerBroodlessPeriod { count: table.whole(file, "count", 1..=12)? }
        }
        Topic::GapBetweenCourses => {
            Says::GapBetweenCourses { days: table.whole(file, "days", 1..=DAYS_MOST)? }
        }
        Topic::Season => {
            let [from_day, to_day] = ["from_day", "to_day"].map(|key| year_day(file, table, key));
            Says::Season { from_day: from_day?, to_day: to_day? }
        }
        Topic::Timing => {
            Says::Timing { value: table.word(file, "value", &words(Timing::ALL, |word| word.as_str()))? }
        }
        Topic::Temperature => temperature(file, table)?,
        Topic::BroodNeed => {
            Says::BroodNeed { value: table.word(file, "value", &words(Brood::ALL, |word| word.as_str()))? }
        }
        Topic::ColonySize => colony_size(file, table),
        Topic::BroodBoxes => Says::BroodBoxes { max: table.whole(file, "max", 1..=10)? },
        Topic::Dose => dose(file, table)?,
        Topic::DoseCap => {
            let (amount, unit) = (amount(file, table, "amount"), table.maybe_text(file, "unit"));
            let when = table.maybe_text(file, "when");
            Says::DoseCap { amount: amount?, unit, when }
        }
        Topic::Recipe => recipe(file, table)?,
        Topic::Needs => {
            let needs = words(Need::ALL, |word| word.as_str());
            let wanted = format!("a list of any of: {}", joined(&needs));
            let written = table.texts(file, "list", &wanted);
            Says::Needs { list: listed(file, written, &needs, "a need") }
        }
        Topic::NotWith => {
            let text = table.text(file, "text");
            let others = words(Other::ALL, |word| word.as_str());
            let wanted = format!("a list of any of: {}", joined(&others));
            let written = table.maybe_texts(file, "others", &wanted);
            let others = listed(file, written, &others, "something that can be told from the record");
            Says::NotWith { text: text?, others }
        }
        Topic::Contraindication => Says::Contraindication { text: table.text(file, "text")? },
        Topic::Class => Says::Class { name: table.text(file, "name")? },
        Topic::CombRule => Says::CombRule { text: table.text(file, "text")? },
        Topic::Entrance => Says::Entrance { text: table.text(file, "text")? },
        Topic::WholeApiary => Says::WholeApiary { text: table.text(file, "text")? },
        Topic::UserSafety => Says::UserSafety { text: table.text(file, "text")? },
        Topic::AfterOpening => {
            let days = table.maybe_whole(file, "days", 0..=IN_USE_MOST);
            Says::AfterOpening { text: table.text(file, "text")?, days }
        }
        Topic::Storage => Says::Storage { text: table.text(file, "text")? },
        Topic::Disposal => Says::Disposal { text: table.text(file, "text")? },
    })
}

/// Days, or that the label knows none: one of the two.
fn withdrawal(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Says> {
    let none = table.maybe_true(file, "none_by_label");
    if !table.has("none_by_label") {
        let days = table.whole(file, "days", 0..=DAYS_MOST)?;
        return Some(Says::Withdrawal { days: WithdrawalPeriod::Days(days) });
    }
    if table.maybe_whole::<u16>(file, "days", 0..=DAYS_MOST).is_some() {
        let message = "a label that knows no withdrawal period does not state one in days";
        file.fault(table.at("days"), message, "keep `days`, or keep `none_by_label = true`");
    }
    none.map(|()| Says::Withdrawal { days: WithdrawalPeriod::NONE_BY_LABEL })
}

fn stay(file: &mut DataFile<'_>, table: &mut Table<'_>, topic: Topic) -> Option<Says> {
    let brood = table.maybe_word(file, "brood", &words(&BroodState::ALL, |state| state.as_str()));
    let days = table.whole(file, "days", 1..=DAYS_MOST)?;
    Some(if topic == Topic::StayMin { Says::StayMin { days, brood } } else { Says::StayMax { days, brood } })
}

fn doses(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Says> {
    let count = table.whole(file, "count", 1..=12);
    let count_max = table.maybe_whole(file, "count_max", 1..=12);
    let interval_min_days = table.maybe_whole(file, "interval_min_days", 1..=DAYS_MOST);
    let interval_max_days = table.maybe_whole(file, "interval_max_days", 1..=DAYS_MOST);
    if let (Some(least), Some(most)) = (interval_min_days, interval_max_days)
        && most < least
    {
        let message = format!("`interval_max_days` {most} is less than `interval_min_days` {least}");
        file.fault(table.at("interval_max_days"), message, "swap or correct them");
    }
    above(file, table, ("count", count), ("count_max", count_max));
    Some(Says::Doses { count: count?, count_max, interval_min_days, interval_max_days })
}

/// Notes a greater number that is not above the smaller one.
fn above<T: PartialOrd>(
    file: &mut DataFile<'_>,
    table: &Table<'_>,
    (least_key, least): (&str, Option<T>),
    (most_key, most): (&str, Option<T>),
) {
    if least.zip(most).is_some_and(|(least, most)| most <= least) {
        let message = format!("`{most_key}` is not above `{least_key}`");
        file.fault(table.at(most_key), message, format!("correct it, or leave `{most_key}` out"));
    }
}

fn year_day(file: &mut DataFile<'_>, table: &mut Table<'_>, key: &'static str) -> Option<YearDay> {
    table.name_of(file, key, "month and day in double quotes, such as \"11-01\"")
}

fn temperature(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Says> {
    let windows = words(TemperatureWindow::ALL, |window| window.as_str());
    let window = table.word(file, "window", &windows);
    let first_days = table.maybe_whole(file, "first_days", 1..=60);
    let min_tenths_c = table.maybe_number(file, "min_c", DEGREES, tenths);
    let max_tenths_c = table.maybe_number(file, "max_c", DEGREES, tenths);
    let written = window.map(TemperatureWindow::as_str);
    goes_with(file, table, "first_days", ("window", "maximum_in_first_days"), written);
    if !table.has("min_c") && !table.has("max_c") {
        file.fault(
            table.at(""),
            "rule `temperature` sets no limit",
            "add `min_c`, `max_c` or both, in degrees Celsius",
        );
    }
    if let (Some(least), Some(most)) = (min_tenths_c, max_tenths_c)
        && most <= least
    {
        file.fault(table.at("max_c"), "`max_c` is not above `min_c`", "swap or correct them");
    }
    Some(Says::Temperature { window: window?, first_days, min_tenths_c, max_tenths_c })
}

const DEGREES: &str = "degrees Celsius from -30 to 60 with at most one decimal";

/// Degrees with at most one decimal, as tenths. Leaflets stay within -30 to 60 °C; more is likely °F.
fn tenths(written: &str) -> Result<i16, Complaint> {
    let (sign, digits) = written.strip_prefix('-').map_or((1, written), |digits| (-1, digits));
    let (whole, decimal) = digits.split_once('.').unwrap_or((digits, "0"));
    let value = match (whole.parse::<i16>(), decimal.parse::<i16>(), decimal.len()) {
        (Ok(whole), Ok(decimal), 1) if whole < 1000 => Some(sign * (whole * 10 + decimal)),
        _ => None,
    };
    let within = value.filter(|tenths| (-300..=600).contains(tenths));
    within.ok_or_else(|| {
        let celsius = value
            .filter(|tenths| *tenths <= 1400)
            .map(|tenths| (tenths - 320) * 5 / 9)
            .filter(|_| sign > 0)?;
        Some(format!("write {DEGREES}: {written} °F are {}.{} °C", celsius / 10, celsius % 10))
    })
}

/// A key that is needed beside one word of another key, and means nothing beside the others.
fn goes_with(
    file: &mut DataFile<'_>,
    table: &Table<'_>,
    key: &str,
    (of, word): (&str, &str),
    written: Option<&str>,
) {
    match written {
        Some(written) if written == word && !table.has(key) => {
            let message = format!("{} lacks `{key}`", table.name());
            file.fault(table.at(of), message, format!("add `{key}`: `{of} = \"{word}\"` needs it"));
        }
        _ => only_with(file, table, key, (of, word), written),
    }
}

/// A key that means nothing but beside one word of another key.
fn only_with(
    file: &mut DataFile<'_>,
    table: &Table<'_>,
    key: &str,
    (of, word): (&str, &str),
    written: Option<&str>,
) {
    if let Some(written) = written.filter(|written| *written != word && table.has(key)) {
        let message = format!("`{key}` does not go with `{of} = \"{written}\"`");
        file.fault(table.at(key), message, format!("drop it, or write `{of} = \"{word}\"`"));
    }
}

fn colony_size(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Says {
    let min_brood_frames = table.maybe_whole(file, "min_brood_frames", 1..=40);
    let min_bees = table.maybe_whole(file, "min_bees", BEES);
    let text = table.maybe_text(file, "text");
    if !["min_brood_frames", "min_bees", "text"].iter().any(|key| table.has(key)) {
        let help = "add `min_brood_frames`, `min_bees` or `text`";
        file.fault(table.at(""), "rule `colony_size` says nothing", help);
    }
    Says::ColonySize { min_brood_frames, min_bees, text }
}

/// Bees of a colony, from a mating nucleus to more than any hive holds.
pub(super) const BEES: std::ops::RangeInclusive<i64> = 100..=200_000;

fn dose(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Says> {
    let least = amount(file, table, "amount");
    let amount_max = maybe_amount(file, table, "amount_max");
    above(file, table, ("amount", least), ("amount_max", amount_max));
    let per = table.word(file, "per", &words(DosePer::ALL, |per| per.as_str()));
    let frames = table.maybe_whole(file, "frames", 1..=40);
    let min_bees = table.maybe_whole(file, "min_bees", BEES);
    let max_bees = table.maybe_whole(file, "max_bees", BEES);
    above(file, table, ("min_bees", min_bees), ("max_bees", max_bees));
    let unit = table.maybe_text(file, "unit");
    let when = table.maybe_text(file, "when");
    let written = per.map(DosePer::as_str);
    goes_with(file, table, "frames", ("per", "frames_of_bees"), written);
    for key in ["min_bees", "max_bees"] {
        only_with(file, table, key, ("per", "bees"), written);
    }
    if per == Some(DosePer::Bees) && !table.has("min_bees") && !table.has("max_bees") {
        let message = format!("{} does not say for how many bees", table.name());
        file.fault(table.at("per"), message, "add `min_bees`, `max_bees` or both");
    }
    Some(Says::Dose { amount: least?, amount_max, per: per?, frames, min_bees, max_bees, unit, when })
}

fn recipe(file: &mut DataFile<'_>, table: &mut Table<'_>) -> Option<Says> {
    let amount = amount(file, table, "amount");
    let unit = table.maybe_text(file, "unit");
    let water_ml = maybe_amount(file, table, "water_ml");
    let sugar_g = maybe_amount(file, table, "sugar_g");
    let makes_ml = self::amount(file, table, "makes_ml");
    let text = table.text(file, "text");
    Some(Says::Recipe { amount: amount?, unit, water_ml, sugar_g, makes_ml: makes_ml?, text: text? })
}

const AMOUNT: &str = "a number above 0 with at most three decimals, such as 2 or 2.3";

fn amount(file: &mut DataFile<'_>, table: &mut Table<'_>, key: &'static str) -> Option<Quantity> {
    table.number(file, key, AMOUNT, above_nothing)
}

fn maybe_amount(file: &mut DataFile<'_>, table: &mut Table<'_>, key: &'static str) -> Option<Quantity> {
    table.maybe_number(file, key, AMOUNT, above_nothing)
}

fn above_nothing(written: &str) -> Result<Quantity, Complaint> {
    Quantity::parse(written).ok().filter(|amount| !amount.is_zero()).ok_or(None)
}

fn joined<T>(words: &[(&str, T)]) -> String {
    words.iter().map(|(word, _)| *word).collect::<Vec<_>>().join(", ")
}

/// The words of a list, each of which must be one of `words`.
fn listed<T: Copy>(
    file: &mut DataFile<'_>,
    written: Vec<(usize, String)>,
    words: &[(&str, T)],
    what: &str,
) -> Vec<T> {
    let mut list = Vec::new();
    for (offset, written) in written {
        if let Some((_, meant)) = words.iter().find(|(known, _)| *known == written) {
            list.push(*meant);
        } else {
            let help = nearest(&written, words.iter().map(|(word, _)| *word)).map_or_else(
                || format!("write one of: {}", joined(words)),
                |near| format!("did you mean `{near}`?"),
            );
            file.fault(offset, format!("`{written}` is not {what}"), help);
        }
    }
    list
}
