//! Bodies of entries.
#![no_main]

combclear_fuzz::target!(combclear_fuzz::readers::entry::check_body);
