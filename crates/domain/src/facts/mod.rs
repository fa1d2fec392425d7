//! What the journal says about a holding; each fact is worked out in one place. Nothing here judges or fails.
//!
//! - [`holding`]: the journal folded into apiaries, colonies, medicines and lots; refusal of entries that cannot be
//!   true
//! - [`apiary`]: site, temperatures and nectar flows of one apiary
//! - `descent`: where a colony came from and was; `doses`: which doses and removals belong to one course; `balance`:
//!   what is left of a lot; `lot`: whose it is; `medicine`: which one was given; `same_dose`: what is on record twice
//! - [`confirmed`]: whether a keeper's confirmation matches the value of a rule
//! - [`history`]: the courses of one colony, each with its terms

pub mod apiary;
mod balance;
pub mod confirmed;
mod descent;
mod doses;
pub mod history;
pub mod holding;
mod lot;
mod medicine;
mod same_dose;

pub use balance::{Balance, Left, Overdrawn};
pub(crate) use balance::{Movement, corrects_count};
pub(crate) use descent::GENERATIONS;
pub use descent::Life;
pub use lot::{Lot, StockOf};
pub use medicine::{MedicineGiven, NotOnRecord};
pub use same_dose::same_doses;
