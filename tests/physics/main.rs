//! The formulas against tables of published or independent values, and the properties they must keep.

mod geodesy;
mod link;
mod magnetic;
mod power;
mod radio;
mod rain;
mod table;
