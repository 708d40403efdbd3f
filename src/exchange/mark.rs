//! What maps and tables show of a hop: where it goes, how it stands, what it has in hand. Taken out of its sheet, which is
//! then let go.

use crate::finding::Finding;
use crate::finding::faults::NOT_EVALUATED;
use crate::finding::rule::Severity;
use crate::sheet::HopSheet;
use crate::spec::{Both, EndName, Way};

/// What is shown of a hop.
#[derive(Debug)]
pub struct HopMark {
    pub(super) id: String,
    pub(super) title: String,
    pub(super) ends: Both<EndMark>,
    /// `sound`, `warned`, `failing` or `not judged`.
    pub(super) verdict: &'static str,
    pub(super) errors: usize,
    pub(super) warnings: usize,
    pub(super) waived: usize,
    /// Metres from antenna to antenna.
    pub(super) distance: Option<f64>,
    /// Per cent, as the objective counts it.
    pub(super) availability: Option<f64>,
    /// Per cent left of it.
    pub(super) availability_in_hand: Option<f64>,
    pub(super) ways: Both<WayMark>,
}

/// An end of it.
#[derive(Debug)]
pub(super) struct EndMark {
    pub(super) site: String,
    pub(super) latitude: f64,
    pub(super) longitude: f64,
    /// Metres of the antenna above the sea.
    pub(super) altitude: Option<f64>,
}

/// A way through it.
#[derive(Debug)]
pub(super) struct WayMark {
    /// dBm in clear sky.
    pub(super) level: Option<f64>,
    /// dB at the capacity asked for.
    pub(super) fade_margin: Option<f64>,
    /// dB of it beyond what is asked for.
    pub(super) fade_in_hand: Option<f64>,
    /// dB below overload.
    pub(super) overload_in_hand: Option<f64>,
}

impl HopMark {
    /// Takes it out of a sheet and what is found about the hop.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>, findings: &[Finding]) -> Self {
        let hop = sheet.resolved.hop;
        let open = || findings.iter().filter(|finding| finding.waived.is_none());
        let count = |severity| open().filter(|finding| finding.severity == severity).count();
        let (errors, warnings) = (count(Severity::Error), count(Severity::Warning));
        let verdict = if open().any(|finding| *finding.rule == NOT_EVALUATED) {
            "not judged"
        } else if errors > 0 {
            "failing"
        } else if warnings > 0 {
            "warned"
        } else {
            "sound"
        };
        Self {
            id: hop.id.to_string(),
            title: hop.title.as_ref().map_or_else(|| hop.id.to_string(), ToString::to_string),
            ends: Both::ends(|end| EndMark::of(sheet, end)),
            verdict,
            errors,
            warnings,
            waived: findings.iter().filter(|finding| finding.waived.is_some()).count(),
            distance: sheet.path.slant.get().map(|length| length.0),
            availability: sheet.service.counted.get().map(|share| share.0),
            availability_in_hand: sheet.service.in_hand.get().map(|share| share.0),
            ways: Both::ways(|way| WayMark::of(sheet, way)),
        }
    }

    /// How it stands, in numbers that have a name and a unit.
    pub(super) fn figures(&self) -> Vec<(String, Option<f64>)> {
        let mut figures = vec![
            ("distance_m".to_owned(), self.distance),
            ("availability_percent".to_owned(), self.availability),
            ("availability_in_hand_percent".to_owned(), self.availability_in_hand),
        ];
        for way in Way::BOTH {
            let (key, own) = (way.key(), &self.ways[way]);
            figures.extend([
                (format!("{key}_level_dbm"), own.level),
                (format!("{key}_fade_margin_db"), own.fade_margin),
                (format!("{key}_fade_margin_in_hand_db"), own.fade_in_hand),
                (format!("{key}_below_overload_db"), own.overload_in_hand),
            ]);
        }
        figures
    }
}

impl EndMark {
    fn of(sheet: &HopSheet<'_>, end: EndName) -> Self {
        let site = sheet.resolved.ends[end].site;
        Self {
            site: site.id.to_string(),
            latitude: site.position.latitude.value.0,
            longitude: site.position.longitude.value.0,
            altitude: sheet.ends[end].lines.altitude.get().map(|height| height.0),
        }
    }
}

impl WayMark {
    fn of(sheet: &HopSheet<'_>, way: Way) -> Self {
        let direction = &sheet.directions[way];
        Self {
            level: direction.lines.level.get().map(|level| level.0),
            fade_margin: direction.margins.fade_margin.get().map(|margin| margin.0),
            fade_in_hand: direction.margins.fade_in_hand.get().map(|margin| margin.0),
            overload_in_hand: direction.margins.overload_in_hand.get().map(|margin| margin.0),
        }
    }
}
