//! Colonies by name, by range, by apiary, or all with something in.

use super::wrong::{LeftOut, WrongWith};
use super::{Chosen, from_record};
use crate::basics::calendar::Day;
use crate::basics::natural::sort_naturally;
use crate::basics::spelling::nearest_name;
use crate::basics::words::ColonyName;
use crate::facts::holding::Holding;
use crate::rules::leaflet::Leaflets;

/// Most names of one range.
const RANGE_MOST: u64 = 1_000;

/// The names that a text stands for.
#[derive(Debug)]
pub(super) struct Read {
    pub(super) names: Vec<String>,
    pub(super) left_out: Vec<LeftOut>,
}

/// The colonies that a text stands for: a name, several with commas between, or a range such as `R1-R15`. A name that is
/// on record is never taken for a range.
pub(super) fn colonies(holding: &Holding, text: &str, on: Day, new: bool) -> Result<Read, WrongWith> {
    let mut read = Read { names: Vec::new(), left_out: Vec::new() };
    let text = text.trim();
    if is_on_record(holding, text) {
        read.names.push(text.to_owned());
        return Ok(read);
    }
    for part in text.split(',').map(str::trim).filter(|part| !part.is_empty()) {
        match range(part) {
            Some(range) if !is_on_record(holding, part) => {
                range.check(part)?;
                if new {
                    read.names.extend(range.names());
                } else {
                    add_those_there(holding, part, &range, on, &mut read)?;
                }
            }
            _ => read.names.push(part.to_owned()),
        }
    }
    Ok(read)
}

/// The colonies that a range such as `R1-R15`, or several names with commas between, stand for in a question about a day. `None` if
/// a name among them, or an end of a range, is not on record.
#[must_use]
pub fn colonies_asked(holding: &Holding, text: &str, on: Day) -> Option<Vec<ColonyName>> {
    let read = colonies(holding, text, on, false).ok()?;
    let names =
        read.names.iter().map(|name| ColonyName::new(name).ok().filter(|_| is_on_record(holding, name)));
    names.collect()
}

/// The colonies that are chosen otherwise than by name, on a day.
pub(super) fn chosen(holding: &Holding, leaflets: &Leaflets, chosen: &Chosen, on: Day) -> Vec<ColonyName> {
    let alive = |colony: &&ColonyName| holding.life(colony).lasts(on);
    let mut colonies: Vec<ColonyName> = match chosen {
        Chosen::At(apiary) => holding.colonies_at(apiary, on).cloned().collect(),
        Chosen::All => holding.colonies().filter(alive).cloned().collect(),
        Chosen::WithSomethingIn => {
            let all: Vec<ColonyName> = holding.colonies().filter(alive).cloned().collect();
            from_record::with_something_in(holding, leaflets, &all, on)
        }
    };
    sort_naturally(&mut colonies, |colony| colony.as_str());
    colonies
}

fn is_on_record(holding: &Holding, text: &str) -> bool {
    ColonyName::new(text).is_ok_and(|name| holding.life(&name).begun.is_some())
}

/// Adds the colonies of a range that are there on a day. Both ends must be on record: otherwise the range is a slip of the pen.
fn add_those_there(
    holding: &Holding,
    text: &str,
    range: &Range<'_>,
    on: Day,
    read: &mut Read,
) -> Result<(), WrongWith> {
    let ends = [range.name(range.first), range.name(range.last)];
    if let Some(colony) = ends.into_iter().find(|end| !is_on_record(holding, end)) {
        let near = nearest_name(&colony, holding.colonies().map(ColonyName::as_str));
        return Err(WrongWith::RangeEndNotOnRecord { text: text.to_owned(), colony, near });
    }
    let before = read.names.len();
    for name in range.names() {
        let Ok(colony) = ColonyName::new(&name) else { continue };
        let life = holding.life(&colony);
        match (life.begun.map(|record| record.on), life.ended.map(|record| record.on)) {
            (None, _) => read.left_out.push(LeftOut::NotOnRecord { colony: name }),
            (Some(begun), _) if on < begun => read.left_out.push(LeftOut::NotYetThere { colony, begun }),
            (Some(_), Some(ended)) if ended < on => read.left_out.push(LeftOut::Ended { colony, ended }),
            (Some(_), _) => read.names.push(name),
        }
    }
    if read.names.len() == before {
        return Err(WrongWith::NobodyInRange { text: text.to_owned() });
    }
    Ok(())
}

/// Names that differ only in a number at their end.
#[derive(Debug)]
struct Range<'t> {
    prefix: &'t str,
    first: u64,
    last: u64,
    /// Digits of the number at least, with zeros before it.
    width: usize,
}

impl Range<'_> {
    fn check(&self, text: &str) -> Result<(), WrongWith> {
        if self.last < self.first {
            return Err(WrongWith::RangeIsBackwards { text: text.to_owned() });
        }
        if self.last - self.first >= RANGE_MOST {
            return Err(WrongWith::RangeTooLong { text: text.to_owned(), most: RANGE_MOST });
        }
        Ok(())
    }

    fn name(&self, number: u64) -> String {
        let Range { prefix, width, .. } = self;
        format!("{prefix}{number:0width$}")
    }

    fn names(&self) -> impl Iterator<Item = String> {
        (self.first..=self.last).map(|number| self.name(number))
    }
}

/// Reads `R1-R15` or `R1-15`.
fn range(text: &str) -> Option<Range<'_>> {
    text.match_indices('-').find_map(|(at, _)| {
        let (first, last) = (text.get(..at)?.trim(), text.get(at + 1..)?.trim());
        let (prefix, first_number) = split_number(first)?;
        let (other, last_number) = split_number(last)?;
        let same = other == prefix || other.is_empty();
        // Zeros before a number belong to the name: all numbers are then as long.
        let padded = first_number.starts_with('0') && first_number.len() > 1;
        let width = if padded { first_number.len() } else { 1 };
        same.then_some(Range {
            prefix,
            first: first_number.parse().ok()?,
            last: last_number.parse().ok()?,
            width,
        })
    })
}

/// A name, split before the number at its end.
fn split_number(name: &str) -> Option<(&str, &str)> {
    let digits = name.bytes().rev().take_while(u8::is_ascii_digit).count();
    let at = name.len().checked_sub(digits)?;
    (digits > 0).then(|| name.split_at_checked(at)).flatten()
}
