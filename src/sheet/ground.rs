//! The grounding conductor of one end: what is asked of it and what it is to a surge.

use super::line::{AS_WRITTEN, lines};
use super::method::cited;
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use super::traced::{Traced, all, read, see, written};
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::{conductor, ground_wire};
use crate::place::Place;
use crate::spec::{GroundMetal, GroundingCode};
use crate::units::{self, Given, Metres, Microhenries, Quantity as _, SquareMillimetres};

lines! {
    /// The grounding of one end.
    GroundLines {
        conductor: Given<SquareMillimetres>, "A_c", "grounding conductor", AS_WRITTEN;
        floor: Given<SquareMillimetres>, "", "least conductor the radio asks for, copper", AS_WRITTEN;
        needed: SquareMillimetres, "A", "least grounding conductor of this metal",
            "the greater of the radio's floor, at equal conductance, and the code in force";
        length: Given<Metres>, "l", "length of the grounding conductor", AS_WRITTEN;
        inductance: Microhenries, "L", "its inductance, led straight", "0.2 l (ln(4 l/d) − 0.75) µH, straight round wire";
        shared_earth: Saying, "", "what else bonds to its earth point", "ends of other hops of the network";
        to_take: Metres, "", "conductor to take, spare included", cited("length and spare (common practice), to the next half metre");
    }
}

/// What a code of practice asks of a grounding conductor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Code {
    /// The code.
    pub name: &'static str,
    /// The least conductor of the metal in use, as a person orders it; none if the code lists no size for that metal.
    pub least: Option<(&'static str, SquareMillimetres)>,
    /// Where the network puts the code in force.
    pub place: Place,
}

/// What the code in force asks of a grounding conductor of a metal.
///
/// IEC 60728-11 (second-hand; its aluminium is insulated) and NEC 810.21 (copper and copper-clad steel second-hand, aluminium from memory).
///
/// None where the network names no code.
pub(super) fn code(hop: &ResolvedHop<'_>, own: &ResolvedEnd<'_>) -> Traced<Option<Code>> {
    let (network, end) = (hop.network, own.end);
    let place = at!(network.codes.grounding);
    all((&see!(network.codes.grounding), &see!(end.grounding.material)))
        .map(|(code, metal)| Some(sizes((*code)?, *metal, place)))
}

/// What a code has for a metal.
fn sizes(code: GroundingCode, metal: GroundMetal, place: Place) -> Code {
    let (name, written) = match (code, metal) {
        (GroundingCode::Iec60728, GroundMetal::Copper) => ("IEC 60728-11", Some("16 mm2")),
        (GroundingCode::Iec60728, GroundMetal::Aluminium) => ("IEC 60728-11", Some("25 mm2")),
        (GroundingCode::Iec60728, GroundMetal::CopperCladSteel | GroundMetal::Steel) => {
            ("IEC 60728-11", Some("50 mm2"))
        }
        (GroundingCode::Nec810, GroundMetal::Copper) => ("NEC 810.21", Some("10 AWG")),
        (GroundingCode::Nec810, GroundMetal::Aluminium) => ("NEC 810.21", Some("8 AWG")),
        (GroundingCode::Nec810, GroundMetal::CopperCladSteel) => ("NEC 810.21", Some("17 AWG")),
        (GroundingCode::Nec810, GroundMetal::Steel) => ("NEC 810.21", None),
    };
    // The size is read as a person would write it, so that a gauge is the same area here as in a spec.
    let read =
        |written| units::read(SquareMillimetres::KIND, written).ok().map(|area| (written, SquareMillimetres(area)));
    Code { name, least: written.and_then(read), place }
}

/// Conductivity of a metal over that of copper.
///
/// Aluminium by IEC 60889; copper-clad steel of the 30 % grade of ASTM B228 and galvanised steel from memory.
fn conductivity(metal: GroundMetal) -> f64 {
    match metal {
        GroundMetal::Copper => 1.0,
        GroundMetal::Aluminium => conductor::ALUMINIUM_CONDUCTIVITY,
        GroundMetal::CopperCladSteel => 0.3,
        GroundMetal::Steel => 0.1,
    }
}

pub(super) fn compute(
    own: &ResolvedEnd<'_>,
    code: &Traced<Option<Code>>,
    target: &Target,
    shared: Traced<Saying>,
) -> GroundLines {
    let (end, radio) = (own.end, own.radio);
    let floor = all((&read!(radio.ground.least_conductor), &see!(end.grounding.material)))
        .map(|(copper, metal)| SquareMillimetres(copper.0 / conductivity(*metal)).tidy());
    let needed = all((&floor, code)).map(|(floor, code)| match code.and_then(|code| code.least) {
        Some((_, least)) if least > floor => least,
        _ => floor,
    });
    let conductor = written!(end.grounding.conductor).stated(Reason::NoGroundingConductor);
    let length = written!(end.grounding.length).stated(Reason::NoGroundingLength);
    // To the next half metre.
    let take = all((&length, &target.practice.spare))
        .map(|(length, spare)| Metres((2.0 * length.value.0 * (1.0 + spare.0 / 100.0) - 1e-9).ceil() / 2.0));
    let inductance = all((&length, &conductor)).map(|(length, size)| ground_wire::inductance(length.value, size.value));
    GroundLines {
        conductor: conductor.line(),
        floor: written!(radio.ground.least_conductor).line(),
        needed: needed.line(),
        length: length.line(),
        inductance: inductance.line(),
        shared_earth: shared.line(),
        to_take: take.line(),
    }
}
