//! A record held against the design: what was to be expected on the day of the visit, what was read, what is left open.

use super::dish::LobeReadingLines;
use super::end::EndSheet;
use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::title::Title;
use super::wanted::Wanted;
use crate::network::{Document, ResolvedHop};
use crate::spec::{Check, EndName, Record, Window};
use crate::units::{
    Celsius, Dbm, Decibels, Degrees, Given, Hectopascals, MegabitsPerSecond, MeterVolts, Metres, Minutes,
    Quantity as _, SquareMillimetres, Volts,
};

const READ: &str = "read-out scale at the volts written, else the level written";
const CROSSED: Method =
    cited("level expected less 25 to 35 dB, cross-polar discrimination of dishes (common practice, no source)");
const AIR: &str = "as written in the record, else that of the design";

lines! {
    /// What was to be expected at one end on the day of a visit, and what was read.
    RecordLines {
        temperature: Celsius, "T", "air temperature that day", AIR;
        dry_pressure: Hectopascals, "p", "dry air pressure that day", AIR;
        vapour_pressure: Hectopascals, "e", "water vapour pressure that day", AIR;
        gas_loss: Decibels, "A_g", "gas loss in the air of that day", cited("ITU-R P.676-13 Annex 1 over the slant distance");
        rain_loss: Decibels, "A_R", "loss in the rain of that day", cited("γ_R s, ITU-R P.838-3, the rate written all along the path");
        wet_loss: Decibels, "A_w", "loss of wet antenna covers that day, both ends",
            "sum of both antennas as written where it rained; no ITU method";
        fog_loss: Decibels, "A_f", "loss in the fog of that day", cited("ITU-R P.840-9 over the slant distance");
        back_off: Decibels, "", "power back-off of the state while reading", "as the far radio states it for the state written";
        expected: Dbm, "P_e", "level expected that day", "P_r in the air of that day − A_R − A_w − A_f − back-off";
        expected_least: Dbm, "", "lowest level to accept that day", "level expected less the acceptance window";
        expected_most: Dbm, "", "highest level to accept that day", "level expected plus the acceptance window";
        expected_voltage: MeterVolts, "V_e", "meter reading expected that day", "the read-out scale at that level";
        before: Dbm, "P_1", "level read before locking", READ;
        measured: Dbm, "P_2", "level read after locking", READ;
        moved: Decibels, "P_2 − P_1", "change on locking", "after less before";
        difference: Decibels, "P_2 − P_e", "level read less the level expected", "definition";
        on_design_day: Dbm, "", "level read, brought to the air of the design", "P_2 − P_e plus the predicted level";
        scale_gap: Decibels, "", "level by the meter less the level the radio said", "definition";
        crossed_least: Dbm, "", "lowest level with crossed polarisation", CROSSED;
        crossed_most: Dbm, "", "highest level with crossed polarisation", CROSSED;
        bearing_off: Degrees, "", "bearing as found less the true bearing", "definition";
        tilt_off: Degrees, "", "tilt as found less the tilt to set", "definition";
        height_off: Metres, "", "height as found less the designed one", "definition";
        ground_needed: SquareMillimetres, "A", "least grounding conductor of the metal designed", "that of the end";
    }
}

lines! {
    /// One cable run of a record.
    RecordRunLines {
        voltage: Given<Volts>, "", "voltage found at the radio", AS_WRITTEN;
        predicted: Volts, "V", "voltage predicted at the radio, at worst", "that of the run";
        difference: Volts, "", "voltage found less the predicted one", "definition";
    }
}

/// One cable run of a record.
#[derive(Debug)]
pub struct RecordRunSheet {
    /// Its place among the runs of the record.
    pub number: usize,
    /// Its place among the runs of the end.
    pub run: usize,
    /// Its lines.
    pub lines: RecordRunLines,
}

/// Single thresholds a record is held against.
#[derive(Debug, Clone)]
pub struct RecordLimits {
    /// Either way around the expected level.
    pub window: Wanted<Decibels>,
    /// Change on locking.
    pub locking: Wanted<Decibels>,
    /// Disagreement of the two ends.
    pub reciprocity: Wanted<Decibels>,
    /// Bearing as found.
    pub bearing: Wanted<Degrees>,
    /// Tilt as found.
    pub tilt: Wanted<Degrees>,
    /// Height as found.
    pub height: Wanted<Metres>,
    /// Rate that the hop is for.
    pub capacity: Wanted<MegabitsPerSecond>,
    /// Shortest service test.
    pub service_test: Wanted<Minutes>,
    /// Voltage below the predicted one.
    pub voltage_drop: Wanted<Volts>,
}

/// One record.
#[derive(Debug)]
pub struct RecordSheet<'n> {
    /// What was read.
    pub document: &'n Document<Record>,
    /// The end it is about.
    pub end: EndName,
    /// Whether rules look at it: the newest of its end, or one without a date. Older ones are history.
    pub judged: bool,
    /// Its lines.
    pub lines: RecordLines,
    /// Its runs.
    pub runs: Vec<RecordRunSheet>,
    /// What it is held against.
    pub limits: RecordLimits,
    /// Checks this end needs that are not ticked.
    pub undone: Vec<Check>,
    /// Items an acceptance needs that are not filled in, by their keys.
    pub blank: Vec<String>,
}

