//! Sheets as CSV.
#![no_main]

combclear_fuzz::target!(combclear_fuzz::sheet::check_csv);
