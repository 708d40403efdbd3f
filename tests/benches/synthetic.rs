//! Networks of any size, made from a seed: the same seed gives the same files.
//!
//! Sites lie on a jittered grid in the open Atlantic, hops join neighbours, equipment comes in a few models. With `faults`,
//! about one hop in fifty gets one: a bad unit, a misspelt key, a dangling reference, too much power or too long a run.

use std::fmt::Write as _;
use std::fs;
use std::io;
use std::path::Path;

/// What to make.
#[derive(Debug, Clone, Copy)]
pub struct Plan {
    /// How many hops.
    pub hops: usize,
    /// Where the dice start.
    pub seed: u64,
    /// Whether to sprinkle faults in.
    pub faults: bool,
    /// Points of each hop's profile, in a file beside it; none for 0.
    pub points: u32,
}

/// A small generator of numbers (Knuth's MMIX constants): no crate for three dice.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % sides
    }

    /// A number from `low` to `high` in thousandths of the span.
    fn between(&mut self, low: f64, high: f64) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "below 2^31")]
        let share = self.roll(1001) as f64 / 1000.0;
        low + (high - low) * share
    }
}

/// Writes the network into a folder.
///
/// # Errors
/// Whatever the system says.
pub fn write(folder: &Path, plan: Plan) -> io::Result<()> {
    let mut dice = Dice(plan.seed);
    fs::create_dir_all(folder.join("sites"))?;
    fs::create_dir_all(folder.join("hops"))?;
    fs::write(folder.join("network.yaml"), NETWORK)?;
    fs::write(folder.join("equipment.yaml"), EQUIPMENT)?;
    for number in 0..=plan.hops {
        fs::write(folder.join(format!("sites/s{number}.yaml")), site(number, &mut dice))?;
    }
    for number in 0..plan.hops {
        let mut text = hop(number, &mut dice);
        if plan.faults && dice.roll(50) == 0 {
            text = broken(&text, &mut dice);
        }
        if plan.points > 0 {
            let _ = writeln!(text, "path: {{ csv: h{number}.csv }}");
            fs::write(folder.join(format!("hops/h{number}.csv")), profile(plan.points, 1180.0, &mut dice))?;
        }
        fs::write(folder.join(format!("hops/h{number}.yaml")), text)?;
    }
    Ok(())
}

const NETWORK: &str = "\
kind: network
id: synthetic
title: Synthetic network
owner: Nobody
date: 2026-06-01
revision: A
creator: Nobody
approver: Nobody
objectives: { availability: 99.9 %, capacity: 600 Mbit/s, fade_margin: 10 dB }
climate: { rain_rate: 30 mm/h, hottest_air: 35 °C, rain_height: 6000 m }
codes: { grounding: IEC 60728-11, licence: [EN 302 217] }
limits: { threshold_degradation: 30 dB }
rules: { clearance-not-shown: off }
";

const EQUIPMENT: &str = "\
kind: radio
id: radio-80
title: Synthetic radio
halves:
  - { id: low, transmit: { min: 71 GHz, max: 76 GHz }, receive: { min: 81 GHz, max: 86 GHz } }
  - { id: high, transmit: { min: 81 GHz, max: 86 GHz }, receive: { min: 71 GHz, max: 76 GHz } }
transmit_power: { min: -10 dBm, max: 18 dBm }
states:
  - { title: BPSK, bandwidth: 500 MHz, capacity: 250 Mbit/s, threshold: -75 dBm }
  - { title: QPSK, bandwidth: 500 MHz, capacity: 700 Mbit/s, threshold: -70 dBm }
  - { title: 16QAM, bandwidth: 500 MHz, capacity: 1400 Mbit/s, threshold: -63.5 dBm, back_off: 1 dB }
  - { title: 64QAM, bandwidth: 500 MHz, capacity: 2100 Mbit/s, threshold: -57.5 dBm, back_off: 3 dB }
overload: -15 dBm
ports:
  - { id: main, carries: [data, power-in], rate: 1 Gbit/s, glands: [{ title: Insert, cable: { min: 5 mm, max: 9 mm } }] }
  - { id: meter, carries: [readout] }
power: { draw: 30 W, voltage: { min: 40 V, max: 57 V }, accepts: [802.3bt] }
readout:
  port: meter
  range: { min: 0 V, max: 1 V }
  low: { voltage: 0.30 V, level: -30 dBm }
  high: { voltage: 0.70 V, level: -70 dBm }
ground: { terminal: M6 stud, least_conductor: 6 mm2 }
---
kind: antenna
id: dish
title: Synthetic dish
band: { min: 71 GHz, max: 86 GHz }
gain: 43.5 dBi
wet_loss: 1.5 dB
beamwidth: 1 deg
---
kind: bracket
id: bracket
title: Synthetic bracket
pole: { min: 50 mm, max: 120 mm }
tilt: { upright: { min: -35 deg, max: 35 deg } }
---
kind: cable
id: cable
title: Synthetic cable
category: Cat 6A
screening: S/FTP
jacket: outdoor
outside_diameter: 7.5 mm
conductor: 23 AWG
material: copper
---
kind: supply
id: supply
title: Synthetic supply
standard: 802.3bt
voltage: { min: 50 V, max: 57 V }
power: 60 W
pairs: 4
rate: 1 Gbit/s
location: indoor
---
kind: arrester
id: arrester
title: Synthetic arrester
rate: 1 Gbit/s
pairs: 4
series_resistance: 0.5 ohm
voltage: 60 V
";

