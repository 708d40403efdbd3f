//! The formulas against tables of published or independent values, and the properties they must keep.

mod antenna;
mod availability;
mod chain;
mod climate;
mod codes;
mod cross_polar;
mod diffraction;
mod exposure;
mod fibre;
mod geodesy;
mod hops;
mod installation;
pub mod interference;
mod link;
mod magnetic;
mod multipath;
mod near_field;
mod planning;
mod power;
mod power_chain;
mod radio;
mod rain;
mod rain_map;
mod receiver;
mod steel;
pub mod table;
mod terrain;
