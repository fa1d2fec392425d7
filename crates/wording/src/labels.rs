//! A variant for each label of the message file, made by the build script.

include!(concat!(env!("OUT_DIR"), "/labels.rs"));
