//! What the journal says of a holding, each thing worked out once. Nothing is judged here, and nothing fails.
//!
//! - [`holding`]: the journal folded into apiaries, colonies, medicines and lots; what is refused
//! - [`confirmed`]: whether what a keeper confirmed is the value of a rule
//! - [`history`]: the courses of one colony, each with the terms that rule it

pub mod confirmed;
pub(crate) mod flow;
pub mod history;
pub mod holding;
