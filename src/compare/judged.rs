//! The quantities a hop is decided by: which line is held against which limit, and which line says what is left.

use std::collections::HashMap;

use crate::at;
use crate::place::Place;
use crate::sheet::{
    Direction, DirectionLines, EndLines, EndSheet, GroundLines, HeardLines, HopSheet, Key, LONGEST_RUN, LevelLines,
    MarginLines, ProfileLines, Radii, Row, RunLines, RunSheet, Section, SectionKey, ServiceLines,
};

/// A quantity with a limit.
#[derive(Debug, Clone)]
pub struct Judged {
    /// The line that is held against the limit.
    pub value: String,
    /// What it is, in words.
    pub name: String,
    /// The limit, in words.
    pub limit: Option<String>,
    /// The line that says what is left.
    pub margin: Option<String>,
    /// The line that is the limit, where no line says what is left: the value must reach it.
    pub least: Option<String>,
}

/// A quantity with a limit as it stands in one sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Quantity {
    /// What it is, in words.
    pub name: String,
    /// The limit, in words.
    pub limit: Option<String>,
    /// As it is printed; none where there is no value.
    pub value: Option<String>,
    /// What is left, in the base unit; below zero where the limit is not kept.
    pub left: Option<f64>,
}

/// The quantities of a hop that have a limit, each with what is left.
#[must_use]
pub fn quantities(sheet: &HopSheet<'_>) -> Vec<Quantity> {
    let (sections, named) = (sheet.sections(), Named(sheet));
    let rows: HashMap<String, &Row> =
        sections.iter().flat_map(|section| &section.rows).map(|row| (named.key(&row.key), row)).collect();
    let one = |judged: Judged| {
        let value = rows.get(&judged.value).and_then(|row| Some(row.text.as_ref().ok()?.to_string()));
        let left = judged.margin.as_ref().and_then(|key| Some(rows.get(key)?.number?.0));
        Quantity { name: judged.name, limit: judged.limit, value, left }
    };
    of(sheet, &sections).into_iter().map(one).collect()
}

/// The lines of a sheet by names that hold in any other sheet of the same hop.
pub(super) struct Named<'s, 'n>(pub(super) &'s HopSheet<'n>);

impl Named<'_, '_> {
    /// The key of a line with the name of a run's port or of a state instead of its number, where the name says which one
    /// it is: a run put in before another is no change to that other.
    pub(super) fn key(&self, key: &Key) -> String {
        format!("{}.{}", key.section.spelled(|section| self.name(section)), key.name.as_str())
    }

    fn name(&self, section: &SectionKey) -> Option<String> {
        let (names, number): (Vec<String>, usize) = match section {
            SectionKey::Run(end, number) | SectionKey::Onward(end, number) | SectionKey::Shared(end, number) => {
                let runs = &self.0.ends[*end].runs;
                (runs.iter().map(|run| run.resolved.port.id.to_string()).collect(), *number)
            }
            SectionKey::FibreRun(end, number) => {
                let runs = &self.0.ends[*end].fibre_runs;
                (runs.iter().map(|run| run.resolved.port.id.to_string()).collect(), *number)
            }
            SectionKey::Arrival(end, number) => {
                let arrivals = &self.0.ends[*end].arrivals;
                (arrivals.iter().map(|arrival| arrival.port.id.to_string()).collect(), *number)
            }
            SectionKey::State(way, number) => {
                let states = &self.0.directions[*way].states;
                (states.iter().map(|state| state.title.clone()).collect(), *number)
            }
            SectionKey::Threshold(end, number) => {
                let thresholds = &self.0.ends[*end].thresholds;
                (thresholds.iter().map(|threshold| threshold.title.clone()).collect(), *number)
            }
            _ => return None,
        };
        let name = names.get(number)?;
        (names.iter().filter(|other| *other == name).count() == 1).then(|| name.clone())
    }

    /// Where the name of a numbered part is written: with another name its lines are others.
    pub(super) fn written_at(&self, section: &SectionKey) -> Option<Place> {
        match section {
            SectionKey::Run(end, number) | SectionKey::Onward(end, number) | SectionKey::Shared(end, number) => {
                let run = self.0.ends[*end].runs[*number].resolved.run;
                Some(at!(run.port))
            }
            SectionKey::State(way, number) => {
                let direction = &self.0.directions[*way];
                let (radio, i) = (direction.receiver.radio, direction.states[*number].number);
                Some(at!(radio.states[i].title))
            }
            SectionKey::Threshold(end, number) => {
                let end = &self.0.ends[*end];
                let (radio, i) = (end.resolved.radio, end.thresholds[*number].number);
                Some(at!(radio.states[i].title))
            }
            _ => None,
        }
    }

    /// A quantity with the line that says what is left of it.
    fn judged(&self, value: &Key, name: String, limit: Option<String>, margin: &Key) -> Judged {
        Judged { value: self.key(value), name, limit, margin: Some(self.key(margin)), least: None }
    }
}

