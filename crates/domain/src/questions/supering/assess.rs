//! Judges the colony and each of its courses on a day.

use super::grounds::{Ground, Outcome, Reason};
use super::harvest;
use crate::basics::calendar::{Day, last_blocked_day};
use crate::basics::fact::Fact;
use crate::basics::sourced::Sourced;
use crate::basics::verdict::Verdict;
use crate::basics::words::SupersDuring;
use crate::facts::history::{
    Bars, BeforeFlow, Course, Doubt, End, History, Line, Standing, Term, TermValue, Terms, Whereabouts,
    before_flow, inside, whereabouts, withdrawal_bars,
};
use crate::journal::entry::EntryId;
use crate::rules::leaflet::Says;

/// Adds the ground of the colony itself.
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
            } else if let Some((through, entry)) = history.archived_on(on) {
                decide(Outcome::Unknown, Reason::RecordsInArchive { through, entry });
            } else if history.courses_on(on).next().is_none() {
                let since = history.archived_through.map(|(through, _)| through.next());
                decide(Outcome::Met, Reason::NothingGiven { entry, since });
            }
        }
    }
}

/// Adds the grounds of a course: first those that decide, then everything else on record about it.
pub(super) fn course<'h>(history: &'h History, course: &'h Course, on: Day, grounds: &mut Vec<Ground<'h>>) {
    let mut add =
        |outcome, decides, reason| grounds.push(Ground { outcome, decides, course: Some(course), reason });
    let standing = decide(history, course, on, &mut add);
    stand(history, course, standing, on, &mut add);
}

/// The verdict of a line of a course on a day, without its grounds.
pub(super) fn verdict(history: &History, line: &impl Line, on: Day) -> Verdict {
    let mut verdict = Verdict::Yes;
    decide(history, line, on, &mut |outcome, decides, _| verdict = verdict.and(says(outcome, decides)));
    verdict
}

/// The verdict of a ground.
pub(super) const fn says(outcome: Outcome, decides: bool) -> Verdict {
    match (decides, outcome) {
        (false, _) | (true, Outcome::Met | Outcome::Noted) => Verdict::Yes,
        (true, Outcome::Broken) => Verdict::No,
        (true, Outcome::Unknown) => Verdict::Unknown,
    }
}

/// Judges the day for each carrier of a line, and tells where the line stands. If an earlier carrier is over, that is
/// reported only if no later one is in.
fn decide<'h>(
    history: &'h History,
    line: &'h impl Line,
    on: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) -> Standing {
    let mut carriers = whereabouts(line, on).peekable();
    let mut latest = None;
    while let Some(carrier) = carriers.next() {
        latest = Some(carrier);
        let is_last = carriers.peek().is_none();
        let mut add = |outcome, decides, reason| {
            if is_last || (decides && outcome != Outcome::Met) {
                add(outcome, decides, reason);
            }
        };
        match carrier {
            Whereabouts::In => while_in(line, on, &mut add),
            Whereabouts::Out(out) => decide_out(history, line, out, on, &mut add),
            Whereabouts::NotKnown { may_be_in, first, last, doubt } => {
                let possible = Possible { may_be_in, first, last };
                not_known(history, line, &possible, doubt, on, &mut add);
            }
        }
    }
    Standing::of_latest(latest)
}

fn while_in<'h>(line: &'h impl Line, on: Day, add: &mut impl FnMut(Outcome, bool, Reason<'h>)) {
    match &line.terms().supers_during {
        Fact::Known(supers) if supers.value == SupersDuring::Off => {
            add(Outcome::Broken, true, Reason::StillIn { supers });
        }
        Fact::Known(supers) if supers.is_documented() => {
            add(Outcome::Met, true, Reason::InWithSupersAllowed { supers });
            if let Some(harvest) = harvest::barred(line, on) {
                add(Outcome::Noted, false, Reason::HarvestBarred { supers, through: harvest.through });
            }
        }
        Fact::Known(_) | Fact::NotKnown(_) => {
            add(Outcome::Unknown, true, supers_not_established(&line.terms().supers_during));
        }
    }
}

/// The possible days out of a carrier whose whereabouts are not known.
struct Possible {
    may_be_in: bool,
    first: Day,
    last: Day,
}

