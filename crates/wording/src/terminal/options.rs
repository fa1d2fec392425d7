//! What else can be used, around the tables and in their cells.

use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};
use combclear_domain::questions::options::{State, Usability};
use combclear_domain::{Day, Quantity};

use crate::words::say;
use crate::{Label, Words};

super::sentences! {
    /// The head: what is asked about, and from when to when it would be started.
    TerminalOptionsHead: head(what: &str, from: Day, to: Day);
    /// A colony in no apiary.
    TerminalOptionsColony: colony(holding: &HoldingName, colony: &ColonyName);
    /// A colony in its apiary.
    TerminalOptionsColonyAt: colony_at(holding: &HoldingName, colony: &ColonyName, apiary: &ApiaryName);
    /// All colonies of an apiary.
    TerminalOptionsApiary: apiary(holding: &HoldingName, colonies: usize, apiary: &ApiaryName);
    /// What was assumed of the site.
    TerminalOptionsAssumed: assumed(assumed: &str);
    /// The same with its last day.
    TerminalOptionsAssumedUntil: assumed_until(assumed: &str, until: Day);
    /// Power that is assumed.
    TerminalOptionsPower: power(power: &str);
    /// Access that is assumed.
    TerminalOptionsAccess: access(access: &str);
    /// Ground that is assumed.
    TerminalOptionsGround: ground(ground: &str);
    /// The next nectar flow, with its first day in a usual year.
    TerminalOptionsFlow: flow(forage: &str, stage: &str, day: Day);
    /// The same with early and late years.
    TerminalOptionsFlowYears: flow_years(forage: &str, stage: &str, day: Day, years: &str);
    /// A flow in an early year.
    TerminalOptionsFlowEarly: flow_early(day: Day);
    /// A flow in a late year.
    TerminalOptionsFlowLate: flow_late(day: Day);
    /// Start days that are not known, but usable in a usual year.
    TerminalOptionsUsualYear: in_a_usual_year(days: &str);
    /// Start days that are not known, and not usable in a usual year.
    TerminalOptionsNotUsualYear: not_in_a_usual_year(days: &str);
    /// What is missing from a later day on.
    TerminalOptionsMissingFrom: missing_from(day: Day, fact: &str);
    /// How often a dose is given.
    TerminalOptionsTimes: times(doses: u8);
    /// From when it is out if brood is seen.
    TerminalOptionsOutIfBrood: out_if_brood(day: Day);
    /// What is in stock.
    TerminalOptionsInStock: in_stock(amount: &str);
    /// How much is short.
    TerminalOptionsShort: short(amount: &str);
    /// How much is short at the least.
    TerminalOptionsShortAtLeast: short_at_least(amount: &str);
    /// What is to be mixed for all colonies, in millilitres.
    TerminalOptionsToMixForAll: to_mix_for_all(ml: Quantity, mixture: &str);
    /// What is to be mixed, in millilitres.
    TerminalOptionsToMix: to_mix(ml: Quantity, mixture: &str, recipe: &str);
    /// A day before which it is ruled out.
    TerminalOptionsNotBefore: not_before(day: Day);
    /// The day on which it comes nearest to being usable.
    TerminalOptionsNearest: nearest(day: Day);
    /// How many options have which answer.
    TerminalOptionsSums: sums(options: usize, usable: usize, unknown: usize, ruled_out: usize);
    /// The head of what a start means.
    TerminalOptionsIfStarted: if_started(day: Day, answer: &str);
    /// The latest start before a flow.
    TerminalOptionsLatestStart: latest_start(flow: Day, year: &str, day: &str);
    /// From when it may be out, and by when it must be.
    TerminalOptionsOutBetween: out_between(from: Day, by: Day);
    /// From when it may be out.
    TerminalOptionsOutFrom: out_from(from: Day);
    /// By when it must be out.
    TerminalOptionsOutBy: out_by(by: Day);
    /// From when it might be out without brood.
    TerminalOptionsOutWithoutBrood: out_without_brood(day: Day);
    /// From when it may be out if brood is seen while it is in.
    TerminalOptionsNotBeforeIfBrood: not_before_if_brood(day: Day);
    /// How a start lies to a flow.
    TerminalOptionsMargin: margin(flow: Day, year: &str, spare: &str);
    /// A visit.
    TerminalOptionsVisit: visit(when: &str, what: &str);
    /// A visit for which the hive is opened.
    TerminalOptionsVisitOpened: visit_opened(when: &str, what: &str);
    /// A visit of which nobody stated the first day.
    TerminalOptionsBy: by(day: Day);
    /// A dose of which the leaflet gives a range; the most has its unit.
    LeafletRange: range(least: Quantity, most: &str);
    /// Medicine to be mixed.
    LeafletRecipeMedicine: medicine(amount: Quantity, unit: &str);
    /// Water to be mixed, in millilitres.
    LeafletRecipeWater: water(ml: Quantity);
    /// Sugar to be mixed, in grams.
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

/// Whether a condition holds, and how that is in a usual year where it is not known.
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

/// How many days before a flow it is out, or how many too late.
#[must_use]
pub fn to_spare(words: &Words, days: i64) -> String {
    if days < 0 {
        say!(words, TerminalOptionsDaysShort, days = days.saturating_neg())
    } else {
        say!(words, TerminalOptionsDaysToSpare, days = days)
    }
}
