//! What the colony and each of its courses say of a day.

use super::grounds::{Ground, Outcome, Reason, Topic};
use crate::calendar::{Day, last_blocked_day};
use crate::history::{Bars, Course, End, Fact, History, Terms, free_in_or_out, used_up, withdrawal_bars};
use crate::leaflet::{Release, Says};
use crate::words::SupersDuring;

/// Where a course stands on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Standing {
    /// A carrier is in.
    In,
    /// All of it is out, or was used up, since this day.
    Out(Day),
    /// It may be used up since this day, but that is not documented.
    PerhapsSpent,
    /// A split or a uniting did not say.
    NotSaid(Day, crate::journal::EntryId),
}

impl Standing {
    pub(crate) fn of(course: &Course, on: Day) -> Standing {
        let last_dose = course.doses_by(on).next_back().map_or(course.placed, |dose| dose.on);
        if course.terms.release() == Some(Release::Single) {
            return Standing::Out(last_dose);
        }
        let spent = used_up(&course.terms).map(|(days, sure)| (last_dose.plus(days), sure));
        let spent = spent.filter(|(day, _)| *day <= on);
        let out = course.out_by(on);
        let doubt = course.in_doubt.filter(|(since, _)| *since <= on);
        match (spent, out, doubt) {
            (Some((spent, true)), out, _) if out.is_none_or(|out| spent < out) => Standing::Out(spent),
            (_, Some(out), _) => Standing::Out(out),
            (_, None, Some((since, entry))) => Standing::NotSaid(since, entry),
            (Some(_), None, None) => Standing::PerhapsSpent,
            (None, None, None) => Standing::In,
        }
    }
}

/// The day on which a carrier that need not come out is used up, if that is documented.
pub(super) fn spent_on(course: &Course, on: Day) -> Option<Day> {
    last_spent(course, on).filter(|(_, sure)| *sure).map(|(spent, _)| spent)
}

/// The day on which the last carrier is used up, and whether that is documented.
pub(super) fn last_spent(course: &Course, on: Day) -> Option<(Day, bool)> {
    let (days, sure) = used_up(&course.terms)?;
    let last_dose = course.doses_by(on).next_back().map_or(course.placed, |dose| dose.on);
    Some((last_dose.plus(days), sure))
}

/// What the colony itself says.
pub(super) fn colony<'h>(history: &'h History, on: Day, grounds: &mut Vec<Ground<'h>>) {
    let mut decide = |outcome, reason| grounds.push(Ground { outcome, decides: true, course: None, reason });
    if let Some((ended, entry)) = history.ended.filter(|(ended, _)| *ended <= on) {
        return decide(Outcome::Broken, Reason::Ended { on: ended, entry });
    }
    match history.begun {
        None => decide(Outcome::Unknown, Reason::ColonyNotRecorded),
        Some((begun, entry)) if on < begun => decide(Outcome::Unknown, Reason::NotYetBegun { begun, entry }),
        Some((_, entry)) => {
            if let Some(entry) = history.unknown_on(on) {
                decide(Outcome::Unknown, Reason::CameWithUnknown { entry });
            } else if history.courses_on(on).next().is_none() {
                decide(Outcome::Met, Reason::NothingGiven { entry });
            }
        }
    }
}