/// Judges a carrier that may be in, or out since any day from `first` to `last`: a verdict holds only if every
/// possibility agrees. The first and last day cover all days between them, except that each flow that begins between
/// them is a separate possibility.
fn not_known<'h>(
    history: &'h History,
    line: &'h impl Line,
    possible: &Possible,
    doubt: Doubt,
    on: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let terms = line.terms();
    let flows = history.flows_of(line).iter().filter(|_| terms.flow_before.is_some());
    let Possible { may_be_in, first, last } = *possible;
    let within = flows.map(|flow| flow.from.max(first)).filter(|from| *from <= last);
    let outs = [last].into_iter().chain(within).map(|out| out_verdict(history, line, out, on));
    let still_in = may_be_in.then(|| inside(terms));
    let verdict = outs.chain(still_in).fold(out_verdict(history, line, first, on), Verdict::agreed);
    // If the day it came out gives the same verdict, it does not matter whether it was used up earlier.
    if !may_be_in && verdict == out_verdict(history, line, last, on) {
        return decide_out(history, line, last, on, add);
    }
    match (verdict, doubt) {
        (Verdict::No, _) => add(Outcome::Broken, true, Reason::BarredEitherWay { since: first, doubt }),
        (Verdict::Yes, Doubt::NotSaid { since, entry }) => {
            add(Outcome::Met, true, Reason::WhereaboutsNotSaid { since, entry });
        }
        (Verdict::Unknown, Doubt::NotSaid { since, entry }) => {
            add(Outcome::Unknown, true, Reason::WhereaboutsNotSaid { since, entry });
        }
        (Verdict::Yes, Doubt::UsedUp) => add(Outcome::Met, true, not_known_whether_in(terms)),
        (Verdict::Unknown, Doubt::UsedUp) => {
            if still_in == Some(Verdict::Unknown) {
                add(Outcome::Unknown, true, supers_not_established(&terms.supers_during));
            }
            add(Outcome::Unknown, true, not_known_whether_in(terms));
        }
    }
}

/// The missing fact that leaves open whether a carrier is in.
fn not_known_whether_in(terms: &Terms) -> Reason<'_> {
    let missing = |topic| Reason::NotEstablished { topic, days: None, supers: None };
    match (&terms.asked_back, &terms.removal) {
        (Some(said), _) => Reason::NothingStaysYetStays { said },
        (None, Fact::NotKnown(term)) => missing(*term),
        (None, Fact::Known(removal)) if !removal.is_documented() => missing(Term::Removal),
        (None, Fact::Known(_)) => missing(Term::UsedUp),
    }
}

fn supers_not_established(supers: &TermValue<SupersDuring>) -> Reason<'_> {
    Reason::NotEstablished { topic: Term::SupersDuring, days: None, supers: supers.known() }
}

/// The verdict of a course that is out since a day, without the grounds.
fn out_verdict(history: &History, line: &impl Line, out: Day, on: Day) -> Verdict {
    let mut verdict = Verdict::Yes;
    decide_out(history, line, out, on, &mut |outcome, decides, _| {
        verdict = verdict.and(says(outcome, decides));
    });
    verdict
}

/// Judges a course that is out: periods that run, periods that are over, periods that are not established.
fn decide_out<'h>(
    history: &'h History,
    line: &'h impl Line,
    out: Day,
    on: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let terms = line.terms();
    let running = |fact: &&'h Sourced<u16>| last_blocked_day(out, fact.value).is_some_and(|last| on <= last);
    let withdrawal_runs = terms.withdrawal.known().filter(running);
    let wait_runs = terms.wait.known().filter(running);
    right_before_a_flow(history, line, out, on, add);
    let bars = withdrawal_bars(terms);
    let withdrawal_bars_supers = withdrawal_runs.filter(|_| bars == Bars::Supers);
    if let Some(days) = withdrawal_bars_supers {
        add(Outcome::Broken, true, Reason::WithdrawalRuns { out, days });
    }
    if let Some(days) = wait_runs {
        add(Outcome::Broken, true, Reason::WaitRuns { out, days });
    }
    if withdrawal_bars_supers.is_some() || wait_runs.is_some() {
        return;
    }
    match (withdrawal_runs, bars, &terms.supers_during) {
        (Some(_), Bars::NotKnown, supers) => {
            add(Outcome::Unknown, true, supers_not_established(supers));
        }
        (Some(days), Bars::HarvestOnly, Fact::Known(supers)) => {
            let through = last_blocked_day(out, days.value);
            add(Outcome::Noted, false, Reason::HarvestBarred { supers, through });
            periods_over(terms, out, add);
        }
        // A running period that bars supers has already returned. `HarvestOnly` always comes from a known rule on
        // supers.
        (Some(_), Bars::Supers, _) | (Some(_), Bars::HarvestOnly, Fact::NotKnown(_)) | (None, _, _) => {
            periods_over(terms, out, add);
        }
    }
}

