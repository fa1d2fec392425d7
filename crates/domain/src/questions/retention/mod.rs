//! How long the records of a holding must be kept.
//!
//! - [`sets`]: which entries belong together: a lot's set
//! - [`ends`]: when a lot was last used or disposed of, and whether its use is still running
//! - [`archive`]: which sets may be archived
//! - [`kept`]: the day for each entry and each set, with the deciding rule and its source
//!
//! Every profile in force on a day of an event in the set applies, and the longest time wins. Years end on the same
//! day of a later year; from 29 February on 1 March if that year has none. The day given is the last on which a
//! record must be kept. Nothing is archived automatically. Nothing may be archived while some of a lot is left or in
//! a hive, or while the law of a day is only partly known.

pub mod archive;
pub mod ends;
pub mod kept;
pub mod sets;

pub use archive::{ArchivePlan, HeldBack, LawNotRead, WhyHeldBack};
pub use ends::{LotEnd, StillRuns};
pub use kept::{DecidedBy, KeepUntil, KeptEntry, KeptLot, KeptSet, NotSettled, Retention};
pub use sets::{RecordSet, Told};
