//! Entries that were struck out, as they stood last.
//!
//! They are no rows of the register, where a correction tells of them. A program that was sent them before has to hear
//! that they are gone.

use super::View;
use super::corrections::{Correction, reason};
use super::rows::{AcquisitionRow, AdministrationRow, DisposalRow, Written};
use super::sent_before::Changes;
use super::{administrations, lots};
use crate::facts::holding::Record;
use crate::journal::event::{Administration, Disposal, Event, LotAcquired};

/// An entry that was struck out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StruckOut {
    /// The entry as it stood last.
    pub row: StruckOutRow,
    /// The entry that struck it out.
    pub by: Written,
    /// The reason.
    pub reason: String,
}

/// A medicine acquired, given or disposed of, by an entry that was struck out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum StruckOutRow {
    /// An acquisition.
    Acquisition(AcquisitionRow),
    /// An administration. It has no courses, and its dose is always 1.
    Administration(Box<AdministrationRow>),
    /// A disposal.
    Disposal(DisposalRow),
}

/// Entries of the period, and those that were struck out in it, in the order they were struck out.
pub(super) fn entries(view: &View<'_>, changes: &Changes<'_>, all: &[Correction<'_>]) -> Vec<StruckOut> {
    let struck_out = all.iter().filter_map(|(old, new)| {
        let Event::StrikeOut(_) = &new.event else { return None };
        if !view.holds(old.on) && !view.holds(new.on) {
            return None;
        }
        let row = row(view, changes, old)?;
        Some(StruckOut { row, by: Written::of(view.holding, new), reason: reason(new) })
    });
    struck_out.collect()
}

/// Nothing for a kind of entry that moves no medicine.
fn row(view: &View<'_>, changes: &Changes<'_>, old: &Record) -> Option<StruckOutRow> {
    if let Some(body) = old.body::<LotAcquired>() {
        return Some(StruckOutRow::Acquisition(lots::acquisition(view, old, body)));
    }
    if let Some(body) = old.body::<Administration>() {
        let row = administrations::row(view, changes, old, body, true);
        return Some(StruckOutRow::Administration(Box::new(row)));
    }
    let body = old.body::<Disposal>()?;
    Some(StruckOutRow::Disposal(lots::disposal(view, old, body)))
}
