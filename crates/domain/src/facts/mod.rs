//! What the journal says of a holding, each thing worked out once. Nothing is judged here, and nothing fails.
//!
//! - [`holding`]: the journal folded into apiaries, colonies, medicines and lots; what is refused
//! - [`confirmed`]: whether what a keeper confirmed is the value of a rule
//! - [`history`]: the courses of one colony, each with the terms that rule it

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
