//! All tests, in one program: a change to the crate links it once. `cargo test --test all rules::` runs one file of them.

mod aim;
mod attacks;
mod audit;
mod cli;
mod climate;
mod compare;
mod compare_known;
mod departures;
mod door;
mod extremes;
mod fix;
mod fixture;
mod floods;
mod formats;
mod gate;
mod gate_compare;
mod generator;
mod hostile_pages;
mod house;
mod injection;
mod installation_mends;
mod invented;
mod language;
mod mends;
mod mends_licence;
mod nasty;
mod one_hop;
mod packs;
mod pages;
mod physics;
mod picture;
mod properties;
mod recipes;
mod records;
mod robust;
mod rules;
mod safe_to_act;
mod sight;
mod source;
mod source_files;
mod source_hostile;
mod spec;
#[path = "../benches/synthetic.rs"]
#[allow(dead_code, reason = "the benches use the rest")]
mod synthetic;
mod voice;
