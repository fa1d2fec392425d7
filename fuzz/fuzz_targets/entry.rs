//! Entries, as drafts and sealed.
#![no_main]

combclear_fuzz::target!(combclear_fuzz::readers::entry::check);
