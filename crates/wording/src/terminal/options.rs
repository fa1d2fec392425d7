//! Options: texts around the tables and in their cells.

use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};
use combclear_domain::questions::options::{State, Usability};
use combclear_domain::{Day, Quantity};

use crate::words::say;
use crate::{Label, Words};

super::sentences! {
    /// The heading, with the subject and the range of start days.
    TerminalOptionsHead: head(what: &str, from: Day, to: Day);
    /// A colony in no apiary.
    TerminalOptionsColony: colony(holding: &HoldingName, colony: &ColonyName);
    /// A colony in its apiary.
    TerminalOptionsColonyAt: colony_at(holding: &HoldingName, colony: &ColonyName, apiary: &ApiaryName);
    /// All colonies of an apiary.
    TerminalOptionsApiary: apiary(holding: &HoldingName, colonies: usize, apiary: &ApiaryName);
    /// The assumptions about the site.
    TerminalOptionsAssumed: assumed(assumed: &str);
    /// The same with their last day.
    TerminalOptionsAssumedUntil: assumed_until(assumed: &str, until: Day);
    /// Assumed power.
    TerminalOptionsPower: power(power: &str);
    /// Assumed access.
    TerminalOptionsAccess: access(access: &str);
    /// Assumed ground.
    TerminalOptionsGround: ground(ground: &str);
    /// The next nectar flow, with its first day in a usual year.
    TerminalOptionsFlow: flow(forage: &str, stage: &str, day: Day);
    /// The same with early and late years.
    TerminalOptionsFlowYears: flow_years(forage: &str, stage: &str, day: Day, years: &str);
    /// A flow in an early year.
    TerminalOptionsFlowEarly: flow_early(day: Day);
    /// A flow in a late year.
    TerminalOptionsFlowLate: flow_late(day: Day);
    /// Unknown start days that are usable in a usual year.
    TerminalOptionsUsualYear: in_a_usual_year(days: &str);
    /// Unknown start days that are not usable in a usual year.
    TerminalOptionsNotUsualYear: not_in_a_usual_year(days: &str);
    /// A fact that is missing from a later day on.
    TerminalOptionsMissingFrom: missing_from(day: Day, fact: &str);
    /// The number of doses.
    TerminalOptionsTimes: times(doses: u8);
    /// The first start day with what follows from it.
    TerminalOptionsStart: start(day: Day, rest: &str);
    /// The earliest day out, in few words.
    TerminalOptionsOut: out(day: Day);
    /// The first day for supers, in few words.
    TerminalOptionsSupers: supers(day: Day);
    /// The number of visits.
    OptionsOrderVisits: visits(count: usize);
    /// The number of pieces of advice not followed.
    TerminalOptionsAdviceNotKept: advice_not_kept(count: usize);
    /// The topics to find out about.
    TerminalOptionsFindOut: find_out(topics: &str);
    /// The first of these topics, and how many more.
    TerminalOptionsFindOutAndMore: find_out_and_more(topics: &str, more: usize);
    /// The first of several reasons, and how many more.
    TerminalOptionsReasonAndMore: reason_and_more(why: &str, more: usize);
    /// The earliest day out, and the margin to the flow.
    TerminalOptionsOutAndMargin: out_and_margin(out: &str, margin: &str);
    /// The earliest day out if brood is seen.
    TerminalOptionsOutIfBrood: out_if_brood(day: Day);
    /// The quantity in stock.
    TerminalOptionsInStock: in_stock(amount: &str);
    /// The quantity short.
    TerminalOptionsShort: short(amount: &str);
    /// The quantity short, at least.
    TerminalOptionsShortAtLeast: short_at_least(amount: &str);
    /// The solution to mix for all colonies, in millilitres.
    TerminalOptionsToMixForAll: to_mix_for_all(ml: Quantity, mixture: &str);
    /// The solution to mix, in millilitres.
    TerminalOptionsToMix: to_mix(ml: Quantity, mixture: &str, recipe: &str);
    /// The first day on which it is not ruled out.
    TerminalOptionsNotBefore: not_before(day: Day);
    /// The day with the fewest broken conditions.
    TerminalOptionsNearest: nearest(day: Day);
    /// The number of options by answer.
    TerminalOptionsSums: sums(options: usize, usable: usize, unknown: usize, ruled_out: usize);
    /// The heading of the consequences of a start.
    TerminalOptionsIfStarted: if_started(day: Day, answer: &str);
    /// The latest start before a flow.
    TerminalOptionsLatestStart: latest_start(flow: Day, year: &str, day: &str);
    /// The earliest and latest day out.
    TerminalOptionsOutBetween: out_between(from: Day, by: Day);
    /// The earliest day out.
    TerminalOptionsOutFrom: out_from(from: Day);
    /// The latest day out.
    TerminalOptionsOutBy: out_by(by: Day);
    /// The earliest day out without brood.
    TerminalOptionsOutWithoutBrood: out_without_brood(day: Day);
    /// The earliest day out if brood is seen while it is in.
    TerminalOptionsNotBeforeIfBrood: not_before_if_brood(day: Day);
    /// The margin of a start before a flow.
    TerminalOptionsMargin: margin(flow: Day, year: &str, spare: &str);
    /// A visit.
    TerminalOptionsVisit: visit(when: &str, what: &str);
    /// A visit for which the hive is opened.
    TerminalOptionsVisitOpened: visit_opened(when: &str, what: &str);
    /// A visit without a stated first day.
    TerminalOptionsBy: by(day: Day);
    /// A range of doses. The unit is part of the most.
    LeafletRange: range(least: Quantity, most: &str);
    /// Medicine in the mixture.
    LeafletRecipeMedicine: medicine(amount: Quantity, unit: &str);
    /// Water in the mixture, in millilitres.
    LeafletRecipeWater: water(ml: Quantity);
    /// Sugar in the mixture, in grams.
    LeafletRecipeSugar: sugar(g: Quantity);
}

