//! Small helpers over plain text that know nothing of networks.

pub mod csv;
pub mod few;
pub mod hash;
pub mod nearest;
pub mod paragraph;
pub mod plain;
pub mod xml;
