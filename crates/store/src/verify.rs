//! Walks the chain.

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::archive::{Archives, Rest};
use combclear_domain::journal::keeping::Missed;
use combclear_domain::journal::misfit::Misfit;
use combclear_domain::journal::places::Places;
use combclear_domain::journal::seal::{Broken, Link, follows};
use combclear_domain::journal::{Checkpoint, Event, Hash, Kind};

use crate::journal::Verified;
use crate::row::Row;

/// A walk over the rows of one holding, from the first to the last.
pub(crate) struct Walk<'a> {
    holding: &'a HoldingName,
    since: Option<&'a Checkpoint>,
    tip: Option<(u64, Hash)>,
    archives: Archives,
    named: Vec<Places>,
}

impl<'a> Walk<'a> {
    /// Starts before the first row. `told` are the `archived` entries: each is checked when the walk reaches it, but a
    /// missing body that none of them names is reported at its own place. `Err` holds the final answer, here and below.
    pub(crate) fn begin(
        holding: &'a HoldingName,
        since: Option<&'a Checkpoint>,
        told: &[Row],
    ) -> Result<Walk<'a>, Verified> {
        if let Some(checkpoint) = since.filter(|checkpoint| checkpoint.holding != *holding) {
            let of = checkpoint.holding.clone();
            return Err(Verified::CheckpointMissed(Missed::OtherHolding { of }));
        }
        let walk = Walk {
            holding,
            since,
            tip: None,
            archives: Archives::default(),
            named: told.iter().filter_map(Row::moves).collect(),
        };
        walk.meets_checkpoint(0, Hash::GENESIS)?;
        Ok(walk)
    }

    /// Checks the next row.
    pub(crate) fn step(&mut self, row: &Row) -> Result<(), Verified> {
        let (seq, hash) = self.next(row).map_err(Verified::Broken)?;
        self.tip = Some((seq, hash));
        self.meets_checkpoint(seq, hash)
    }

    /// The result, once all rows are checked.
    pub(crate) fn end(self) -> Verified {
        let entries = self.tip.map_or(0, |(seq, _)| seq);
        match self.since {
            Some(checkpoint) if checkpoint.entries > entries => {
                Verified::CheckpointMissed(Missed::Shorter { had: checkpoint.entries, has: entries })
            }
            _ => match self.archives.end() {
                Ok(()) => Verified::Sound { entries, head: self.tip.map(|(_, hash)| hash) },
                Err(broken) => Verified::Broken(broken),
            },
        }
    }

    fn next(&mut self, row: &Row) -> Result<(u64, Hash), Broken> {
        let (seq, id) = (row.place(), row.id());
        let broken = |what| Broken { seq, id, what };
        let fields = row.fields(self.holding.as_str()).map_err(broken)?;
        let prev = row.prev().map_err(broken)?;
        let hash = row.hash().map_err(broken)?;
        let link = Link { seq, id, prev, hash };
        if row.is_without_body() {
            if !self.named.iter().any(|places| places.contains(seq)) {
                return Err(broken(Misfit::BodyGone));
            }
            // Its own hash cannot be recomputed: a later entry vouches for it.
            follows(self.tip, link, hash)?;
            self.archives.without_body(Rest::of_fields(fields, id, prev, hash));
            return Ok((seq, hash));
        }
        follows(self.tip, link, fields.hash(prev))?;
        if row.is(Kind::Archived) {
            match Event::read(Kind::Archived, fields.body) {
                Ok(Event::Archived(body)) => self.archives.archived(seq, id, &body)?,
                _ => return Err(broken(Misfit::NoArchive)),
            }
        }
        Ok((seq, hash))
    }

    fn meets_checkpoint(&self, seq: u64, hash: Hash) -> Result<(), Verified> {
        match self.since {
            Some(checkpoint) if checkpoint.entries == seq && checkpoint.head != hash => {
                let had = checkpoint.head;
                Err(Verified::CheckpointMissed(Missed::Differs { seq, had, has: hash }))
            }
            _ => Ok(()),
        }
    }
}
