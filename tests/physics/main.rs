//! The formulas against tables of published or independent values, and the properties they must keep.

mod antenna;
mod climate;
mod codes;
mod diffraction;
mod geodesy;
mod link;
mod magnetic;
mod multipath;
mod power;
mod radio;
mod rain;
mod rain_map;
mod receiver;
mod table;
mod terrain;
