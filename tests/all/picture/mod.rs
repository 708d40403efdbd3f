//! Pages looked at: as pictures in grey, and as the list of what is drawn on them.
//!
//! The PDF bytes are read by a renderer that shares no code with the library that wrote them, so a fault of the writer is seen
//! too. Nothing is read from the system: a font that is not in the file draws nothing.

#![allow(dead_code, reason = "each test program uses a part of it")]

pub mod difference;
pub mod grey;
pub mod ink;

use std::path::{Path, PathBuf};

use hopwright::network::{Scope, Trees};
use hopwright::pack::{HopPacks, Pack, Press};
use hopwright::spec::EndName;
use hopwright::verdict::{Evaluation, evaluate};

/// The folder of a shipped example.
pub fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)
}

/// The packs of every hop of a network.
pub fn packs(folder: &Path) -> Evaluation<HopPacks> {
    evaluate(&Scope::of(&[folder.to_path_buf()]), HopPacks::of)
}

/// Every pack a hop has.
pub fn all_of(hop: &HopPacks) -> impl Iterator<Item = Pack> {
    let ends = EndName::BOTH.into_iter().flat_map(|end| [Pack::Install(end), Pack::Acceptance(end)]);
    [Pack::Design, Pack::Licence].into_iter().chain(ends).filter(|pack| hop.names().has(*pack))
}

/// The bytes of a pack of a hop, by the hop's id.
pub fn set(evaluation: &Evaluation<HopPacks>, press: &Press, hop: &str, pack: Pack) -> Vec<u8> {
    let hop = evaluation.hops.iter().find(|one| one.names().hop() == hop).expect("the hop");
    hop.set(press, pack, false, &Trees::of(&evaluation.files)).expect("a pack")
}
