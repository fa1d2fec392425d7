//! The register on paper and in files.

mod making;
mod pdf;
