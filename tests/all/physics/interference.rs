//! Angles, filters, polarisations and sums of interference; whole networks put together from them.

use hopwright::physics::filter::{Mask, discrimination};
use hopwright::physics::gas::Spectrum;
use hopwright::physics::geodesy::{Position, inverse};
use hopwright::physics::interference::{
    cross_polar_gain, culling_distance, degradation, horizon, needed, polarisation_discrimination, sum,
};
use hopwright::physics::off_axis::{EarthCentred, off_axis};
use hopwright::physics::receiver::noise;
use hopwright::physics::{atmosphere, free_space, pattern};
use hopwright::units::{
    Dbi, Dbm, Decibels, DecibelsPerKilometre, Degrees, Gigahertz, Latitude, Longitude, Megahertz, Metres, Millimetres,
};
use proptest::prelude::{prop_assert, prop_assert_eq, proptest};

use super::table::{Row, rows};

pub mod model {
    //! Interference of one sender at one receiver, put together from `physics` as a program has to.

    use super::*;

    /// The mask with a name.
    pub fn mask(name: &str) -> Mask {
        let of_name = rows(include_str!("../../tables/interference/masks.csv")).filter(|row| row.text("mask") == name);
        let points: Vec<_> = of_name.map(|row| (row.number("offset"), Decibels(row.number("level_db")))).collect();
        Mask::new(&points).expect("a mask")
    }

    /// An antenna at its place, aimed at its partner.
    #[derive(Debug, Clone)]
    pub struct Station {
        pub at: EarthCentred,
        pub aimed_at: EarthCentred,
        pub altitude: Metres,
        pub gain: Dbi,
        pub diameter: Millimetres,
        pub pattern: &'static str,
        pub cross_polar: Decibels,
        pub polarisation: &'static str,
        pub sends: Gigahertz,
        pub hears: Gigahertz,
        pub bandwidth: Megahertz,
        pub power: Dbm,
        pub feeder: Decibels,
        pub noise_figure: Decibels,
        pub sent: Mask,
        pub heard: Mask,
    }

    impl Station {
        pub fn noise(&self) -> Dbm {
            noise(self.bandwidth, self.noise_figure)
        }

        /// Gains for the own polarisation and for the other, towards something.
        fn gains(&self, frequency: Gigahertz, angle: Degrees) -> [Dbi; 2] {
            let by = |pattern: fn(_, _, _, _) -> _| {
                let there: Dbi = Result::<_, pattern::OutOfRange>::expect(
                    pattern(frequency, self.diameter, self.gain, angle),
                    "within range",
                );
                [there, cross_polar_gain(there, self.gain, self.cross_polar)]
            };
            match self.pattern {
                "f699" => by(pattern::peak_envelope),
                "f1245" => by(pattern::average),
                "measured" => ["co_db", "cross_db"].map(|column| self.gain + measured(angle, column)),
                other => panic!("`{other}` is no pattern"),
            }
        }
    }

    /// Level of the measured antenna against its peak.
    pub fn measured(angle: Degrees, column: &str) -> Decibels {
        let table = || rows(include_str!("../../tables/interference/measured_pattern.csv"));
        let ends = table().zip(table().skip(1));
        let (from, to) =
            ends.into_iter().find(|(_, to)| angle.0 <= to.number("angle_deg")).expect("an angle up to half a turn");
        let share = (angle.0 - from.number("angle_deg")) / (to.number("angle_deg") - from.number("angle_deg"));
        Decibels(from.number(column) + share * (to.number(column) - from.number(column)))
    }