fn right_before_a_flow<'h>(
    history: &'h History,
    line: &'h impl Line,
    out: Day,
    on: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let Some(bar) = &line.terms().flow_before else { return };
    match before_flow(history.flows_of(line), bar.value, out, on) {
        BeforeFlow::Free => {}
        BeforeFlow::Barred(flow) => {
            add(Outcome::Broken, true, Reason::UsedBeforeFlow { out, flow: Some(flow), bar });
        }
        BeforeFlow::Perhaps(flow) => {
            add(Outcome::Unknown, true, Reason::UsedBeforeFlow { out, flow: Some(flow), bar });
        }
        BeforeFlow::NoFlowOnRecord => {
            add(Outcome::Unknown, true, Reason::UsedBeforeFlow { out, flow: None, bar });
        }
    }
}

/// The last day of the flow that it was used right before, if that flow bars supers on a day.
pub(super) fn barred_by_flow(history: &History, course: &Course, out: Day, on: Day) -> Option<Day> {
    match before_flow(history.flows_of(course), course.terms.flow_before?.value, out, on) {
        BeforeFlow::Barred(flow) => Some(flow.last),
        BeforeFlow::Free | BeforeFlow::Perhaps(_) | BeforeFlow::NoFlowOnRecord => None,
    }
}

/// No period runs: yes, if both periods are documented.
fn periods_over<'h>(terms: &'h Terms, out: Day, add: &mut impl FnMut(Outcome, bool, Reason<'h>)) {
    match (&terms.withdrawal, &terms.wait) {
        (Fact::Known(withdrawal), Fact::Known(wait))
            if withdrawal.is_documented() && wait.is_documented() =>
        {
            add(Outcome::Met, true, Reason::PeriodsOver { out, withdrawal, wait });
        }
        (withdrawal, wait) => {
            for (topic, days) in [(Term::Withdrawal, withdrawal.known()), (Term::Wait, wait.known())] {
                if days.is_none_or(|fact| !fact.is_documented()) {
                    add(Outcome::Unknown, true, Reason::NotEstablished { topic, days, supers: None });
                }
            }
        }
    }
}

/// Adds everything on record about a course that does not decide the day.
fn stand<'h>(
    history: &'h History,
    course: &'h Course,
    standing: Standing,
    on: Day,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    let terms = &course.terms;
    let single = terms.nothing_stays();
    let until = match standing {
        Standing::Out(out) => out,
        Standing::In | Standing::PerhapsSpent(_) | Standing::NotSaid(..) => on,
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
    if let Some(supers) = terms.supers_during.known().filter(|fact| fact.value == SupersDuring::Off) {
        let to = if matches!(standing, Standing::Out(_)) { until } else { until.next() };
        supers_while_in(history, course, to, single, supers, add);
    }
    readings_held_against_the_leaflet(terms, add);
    let carried_over = terms.leaflet.iter().filter(|_| on <= course.placed.plus(COMBS_CARRY_DAYS));
    let rules = carried_over
        .flat_map(|leaflet| leaflet.in_force(crate::basics::topic::Topic::CombRule, course.placed, None));
    for rule in rules {
        if let Says::CombRule { text } = &rule.says {
            add(Outcome::Noted, false, Reason::CombsCarryOver { text });
        }
    }
}

