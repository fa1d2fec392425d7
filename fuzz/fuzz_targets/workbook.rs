//! Sheets as .xlsx: what is packed in them.
#![no_main]

combclear_fuzz::target!(combclear_fuzz::sheet::check_parts);