    /// What is between a sender and a receiver.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct Pair {
        pub slant: Metres,
        pub angles: [Degrees; 2],
        pub sender: [Dbi; 2],
        pub receiver: [Dbi; 2],
        pub free_space: Decibels,
        pub gas: Decibels,
        pub polarisation: Decibels,
        pub filter: Option<Decibels>,
    }

    impl Pair {
        pub fn of(sender: &Station, receiver: &Station) -> Self {
            let frequency = sender.sends;
            let slant = sender.at.distance(receiver.at);
            let angles = [
                off_axis(sender.at, sender.aimed_at, receiver.at),
                off_axis(receiver.at, receiver.aimed_at, sender.at),
            ];
            let [sent, heard] = [sender.gains(frequency, angles[0]), receiver.gains(frequency, angles[1])];
            let mean = Metres(f64::midpoint(sender.altitude.0, receiver.altitude.0));
            let air = atmosphere::reference(mean).expect("within the troposphere");
            let offset = Megahertz((sender.sends - receiver.hears).0 * 1000.0);
            let opposite = sender.polarisation != receiver.polarisation;
            Self {
                slant,
                angles,
                sender: sent,
                receiver: heard,
                free_space: free_space::loss(frequency, slant),
                gas: Spectrum::of(&air).specific_attenuation(frequency) * slant,
                polarisation: if opposite { polarisation_discrimination(sent, heard) } else { Decibels(0.0) },
                filter: discrimination(&sender.sent, sender.bandwidth, &receiver.heard, receiver.bandwidth, offset),
            }
        }

        /// Gains less free space and gas.
        pub fn coupling(&self) -> Decibels {
            let gains = Decibels(self.sender[0].0 + self.receiver[0].0);
            gains - self.free_space - self.gas
        }

        /// Level at the receiver. None where the channels do not overlap.
        pub fn level(&self, sender: &Station, receiver: &Station) -> Option<Dbm> {
            let sent = sender.power - sender.feeder - receiver.feeder + self.coupling();
            self.filter.map(|filter| sent - self.polarisation - filter)
        }
    }
}

use model::{Pair, Station, mask};

fn place(row: &Row, prefix: &str) -> (EarthCentred, Metres) {
    let of = |name: &str| row.number(&format!("{prefix}{name}"));
    let position = Position { latitude: Latitude(of("lat")), longitude: Longitude(of("lon")) };
    let height = Metres(of("ground_m") + of("ant_m"));
    (EarthCentred::of(position, height), height)
}

/// Sender and receiver of a row of the single pairs.
fn both(row: &Row) -> [Station; 2] {
    [("t", "tp_"), ("r", "rp_")].map(|(own, partner)| {
        let of = |name: &str| format!("{own}_{name}");
        let ((at, altitude), (aimed_at, _)) = (place(row, &of("")), place(row, partner));
        let bandwidth = Megahertz(row.number(if own == "t" { "bw_tx_mhz" } else { "bw_rx_mhz" }));
        Station {
            at,
            aimed_at,
            altitude,
            gain: Dbi(row.number(&of("gain_dbi"))),
            diameter: Millimetres(1000.0 * row.number(&of("diameter_m"))),
            pattern: row.text(&of("pattern")),
            cross_polar: Decibels(row.number(&of("xpd_db"))),
            polarisation: row.text(&of("pol")),
            sends: Gigahertz(row.number("f_tx_ghz")),
            hears: Gigahertz(row.number("f_rx_ghz")),
            bandwidth,
            power: Dbm(row.number("tx_dbm")),
            feeder: Decibels(row.number(&format!("feeder_{own}_db"))),
            noise_figure: Decibels(row.number("nf_db")),
            sent: mask(row.text("tx_mask")),
            heard: mask(row.text("rx_mask")),
        }
    })
}

/// The columns that pairs and matrices share.
fn check_pair(row: &Row, pair: &Pair) {
    row.check("slant_km", pair.slant.0 / 1000.0, 1e-8 * (1.0 + pair.slant.0 / 1000.0));
    for (column, angle) in ["phi_t_deg", "phi_r_deg"].into_iter().zip(pair.angles) {
        row.check(column, angle.0, 1e-7);
    }
    for (column, gain) in [("gt_dbi", pair.sender[0]), ("gr_dbi", pair.receiver[0])] {
        row.check(column, gain.0, 1e-6);
    }
    for (column, gain) in [("gt_cross_dbi", pair.sender[1]), ("gr_cross_dbi", pair.receiver[1])] {
        row.check(column, gain.0, 1e-6);
    }
    row.check("fspl_db", pair.free_space.0, 1e-6);
    row.check("gas_db", pair.gas.0, 1e-6);
    row.check("coupling_db", pair.coupling().0, 1e-6);
}