impl RecordSheet<'_> {
    /// Whether the level read lies in the window; none where that cannot be told.
    #[must_use]
    pub fn in_window(&self) -> Option<bool> {
        let lines = &self.lines;
        let measured = lines.measured.get()?;
        Some(lines.expected_least.get()? <= measured && measured <= lines.expected_most.get()?)
    }

    /// Whether the level stayed when the screws were locked.
    #[must_use]
    pub fn stayed(&self) -> Option<bool> {
        // Readings to the millivolt: the last bit decides nothing.
        Some(Decibels(self.lines.moved.get()?.0.abs()).tidy() <= self.limits.locking.value())
    }

    /// The antennas that seem to be on a side lobe, by the level: in words, and the range of levels.
    #[must_use]
    pub fn on_side_lobe(&self, end: &EndSheet<'_>) -> Option<(&'static str, [Dbm; 2])> {
        let level = self.lines.on_design_day.get().filter(|_| self.in_window() == Some(false))?;
        let seen = |lines: &LobeReadingLines| Some([lines.level_least.get()?, lines.level_most.get()?]);
        let fits = |lines| seen(lines).filter(|[least, most]| *least <= level && level <= *most);
        let dish = &end.dish;
        match (fits(&dish.here), fits(&dish.there), fits(&dish.both)) {
            (Some(range), Some(_), _) => Some(("one end", range)),
            (Some(range), None, _) => Some(("this end", range)),
            (None, Some(range), _) => Some(("the far end", range)),
            (None, None, both) => both.map(|range| ("both ends", range)),
        }
    }

    /// Whether the level is what crossed polarisation leaves, and no side lobe explains it.
    #[must_use]
    pub fn looks_crossed(&self, end: &EndSheet<'_>) -> bool {
        let lines = &self.lines;
        let within = || {
            let level = lines.measured.get()?;
            Some(lines.crossed_least.get()? <= level && level <= lines.crossed_most.get()?)
        };
        within() == Some(true) && self.in_window() == Some(false) && self.on_side_lobe(end).is_none()
    }

    /// Whether power, bandwidth and polarisation were set as designed, each where it is written.
    #[must_use]
    pub fn as_set(&self, hop: &ResolvedHop<'_>) -> [Option<bool>; 3] {
        let (set, channel) = (&self.document.settings, &hop.hop.channel);
        let power = hop.ends[self.end].end.transmit_power.value.tidy();
        [
            set.transmit_power.as_ref().map(|given| given.value.tidy() == power),
            set.bandwidth.as_ref().map(|given| *given == channel.bandwidth),
            set.polarisation.map(|given| given == channel.polarisation),
        ]
    }

    /// Whether bearing, tilt and height were found where they were designed, each where it is written.
    #[must_use]
    pub fn as_mounted(&self) -> [Option<bool>; 3] {
        let (lines, limits) = (&self.lines, &self.limits);
        let angle = |off: Option<Degrees>, limit: &Wanted<Degrees>| Some(off?.0.abs() <= limit.value().0);
        [
            angle(lines.bearing_off.get(), &limits.bearing),
            angle(lines.tilt_off.get(), &limits.tilt),
            lines.height_off.get().map(|off| Metres(off.0.abs()).tidy() <= limits.height.value()),
        ]
    }

    /// What the service test proves, each where it is written: a state that carries the rate the hop is for, that rate, no
    /// errors, long enough.
    #[must_use]
    pub fn service_holds(&self, hop: &ResolvedHop<'_>) -> [Option<bool>; 4] {
        let (test, limits, channel) = (&self.document.service, &self.limits, &hop.hop.channel);
        let wanted = limits.capacity.value();
        let states = hop.ends[self.end].radio.states.iter();
        let state = test.state.as_ref().map(|title| {
            let mut of_width = states.filter(|state| state.bandwidth == channel.bandwidth);
            of_width
                .any(|state| *state.title == **title && channel.polarisation.carries(state.capacity.value) >= wanted)
        });
        [
            state,
            test.rate.as_ref().map(|rate| rate.value >= wanted),
            test.errors.map(|errors| errors == 0),
            test.duration.as_ref().map(|duration| duration.value >= limits.service_test.value()),
        ]
    }

    /// Whether the level after locking overloads the receiver.
    #[must_use]
    pub fn overloaded(&self, end: &EndSheet<'_>) -> bool {
        self.lines.measured.get().is_some_and(|level| level > end.resolved.radio.overload.value)
    }

    /// Whether the voltage of a run is one the radio takes and not well below the predicted one.
    #[must_use]
    pub fn voltage_holds(&self, run: &RecordRunSheet, takes: &Window<Volts>) -> Option<bool> {
        let voltage = run.lines.voltage.value().ok()?.value;
        Some(takes.holds(voltage) && !self.voltage_low(run)?)
    }

    /// Whether the voltage of a run lies further below the predicted one than it may.
    #[must_use]
    pub fn voltage_low(&self, run: &RecordRunSheet) -> Option<bool> {
        let below = Volts(-run.lines.difference.get()?.0);
        Some(below.tidy() > self.limits.voltage_drop.value())
    }

    /// Whether the grounding conductor found is thick enough.
    #[must_use]
    pub fn ground_holds(&self) -> Option<bool> {
        Some(self.document.grounding.conductor.as_ref()?.value >= self.lines.ground_needed.get()?)
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.runs.iter().for_each(|run| run.lines.missing(each));
    }

    pub(super) fn sections(&self, sections: &mut Vec<Section>) {
        let (record, end) = (self.document, self.end);
        let day = record.date.map_or_else(|| "no date".to_owned(), |date| date.to_string());
        let id = record.id.to_string();
        let title = Title::Record { record: id.as_str().into(), end, day: day.into() };
        sections.push(self.lines.section(SectionKey::Record(id.clone()), title));
        for run in &self.runs {
            let port = record.runs[run.number].port.to_string().into();
            let title = Title::RecordRun { record: id.as_str().into(), port };
            sections.push(run.lines.section(SectionKey::RecordRun(id.clone(), run.number), title));
        }
    }
}
