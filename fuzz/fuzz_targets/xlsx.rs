//! Sheets as .xlsx: the packed file.
#![no_main]

combclear_fuzz::target!(combclear_fuzz::sheet::check_xlsx);
