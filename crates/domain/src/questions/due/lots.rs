//! Tasks with lots: those that expire, those whose in-use life ends, and those to dispose of.

use super::kind::{DueKind, Weight};
use super::task::{Days, Task};
use super::to_do::ToDo;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::facts::holding::Holding;
use crate::questions::stock::{Lot, LotState, lots};
use crate::rules::leaflet::Leaflets;

pub(super) fn tasks(holding: &Holding, leaflets: &Leaflets, as_of: Day) -> Vec<Task> {
    lots(holding, leaflets, as_of).into_iter().flat_map(|lot| of_lot(holding, lot)).collect()
}

fn of_lot(holding: &Holding, lot: Lot) -> Vec<Task> {
    let documented = lot.in_use.as_ref().is_some_and(|in_use| in_use.confidence == Confidence::Document);
    let mut tasks = Vec::new();
    let lot = Box::new(lot);
    let mut add = |kind, days, weight, to_do| {
        let opened = lot.opened.map(|opened| opened.entry).filter(|_| kind != DueKind::LotExpires);
        tasks.push(Task {
            kind,
            anchor: holding.original(lot.entry),
            part: String::new(),
            apiary: None,
            colony: None,
            days,
            weight,
            to_do,
            grounds: std::iter::once(lot.entry).chain(opened).collect(),
        });
    };
    match lot.state {
        LotState::Overdrawn | LotState::Empty => {}
        LotState::Expired | LotState::PastLifeInUse => {
            let expired = lot.state == LotState::Expired;
            let last = if expired { lot.expiry } else { lot.usable_until() };
            let weight = if expired || documented { Weight::Must } else { Weight::Advice };
            if let Some(last) = last {
                let days = Days::new(last.next(), None);
                add(DueKind::DisposeOfLot, days, weight, ToDo::DisposeOfLot { lot: lot.clone() });
            }
        }
        LotState::Expiring | LotState::InUse | LotState::Sealed => {
            if let Some(until) = lot.usable_until() {
                let to_do = ToDo::UseUpOpened { lot: lot.clone(), until };
                add(DueKind::LotLastDay, Days::on(until), Weight::Advice, to_do);
            }
            if let Some(expiry) = lot.expiry {
                let to_do = ToDo::UseUpLot { lot: lot.clone(), expiry };
                add(DueKind::LotExpires, Days::on(expiry), Weight::Advice, to_do);
            }
        }
    }
    tasks
}
