//! Reading one `[[rule]]`: the keys of its kind, then the keys that every rule has.

use super::rule::{BroodState, Confidence, DosePer, Force, Need, Rule, Says, TemperatureWindow, Topic};
use super::table::{File, Table, Unfit};
use crate::diagnostic::nearest;
use crate::quantity::Quantity;
use crate::words::{Brood, Method, Permission, RemovalNeed, SupersDuring};

/// Longest period in days that any leaflet is believed to state.
const DAYS_MOST: i64 = 400;

/// What could be read of a rule.
pub(super) struct Read {
    /// Whether it says of what kind it is; if not, nobody knows which keys it takes.
    pub(super) kind_is_known: bool,
    /// The rule, if enough of it could be read.
    pub(super) rule: Option<Rule>,
    /// The method it is limited to.
    pub(super) method: Option<Method>,
    /// The source keys it cites, each with its place.
    pub(super) cited: Vec<(usize, String)>,
}

/// Reads a rule.
pub(super) fn rule(file: &mut File<'_>, table: &mut Table<'_>) -> Read {
    let topics: Vec<_> = Topic::ALL.iter().map(|topic| (topic.as_str(), *topic)).collect();
    let topic = table.word(file, "kind", &topics);
    if let Some(topic) = topic {
        table.rename(format!("rule `{}`", topic.as_str()));
    }
    let says = topic.and_then(|topic| says(file, table, topic));
    let method: Option<Method> =
        table.maybe_name_of(file, "method", "one of the names in `methods`, in double quotes");
    let from = table.day(file, "from");
    let until = table.maybe_day(file, "until");
    let force =
        table.word(file, "force", &[("law", Force::Law), ("label", Force::Label), ("advice", Force::Advice)]);
    let cited = table.texts(file, "source", "a list of keys of sources, such as [\"S1\"]");
    let confidence = table.word(
        file,
        "confidence",
        &[
            ("document", Confidence::Document),
            ("second_hand", Confidence::SecondHand),
            ("unconfirmed", Confidence::Unconfirmed),
        ],
    );
    let checked_on = table.day(file, "checked_on");
    let note = table.maybe_text(file, "note");

    let backwards = from.zip(until).filter(|(from, until)| until < from);
    if let Some((from, until)) = backwards {
        let message = format!("`until` {until} lies before `from` {from}");
        file.fault(table.at("until"), message, "write the last day in force, or leave `until` out");
    }
    if let Some((from, checked_on)) = from.zip(checked_on).filter(|(from, checked_on)| checked_on < from) {
        let message = format!("`checked_on` {checked_on} lies before `from` {from}");
        file.fault(
            table.at("checked_on"),
            message,
            "correct the one that is wrong: a value is checked once it is in force",
        );
    }
    let line = file.line(table.at(""));
    let source = cited.iter().map(|(_, key)| key.clone()).collect();
    let rule = || {
        let (says, from, force) = (says?, from?, force?);
        let (confidence, checked_on) = (confidence?, checked_on?);
        let method = method.clone();
        Some(Rule { says, method, from, until, force, source, confidence, checked_on, note, line })
    };
    Read { kind_is_known: topic.is_some(), rule: rule().filter(|_| backwards.is_none()), method, cited }
}

