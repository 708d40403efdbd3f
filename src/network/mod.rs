//! From files to resolved hops.
//!
//! [`load`] reads every file under the folders it is given, types what it can and says what is wrong with the rest. The
//! documents of one folder tree under a `network` document make a [`Library`]; [`resolve`] follows the references of its
//! hops. What comes out knows its place in the YAML, and knows no physics.

mod brought;
mod company;
mod elsewhere;
mod enclosing;
mod exclude;
mod faults;
mod files;
mod filled;
mod gate;
mod holes;
mod inherit;
mod inherits;
mod library;
mod load;
pub mod mark;
mod parts;
mod profile;
mod profile_file;
mod rain_map;
mod records;
mod requires;
mod resolve;
mod resolved;
mod scope;
mod shared;
mod shelf;
mod shelving;
mod target;
mod tiles;
mod trees;
mod typing;

pub use brought::{Brought, Inputs};
pub use company::{Companions, Company, Fellow, FellowRun};
pub use elsewhere::{Elsewhere, Origin, SharedLibrary};
pub use files::{Concrete, Files, Home, SourceFile};
pub use gate::load;
pub use holes::{DocumentHoles, HoleName, Holed, Holes, Owner};
pub use inherits::{Inherited, Inherits};
pub use library::Library;
pub use load::Loaded;
pub use profile::{ProfileFile, ProfileFiles, ProfileRow};
pub use resolve::{Break, ResolvedService, Route, RouteHop, resolve, resolve_services};
pub use resolved::{FarPort, ResolvedEnd, ResolvedFibreRun, ResolvedHop, ResolvedRun};
pub use scope::Scope;
pub use shelf::{Document, Look, Part, Shelf, Slot};
pub use target::Target;
pub use tiles::TileFile;
pub use trees::Trees;
