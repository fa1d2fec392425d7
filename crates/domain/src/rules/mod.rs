//! Leaflets and laws as dated, sourced data: their formats, their loaders, the sets of them.
//!
//! - [`leaflet`]: what the directions of a medicine say
//! - [`law`]: what the law asks of a medicine record

pub mod law;
pub mod leaflet;
mod sources;
mod table;