#[test]
fn single_pairs_match_the_table() {
    let mut seen = [0; 3];
    for row in rows(include_str!("../../tables/interference/interference_pair.csv")) {
        let [sender, receiver] = both(&row);
        let pair = Pair::of(&sender, &receiver);
        check_pair(&row, &pair);
        row.check("polar_db", pair.polarisation.0, 1e-6);
        let over_ground = [&sender, &receiver].map(|end| end.altitude - Metres(row.number("h_ref_m")));
        let limit = horizon(over_ground[0], over_ground[1]);
        row.check("horizon_km", limit.0 / 1000.0, 1e-7);
        row.check("noise_dbm", receiver.noise().0, 1e-6);
        let status = if pair.slant > limit {
            seen[0] += 1;
            "beyond_horizon"
        } else if let Some(level) = pair.level(&sender, &receiver) {
            seen[1] += 1;
            let over_noise = level - receiver.noise();
            row.check("nfd_db", pair.filter.expect("an overlap").0, 1e-6);
            row.check("i_dbm", level.0, 1e-6);
            row.check("i_over_n_db", over_noise.0, 1e-6);
            row.check("degradation_db", degradation(over_noise).0, 1e-6);
            "ok"
        } else {
            seen[2] += 1;
            "no_overlap"
        };
        assert_eq!(status, row.text("status"), "{}", row.text("id"));
    }
    assert!(seen[1] > 10 && seen[2] > 5, "{seen:?}");
}

/// One end of a hop of a network.
struct End {
    name: String,
    hop: &'static str,
    site: &'static str,
    threshold: Dbm,
    station: Station,
}

fn ends(table: &'static str) -> Vec<End> {
    let all: Vec<Row> = rows(table).collect();
    let partner = |row: &Row| {
        all.iter().find(|other| other.text("hop") == row.text("hop") && other.text("end") != row.text("end"))
    };
    let end = |row: &Row| {
        let ((at, altitude), (aimed_at, _)) = (place(row, ""), place(partner(row).expect("a partner"), ""));
        let station = Station {
            at,
            aimed_at,
            altitude,
            gain: Dbi(row.number("gain_dbi")),
            diameter: Millimetres(1000.0 * row.number("diameter_m")),
            pattern: row.text("pattern"),
            cross_polar: Decibels(row.number("xpd_db")),
            polarisation: row.text("pol"),
            sends: Gigahertz(row.number("tx_ghz")),
            hears: Gigahertz(row.number("rx_ghz")),
            bandwidth: Megahertz(row.number("bw_mhz")),
            power: Dbm(row.number("tx_dbm")),
            feeder: Decibels(row.number("feeder_db")),
            noise_figure: Decibels(row.number("nf_db")),
            sent: mask(row.text("tx_mask")),
            heard: mask(row.text("rx_mask")),
        };
        let threshold = Dbm(row.number("threshold_dbm"));
        let (hop, site) = (row.text("hop"), row.text("site"));
        End { name: format!("{hop}.{}", row.text("end")), hop, site, threshold, station }
    };
    all.iter().map(end).collect()
}

fn named<'a>(ends: &'a [End], name: &str) -> &'a End {
    ends.iter().find(|end| end.name == name).expect("an end")
}

const NETWORKS: [[&str; 5]; 3] = [
    [
        include_str!("../../tables/interference/net_a_ends.csv"),
        include_str!("../../tables/interference/net_a_matrix.csv"),
        include_str!("../../tables/interference/net_a_receivers.csv"),
        include_str!("../../tables/interference/net_a_pairs.csv"),
        include_str!("../../tables/interference/net_a_sites.csv"),
    ],
    [
        include_str!("../../tables/interference/net_b_ends.csv"),
        include_str!("../../tables/interference/net_b_matrix.csv"),
        include_str!("../../tables/interference/net_b_receivers.csv"),
        include_str!("../../tables/interference/net_b_pairs.csv"),
        include_str!("../../tables/interference/net_b_sites.csv"),
    ],
    [
        include_str!("../../tables/interference/net_c_ends.csv"),
        include_str!("../../tables/interference/net_c_matrix.csv"),
        include_str!("../../tables/interference/net_c_receivers.csv"),
        include_str!("../../tables/interference/net_c_pairs.csv"),
        include_str!("../../tables/interference/net_c_sites.csv"),
    ],
];

