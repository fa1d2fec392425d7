use super::untrue;
use crate::basics::words::CountMethod;

untrue! {
    /// What cannot be true of a count of mites.
    Counts {
        /// Nothing is counted over no days, no bees or no cells.
        OverNone = "counted_over_none" {
            /// The field that says so: `days`, `bees` or `cells`.
            field: &'static str,
        },
        /// A count by this method does not have this field.
        NotOfMethod = "not_of_count_method" {
            /// The field: `days`, `bees` or `cells`.
            field: &'static str,
            /// The method.
            method: CountMethod,
        },
        /// More cells would be infested than were opened.
        MoreThanCells = "more_mites_than_cells" {
            /// The mites.
            mites: u32,
            /// The cells that were opened.
            cells: u32,
        },
    }
}
