//! Places in a journal as compact text: `12-18,25`.

use std::fmt;
use std::str::FromStr;

pub use crate::basics::misread::NotPlaces;
use crate::basics::text::text_in_json;

/// Places in a journal, in order and each once. There is one at least.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Places {
    /// First and last of each run (inclusive), with a gap between runs.
    runs: Vec<(u64, u64)>,
}

impl Places {
    /// These places, given in any order. `None` if there are none, or if one is 0: places count from 1.
    #[must_use]
    pub fn of(places: impl IntoIterator<Item = u64>) -> Option<Places> {
        let mut places: Vec<u64> = places.into_iter().collect();
        places.sort_unstable();
        places.dedup();
        if places.first().is_none_or(|first| *first == 0) {
            return None;
        }
        let mut runs: Vec<(u64, u64)> = Vec::new();
        for place in places {
            match runs.last_mut() {
                Some((_, last)) if last.checked_add(1) == Some(place) => *last = place,
                _ => runs.push((place, place)),
            }
        }
        Some(Places { runs })
    }

    /// The places, in order.
    pub fn iter(&self) -> impl Iterator<Item = u64> {
        self.runs.iter().flat_map(|(first, last)| *first..=*last)
    }

    /// Whether this place is among them.
    #[must_use]
    pub fn contains(&self, place: u64) -> bool {
        let after = self.runs.partition_point(|(first, _)| *first <= place);
        after.checked_sub(1).and_then(|at| self.runs.get(at)).is_some_and(|(_, last)| place <= *last)
    }

    /// The number of places.
    #[must_use]
    pub fn count(&self) -> u64 {
        self.runs.iter().fold(0, |sum: u64, (first, last)| {
            sum.saturating_add(last.saturating_sub(*first)).saturating_add(1)
        })
    }
}

impl fmt::Display for Places {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (number, (first, last)) in self.runs.iter().enumerate() {
            let comma = if number == 0 { "" } else { "," };
            write!(f, "{comma}{first}")?;
            if last > first {
                write!(f, "-{last}")?;
            }
        }
        Ok(())
    }
}

impl FromStr for Places {
    type Err = NotPlaces;

    fn from_str(text: &str) -> Result<Places, NotPlaces> {
        let run = |text: &str| -> Option<(u64, u64)> {
            let (first, last) = text.split_once('-').unwrap_or((text, text));
            Some((first.parse().ok()?, last.parse().ok()?))
        };
        let runs: Option<Vec<(u64, u64)>> = text.split(',').map(run).collect();
        let found = runs.map(|runs| Places { runs }).filter(|places| {
            let mut least = 1;
            places.runs.iter().all(|(first, last)| {
                let in_order = *first >= least && first <= last;
                // Runs have a gap of at least one place between them; otherwise they would be one run.
                least = last.saturating_add(2);
                in_order
            })
        });
        // One spelling only: the hash of an entry covers its places as written.
        found.filter(|places| places.to_string() == text).ok_or_else(|| NotPlaces(text.to_owned()))
    }
}

text_in_json!(Places);
