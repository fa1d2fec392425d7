//! What must hold of any bytes that are read from outside. The fuzz targets (`fuzz/`) try random ones; the rooms `corpus` try those
//! that were kept.

pub mod entry;
pub mod journal;
pub mod law;
pub mod leaflet;
mod rules;