/// Adds stated values that are looser than the documented leaflet: used and flagged, or set aside if read after the
/// treatment.
fn readings_held_against_the_leaflet<'h>(terms: &'h Terms, add: &mut impl FnMut(Outcome, bool, Reason<'h>)) {
    let mut held = |topic, looser: bool, set_aside: Option<EntryId>| {
        if looser {
            add(Outcome::Noted, false, Reason::LooserThanLeaflet { topic });
        }
        if let Some(entry) = set_aside {
            add(Outcome::Noted, false, Reason::ReadAfterwards { topic, entry });
        }
    };
    if let Some(fact) = terms.supers_during.known() {
        held(Term::SupersDuring, fact.looser_than.is_some(), fact.set_aside);
    }
    if let Some(fact) = terms.removal.known().or(terms.asked_back.as_ref()) {
        held(Term::Removal, fact.looser_than.is_some(), fact.set_aside);
    }
    if let Some(fact) = &terms.flow_before {
        held(Term::FlowBefore, fact.looser_than.is_some(), fact.set_aside);
    }
    for (topic, fact) in [
        (Term::Withdrawal, &terms.withdrawal),
        (Term::Wait, &terms.wait),
        (Term::StayMin, &terms.stay_min.absent_or_lowest),
        (Term::StayMin, &terms.stay_min.present),
        (Term::StayMax, &terms.stay_max.absent_or_lowest),
        (Term::StayMax, &terms.stay_max.present),
    ] {
        if let Some(fact) = fact.known() {
            held(topic, fact.looser_than.is_some(), fact.set_aside);
        }
    }
}

/// How long treated combs are mentioned: three years, the longest comb rule read.
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
    let brood = stay.depends_on_brood().then(|| history.brood_for(course, out).copied()).flatten();
    match brood {
        Some(seen) => {
            if let Some(days) = stay.under(seen.state()).known() {
                add(judged(days.value), false, Reason::StayedAtLeast { until: out, days, brood });
            }
        }
        None if judged(shorter) == judged(longer) => {
            let wanted = if judged(shorter) == Outcome::Met { longer } else { shorter };
            if let Some(days) = stay.stated().find(|fact| fact.value == wanted) {
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
    // A carrier that need not come out is never overdue.
    let Some(days) = history.most_in_any_case(course, until) else { return };
    let still_in = match standing {
        Standing::In => true,
        Standing::Out(_) => false,
        // It is not known how long it stayed.
        Standing::PerhapsSpent(_) | Standing::NotSaid(..) => return,
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
    let Fact::Known(doses) = &course.terms.doses else { return };
    let later = course.doses_by(on).skip(1);
    for (index, (before, after)) in course.doses_by(on).zip(later).enumerate() {
        let days = after.on.days_since(before.on);
        let early = doses.value.interval_min_days.is_some_and(|least| days < i64::from(least));
        let late = doses.value.interval_max_days.is_some_and(|most| days > i64::from(most));
        if early || late {
            let reason =
                Reason::DoseOffTime { number: index.saturating_add(2), on: after.on, after: days, doses };
            add(Outcome::Broken, false, reason);
        }
    }
    let given = course.doses_by(on).count();
    let wanted = usize::from(doses.value.count);
    let outcome = match given.cmp(&wanted) {
        std::cmp::Ordering::Equal => Outcome::Met,
        std::cmp::Ordering::Greater => Outcome::Broken,
        std::cmp::Ordering::Less => {
            let over = matches!(standing, Standing::Out(_)) && course.end != End::Open;
            match course.next_dose(on).and_then(|next| next.by) {
                _ if over => Outcome::Broken,
                Some(latest) if latest < on => Outcome::Broken,
                // A further dose may still be given in time.
                _ => return,
            }
        }
    };
    add(outcome, false, Reason::DosesGiven { given, doses });
}

/// Adds whether harvest supers were on between placing and removal. Supers that came off on the day of placing, or
/// went on again on the day of removal, do not count.
fn supers_while_in<'h>(
    history: &History,
    course: &'h Course,
    to: Day,
    single: bool,
    supers: &'h Sourced<SupersDuring>,
    add: &mut impl FnMut(Outcome, bool, Reason<'h>),
) {
    // A single dose is given on one day: supers on that day break the rule, unless they came off or went on that day.
    let overlap = |from: Day, to: Day| history.supers_after(from).filter(|span| span.from < to);
    let span = if single {
        course.doses.iter().filter(|dose| dose.on <= to).find_map(|dose| overlap(dose.on, dose.on))
    } else {
        overlap(course.here_from, to)
    };
    let outcome = if span.is_some() { Outcome::Broken } else { Outcome::Met };
    add(outcome, false, Reason::SupersWhileIn { span: span.copied(), supers });
}
