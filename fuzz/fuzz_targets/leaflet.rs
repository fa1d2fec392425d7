//! Leaflets.
#![no_main]

combclear_fuzz::target!(combclear_fuzz::readers::leaflet::check);
