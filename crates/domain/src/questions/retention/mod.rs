//! Until which day the records of a holding must be kept.
//!
//! - [`stories`]: which entries belong together: a lot's story
//! - [`ends`]: when a lot was last used or disposed of, and whether that count still runs
//! - [`archive`]: which stories can be moved into an archive, by whom asks for it
//! - [`kept`]: the day for each entry and each story, with the rule and the source that decided
//!
//! Every profile that was in force on a day on which something happened in the story applies, and the longest time wins. Years
//! end on the same day of a later year, counted from 29 February on 1 March where there is none. The day given is the last on
//! which a record must be kept. Nothing goes by itself: the answer says what could go.
//! Nothing could go while some of a lot is left by the book or in a hive, or while the law of a day is known in part only.

pub mod archive;
pub mod ends;
pub mod kept;
pub mod stories;

pub use archive::{ArchivePlan, HeldBack, WhyHeldBack};
pub use ends::{LotEnd, StillRuns};
pub use kept::{DecidedBy, KeepUntil, KeptEntry, KeptLot, KeptStory, NotSettled, Retention};
pub use stories::{Story, Told};
