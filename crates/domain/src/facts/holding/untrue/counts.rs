use super::untrue;
use crate::basics::words::CountMethod;

untrue! {
    /// Why a mite count is refused.
    Counts {
        /// The count covers zero days, bees or cells.
        OverNone = "counted_over_none" {
            /// The field with zero: `days`, `bees` or `cells`.
            field: &'static str,
        },
        /// Counts by this method do not have this field.
        NotOfMethod = "not_of_count_method" {
            /// The field: `days`, `bees` or `cells`.
            field: &'static str,
            /// The method.
            method: CountMethod,
        },
        /// More cells are infested than were opened.
        MoreThanCells = "more_mites_than_cells" {
            /// The number of mites.
            mites: u32,
            /// The number of cells opened.
            cells: u32,
        },
    }
}