/// The quantities of a hop, those of the design pack's decision first, then every other line that says what is left.
pub(super) fn of(sheet: &HopSheet<'_>, sections: &[Section]) -> Vec<Judged> {
    let (named, target) = (Named(sheet), &sheet.target);
    let mut list = vec![named.judged(
        &SectionKey::Service.line(ServiceLines::counted),
        format!("availability as the objective counts it, at {}", target.capacity.given),
        Some(format!("≥ {}", target.availability.given)),
        &SectionKey::Service.line(ServiceLines::in_hand),
    )];
    list.extend(sheet.directions.iter().flat_map(|direction| of_direction(&named, direction)));
    list.extend(of_sight(&named));
    list.extend(sheet.ends.iter().flat_map(|end| of_end(&named, end)));
    let known: Vec<String> = list.iter().filter_map(|judged| judged.margin.clone()).collect();
    for section in sections {
        for row in section.rows.iter().filter(|row| row.key.name.is_margin() && row.number.is_some()) {
            if !known.contains(&named.key(&row.key)) {
                let name = format!("{}: {}", section.title, row.words);
                list.push(named.judged(&row.key, name, None, &row.key));
            }
        }
    }
    list
}

fn of_direction(named: &Named<'_, '_>, direction: &Direction<'_>) -> Vec<Judged> {
    let (way, margins) = (direction.way, SectionKey::Margins(direction.way));
    let fade = named.0.target.fade_margin.as_ref().map(|wanted| {
        named.judged(
            &margins.line(MarginLines::fade_margin),
            format!("fade margin {way}"),
            Some(format!("≥ {}", wanted.given)),
            &margins.line(MarginLines::fade_in_hand),
        )
    });
    let level = named.judged(
        &SectionKey::Budget(way).line(DirectionLines::level),
        format!("received level {way}, below overload"),
        Some(format!("≤ {}", direction.receiver.radio.overload)),
        &margins.line(MarginLines::overload_in_hand),
    );
    let levels = SectionKey::Levels(way);
    let up_fade = direction.levels.up_fade_level.get().map(|_| {
        named.judged(
            &levels.line(LevelLines::up_fade_level),
            format!("level in an up-fade {way}, below overload"),
            Some(format!("≤ {}", direction.receiver.radio.overload)),
            &levels.line(LevelLines::up_fade_in_hand),
        )
    });
    let heard = SectionKey::Heard(way);
    let degradation = named.judged(
        &heard.line(HeardLines::degradation),
        format!("threshold degradation {way}"),
        Some(format!("≤ {}", named.0.heard[way].limit.given)),
        &heard.line(HeardLines::degradation_in_hand),
    );
    fade.into_iter().chain([level]).chain(up_fade).chain([degradation]).collect()
}

/// The clearance is judged in radii of the Fresnel zone, by which its worst point is chosen; metres are information.
fn of_sight(named: &Named<'_, '_>) -> Vec<Judged> {
    let (profile, sight) = (&named.0.profile, SectionKey::Profile);
    if profile.lines.fraction.get().is_none() {
        return Vec::new();
    }
    let limit = |asked: Option<(Radii, Place)>| asked.map(|(asked, _)| format!("≥ {asked}"));
    vec![
        named.judged(
            &sight.line(ProfileLines::fraction),
            "clearance at the worst point, k = 4/3".into(),
            limit(profile.asked()),
            &sight.line(ProfileLines::in_hand),
        ),
        named.judged(
            &sight.line(ProfileLines::low_fraction),
            "clearance at the worst point, low k".into(),
            limit(profile.asked_low()),
            &sight.line(ProfileLines::low_in_hand),
        ),
    ]
}

fn of_end(named: &Named<'_, '_>, end: &EndSheet<'_>) -> Vec<Judged> {
    let (name, lines, own) = (end.name, &end.lines, SectionKey::End(end.name));
    let reach = lines.tilt_least.get().zip(lines.tilt_most.get());
    let mut list = vec![named.judged(
        &own.line(EndLines::tilt),
        format!("tilt of the bracket, end {name}"),
        reach.map(|(least, most)| format!("{least} to {most}")),
        &own.line(EndLines::tilt_in_hand),
    )];
    list.extend(end.runs.iter().enumerate().flat_map(|(number, run)| of_run(named, end, number, run)));
    let ground = SectionKey::Ground(name);
    list.push(Judged {
        value: named.key(&ground.line(GroundLines::conductor)),
        name: format!("grounding conductor, end {name}"),
        limit: Some(format!("≥ {}", end.ground_written())),
        margin: None,
        least: Some(named.key(&ground.line(GroundLines::needed))),
    });
    list
}

fn of_run(named: &Named<'_, '_>, end: &EndSheet<'_>, number: usize, run: &RunSheet<'_>) -> [Judged; 2] {
    let (key, port) = (SectionKey::Run(end.name, number), &run.resolved.port.id);
    let words = |words: &str| format!("{words}, end {}, port {port}", end.name);
    let least = &end.resolved.radio.power.voltage.min;
    [
        named.judged(
            &key.line(RunLines::radio_voltage),
            words("voltage at the radio"),
            Some(format!("≥ {least} and {} reserve", end.voltage_reserve.given)),
            &key.line(RunLines::voltage_in_hand),
        ),
        named.judged(
            &key.line(RunLines::length),
            words("cable length"),
            Some(format!("≤ {LONGEST_RUN}")),
            &key.line(RunLines::length_in_hand),
        ),
    ]
}
