//! The stock in words.

mod report;

use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::fact::Fact;
use combclear_domain::facts::Overdrawn;
use combclear_domain::questions::stock::{
    EXPIRING_WITHIN_DAYS, Lot, LotState, Note, Opened, OpenedBy, WhyDispose,
};
use combclear_domain::{Day, Quantity};

use crate::words::{Words, say};

pub use report::{DisposalReport, LotReport, NeedReport, NotCounted, NotKnown, StockReport, WayReport};

/// The balance of a lot.
fn sum(words: &Words, lot: &Lot) -> String {
    let Lot { acquired, given, disposed, .. } = lot;
    match lot.left() {
        Fact::Known(left) => {
            say!(words, StockSum, acquired = acquired, given = given, disposed = disposed, left = left)
        }
        Fact::NotKnown(Overdrawn { by }) => sum_with_too_many(words, *acquired, *given, *disposed, by),
    }
}

/// The balance of a lot, if more is gone than was acquired.
pub(crate) fn sum_with_too_many(
    words: &Words,
    acquired: Quantity,
    given: Quantity,
    disposed: Quantity,
    over: Quantity,
) -> String {
    say!(words, StockSumTooMany, acquired = acquired, given = given, disposed = disposed, over = over)
}

/// The state of a lot on a day.
fn lot_in_words(words: &Words, lot: &Lot, on: Day) -> String {
    let mut said: Vec<String> = Vec::new();
    let something_left = match lot.state {
        LotState::Overdrawn => {
            said.push(say!(words, StockOverdrawn));
            false
        }
        LotState::Empty => {
            said.push(say!(words, StockEmpty));
            false
        }
        LotState::Expired => {
            said.extend(lot.expiry.map(|expiry| say!(words, StockExpired, expiry = expiry)));
            true
        }
        LotState::PastLifeInUse | LotState::Expiring | LotState::InUse | LotState::Sealed => true,
    };
    if something_left {
        said.push(use_in_words(words, lot, on));
    }
    if something_left && lot.state != LotState::Expired {
        match lot.expiry {
            Some(expiry) if expiry <= on.plus(EXPIRING_WITHIN_DAYS) => {
                said.push(say!(words, StockExpires, expiry = expiry, days = expiry.days_since(on)));
            }
            None => said.push(say!(words, StockNoExpiry)),
            Some(_) => {}
        }
    }
    if !lot.count_corrected.is_empty() {
        said.push(say!(words, StockCountCorrected));
    }
    said.join("; ")
}

/// How a lot stands, in few words.
fn in_brief(words: &Words, lot: &Lot) -> String {
    match (lot.state, lot.expiry, lot.usable_until()) {
        (LotState::Overdrawn, ..) => say!(words, StockOverdrawn),
        (LotState::Empty, ..) => say!(words, StockEmpty),
        (LotState::Expired, Some(expiry), _) => say!(words, StockExpired, expiry = expiry),
        (LotState::PastLifeInUse, _, Some(until)) => say!(words, StockBriefPastUse, until = until),
        (LotState::PastLifeInUse, _, None) => say!(words, StockBriefPastUseNoDay),
        (LotState::Expiring, Some(expiry), _) => say!(words, StockBriefExpires, expiry = expiry),
        // Both have an expiry date; without one they could not be so.
        (LotState::Expired | LotState::Expiring, None, _) => say!(words, StockNoExpiry),
        (LotState::InUse, _, Some(until)) => say!(words, StockBriefInUseUntil, until = until),
        (LotState::InUse, _, None) => say!(words, StockBriefInUse),
        (LotState::Sealed, ..) => say!(words, StockSealed),
    }
}

/// Whether it is opened, since when, how that is known, and until when it may be used.
fn use_in_words(words: &Words, lot: &Lot, on: Day) -> String {
    let Some(opened) = lot.opened else { return say!(words, StockSealed) };
    let since = match opened.told_by {
        OpenedBy::LotOpened => say!(words, StockOpened, on = opened.on),
        OpenedBy::FirstAdministration => say!(words, StockFirstGiven, on = opened.on),
    };
    let documented = lot.in_use.as_ref().is_none_or(|in_use| in_use.confidence == Confidence::Document);
    match (lot.usable_until(), documented) {
        (Some(until), true) if until < on => say!(words, StockPastUse, since = since, until = until),
        (Some(until), false) if until < on => {
            say!(words, StockPastUseNotDocumented, since = since, until = until)
        }
        (Some(until), true) => say!(words, StockInUseUntil, since = since, until = until),
        (Some(until), false) => say!(words, StockInUseUntilNotDocumented, since = since, until = until),
        (None, _) => say!(words, StockInUse, since = since),
    }
}

/// Why a lot must be disposed of: completes a sentence that names it.
#[must_use]
pub fn why_dispose(words: &Words, why: &WhyDispose) -> String {
    match why {
        WhyDispose::Expired { expiry } => say!(words, StockDisposeExpired, expiry = expiry),
        WhyDispose::PastLifeInUse { opened, until, documented, says } => {
            let Opened { on, told_by, .. } = *opened;
            let open = match told_by {
                OpenedBy::LotOpened => say!(words, StockDisposeOpened, on = on),
                OpenedBy::FirstAdministration => say!(words, StockDisposeFirstGiven, on = on),
            };
            let says = says.trim_end_matches('.');
            if *documented {
                say!(words, StockDisposePastUse, open = open, until = until, says = says)
            } else {
                say!(words, StockDisposePastUseNotDocumented, open = open, until = until, says = says)
            }
        }
    }
}

/// Why a lot with stock left is not counted. `None` if it is counted.
fn why_not_counted(words: &Words, state: LotState) -> Option<String> {
    match state {
        LotState::Overdrawn => Some(say!(words, StockNotCountedOverdrawn)),
        LotState::Expired => Some(say!(words, StockNotCountedExpired)),
        LotState::PastLifeInUse => Some(say!(words, StockNotCountedPastUse)),
        LotState::Empty | LotState::Expiring | LotState::InUse | LotState::Sealed => None,
    }
}

fn note(words: &Words, note: &Note) -> String {
    match note {
        Note::SameBatch { earlier, later, pack_name, batch } => {
            say!(words, StockSameBatch, earlier = earlier, later = later, medicine = pack_name, batch = batch)
        }
        Note::NoExpiry { lot, pack_name } => {
            say!(words, StockNoExpiryOf, lot = lot, medicine = pack_name)
        }
    }
}
