use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::words::ColonyName;
use crate::journal::event::Kind;

untrue! {
    /// What cannot be true of colonies.
    Colonies {
        /// No colony has this name.
        NoSuchColony = "no_such_colony" {
            /// The name.
            colony: ColonyName,
            /// A colony whose name is written much like it.
            near: Option<ColonyName>,
        },
        /// The colony came into the record later.
        NotYetThere = "colony_not_yet_there" {
            /// The colony.
            colony: ColonyName,
            /// The day on which it came into the record.
            begun: Day,
            /// The day of the entry.
            on: Day,
        },
        /// The colony ended earlier, and nothing happens to it any more.
        Ended = "colony_ended" {
            /// The colony.
            colony: ColonyName,
            /// The day on which it ended.
            ended: Day,
        },
        /// The colony would end a second time.
        EndedBefore = "colony_ended_before" {
            /// The colony.
            colony: ColonyName,
            /// The day on which it ended.
            ended: Day,
        },
        /// The colony would end before something else happened to it.
        LivedLater = "colony_lived_later" {
            /// The colony.
            colony: ColonyName,
            /// The kind of the last entry about it.
            kind: Kind,
            /// The day on which that happened.
            last: Day,
            /// The day on which it would end.
            on: Day,
        },
        /// No colony is named.
        NoneNamed = "no_colony_named",
        /// One colony is named twice.
        NamedTwice = "colony_named_twice" {
            /// The colony.
            colony: ColonyName,
        },
        /// A new colony would have the name of another.
        NameIsTaken = "colony_name_is_taken" {
            /// The name.
            colony: ColonyName,
            /// The day on which the other came into the record.
            since: Day,
        },
        /// A colony would be united with itself.
        UnitedWithItself = "colony_united_with_itself" {
            /// The colony.
            colony: ColonyName,
        },
        /// No super is put on.
        NoSuper = "no_super",
    }
}
