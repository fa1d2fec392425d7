//! Reading one `[[rule]]`: the keys of its kind, then the keys that every rule has.

use super::rule::{BroodState, Confidence, DosePer, Force, Need, Rule, Says, TemperatureWindow, Topic};
use super::table::{File, Table};
use crate::quantity::Quantity;
use crate::words::{Brood, Permission, RemovalNeed, SupersDuring};

/// Longest period in days that any leaflet is believed to state.
const DAYS_MOST: i64 = 400;

/// A source key and where it stands.
type CitedSources = Vec<(usize, String)>;

/// Reads a rule and the source keys it cites. No rule if anything is wrong with it.
pub(super) fn rule(file: &mut File<'_>, table: &mut Table<'_>) -> (Option<Rule>, CitedSources) {
    let topics: Vec<_> = Topic::ALL.iter().map(|topic| (topic.as_str(), *topic)).collect();
    let topic = table.word(file, "kind", &topics);
    if let Some(topic) = topic {
        table.rename(format!("rule `{}`", topic.as_str()));
    }
    let says = topic.and_then(|topic| says(file, table, topic));
    let method = table.maybe_parsed(file, "method");
    let from = table.day(file, "from");
    let until = table.maybe_day(file, "until");
    let force =
        table.word(file, "force", &[("law", Force::Law), ("label", Force::Label), ("advice", Force::Advice)]);
    let source = table.texts(file, "source");
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

    let mut sound = true;
    let mut wrong = |message: String, help: &str| {
        file.fault(table.offset(), message, help);
        sound = false;
    };
    if source.is_empty() {
        wrong("the rule names no source".to_owned(), "add `source = [\"…\"]` with the key of a [[source]]");
    }
    if let (Some(from), Some(until)) = (from, until)
        && until < from
    {
        wrong(format!("`until` {until} lies before `from` {from}"), "`until` is the last day in force");
    }
    if let (Some(from), Some(checked_on)) = (from, checked_on)
        && checked_on < from
    {
        let message = format!("`checked_on` {checked_on} lies before `from` {from}");
        wrong(message, "a value can only be checked once it is in force");
    }
    let line = file.line(table.offset());
    let cited = source.iter().map(|(_, key)| key.clone()).collect();
    let rule = || {
        let (says, from, force) = (says?, from?, force?);
        let (confidence, checked_on) = (confidence?, checked_on?);
        Some(Rule { says, method, from, until, force, source: cited, confidence, checked_on, note, line })
    };
    (rule().filter(|_| sound), source)
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
            let words: Vec<_> = RemovalNeed::ALL.iter().map(|word| (word.as_str(), *word)).collect();
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
        Topic::ColonySize => colony_size(file, table)?,
        Topic::BroodBoxes => Says::BroodBoxes { max: table.whole(file, "max", 1..=10)? },
        Topic::Dose => dose(file, table)?,
        Topic::DoseCap => {
            let amount = amount(file, table)?;
            Says::DoseCap { amount, unit: table.maybe_text(file, "unit") }
        }
        Topic::Needs => Says::Needs { list: needs(file, table)? },
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
        file.fault(table.offset(), message, "swap or correct them");
        return None;
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
    let min_tenths_c = table.maybe_number(file, "min_c").map(|number| tenths(file, &number));
    let max_tenths_c = table.maybe_number(file, "max_c").map(|number| tenths(file, &number));
    let at = table.offset();
    let in_first_days = window == Some(TemperatureWindow::MaximumInFirstDays);
    if window.is_some() && in_first_days != first_days.is_some() {
        let help = "`first_days` goes with the window `maximum_in_first_days`, and only with it";
        file.fault(at, "the temperature rule does not say which days it means", help);
        return None;
    }
    let (min_tenths_c, max_tenths_c) = match (min_tenths_c, max_tenths_c) {
        (None, None) => {
            file.fault(
                at,
                "the temperature rule sets no limit",
                "add `min_c`, `max_c` or both, in degrees Celsius",
            );
            return None;
        }
        (least, most) => {
            (least.map_or(Some(None), |t| t.map(Some))?, most.map_or(Some(None), |t| t.map(Some))?)
        }
    };
    if let (Some(least), Some(most)) = (min_tenths_c, max_tenths_c)
        && most <= least
    {
        file.fault(at, "`max_c` is not above `min_c`", "swap or correct them");
        return None;
    }
    Some(Says::Temperature { window: window?, first_days, min_tenths_c, max_tenths_c })
}

