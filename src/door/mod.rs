//! The one door for bytes: how files are read, listed and written.

pub mod write;
