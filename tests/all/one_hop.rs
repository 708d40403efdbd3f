//! Hops of a few numbers, written as a network and sent the whole way: files, library, sheet.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;

use hopwright::listing::HopListing;
use hopwright::network::Scope;
use hopwright::verdict::evaluate;

/// One end, in degrees, metres, dBm, dBi and decibels.
#[derive(Debug, Clone)]
pub struct End {
    pub latitude: f64,
    pub longitude: f64,
    pub ground: f64,
    pub height: f64,
    pub power: f64,
    pub gain: f64,
    pub wet_loss: f64,
    /// Diameter of the antenna in millimetres, if it is not that of its gain.
    pub diameter: Option<f64>,
}

/// A modulation state, in dBm and decibels.
#[derive(Debug, Clone)]
pub struct State {
    pub threshold: f64,
    pub back_off: f64,
}

/// A hop. What is `None` is not written.
#[derive(Debug, Clone)]
pub struct OneHop {
    pub name: String,
    pub a: End,
    pub b: End,
    /// From `a` to `b` and back, in gigahertz.
    pub frequencies: [f64; 2],
    pub polarisation: &'static str,
    pub temperature: Option<f64>,
    pub pressure: Option<f64>,
    pub humidity: Option<f64>,
    pub rain_rate: f64,
    pub states: Vec<State>,
}

impl OneHop {
    /// The same hop seen from the other end.
    #[allow(dead_code, reason = "each test program uses a part of it")]
    pub fn swapped(&self) -> Self {
        let [there, back] = self.frequencies;
        Self { a: self.b.clone(), b: self.a.clone(), frequencies: [back, there], ..self.clone() }
    }

    fn yaml(&self) -> String {
        let name = &self.name;
        let mut text = String::new();
        for (end, End { latitude, longitude, ground, gain, wet_loss, diameter, .. }) in [("a", &self.a), ("b", &self.b)]
        {
            let diameter = diameter.map_or_else(String::new, |diameter| format!("diameter: {diameter} mm\n"));
            let _ = write!(
                text,
                "kind: site\nid: {name}-{end}\ntitle: {name} {end}\n\
                 position: {{ latitude: {latitude} deg, longitude: {longitude} deg }}\nground_height: {ground} m\n\
                 supports:\n  - {{ id: pole, kind: pole, outside_diameter: 90 mm, base_height: 0 m, free_length: 50 m }}\n\
                 ---\nkind: antenna\nid: {name}-{end}\ntitle: {name} {end}\nband: {{ min: 1 GHz, max: 100 GHz }}\n\
                 gain: {gain} dBi\nbeamwidth: 1 deg\nwet_loss: {wet_loss} dB\n{diameter}---\n",
            );
        }
        let _ = write!(text, "kind: radio\nid: {name}\ntitle: {name}\n{RADIO}states:\n");
        for (number, State { threshold, back_off }) in self.states.iter().enumerate() {
            let capacity = 100 * (number + 1);
            let _ = writeln!(
                text,
                "  - {{ title: S{number}, bandwidth: 500 MHz, capacity: {capacity} Mbit/s, threshold: {threshold} dBm, \
                 back_off: {back_off} dB }}"
            );
        }
        let [there, back] = self.frequencies;
        let (polarisation, rate) = (self.polarisation, self.rain_rate);
        let _ = write!(
            text,
            "---\nkind: hop\nid: {name}\nchannel:\n  a_to_b: {there} GHz\n  b_to_a: {back} GHz\n  bandwidth: 500 MHz\n  \
             polarisation: {polarisation}\nclimate:\n  rain_rate: {rate} mm/h\n  air:\n"
        );
        for (key, value, unit) in [
            ("temperature", self.temperature, "°C"),
            ("pressure", self.pressure, "hPa"),
            ("humidity", self.humidity, "%"),
        ] {
            let _ = value.map(|value| writeln!(text, "    {key}: {value} {unit}"));
        }
        if self.temperature.or(self.pressure).or(self.humidity).is_none() {
            text.truncate(text.len() - "  air:\n".len());
        }
        text.push_str("ends:\n");
        for (end, End { height, power, .. }) in [("a", &self.a), ("b", &self.b)] {
            let _ = write!(
                text,
                "  {end}:\n    site: {name}-{end}\n    support: pole\n    height: {height} m\n    radio: {name}\n    \
                 antenna: {name}-{end}\n    transmit_power: {power} dBm\n    bracket: {{ model: bracket }}\n    runs: []\n"
            );
        }
        text
    }
}

const RADIO: &str = "\
halves:
  - { id: any, transmit: { min: 1 GHz, max: 100 GHz }, receive: { min: 1 GHz, max: 100 GHz } }
transmit_power: { min: -50 dBm, max: 60 dBm }
overload: 5 dBm
ports: [{ id: meter, carries: [readout] }]
power: { draw: 30 W, voltage: { min: 40 V, max: 57 V }, accepts: [passive] }
readout:
  port: meter
  range: { min: 0 V, max: 2 V }
  low: { voltage: 0.30 V, level: -30 dBm }
  high: { voltage: 0.70 V, level: -70 dBm }
ground: { terminal: M6 stud, least_conductor: 6 mm2 }
";

const NETWORK: &str = "\
kind: network
id: table
title: Table
owner: Nobody
revision: A
creator: Drawn
approver: Approved
date: 2026-06-01
objectives: { availability: 99.9 %, capacity: 100 Mbit/s }
---
kind: bracket
id: bracket
title: Bracket
pole: { min: 50 mm, max: 120 mm }
tilt: { upright: { min: -35 deg, max: 35 deg } }
";

/// The lines of a sheet that are there: key to number, where there is one, and text.
pub type Lines = BTreeMap<String, (Option<f64>, String)>;

/// The sheets of these hops, in their order. Each is a network of its own: in one they would hear each other.
pub fn sheets(hops: &[OneHop]) -> Vec<Lines> {
    hops.iter().map(sheet).collect()
}

fn sheet(hop: &OneHop) -> Lines {
    let folder = tempfile::tempdir().expect("a temporary folder");
    fs::write(folder.path().join("network.yaml"), NETWORK).expect("written");
    fs::write(folder.path().join(format!("{}.yaml", hop.name)), hop.yaml()).expect("written");
    let evaluation = evaluate(&Scope::of(&[folder.path().to_path_buf()]), |sheet, _| HopListing::of(sheet));
    let listing = evaluation.hops.iter().find(|listing| listing.hop == hop.name);
    let listing = listing.unwrap_or_else(|| panic!("{} has no sheet: {:#?}", hop.name, evaluation.findings));
    let rows = listing.sections.iter().flat_map(|section| &section.rows);
    rows.filter_map(|row| {
        Some((row.key.to_string(), (row.number.map(|(value, _)| value), row.text.as_ref().ok()?.to_string())))
    })
    .collect()
}
