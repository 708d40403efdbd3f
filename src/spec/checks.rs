//! The checks that a crew ticks: one list for the paper and for the record that comes back.

use schemars::JsonSchema;
use serde::Deserialize;

macro_rules! checks {
    ($($(#[doc = $doc:literal])+ $check:ident: $word:literal;)+) => {
        /// Something a crew does at an end and ticks.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
        #[schemars(inline)]
        pub enum Check {
            $($(#[doc = $doc])+ #[serde(rename = $word)] $check,)+
        }

        impl Check {
            /// All of them, in the order of the work.
            pub const ALL: &[Self] = &[$(Self::$check),+];

            /// The id, as written in a record and printed beside the box.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self {
                    $(Self::$check => $word,)+
                }
            }

            /// What was done, a sentence.
            #[must_use]
            pub fn sentence(self) -> &'static str {
                match self {
                    $(Self::$check => concat!($($doc),+).trim_start(),)+
                }
            }
        }
    };
}

checks! {
    /// Path looked along and found clear.
    PathClear: "path-clear";
    /// Grounding conductor and cable screens bonded.
    Bonded: "bonded";
    /// Every arrester fitted and bonded.
    Arresters: "arresters";
    /// Every pair and screen tested from end to end.
    CablesTested: "cables-tested";
    /// Gland inserts closed, drip loops formed, unused ports blanked.
    Sealed: "sealed";
    /// Automatic power control off while reading.
    PowerControlOff: "power-control-off";
    /// Both axes swept past the side lobes.
    Swept: "swept";
    /// Final torque on every screw, then read again.
    FinalTorque: "final-torque";
    /// What was switched off for aligning is on again.
    Restored: "restored";
    /// Meter off and its port closed.
    MeterPortClosed: "meter-port-closed";
}