/// Every sender that a receiver hears, with its level: not its own partner, not of its site.
fn heard<'a>(ends: &'a [End], at: &'a End) -> impl Iterator<Item = (&'a End, Dbm)> {
    ends.iter().filter(|sender| sender.hop != at.hop && sender.site != at.site).filter_map(|sender| {
        let pair = Pair::of(&sender.station, &at.station);
        Some((sender, pair.level(&sender.station, &at.station)?))
    })
}

#[test]
fn every_sender_at_every_receiver_of_a_network_matches_its_table() {
    for [table, matrix, ..] in NETWORKS {
        let ends = ends(table);
        let lowest = rows(table).map(|row| row.number("ground_m")).fold(f64::INFINITY, f64::min);
        for row in rows(matrix) {
            let (sender, receiver) = (named(&ends, row.text("tx")), named(&ends, row.text("rx")));
            let kind = match (sender.hop == receiver.hop, sender.site == receiver.site) {
                (true, _) => "wanted",
                (_, true) => "same_site",
                _ => "interferer",
            };
            assert_eq!(kind, row.text("kind"));
            if kind == "same_site" {
                continue;
            }
            let pair = Pair::of(&sender.station, &receiver.station);
            check_pair(&row, &pair);
            let heights = [sender, receiver].map(|end| end.station.altitude - Metres(lowest));
            row.check("horizon_km", horizon(heights[0], heights[1]).0 / 1000.0, 1e-6);
            let level = pair.level(&sender.station, &receiver.station);
            if kind == "wanted" {
                let carrier = level.expect("its own channel") + pair.filter.expect("its own channel");
                row.check("i_dbm", carrier.0, 1e-6);
                continue;
            }
            row.check("polar_db", pair.polarisation.0, 1e-6);
            assert_eq!(level.is_some(), row.text("status") == "ok");
            if let Some(level) = level {
                row.check("nfd_db", pair.filter.expect("an overlap").0, 1e-6);
                row.check("i_dbm", level.0, 1e-6);
                row.check("i_over_n_db", (level - receiver.station.noise()).0, 1e-6);
            }
        }
    }
}

#[test]
fn what_receivers_of_a_network_hear_in_sum_matches_its_table() {
    for [table, _, receivers, ..] in NETWORKS {
        let ends = ends(table);
        for row in rows(receivers) {
            let end = named(&ends, row.text("rx"));
            let noise = end.station.noise();
            row.check("noise_dbm", noise.0, 1e-6);
            row.check("c_over_i_needed_1db", needed(end.threshold, noise, Decibels(1.0)).0, 1e-6);
            let partner = ends.iter().find(|other| other.hop == end.hop && other.name != end.name).expect("a partner");
            let pair = Pair::of(&partner.station, &end.station);
            let carrier = partner.station.power - partner.station.feeder - end.station.feeder + pair.coupling();
            row.check("c_dbm", carrier.0, 1e-6);
            let margin = carrier - end.threshold;
            row.check("margin_db", margin.0, 1e-6);

            let Some(level) = sum(heard(&ends, end).map(|(_, level)| level)) else {
                assert_eq!(row.text("i_total_dbm"), "");
                continue;
            };
            let cost = degradation(level - noise);
            row.check("i_total_dbm", level.0, 1e-6);
            row.check("i_over_n_db", (level - noise).0, 1e-6);
            row.check("degradation_db", cost.0, 1e-6);
            row.check("c_over_i_db", (carrier - level).0, 1e-6);
            row.check("margin_after_db", (margin - cost).0, 1e-6);
            let strongest = heard(&ends, end).max_by(|(_, one), (_, other)| one.0.total_cmp(&other.0));
            assert_eq!(strongest.map(|(sender, _)| sender.name.as_str()), Some(row.text("strongest")));

            // What comes from the partner's site takes the same path as the carrier and fades with it.
            let faded = heard(&ends, end)
                .map(|(sender, level)| if sender.site == partner.site { level - margin } else { level });
            let faded = sum(faded).expect("a level");
            row.check("degradation_common_fade_db", degradation(faded - noise).0, 1e-6);
        }
    }
}

