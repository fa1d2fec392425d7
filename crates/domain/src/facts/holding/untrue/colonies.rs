use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::words::ColonyName;
use crate::journal::event::Kind;

untrue! {
    /// Why an entry about colonies is refused.
    Colonies {
        /// No colony has this name.
        NoSuchColony = "no_such_colony" {
            /// The name.
            colony: ColonyName,
            /// A colony with a similar name, if any.
            near: Option<ColonyName>,
        },
        /// The colony was entered later.
        NotYetThere = "colony_not_yet_there" {
            /// The colony.
            colony: ColonyName,
            /// The day it was entered.
            begun: Day,
            /// The day of the entry.
            on: Day,
        },
        /// The colony ended earlier, and has no later events.
        Ended = "colony_ended" {
            /// The colony.
            colony: ColonyName,
            /// The day it ended.
            ended: Day,
        },
        /// The colony has already ended.
        EndedBefore = "colony_ended_before" {
            /// The colony.
            colony: ColonyName,
            /// The day it ended.
            ended: Day,
        },
        /// The colony has events after its end.
        LivedLater = "colony_lived_later" {
            /// The colony.
            colony: ColonyName,
            /// The kind of the last entry about it.
            kind: Kind,
            /// The day of that entry.
            last: Day,
            /// The day of the end.
            on: Day,
        },
        /// No colony is named.
        NoneNamed = "no_colony_named",
        /// A colony is named twice.
        NamedTwice = "colony_named_twice" {
            /// The colony.
            colony: ColonyName,
        },
        /// A new colony has the name of another.
        NameIsTaken = "colony_name_is_taken" {
            /// The name.
            colony: ColonyName,
            /// The day the other was entered.
            since: Day,
        },
        /// A colony cannot be united with itself.
        UnitedWithItself = "colony_united_with_itself" {
            /// The colony.
            colony: ColonyName,
        },
        /// No super is put on.
        NoSuper = "no_super",
    }
}
