//! What the parts of the sheet are headed.

use super::sentence::{Term, sentences};
use crate::spec::{EndName, Way};

sentences! {
    /// The heading of a section.
    Title in "title-of" {
        Path => "Path";
        LineOfSight => "Line of sight";
        BothDirections => "Both directions";
        EndToEnd => "From end to end";
        Route { number: usize, hops: Box<str> } => "Route {number}: {hops}";
        LevelBudget { way: Way } => "Level budget {way}";
        GasBounds { way: Way } => "Gas in other air {way}";
        Heard { way: Way } => "Interference {way}";
        Disturbed { way: Way } => "Neighbours {way}";
        Margins { way: Way } => "Margins {way}";
        Levels { way: Way } => "Levels in operation {way}";
        Crossed { way: Way } => "Crossed polarisations {way}";
        State { state: Box<str>, way: Way } => "{state} {way}";
        Licence { way: Way } => "Licence {way}";
        Code { code: &'static str, way: Way } => "{code} {way}";
        End { end: EndName } => "End {end}";
        Antenna { end: EndName } => "End {end}, antenna";
        SideLobes { end: EndName } => "End {end}, side lobes";
        OnSideLobe { end: EndName, who: Term } => "End {end}, with {who} on a side lobe";
        Threshold { end: EndName, state: Box<str> } => "End {end}, threshold of {state}";
        Wind { end: EndName } => "End {end}, wind";
        Ice { end: EndName } => "End {end}, ice";
        Fixings { end: EndName } => "End {end}, fixings of the support";
        People { end: EndName } => "End {end}, people";
        Grounding { end: EndName } => "End {end}, grounding";
        Lightning { end: EndName } => "End {end}, lightning";
        Run { end: EndName, port: Box<str> } => "End {end}, run to port {port}";
        FibreRun { end: EndName, port: Box<str> } => "End {end}, fibre to port {port}";
        Arrival { end: EndName, port: Box<str> } => "End {end}, what comes in at port {port}";
        Shared { end: EndName, port: Box<str> } => "End {end}, supply of port {port}, shared";
        Beside { end: EndName, hop: Box<str>, other: EndName } => "End {end}, beside it {hop} end {other}";
        CloseTo { end: EndName } => "Close to end {end}";
        Elsewhere { kind: Term, id: Box<str> } => "From elsewhere: {kind} {id}";
        Record { record: Box<str>, end: EndName, day: Box<str> } => "Record {record}, end {end}, {day}";
        RecordRun { record: Box<str>, port: Box<str> } => "Record {record}, run to port {port}";
    }
}