#[test]
fn pairs_of_a_network_come_in_the_order_of_its_table() {
    for [table, _, _, pairs, _] in NETWORKS {
        let ends = ends(table);
        let mut found: Vec<_> = ends
            .iter()
            .flat_map(|end| heard(&ends, end).map(move |(sender, level)| (sender, end, level)))
            .map(|(sender, end, level)| (sender, end, level, level - end.station.noise()))
            .collect();
        found.sort_by(|one, other| other.3.0.total_cmp(&one.3.0));
        let rows: Vec<Row> = rows(pairs).collect();
        assert_eq!(rows.len(), found.len());
        for (row, (_, _, _, over_noise)) in rows.iter().zip(&found) {
            row.check("i_over_n_db", over_noise.0, 1e-6);
            row.check("degradation_db", degradation(*over_noise).0, 1e-6);
            let of_row = found
                .iter()
                .find(|(sender, end, ..)| sender.name == row.text("tx") && end.name == row.text("rx"))
                .expect("the pair");
            row.check("i_dbm", of_row.2.0, 1e-6);
        }
    }
}

#[test]
fn sites_of_a_network_send_in_the_halves_of_its_table() {
    let mut conflicts = 0;
    for [table, _, _, _, sites] in NETWORKS {
        let ends = ends(table);
        for row in rows(sites) {
            let of_site = ends.iter().filter(|end| end.site == row.text("site"));
            let (high, low): (Vec<&End>, _) = of_site.partition(|end| end.station.sends > end.station.hears);
            assert_eq!(
                [high.len(), low.len()].map(|count| count.to_string()),
                ["n_high", "n_low"].map(|n| row.text(n))
            );
            let conflict = !high.is_empty() && !low.is_empty();
            assert_eq!(conflict, row.text("conflict") == "1");
            conflicts += u32::from(conflict);
        }
    }
    assert_eq!(conflicts, 1);
}

#[test]
fn net_filter_discrimination_matches_the_table() {
    for row in rows(include_str!("../../tables/interference/nfd.csv")) {
        let (sent, heard) = (mask(row.text("tx_mask")), mask(row.text("rx_mask")));
        let [sent_bandwidth, heard_bandwidth, offset] =
            ["tx_bw_mhz", "rx_bw_mhz", "offset_mhz"].map(|column| Megahertz(row.number(column)));
        let got = |offset| discrimination(&sent, sent_bandwidth, &heard, heard_bandwidth, offset);
        assert_eq!(got(offset), got(Megahertz(-offset.0)));
        match got(offset) {
            None => assert_eq!(row.text("total_db"), ""),
            Some(total) => {
                let on_channel = got(Megahertz(0.0)).expect("an overlap");
                row.check("total_db", total.0, 1e-7);
                row.check("md_db", on_channel.0, 1e-7);
                row.check("nfd_hcm_db", (total - on_channel).0, 1e-7);
            }
        }
    }
}

#[test]
fn a_rectangle_passes_its_share() {
    let rectangle = Mask::rectangle();
    let of = |sent, heard, offset| {
        discrimination(&rectangle, Megahertz(sent), &rectangle, Megahertz(heard), Megahertz(offset))
    };
    assert_eq!(of(250.0, 250.0, 0.0), Some(Decibels(0.0)));
    assert_eq!(of(250.0, 250.0, 250.0), None);
    assert_eq!(of(125.0, 250.0, 60.0), Some(Decibels(0.0)));
    assert!((of(250.0, 125.0, 0.0).expect("an overlap").0 - 3.010_3).abs() < 1e-5);
    assert!((rectangle.reach() - 0.5).abs() < 1e-15);
}

