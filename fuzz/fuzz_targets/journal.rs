//! Journal files, and what is asked of the holdings that they make.
#![no_main]

combclear_fuzz::target!(combclear_fuzz::readers::journal::check);
