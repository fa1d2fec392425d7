//! The register on paper and in files.
