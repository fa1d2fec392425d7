//! How to read each topic from statements and leaflet rules, and which of two values is stricter.

use crate::basics::topic::Topic;
use std::cmp::Ordering;

use super::resolve::Reading;
use super::terms::{Doses, FlowBefore};
use crate::basics::words::{Permission, RemovalNeed, SupersDuring};
use crate::journal::event::StatedTerms;
use crate::rules::leaflet::{Rule, Says, WithdrawalPeriod};

type Stated<T> = fn(&StatedTerms) -> Option<T>;
type InRule<T> = fn(&Rule) -> Option<T>;
type Order<T> = fn(&T, &T) -> Ordering;

/// Supers while it is in: off is strictest.
pub(super) fn supers_during() -> Reading<Stated<SupersDuring>, InRule<SupersDuring>, Order<SupersDuring>> {
    const fn strictness(value: SupersDuring) -> u8 {
        match value {
            SupersDuring::Off => 2,
            SupersDuring::OnNoHarvest => 1,
            SupersDuring::On => 0,
        }
    }
    Reading {
        topic: Topic::SupersDuring,
        stated: |terms| terms.supers_during,
        rule: |rule| {
            let Says::SupersDuring { value } = rule.says else { return None };
            Some(value)
        },
        order: |a, b| strictness(*a).cmp(&strictness(*b)),
    }
}

/// Use during a nectar flow: forbidden is stricter.
pub(super) fn flow_during() -> Reading<Stated<Permission>, InRule<Permission>, Order<Permission>> {
    Reading {
        topic: Topic::FlowDuring,
        stated: |terms| terms.flow_during,
        rule: |rule| {
            let Says::FlowDuring { value } = rule.says else { return None };
            Some(value)
        },
        order: |a, b| (*a == Permission::Forbidden).cmp(&(*b == Permission::Forbidden)),
    }
}

/// Use right before a nectar flow: forbidden without a number of days is strictest.
pub(super) fn flow_before() -> Reading<Stated<FlowBefore>, InRule<FlowBefore>, Order<FlowBefore>> {
    const fn strictness(value: FlowBefore) -> (bool, u16) {
        match value {
            FlowBefore::Barred => (true, 0),
            FlowBefore::BarredDays(days) => (false, days),
        }
    }
    Reading {
        topic: Topic::FlowBefore,
        stated: |terms| terms.flow_before_days.map(FlowBefore::BarredDays),
        rule: |rule| {
            let Says::FlowBefore { value: Permission::Forbidden, days } = rule.says else { return None };
            Some(days.map_or(FlowBefore::Barred, FlowBefore::BarredDays))
        },
        order: |a, b| strictness(*a).cmp(&strictness(*b)),
    }
}

/// The withdrawal period: longer is stricter; a label without one is least strict.
pub(super) fn withdrawal()
-> Reading<Stated<WithdrawalPeriod>, InRule<WithdrawalPeriod>, Order<WithdrawalPeriod>> {
    Reading {
        topic: Topic::Withdrawal,
        stated: |terms| {
            let none = terms.withdrawal.map(WithdrawalPeriod::None);
            terms.withdrawal_days.map(WithdrawalPeriod::Days).or(none)
        },
        rule: |rule| {
            let Says::Withdrawal { days } = rule.says else { return None };
            Some(days)
        },
        order: WithdrawalPeriod::cmp,
    }
}

/// The wait between removal and supers: longer is stricter.
pub(super) fn wait() -> Reading<Stated<u16>, InRule<u16>, Order<u16>> {
    Reading {
        topic: Topic::WaitAfterRemoval,
        stated: |terms| terms.wait_after_removal_days,
        rule: |rule| {
            let Says::WaitAfterRemoval { days } = rule.says else { return None };
            Some(days)
        },
        order: u16::cmp,
    }
}

/// Whether it must come out: needed is strictest, nothing stays is least strict.
pub(super) fn removal() -> Reading<Stated<RemovalNeed>, InRule<RemovalNeed>, Order<RemovalNeed>> {
    const fn strictness(value: RemovalNeed) -> u8 {
        match value {
            RemovalNeed::Needed => 2,
            RemovalNeed::NotNeeded => 1,
            RemovalNeed::NothingStays => 0,
        }
    }
    Reading {
        topic: Topic::Removal,
        stated: |terms| terms.removal,
        rule: |rule| {
            let Says::Removal { value } = rule.says else { return None };
            Some(value)
        },
        order: |a, b| strictness(*a).cmp(&strictness(*b)),
    }
}

/// Doses in a course: more is stricter. People state the number; the interval comes from the leaflet.
pub(super) fn doses(
    intervals: Option<Doses>,
) -> Reading<impl Fn(&StatedTerms) -> Option<Doses>, InRule<Doses>, Order<Doses>> {
    let none = Doses { count: 0, interval_min_days: None, interval_max_days: None };
    Reading {
        topic: Topic::Doses,
        stated: move |terms: &StatedTerms| {
            terms.doses.map(|count| Doses { count, ..intervals.unwrap_or(none) })
        },
        rule: |rule| {
            let Says::Doses { count, interval_min_days, interval_max_days, .. } = rule.says else {
                return None;
            };
            Some(Doses { count, interval_min_days, interval_max_days })
        },
        order: |a, b| a.count.cmp(&b.count),
    }
}
