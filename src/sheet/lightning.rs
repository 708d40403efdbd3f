//! Lightning at one end: what others stated of the structure and the antenna, and which impulse test follows for arresters.
//!
//! Nothing is designed here: a distance that is kept is held against the one that the designer of the protection asks for.

use super::line::{AS_WRITTEN, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::shown::Fine;
use super::traced::{Traced, all, see, written};
use crate::at;
use crate::network::ResolvedEnd;
use crate::place::Place;
use crate::spec::{ImpulseCategory, MastBond, ProtectedVolume, ProtectionSystem};
use crate::units::{Given, Kiloamperes, Metres, Quantity as _};

const ZONES: Method = cited("IEC 62305-4: LPZ 0B in a protected volume, else LPZ 0A (second-hand)");
const TESTS: Method =
    cited("D1 where part of a lightning current may flow, else C2 (IEC 61643-21, IEC 61643-22; from memory)");

lines! {
    /// Lightning protection at one end, as stated.
    LightningLines {
        system: Saying, "", "lightning protection system of the structure", AS_WRITTEN;
        class: Saying, "", "class of that system", AS_WRITTEN;
        structure_by: Saying, "", "who states it of the structure", AS_WRITTEN;
        mast_bond: Saying, "", "how the support is joined to that system", AS_WRITTEN;
        volume: Saying, "", "where the antenna stands by its protected volume", AS_WRITTEN;
        zone: Saying, "", "lightning protection zone of the antenna", ZONES;
        separation_asked: Given<Metres>, "s", "separation distance that its designer asks for", AS_WRITTEN;
        separation_kept: Given<Metres>, "", "distance kept to its conductors", AS_WRITTEN;
        separation_in_hand: Fine, "", "distance kept beyond the one asked for", "kept less asked";
        line_current: Given<Kiloamperes>, "", "most impulse current on a line, by its designer", AS_WRITTEN;
        end_by: Saying, "", "who states it of the antenna", AS_WRITTEN;
        impulse_test: Saying, "", "impulse test asked of its arresters", TESTS;
    }
}

/// Lightning at one end.
#[derive(Debug)]
pub struct LightningSheet {
    /// Its lines.
    pub lines: LightningLines,
    /// Whether the structure has a system, where that is said.
    pub system: Option<ProtectionSystem>,
    /// Where that is written, or would be.
    pub system_at: Place,
    /// How the support is joined to it, where that is said.
    pub bond: Option<MastBond>,
    /// Where the antenna stands, where that is said.
    pub volume: Option<ProtectedVolume>,
    /// The impulse test that is asked of arresters; none where what it goes by is not said.
    pub test: Option<ImpulseCategory>,
}

impl LightningSheet {
    /// Whether there is a system to stand in or out of.
    #[must_use]
    pub fn has_system(&self) -> bool {
        self.system == Some(ProtectionSystem::Present)
    }

    /// Whether the support is kept apart from the system, or nobody says that it is joined to it.
    #[must_use]
    pub fn is_apart(&self) -> bool {
        !matches!(self.bond, Some(MastBond::Direct | MastBond::SparkGap))
    }
}

pub(super) fn compute(own: &ResolvedEnd<'_>) -> LightningSheet {
    let (end, site, support) = (own.end, own.site, own.support);
    // Another structure has another system: what its support says of it counts as a whole.
    let apart = see!(support.lightning_protection.system).map(Option::is_some);
    let system = apart.and_then(|apart| {
        if apart { see!(support.lightning_protection.system) } else { see!(site.lightning_protection.system) }
    });
    let class = apart.and_then(|apart| {
        if apart { see!(support.lightning_protection.class) } else { see!(site.lightning_protection.class) }
    });
    let structure_by = apart.and_then(|apart| {
        if apart { see!(support.lightning_protection.stated_by) } else { see!(site.lightning_protection.stated_by) }
    });
    let system = system.map(|system| *system).stated(Reason::NobodySays);
    let class = class.map(|class| *class).stated(Reason::NobodySays);
    let bond = see!(support.mast_bond).map(|bond| *bond).stated(Reason::NobodySays);
    let volume = see!(end.lightning.protected_volume).map(|volume| *volume).stated(Reason::NobodySays);
    let asked = written!(end.lightning.separation.asked).stated(Reason::NobodySays);
    let kept = written!(end.lightning.separation.kept).stated(Reason::NobodySays);
    let zone = zone(&system, &volume);
    let test = zone.and_then(|zone| test(&system, zone, &bond));
    let said_by = |text: Traced<&Option<crate::spec::Text>>| {
        text.map(|text| text.as_ref().map(Saying::name)).stated(Reason::NobodySays).line()
    };
    let of_support = support.lightning_protection.system.is_some();
    LightningSheet {
        system: system.get(),
        system_at: if of_support {
            at!(support.lightning_protection.system)
        } else {
            at!(site.lightning_protection.system)
        },
        bond: bond.get(),
        volume: volume.get(),
        test: test.get(),
        lines: LightningLines {
            system: system.map(|system| Saying::word(system.word())).line(),
            class: class.map(|class| Saying::name(class.word())).line(),
            structure_by: said_by(structure_by),
            mast_bond: bond.map(|bond| Saying::word(bond.words())).line(),
            volume: volume.map(|volume| Saying::word(volume.word())).line(),
            zone: zone.map(|zone| Saying::name(zone_name(zone))).line(),
            separation_in_hand: all((&kept, &asked))
                .map(|(kept, asked)| Fine((kept.value - asked.value).tidy()))
                .line(),
            separation_asked: asked.line(),
            separation_kept: kept.line(),
            line_current: written!(end.lightning.line_current).stated(Reason::NobodySays).line(),
            end_by: said_by(see!(end.lightning.stated_by)),
            impulse_test: test.map(|test| Saying::name(test.word())).line(),
        },
    }
}

/// Whether a direct strike may meet the antenna: without a system it may; with one it is as stated.
fn zone(system: &Traced<ProtectionSystem>, volume: &Traced<ProtectedVolume>) -> Traced<ProtectedVolume> {
    system.and_then(|stated| match stated {
        ProtectionSystem::Absent => system.map(|_| ProtectedVolume::Outside),
        ProtectionSystem::Present => volume.clone(),
        ProtectionSystem::Unknown => unsaid(system),
    })
}

/// What arresters must have been tested by: in a protected volume and apart from the system only what a strike induces
/// comes along the cable, else part of its current.
fn test(system: &Traced<ProtectionSystem>, zone: ProtectedVolume, bond: &Traced<MastBond>) -> Traced<ImpulseCategory> {
    match zone {
        ProtectedVolume::Outside => system.map(|_| ImpulseCategory::D1),
        ProtectedVolume::Inside => bond.map(|bond| match bond {
            MastBond::Direct | MastBond::SparkGap => ImpulseCategory::D1,
            MastBond::Apart => ImpulseCategory::C2,
        }),
    }
}

fn unsaid<T, U>(of: &Traced<T>) -> Traced<U> {
    Traced::missing(Missing::judged(Reason::NobodySays, of.spot()))
}

const fn zone_name(zone: ProtectedVolume) -> &'static str {
    match zone {
        ProtectedVolume::Inside => "LPZ 0B",
        ProtectedVolume::Outside => "LPZ 0A",
    }
}
