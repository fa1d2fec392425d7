//! The register on paper and in files.

pub mod calendar;
