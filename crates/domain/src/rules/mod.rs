//! Leaflets and laws as dated, sourced data: formats, loaders, sets.
//!
//! - [`leaflet`]: the directions of a medicine
//! - [`law`]: what the law requires of a medicine record
//! - [`fault`]: what is wrong with their files

pub mod fault;
pub mod law;
pub mod leaflet;
mod sources;
mod table;