/// What a course says, and what else stands in the record about it.
pub(super) fn course<'h>(history: &'h History, course: &'h Course, on: Day, grounds: &mut Vec<Ground<'h>>) {
    let terms = &course.terms;
    let standing = Standing::of(course, on);
    let mut add =
        |outcome, decides, reason| grounds.push(Ground { outcome, decides, course: Some(course), reason });

    if matches!(standing, Standing::In | Standing::NotSaid(..)) {
        earlier_carrier(course, on, &mut add);
    }
    match standing {
        Standing::In => match &terms.supers_during {
            Some(supers) if supers.value == SupersDuring::Off => {
                add(Outcome::Broken, true, Reason::StillIn { supers });
            }
            Some(supers) if supers.is_documented() => {
                add(Outcome::Met, true, Reason::InWithSupersAllowed { supers });
                if supers.value == SupersDuring::OnNoHarvest
                    || terms.withdrawal.is_none_or(|fact| fact.value > 0)
                {
                    let through = spent_on(course, on).map(Day::before);
                    add(Outcome::Noted, false, Reason::HarvestBarred { supers, through });
                }
            }
            supers => add(Outcome::Unknown, true, supers_not_established(supers.as_ref())),
        },
        Standing::Out(out) => decide_out(course, out, on, &mut add),
        Standing::PerhapsSpent => {
            let reason = match &terms.supers_during {
                None => supers_not_established(None),
                Some(_) => Reason::NotEstablished { topic: Topic::UsedUp, days: None, supers: None },
            };
            add(either_way(terms), true, reason);
        }
        Standing::NotSaid(since, entry) => {
            add(either_way(terms), true, Reason::WhereaboutsNotSaid { since, entry });
        }
    }
    stand(history, course, standing, on, &mut add);
}

/// Whether it is in or out, it is a yes only if both would be.
fn either_way(terms: &Terms) -> Outcome {
    if free_in_or_out(terms) { Outcome::Met } else { Outcome::Unknown }
}

fn supers_not_established(supers: Option<&Fact<SupersDuring>>) -> Reason<'_> {
    Reason::NotEstablished { topic: Topic::SupersDuring, days: None, supers }
}

/// Whether what came out on `out` may have been used up before, which nobody has established.
fn perhaps_spent_before(course: &Course, out: Day, on: Day) -> bool {
    let last_dose = course.doses_by(on).next_back().map_or(course.placed, |dose| dose.on);
    matches!(used_up(&course.terms), Some((days, false)) if last_dose.plus(days) < out)
}

/// While the last carrier is in, the one before it may be used up, and what must pass after it may run on.
fn earlier_carrier<'h>(course: &'h Course, on: Day, add: &mut impl FnMut(Outcome, bool, Reason<'h>)) {
    match earlier_spent(course, on) {
        Some((out, true)) => {
            // That it is over says nothing while the next one is in.
            decide_out(course, out, on, &mut |outcome, decides, reason| {
                if decides && outcome != Outcome::Met {
                    add(outcome, decides, reason);
                }
            });
        }
        Some((_, false)) if !free_in_or_out(&course.terms) => {
            let reason = Reason::NotEstablished { topic: Topic::UsedUp, days: None, supers: None };
            add(Outcome::Unknown, true, reason);
        }
        _ => {}
    }
}

/// The day by which the last carrier but one was used up, and whether that is documented.
pub(super) fn earlier_spent(course: &Course, on: Day) -> Option<(Day, bool)> {
    let (days, sure) = used_up(&course.terms)?;
    let spent = course.doses_by(on).rev().skip(1).map(|dose| dose.on.plus(days));
    spent.filter(|spent| *spent <= on).max().map(|spent| (spent, sure))
}