fn says(file: &mut File<'_>, table: &mut Table<'_>, topic: Topic) -> Option<Says> {
    let permission = [("forbidden", Permission::Forbidden), ("allowed", Permission::Allowed)];
    Some(match topic {
        Topic::SupersDuring => {
            let words: Vec<_> = SupersDuring::ALL.iter().map(|word| (word.as_str(), *word)).collect();
            Says::SupersDuring { value: table.word(file, "value", &words)? }
        }
        Topic::FlowDuring => Says::FlowDuring { value: table.word(file, "value", &permission)? },
        Topic::HarvestDuring => Says::HarvestDuring { value: table.word(file, "value", &permission)? },
        Topic::Withdrawal => Says::Withdrawal { days: table.whole(file, "days", 0..=DAYS_MOST)? },
        Topic::WaitAfterRemoval => Says::WaitAfterRemoval { days: table.whole(file, "days", 0..=DAYS_MOST)? },
        Topic::Removal => {
            let words: Vec<_> = [RemovalNeed::Needed, RemovalNeed::NotNeeded]
                .iter()
                .map(|word| (word.as_str(), *word))
                .collect();
            Says::Removal { value: table.word(file, "value", &words)? }
        }
        Topic::StayMin | Topic::StayMax => stay(file, table, topic)?,
        Topic::Doses => doses(file, table)?,
        Topic::CoursesPerYear => Says::CoursesPerYear { count: table.whole(file, "count", 1..=12)? },
        Topic::GapBetweenCourses => {
            Says::GapBetweenCourses { days: table.whole(file, "days", 1..=DAYS_MOST)? }
        }
        Topic::Temperature => temperature(file, table)?,
        Topic::BroodNeed => {
            let words: Vec<_> = Brood::ALL.iter().map(|word| (word.as_str(), *word)).collect();
            Says::BroodNeed { value: table.word(file, "value", &words)? }
        }
        Topic::ColonySize => colony_size(file, table),
        Topic::BroodBoxes => Says::BroodBoxes { max: table.whole(file, "max", 1..=10)? },
        Topic::Dose => dose(file, table)?,
        Topic::DoseCap => {
            let (amount, unit) = (amount(file, table), table.maybe_text(file, "unit"));
            Says::DoseCap { amount: amount?, unit }
        }
        Topic::Needs => Says::Needs { list: needs(file, table) },
        Topic::Class => Says::Class { name: table.text(file, "name")? },
        Topic::CombRule => Says::CombRule { text: table.text(file, "text")? },
        Topic::Entrance => Says::Entrance { text: table.text(file, "text")? },
        Topic::NotWith => Says::NotWith { text: table.text(file, "text")? },
        Topic::WholeApiary => Says::WholeApiary { text: table.text(file, "text")? },
        Topic::UserSafety => Says::UserSafety { text: table.text(file, "text")? },
        Topic::AfterOpening => Says::AfterOpening { text: table.text(file, "text")? },
        Topic::Storage => Says::Storage { text: table.text(file, "text")? },
        Topic::Disposal => Says::Disposal { text: table.text(file, "text")? },
    })
}

fn stay(file: &mut File<'_>, table: &mut Table<'_>, topic: Topic) -> Option<Says> {
    let states = [("absent_or_lowest", BroodState::AbsentOrLowest), ("present", BroodState::Present)];
    let brood = table.maybe_word(file, "brood", &states);
    let days = table.whole(file, "days", 1..=DAYS_MOST)?;
    Some(if topic == Topic::StayMin { Says::StayMin { days, brood } } else { Says::StayMax { days, brood } })
}

fn doses(file: &mut File<'_>, table: &mut Table<'_>) -> Option<Says> {
    let count = table.whole(file, "count", 1..=12);
    let interval_min_days = table.maybe_whole(file, "interval_min_days", 1..=DAYS_MOST);
    let interval_max_days = table.maybe_whole(file, "interval_max_days", 1..=DAYS_MOST);
    if let (Some(least), Some(most)) = (interval_min_days, interval_max_days)
        && most < least
    {
        let message = format!("`interval_max_days` {most} is less than `interval_min_days` {least}");
        file.fault(table.at("interval_max_days"), message, "swap or correct them");
    }
    Some(Says::Doses { count: count?, interval_min_days, interval_max_days })
}

