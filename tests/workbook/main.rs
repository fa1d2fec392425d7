//! The tests of `combclear-workbook` on bytes alone. What a keeper does with sheets is tested in `tests/cli/sheet`.
#![expect(clippy::panic, clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod corpus;
#[expect(unreachable_pub, reason = "the fuzz targets take it from another crate")]
#[path = "../readers/sheet.rs"]
mod sheet;