/// What a course says once it is out: periods that run, periods that are over, periods nobody has established.
fn decide_out<'h>(course: &'h Course, out: Day, on: Day, add: &mut impl FnMut(Outcome, bool, Reason<'h>)) {
    let terms = &course.terms;
    let running = |fact: &&'h Fact<u16>| last_blocked_day(out, fact.value).is_some_and(|last| on <= last);
    let withdrawal_running = terms.withdrawal.as_ref().filter(running);
    let wait_running = terms.wait.as_ref().filter(running);
    let bars = withdrawal_bars(terms);
    let before = (withdrawal_running, bars);
    let would_bar = wait_running.is_some() || matches!(before, (Some(_), Bars::Supers));
    let doubt = course.in_doubt.filter(|(since, _)| *since < out && used_up(terms).is_some());
    if let Some((since, entry)) = doubt.filter(|_| would_bar) {
        // Counted from the day on which it may have gone, the period may be over.
        return add(Outcome::Unknown, true, Reason::WhereaboutsNotSaid { since, entry });
    }
    if would_bar && perhaps_spent_before(course, out, on) {
        // Counted from the removal the period runs; counted from its being used up it may be over.
        let reason = Reason::NotEstablished { topic: Topic::UsedUp, days: None, supers: None };
        return add(Outcome::Unknown, true, reason);
    }
    if let (Some(days), Bars::Supers) = before {
        add(Outcome::Broken, true, Reason::WithdrawalRuns { out, days });
    }
    if let Some(days) = wait_running {
        add(Outcome::Broken, true, Reason::WaitRuns { out, days });
    }
    if matches!(before, (Some(_), Bars::Supers)) || wait_running.is_some() {
        return;
    }
    match (before, &terms.supers_during) {
        ((Some(_), Bars::NotKnown), supers) => {
            return add(Outcome::Unknown, true, supers_not_established(supers.as_ref()));
        }
        ((Some(days), Bars::HarvestOnly), Some(supers)) => {
            let through = last_blocked_day(out, days.value);
            add(Outcome::Noted, false, Reason::HarvestBarred { supers, through });
        }
        _ => {}
    }
    match (&terms.withdrawal, &terms.wait) {
        (Some(withdrawal), Some(wait)) if withdrawal.is_documented() && wait.is_documented() => {
            add(Outcome::Met, true, Reason::PeriodsOver { out, withdrawal, wait });
        }
        (withdrawal, wait) => {
            for (topic, days) in [(Topic::Withdrawal, withdrawal.as_ref()), (Topic::Wait, wait.as_ref())] {
                if days.is_none_or(|fact| !fact.is_documented()) {
                    add(Outcome::Unknown, true, Reason::NotEstablished { topic, days, supers: None });
                }
            }
        }
    }
}

/// What stands in the record about a course without deciding the day.
fn stand<'h>(
    history: &'h History,
    course: &'h Course,
    standing: Standing,
    on: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let terms = &course.terms;
    let single = terms.release() == Some(Release::Single);
    let until = match standing {
        Standing::Out(out) => out,
        _ => on,
    };
    if !single {
        if let Standing::Out(out) = standing
            && course.end != End::Open
        {
            stayed_at_least(history, course, out, add);
        }
        stayed_at_most(history, course, standing, until, add);
    }
    doses(course, standing, on, add);
    if let Some(supers) = terms.supers_during.as_ref().filter(|fact| fact.value == SupersDuring::Off) {
        let to = if matches!(standing, Standing::Out(_)) { until } else { until.next() };
        supers_while_in(history, course, to, single, supers, add);
    }
    let looser = [
        (Topic::SupersDuring, terms.supers_during.as_ref().is_some_and(|fact| fact.looser_than.is_some())),
        (Topic::Withdrawal, terms.withdrawal.as_ref().is_some_and(|fact| fact.looser_than.is_some())),
        (Topic::Wait, terms.wait.as_ref().is_some_and(|fact| fact.looser_than.is_some())),
    ];
    for (topic, _) in looser.into_iter().filter(|(_, looser)| *looser) {
        add(Outcome::Noted, false, Reason::LooserThanLeaflet { topic });
    }
    let carried_over = terms.leaflet.iter().filter(|_| on <= course.placed.plus(COMBS_CARRY_DAYS));
    let rules = carried_over
        .flat_map(|leaflet| leaflet.in_force(crate::leaflet::Topic::CombRule, course.placed, None));
    for rule in rules {
        if let Says::CombRule { text } = &rule.says {
            add(Outcome::Noted, false, Reason::CombsCarryOver { text });
        }
    }
}

/// How long treated combs are spoken of: the longest comb rule read, three years.
const COMBS_CARRY_DAYS: u16 = 3 * 366;