fn temperature(file: &mut File<'_>, table: &mut Table<'_>) -> Option<Says> {
    let windows = [
        ("maximum_on_placing_day", TemperatureWindow::MaximumOnPlacingDay),
        ("maximum_in_first_days", TemperatureWindow::MaximumInFirstDays),
        ("maximum_over_stay", TemperatureWindow::MaximumOverStay),
        ("mean_over_stay", TemperatureWindow::MeanOverStay),
        ("at_use", TemperatureWindow::AtUse),
        ("product", TemperatureWindow::Product),
    ];
    let window = table.word(file, "window", &windows);
    let first_days = table.maybe_whole(file, "first_days", 1..=60);
    let min_tenths_c = table.maybe_number(file, "min_c", DEGREES, tenths);
    let max_tenths_c = table.maybe_number(file, "max_c", DEGREES, tenths);
    goes_with(file, table, "first_days", ("window", "maximum_in_first_days"), word_of(window, &windows));
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
fn tenths(written: &str) -> Result<i16, Unfit> {
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
    file: &mut File<'_>,
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
        Some(written) if written != word && table.has(key) => {
            let message = format!("`{key}` does not go with `{of} = \"{written}\"`");
            file.fault(table.at(key), message, format!("drop it, or write `{of} = \"{word}\"`"));
        }
        _ => {}
    }
}

fn word_of<'w, T: Copy + PartialEq>(meant: Option<T>, words: &[(&'w str, T)]) -> Option<&'w str> {
    words.iter().find(|(_, known)| Some(*known) == meant).map(|(word, _)| *word)
}

fn colony_size(file: &mut File<'_>, table: &mut Table<'_>) -> Says {
    let min_brood_frames = table.maybe_whole(file, "min_brood_frames", 1..=40);
    let min_bees = table.maybe_whole(file, "min_bees", 100..=200_000);
    let text = table.maybe_text(file, "text");
    if !["min_brood_frames", "min_bees", "text"].iter().any(|key| table.has(key)) {
        let help = "add `min_brood_frames`, `min_bees` or `text`";
        file.fault(table.at(""), "rule `colony_size` says nothing", help);
    }
    Says::ColonySize { min_brood_frames, min_bees, text }
}

fn dose(file: &mut File<'_>, table: &mut Table<'_>) -> Option<Says> {
    let bases = [
        ("hive", DosePer::Hive),
        ("brood_box", DosePer::BroodBox),
        ("frames_of_bees", DosePer::FramesOfBees),
        ("seam", DosePer::Seam),
        ("small_colony", DosePer::SmallColony),
    ];
    let amount = amount(file, table);
    let per = table.word(file, "per", &bases);
    let frames = table.maybe_whole(file, "frames", 1..=40);
    let unit = table.maybe_text(file, "unit");
    goes_with(file, table, "frames", ("per", "frames_of_bees"), word_of(per, &bases));
    Some(Says::Dose { amount: amount?, per: per?, frames, unit })
}

fn amount(file: &mut File<'_>, table: &mut Table<'_>) -> Option<Quantity> {
    let wanted = "a number above 0 with at most three decimals, such as 2 or 2.3";
    let read = |written: &str| Quantity::parse(written).ok().filter(|amount| !amount.is_zero()).ok_or(None);
    table.number(file, "amount", wanted, read)
}

fn needs(file: &mut File<'_>, table: &mut Table<'_>) -> Vec<Need> {
    const WORDS: [(&str, Need); 6] = [
        ("mains_or_generator", Need::MainsOrGenerator),
        ("battery", Need::Battery),
        ("carry_in_kit", Need::CarryInKit),
        ("hive_opened", Need::HiveOpened),
        ("return_visit", Need::ReturnVisit),
        ("dry_ground", Need::DryGround),
    ];
    let all = WORDS.map(|(word, _)| word);
    let mut list = Vec::new();
    for (offset, written) in table.texts(file, "list", &format!("a list of any of: {}", all.join(", "))) {
        if let Some((_, need)) = WORDS.iter().find(|(known, _)| *known == written) {
            list.push(*need);
        } else {
            let help = nearest(&written, all).map_or_else(
                || format!("write one of: {}", all.join(", ")),
                |near| format!("did you mean `{near}`?"),
            );
            file.fault(offset, format!("`{written}` is not a need"), help);
        }
    }
    list
}
