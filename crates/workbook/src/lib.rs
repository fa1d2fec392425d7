//! Entries in a spreadsheet: the template of a holding, and a filled-in sheet as entries of it. Pure: bytes in, bytes out; days and
//! times are arguments.
//!
//! - [`columns`]: the tabs and their columns, made from the forms of the kinds of entry
//! - [`template`]: an empty sheet with the choices of a holding, as .xlsx or .csv
//! - [`read`]: what is written in a sheet, with every cell that cannot be read
//! - [`entries`]: the entries that it records, or every fault with its place
//!
//! Both formats are read into the same [`read::Sheet`], so a row means the same in either.
#![deny(missing_docs)]

pub mod columns;
pub mod entries;
pub mod faults;
pub mod read;
pub mod template;