fn stayed_at_least<'h>(
    history: &History,
    course: &'h Course,
    out: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let stay = &course.terms.stay_min;
    let Some((shorter, longer)) = stay.bounds() else { return };
    let judged = |days: u16| if course.placed.plus(days) <= out { Outcome::Met } else { Outcome::Broken };
    let turns_on_brood = stay.depends_on_brood();
    let brood = history.brood_for(course, out).copied().filter(|_| turns_on_brood);
    match brood {
        Some(seen) => {
            if let Some(days) = stay.under(seen.state()) {
                add(judged(days.value), false, Reason::StayedAtLeast { until: out, days, brood });
            }
        }
        None if judged(shorter) == judged(longer) => {
            let facts = [stay.absent_or_lowest.as_ref(), stay.present.as_ref()];
            let wanted = if judged(shorter) == Outcome::Met { longer } else { shorter };
            if let Some(days) = facts.into_iter().flatten().find(|fact| fact.value == wanted) {
                add(judged(wanted), false, Reason::StayedAtLeast { until: out, days, brood: None });
            }
        }
        None => add(Outcome::Unknown, false, Reason::StayTurnsOnBrood { until: out, shorter, longer }),
    }
}

fn stayed_at_most<'h>(
    history: &History,
    course: &'h Course,
    standing: Standing,
    until: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let stay = &course.terms.stay_max;
    let brood = history.brood_for(course, until);
    let longest = [stay.absent_or_lowest.as_ref(), stay.present.as_ref()]
        .into_iter()
        .flatten()
        .max_by_key(|fact| fact.value);
    let fact = brood.and_then(|seen| stay.under(seen.state())).or(longest);
    let Some(days) = fact else { return };
    let still_in = match standing {
        Standing::In => true,
        Standing::Out(_) => false,
        // Nobody knows how long it stayed.
        Standing::PerhapsSpent | Standing::NotSaid(..) => return,
    };
    let in_time = until <= course.placed.plus(days.value);
    if in_time && still_in {
        return;
    }
    let outcome = if in_time { Outcome::Met } else { Outcome::Broken };
    add(outcome, false, Reason::StayedAtMost { until, days, still_in });
}

fn doses<'h>(
    course: &'h Course,
    standing: Standing,
    on: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let Some(doses) = &course.terms.doses else { return };
    let given_days: Vec<Day> = course.doses_by(on).map(|dose| dose.on).collect();
    for (index, pair) in given_days.windows(2).enumerate() {
        let [before, after] = pair else { continue };
        let days = after.days_since(*before);
        let early = doses.value.interval_min_days.is_some_and(|least| days < i64::from(least));
        let late = doses.value.interval_max_days.is_some_and(|most| days > i64::from(most));
        if early || late {
            let reason =
                Reason::DoseOffTime { number: index.saturating_add(2), on: *after, after: days, doses };
            add(Outcome::Broken, false, reason);
        }
    }
    let given = course.doses_by(on).count();
    let wanted = usize::from(doses.value.count);
    let outcome = match given.cmp(&wanted) {
        std::cmp::Ordering::Equal => Outcome::Met,
        std::cmp::Ordering::Greater => Outcome::Broken,
        std::cmp::Ordering::Less => {
            let last = course.doses_by(on).next_back().map_or(course.placed, |dose| dose.on);
            let over = matches!(standing, Standing::Out(_)) && course.end != End::Open;
            match doses.value.interval_max_days.map(|days| last.plus(days)) {
                _ if over => Outcome::Broken,
                Some(latest) if latest < on => Outcome::Broken,
                // A further dose may still be given in time.
                _ => return,
            }
        }
    };
    add(outcome, false, Reason::DosesGiven { given, doses });
}

/// Harvest supers between placing and removal. Days shared only at the edges, off on the day of placing or on again on
/// the day of removal, are no overlap.
fn supers_while_in<'h>(
    history: &History,
    course: &'h Course,
    to: Day,
    single: bool,
    supers: &'h Fact<SupersDuring>,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let overlap = |from: Day, to: Day| {
        history.supers.iter().find(move |span| {
            let off = span.off.unwrap_or(Day::LAST);
            // A single dose is given on one day: supers on that day bar it unless they came off or went on then.
            if single { span.from < from && from < off } else { span.from < to && from < off }
        })
    };
    let span = if single {
        course.doses.iter().filter(|dose| dose.on <= to).find_map(|dose| overlap(dose.on, dose.on))
    } else {
        overlap(course.here_from, to)
    };
    let outcome = if span.is_some() { Outcome::Broken } else { Outcome::Met };
    add(outcome, false, Reason::SupersWhileIn { span: span.copied(), supers });
}