/// Degrees with at most one decimal, as tenths. Leaflets stay within -30 to 60 °C; more is likely °F.
fn tenths(file: &mut File<'_>, (offset, written): &(usize, String)) -> Option<i16> {
    let (sign, digits) = written.strip_prefix('-').map_or((1, written.as_str()), |digits| (-1, digits));
    let (whole, decimal) = digits.split_once('.').unwrap_or((digits, "0"));
    let value = match (whole.parse::<i16>(), decimal.parse::<i16>(), decimal.len()) {
        (Ok(whole), Ok(decimal), 1) if whole <= 100 => Some(sign * (whole * 10 + decimal)),
        _ => None,
    };
    let within = value.filter(|tenths| (-300..=600).contains(tenths));
    if within.is_none() {
        let help = "write degrees Celsius from -30 to 60 with at most one decimal";
        file.fault(*offset, format!("`{written}` is no temperature of a leaflet"), help);
    }
    within
}

fn colony_size(file: &mut File<'_>, table: &mut Table<'_>) -> Option<Says> {
    let min_brood_frames = table.maybe_whole(file, "min_brood_frames", 1..=40);
    let min_bees = table.maybe_whole(file, "min_bees", 100..=200_000);
    let text = table.maybe_text(file, "text");
    if min_brood_frames.is_none() && min_bees.is_none() && text.is_none() {
        let help = "add `min_brood_frames`, `min_bees` or `text`";
        file.fault(table.offset(), "the rule on colony size says nothing", help);
        return None;
    }
    Some(Says::ColonySize { min_brood_frames, min_bees, text })
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
    if per.is_some() && (per == Some(DosePer::FramesOfBees)) != frames.is_some() {
        let help = "`frames` goes with `per = \"frames_of_bees\"`, and only with it";
        file.fault(table.offset(), "the dose does not say how many frames it is for", help);
        return None;
    }
    Some(Says::Dose { amount: amount?, per: per?, frames, unit })
}

fn amount(file: &mut File<'_>, table: &mut Table<'_>) -> Option<Quantity> {
    let (offset, written) = table.number(file, "amount")?;
    match Quantity::parse(&written) {
        Ok(amount) if !amount.is_zero() => Some(amount),
        Ok(_) => {
            file.fault(offset, "an amount of nothing is no dose", "write a number above zero");
            None
        }
        Err(message) => {
            file.fault(offset, message, "write a number such as 2 or 2.3");
            None
        }
    }
}

fn needs(file: &mut File<'_>, table: &mut Table<'_>) -> Option<Vec<Need>> {
    const WORDS: [(&str, Need); 6] = [
        ("mains_or_generator", Need::MainsOrGenerator),
        ("battery", Need::Battery),
        ("carry_in_kit", Need::CarryInKit),
        ("hive_opened", Need::HiveOpened),
        ("return_visit", Need::ReturnVisit),
        ("dry_ground", Need::DryGround),
    ];
    let mut list = Vec::new();
    let written = table.texts(file, "list");
    if written.is_empty() {
        file.fault(table.offset(), "the rule lists no needs", "add `list = [\"hive_opened\"]` or the like");
        return None;
    }
    for (offset, word) in written {
        if let Some((_, need)) = WORDS.iter().find(|(known, _)| *known == word) {
            list.push(*need);
        } else {
            let all = WORDS.map(|(known, _)| known).join(", ");
            file.fault(offset, format!("`{word}` is not a need"), format!("write one of: {all}"));
            return None;
        }
    }
    Some(list)
}