fn site(number: usize, dice: &mut Dice) -> String {
    let column = u32::try_from(number % 100).unwrap_or_default();
    let row = u32::try_from(number / 100).unwrap_or_default();
    let latitude = 45.0 + f64::from(row) * 0.015 + dice.between(-0.002, 0.002);
    let longitude = -31.0 + f64::from(column) * 0.015 + dice.between(-0.002, 0.002);
    let ground = dice.between(200.0, 260.0);
    format!(
        "kind: site\nid: s{number}\ntitle: Synthetic site {number}\nposition:\n  latitude: {latitude:.6} deg\n  \
         longitude: {longitude:.6} deg\nground_height: {ground:.1} m\naccess: By the gate, key with the caretaker.\n\
         contacts:\n  - {{ name: Caretaker, phone: \"+000 555 0100\" }}\nhazards:\n  - Steep stairs.\nsupports:\n  \
         - id: pole\n    kind: pole\n    outside_diameter: 88.9 mm\n    wall_thickness: 4 mm\n    \
         material: galvanised-steel\n    base_height: 0 m\n    free_length: 40 m\npower:\n  - {{ id: socket, title: Socket at the foot }}\nearth:\n  \
         - {{ id: bar, title: Bar at the foot, bonded: true }}\n"
    )
}

/// About a hundred lines, as a person would write them.
fn hop(number: usize, dice: &mut Dice) -> String {
    // The last of a row has no neighbour to the east: it joins the row before, or the one before it in the first row.
    let far = match number {
        99 => 98,
        _ if number % 100 == 99 => number - 100,
        _ => number + 1,
    };
    // A raster of nine channels, a diagonal each, and the halves like the squares of a chessboard: all radios of a site are one
    // half, and who is on one channel in one direction is eighteen hops away.
    let (column, row) = (number % 100, number / 100);
    let lower = 71.375 + 0.5 * f64::from(u32::try_from((column + row) % 9).unwrap_or_default());
    let (halves, channel, partner) = match (column + row) % 2 {
        0 => (["low", "high"], lower, lower + 10.0),
        _ => (["high", "low"], lower + 10.0, lower),
    };
    let mut text = format!(
        "# One of many: made by a generator, to be read by a program.\nkind: hop\nid: h{number}\n\
         title: Synthetic hop {number}\n\nchannel:\n  a_to_b: {channel} GHz\n  b_to_a: {partner} GHz\n  bandwidth: 500 MHz\n  \
         polarisation: vertical\n\nends:\n"
    );
    for (end, half, site) in [("a", halves[0], number), ("b", halves[1], far)] {
        // Ends that share a pole keep out of each other's way.
        let (lowest, highest) = match end {
            "a" => (22.0, 35.0),
            _ if number % 100 == 99 => (36.5, 39.5),
            _ => (8.0, 20.0),
        };
        let (height, outdoor) = (dice.between(lowest, highest), dice.between(10.0, 60.0));
        let _ = write!(
            text,
            "  {end}:\n    # Where it stands.\n    site: s{site}\n    support: pole\n    height: {height:.1} m\n\n    \
             # What it is.\n    radio: radio-80\n    half: {half}\n    antenna: dish\n    transmit_power: 10 dBm\n\n    \
             # How it is held.\n    bracket:\n      model: bracket\n      orientation: upright\n      plate: false\n\n    \
             # How it is fed.\n    runs:\n      - port: main\n        carries:\n          - data\n          - power\n        \
             supply: supply\n        power_point: socket\n        cable: cable\n        outdoor: {outdoor:.1} m\n        indoor: 12 m\n        \
             arresters:\n          - model: arrester\n            at: radio\n          - model: arrester\n            \
             at: entry\n\n    # How it is earthed.\n    grounding:\n      conductor: 16 mm2\n      length: 4 m\n      \
             bonds_to: bar\n\n"
        );
    }
    text.push_str("notes:\n  - Nothing to note.\n");
    text
}

/// Ground at equal steps over a length, with trees here and there.
fn profile(points: u32, length: f64, dice: &mut Dice) -> String {
    let mut text = "distance [m],ground [m],obstacle [m],kind\n".to_owned();
    for point in 0..points {
        let distance = length * f64::from(point) / f64::from(points - 1);
        let ground = dice.between(190.0, 200.0);
        let standing = if dice.roll(20) == 0 { "8.5,trees" } else { "," };
        let _ = writeln!(text, "{distance:.2},{ground:.2},{standing}");
    }
    text
}

/// Writes one hop of some 100 km with a profile point a metre.
///
/// # Errors
/// Whatever the system says.
pub fn write_long(folder: &Path) -> io::Result<()> {
    write(folder, Plan { hops: 1, seed: 7, faults: false, points: 2 })?;
    let site = folder.join("sites/s1.yaml");
    let text = fs::read_to_string(&site)?;
    let line = text.lines().find(|line| line.contains("longitude")).unwrap_or_default().to_owned();
    fs::write(site, text.replace(&line, "  longitude: -29.730000 deg"))?;
    fs::write(folder.join("hops/h0.csv"), profile(100_001, 100_000.0, &mut Dice(7)))
}

fn broken(text: &str, dice: &mut Dice) -> String {
    match dice.roll(5) {
        0 => text.replacen("bandwidth: 500 MHz", "bandwidth: 500 dB", 1),
        1 => text.replacen("support: pole", "suport: pole", 1),
        2 => text.replacen("radio: radio-80", "radio: radio-08", 1),
        3 => text.replacen("transmit_power: 10 dBm", "transmit_power: 40 dBm", 1),
        _ => text.replacen("indoor: 12 m", "indoor: 112 m", 1),
    }
}