#[test]
fn a_mask_ascends_from_its_centre() {
    let new = |points: &[(f64, f64)]| Mask::new(&points.iter().map(|(x, y)| (*x, Decibels(*y))).collect::<Vec<_>>());
    assert_eq!(new(&[(0.0, 0.0), (0.5, 0.0)]), Some(Mask::rectangle()));
    for wrong in [
        &[][..],
        &[(0.0, 0.0)],
        &[(0.1, 0.0), (0.5, 0.0)],
        &[(0.0, 0.0), (0.5, -3.0), (0.5, -20.0)],
        &[(0.0, 0.0), (0.5, f64::NAN)],
        &[(0.0, 0.0), (f64::INFINITY, -20.0)],
    ] {
        assert_eq!(new(wrong), None, "{wrong:?}");
    }
}

#[test]
fn distances_beyond_which_nothing_is_heard_match_the_table() {
    for row in rows(include_str!("../../tables/interference/culling.csv")) {
        let [radiated, noise] = ["eirp_max_dbm", "noise_dbm"].map(|column| Dbm(row.number(column)));
        let floor = noise + Decibels(row.number("limit_each_db"));
        let gas = DecibelsPerKilometre(row.number("gamma_db_km"));
        let (gain, frequency) = (Dbi(row.number("gr_max_dbi")), Gigahertz(row.number("f_ghz")));
        let reach = |gas| culling_distance(radiated, gain, floor, frequency, gas).0 / 1000.0;
        let horizon = horizon(Metres(row.number("h1_over_ref_m")), Metres(row.number("h2_over_ref_m")));
        row.check_relative("d_free_space_km", reach(DecibelsPerKilometre(0.0)));
        row.check_relative("d_with_gas_km", reach(gas));
        row.check_relative("d_horizon_km", horizon.0 / 1000.0);
        row.check_relative("d_cull_km", reach(gas).min(horizon.0 / 1000.0));
    }
}

#[test]
fn two_hops_of_a_hub_match_the_table() {
    for row in rows(include_str!("../../tables/interference/site_reuse.csv")) {
        let frequency = Gigahertz(row.number("f_ghz"));
        let (gain, diameter) = (Dbi(row.number("gain_dbi")), Millimetres(1000.0 * row.number("diameter_m")));
        let angle = Degrees(row.number("angle_deg"));
        // One hop north and the other at the angle to it, in one plane; a partner 5 km away gives the directions.
        let origin = EarthCentred::of(Position { latitude: Latitude(0.0), longitude: Longitude(-25.0) }, Metres(0.0));
        let at = |bearing| {
            let position = Position { latitude: Latitude(0.0), longitude: Longitude(-25.0) };
            EarthCentred::ahead(position, Metres(0.0), Degrees(bearing), Degrees(0.0))
        };
        let seen = off_axis(origin, at(0.0), at(angle.0));
        assert!((seen - angle).0.abs() < 1e-9);
        let there = match row.text("pattern") {
            "f699" => pattern::peak_envelope(frequency, diameter, gain, seen).expect("within range"),
            "f1245" => pattern::average(frequency, diameter, gain, seen).expect("within range"),
            _ => gain + model::measured(seen, "co_db"),
        };
        let discrimination = gain - there;
        row.check("discrimination_db", discrimination.0, 1e-6);
        let [tx_1, tx_2] = ["tx1_dbm", "tx2_dbm"].map(|column| Dbm(row.number(column)));
        let [loss_1, loss_2] =
            ["slant1_km", "slant2_km"].map(|column| free_space::loss(frequency, Metres(1000.0 * row.number(column))));
        row.check("c_over_i_far_db", (tx_1 - tx_2 + discrimination).0, 1e-6);
        row.check("c_over_i_hub_db", (tx_1 - tx_2 + discrimination + loss_2 - loss_1).0, 1e-6);
    }
}

#[test]
fn crossed_polarisations_leak_in_either_antenna() {
    let pair = [Dbi(43.5), cross_polar_gain(Dbi(43.5), Dbi(43.5), Decibels(30.0))];
    assert!((polarisation_discrimination(pair, pair).0 - 26.989_7).abs() < 1e-4);
    let side = [Dbi(10.0), cross_polar_gain(Dbi(10.0), Dbi(43.5), Decibels(30.0))];
    assert_eq!(side, [Dbi(10.0); 2]);
    assert_eq!(polarisation_discrimination(side, side), Decibels(0.0));
}

