//! What the journal says about a holding, each thing worked out once. Nothing here judges or fails.
//!
//! - [`holding`]: the journal folded into apiaries, colonies, medicines and lots; refusal of entries that cannot be true
//! - `descent`: where a colony came from and stood; `balance`: what is left of a lot; `flow`: nectar flows
//! - [`confirmed`]: whether a keeper's confirmation matches the value of a rule
//! - [`history`]: the courses of one colony, each with its terms

mod balance;
pub mod confirmed;
mod descent;
pub(crate) mod flow;
pub mod history;
pub mod holding;

pub use balance::Balance;
pub(crate) use balance::Movement;
pub(crate) use descent::GENERATIONS;
pub use descent::Life;