/// An answer.
#[must_use]
pub fn usability(words: &Words, usability: Usability) -> &str {
    words.label(match usability {
        Usability::Usable => Label::Usable,
        Usability::Unknown => Label::Unknown,
        Usability::RuledOut => Label::RuledOut,
    })
}

/// The state of a condition; if unknown, with its state in a usual year.
#[must_use]
pub fn state(words: &Words, state: State, in_a_usual_year: Option<bool>) -> &str {
    words.label(match (state, in_a_usual_year) {
        (State::Met, _) => Label::Met,
        (State::Broken, _) => Label::Broken,
        (State::Unknown, Some(true)) => Label::UnknownMetInAUsualYear,
        (State::Unknown, Some(false)) => Label::UnknownBrokenInAUsualYear,
        (State::Unknown, None) => Label::Unknown,
    })
}

/// How many days before a flow it is out, or how many days too late.
#[must_use]
pub fn to_spare(words: &Words, days: i64) -> String {
    if days < 0 {
        say!(words, TerminalOptionsDaysShort, days = days.saturating_neg())
    } else {
        say!(words, TerminalOptionsDaysToSpare, days = days)
    }
}

/// The heading above options with this answer.
#[must_use]
pub fn answer(words: &Words, usability: Usability) -> &str {
    words.label(match usability {
        Usability::Usable => Label::OptionsUsable,
        Usability::Unknown => Label::OptionsUnknown,
        Usability::RuledOut => Label::OptionsRuledOut,
    })
}

/// An answer for some colonies.
#[must_use]
pub fn answer_for(words: &Words, answer: Usability, colonies: &str) -> String {
    say!(words, TerminalOptionsAnswerFor, answer = usability(words, answer), colonies = colonies)
}

/// How many days before the next flow it is out, from an early year to a late one.
#[must_use]
pub fn before_flow(words: &Words, least: i64, most: i64) -> String {
    match (least, most) {
        (..0, _) => say!(words, TerminalOptionsTooLateForFlow, days = least.saturating_neg()),
        _ if least == most => say!(words, TerminalOptionsBeforeFlow, days = most),
        _ => say!(words, TerminalOptionsBeforeFlowRange, least = least, most = most),
    }
}