#[test]
fn an_aim_by_bearing_is_the_aim_at_a_partner() {
    let at = |latitude, longitude| Position { latitude: Latitude(latitude), longitude: Longitude(longitude) };
    let (here, there) = (at(46.8, -33.0), at(46.823_548, -32.983_659));
    let path = inverse(here, there).expect("apart");
    let (own, partner) = (EarthCentred::of(here, Metres(300.0)), EarthCentred::of(there, Metres(300.0)));
    // Level over the ellipsoid the partner lies half the bulge of the path below the horizontal.
    let elevation = Degrees(-(path.distance.0 / 2.0 / 6_371_000.0).to_degrees());
    let ahead = EarthCentred::ahead(here, Metres(300.0), path.azimuth, elevation);
    assert!(off_axis(own, partner, ahead).0 < 2e-4);
    assert!((own.distance(ahead).0 - 10_000.0).abs() < 1e-6);
    let up = EarthCentred::ahead(here, Metres(300.0), Degrees(12.0), Degrees(90.0));
    let level = EarthCentred::ahead(here, Metres(300.0), Degrees(12.0), Degrees(0.0));
    assert!((off_axis(own, up, level).0 - 90.0).abs() < 1e-7);
    assert_eq!(off_axis(own, partner, partner), Degrees(0.0));
    assert_eq!(off_axis(own, partner, own), Degrees(0.0));
}

proptest! {
    /// The same both ways at one frequency, to the last bits of the sums.
    #[test]
    fn interference_is_reciprocal(
        aims in [0.0..360.0, 0.0..360.0_f64],
        tilts in [-5.0..5.0, -5.0..5.0_f64],
        north in 0.001..0.3_f64,
        heights in [1.0..300.0, 1.0..300.0_f64],
        frequency in 6.0..86.0_f64,
        patterns in [0..2_usize, 0..2],
        polarisations in [0..2_usize, 0..2],
    ) {
        let position = [46.8, 46.8 + north].map(|latitude| Position { latitude: Latitude(latitude), longitude: Longitude(-33.0) });
        let station = |i: usize| Station {
            at: EarthCentred::of(position[i], Metres(heights[i])),
            aimed_at: EarthCentred::ahead(position[i], Metres(heights[i]), Degrees(aims[i]), Degrees(tilts[i])),
            altitude: Metres(heights[i]),
            gain: Dbi([43.5, 50.0][i]),
            diameter: Millimetres([300.0, 600.0][i]),
            pattern: ["f699", "f1245"][patterns[i]],
            cross_polar: Decibels(30.0),
            polarisation: ["H", "V"][polarisations[i]],
            sends: Gigahertz(frequency),
            hears: Gigahertz(frequency),
            bandwidth: Megahertz(250.0),
            power: Dbm(10.0),
            feeder: Decibels(0.5),
            noise_figure: Decibels(8.0),
            sent: Mask::rectangle(),
            heard: Mask::rectangle(),
        };
        let (one, other) = (station(0), station(1));
        let [there, back] = [(&one, &other), (&other, &one)].map(|(from, to)| Pair::of(from, to).level(from, to));
        let (there, back) = (there.expect("one channel"), back.expect("one channel"));
        prop_assert!((there - back).0.abs() < 1e-11, "{there} {back}");
    }

    /// Whatever is added to what a receiver hears, it hears no less.
    #[test]
    fn a_further_sender_lowers_no_sum(levels in proptest::collection::vec(-200.0..0.0_f64, 1..20), more in -400.0..0.0_f64) {
        let before = sum(levels.iter().copied().map(Dbm)).expect("a level");
        let after = sum(levels.iter().copied().chain([more]).map(Dbm)).expect("a level");
        prop_assert!(after >= before);
        prop_assert_eq!(sum(levels.iter().copied().map(Dbm)), Some(before));
    }
}
