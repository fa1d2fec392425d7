//! Leaflets and laws as dated, sourced data: formats, loaders, sets.
//!
//! - [`leaflet`]: the directions of a medicine
//! - [`law`]: what the law requires of a medicine record

pub mod law;
pub mod leaflet;
mod sources;
mod table;
