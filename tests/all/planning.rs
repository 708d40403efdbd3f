//! The search for a frequency plan: against the best plans of small networks, and what holds of every search.

use std::collections::BTreeMap;

use hopwright::physics::filter;
use hopwright::physics::geodesy::Position;
use hopwright::physics::off_axis::EarthCentred;
use hopwright::plan::search::{Candidate, Choice, End, Ether, NoPlan, Plan, Problem, best, today};
use hopwright::spec::Polarisation;
use hopwright::units::{Dbi, Dbm, Decibels, Gigahertz, Latitude, Longitude, Megahertz, Metres, Millimetres};
use proptest::prelude::{ProptestConfig, prop_assert, proptest};

use crate::physics::interference::model::{Pair, Station, mask};
use crate::physics::table::{Row, rows};

const PLANS: [[&str; 3]; 3] = [
    [
        include_str!("../tables/interference/plan1_hops.csv"),
        include_str!("../tables/interference/plan1_sites.csv"),
        include_str!("../tables/interference/plan1_channels.csv"),
    ],
    [
        include_str!("../tables/interference/plan2_hops.csv"),
        include_str!("../tables/interference/plan2_sites.csv"),
        include_str!("../tables/interference/plan2_channels.csv"),
    ],
    [
        include_str!("../tables/interference/plan3_hops.csv"),
        include_str!("../tables/interference/plan3_sites.csv"),
        include_str!("../tables/interference/plan3_channels.csv"),
    ],
];

/// A network of the tables, every pair computed when it is asked for.
struct Network {
    stations: Vec<[Station; 2]>,
    sites: Vec<[usize; 2]>,
    choices: Vec<Choice>,
}

impl Network {
    fn of([hops, sites, channels]: [&'static str; 3]) -> Self {
        let sites: Vec<Row> = rows(sites).collect();
        let site = |name: &str| sites.iter().position(|row| row.text("site") == name).expect("a site");
        let place = |number: usize| {
            let row = &sites[number];
            let position = Position { latitude: Latitude(row.number("lat")), longitude: Longitude(row.number("lon")) };
            let height = Metres(row.number("ground_m") + row.number("ant_m"));
            (EarthCentred::of(position, height), height)
        };
        let both = |row: &Row| ["site1", "site2"].map(|column| site(row.text(column)));
        let stations = rows(hops).map(|row| {
            let places = both(&row).map(place);
            [0, 1].map(|end| Station {
                at: places[end].0,
                aimed_at: places[1 - end].0,
                altitude: places[end].1,
                gain: Dbi(row.number("gain_dbi")),
                diameter: Millimetres(1000.0 * row.number("diameter_m")),
                pattern: row.text("pattern"),
                cross_polar: Decibels(row.number("xpd_db")),
                polarisation: "H",
                sends: Gigahertz(0.0),
                hears: Gigahertz(0.0),
                bandwidth: Megahertz(row.number("bw_mhz")),
                power: Dbm(row.number("tx_dbm")),
                feeder: Decibels(row.number("feeder_db")),
                noise_figure: Decibels(row.number("nf_db")),
                sent: mask(row.text("tx_mask")),
                heard: mask(row.text("rx_mask")),
            })
        });
        let channels: Vec<[Gigahertz; 2]> =
            rows(channels).map(|row| ["low_ghz", "high_ghz"].map(|column| Gigahertz(row.number(column)))).collect();
        let turned = channels.iter().flat_map(|[low, high]| [[*low, *high], [*high, *low]]);
        let choices = turned.flat_map(|sent| {
            [Polarisation::Horizontal, Polarisation::Vertical].map(|polarisation| Choice { sent, polarisation })
        });
        Self {
            stations: stations.collect(),
            sites: rows(hops).map(|row| both(&row)).collect(),
            choices: choices.collect(),
        }
    }

    fn candidates(&self) -> Vec<Candidate> {
        let all = self.sites.iter();
        all.map(|sites| Candidate { sites: *sites, band: 0, choices: self.choices.clone(), now: Some(0) }).collect()
    }
}

impl Ether for Network {
    fn near(&self, _: usize) -> Vec<usize> {
        (0..self.stations.len()).collect()
    }

    fn over_noise(&self, from: End, to: End, sent: &[Gigahertz]) -> Option<Vec<[f64; 2]>> {
        if self.sites[from.hop][from.end] == self.sites[to.hop][to.end] {
            return None;
        }
        let (mut sender, mut receiver) =
            (self.stations[from.hop][from.end].clone(), self.stations[to.hop][to.end].clone());
        let powers = sent.iter().map(|frequency| {
            (sender.sends, receiver.hears) = (*frequency, *frequency);
            ["H", "V"].map(|polarisation| {
                sender.polarisation = polarisation;
                let pair = Pair { filter: Some(Decibels(0.0)), ..Pair::of(&sender, &receiver) };
                let level = pair.level(&sender, &receiver).expect("no filter");
                10_f64.powf((level - receiver.noise()).0 / 10.0)
            })
        });
        Some(powers.collect())
    }

    fn passed(&self, from: End, sent: Gigahertz, to: End, heard: Gigahertz) -> f64 {
        let (sender, receiver) = (&self.stations[from.hop][from.end], &self.stations[to.hop][to.end]);
        let offset = Megahertz((sent - heard).0 * 1000.0);
        filter::discrimination(&sender.sent, sender.bandwidth, &receiver.heard, receiver.bandwidth, offset)
            .map_or(0.0, |lost| 10_f64.powf(-lost.0 / 10.0))
    }

    fn class(&self, _: End) -> usize {
        0
    }
}

#[test]
fn the_best_plans_of_three_networks_are_found() {
    for (row, plan) in rows(include_str!("../tables/interference/plan_results.csv")).zip(PLANS) {
        let network = Network::of(plan);
        let problem = Problem::of(network.candidates(), &network);
        let before = today(&problem).expect("settings of today");
        let found = best(&problem).expect("halves");
        row.check("best_max_degradation_db", found.worth.greatest.0, 1e-6);
        row.check("best_sum_degradation_db", found.worth.sum.0, 1e-6);
        assert!(found.proven, "{}", row.text("plan"));
        assert!(found.worth.is_better_than(&before));
    }
}

/// Hops on one plane, each two of which do something made up to each other.
struct Made {
    hops: usize,
    seed: u64,
    reach: usize,
}

impl Made {
    fn random(&self, from: End, to: End) -> f64 {
        let mut mixed = self.seed ^ ((from.hop * 2 + from.end) as u64) << 32 ^ (to.hop * 2 + to.end) as u64;
        for _ in 0..3 {
            mixed = (mixed ^ mixed >> 29).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        }
        f64::from(u32::try_from(mixed >> 32).expect("32 bits")) / f64::from(u32::MAX)
    }
}

impl Ether for Made {
    fn near(&self, hop: usize) -> Vec<usize> {
        (hop.saturating_sub(self.reach)..(hop + self.reach + 1).min(self.hops)).collect()
    }

    fn over_noise(&self, from: End, to: End, sent: &[Gigahertz]) -> Option<Vec<[f64; 2]>> {
        let chance = self.random(from, to);
        let like = 10_f64.powf(6.0 * chance - 4.0);
        (chance > 0.4).then(|| vec![[like, like * 0.01]; sent.len()])
    }

    fn passed(&self, _: End, sent: Gigahertz, _: End, heard: Gigahertz) -> f64 {
        match (sent - heard).0.abs() {
            apart if apart < 0.01 => 1.0,
            apart if apart < 0.3 => 0.005,
            _ => 0.0,
        }
    }

    fn class(&self, end: End) -> usize {
        end.hop % 2
    }
}

const H: Polarisation = Polarisation::Horizontal;
const V: Polarisation = Polarisation::Vertical;

fn choices(channels: u32, both_ways: bool) -> Vec<Choice> {
    let pair = |n: u32| [71.25 + 0.25 * f64::from(n), 81.25 + 0.25 * f64::from(n)].map(Gigahertz);
    let sent = (0..channels).map(pair).flat_map(|[low, high]| {
        let turned = both_ways.then_some([high, low]);
        std::iter::once([low, high]).chain(turned)
    });
    sent.flat_map(|sent| [H, V].map(|polarisation| Choice { sent, polarisation })).collect()
}

/// A chain of hops from site to site.
fn chain(hops: usize, channels: u32) -> Vec<Candidate> {
    (0..hops)
        .map(|hop| {
            let choices = choices(channels, true);
            let now = choices.iter().position(|choice| choice.first_is_upper() == Some(hop % 2 == 0));
            Candidate { sites: [hop, hop + 1], band: 0, choices, now }
        })
        .collect()
}

/// Whether every site of a plan sends in one half.
fn keeps_halves(candidates: &[Candidate], plan: &Plan) -> bool {
    let mut halves: BTreeMap<usize, bool> = BTreeMap::new();
    candidates.iter().zip(&plan.choices).all(|(candidate, choice)| {
        let first = candidate.choices[*choice].first_is_upper().expect("a pair");
        let [one, other] = candidate.sites;
        let (near, far) = (*halves.entry(one).or_insert(first), *halves.entry(other).or_insert(!first));
        near == first && far != first
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 6, failure_persistence: None, ..ProptestConfig::default() })]

    /// Every plan tried one by one finds none better than the search does.
    #[test]
    fn nothing_is_better_than_what_is_proven(seed: u64) {
        let (made, candidates) = (Made { hops: 4, seed, reach: 4 }, chain(4, 2));
        let problem = Problem::of(candidates.clone(), &made);
        let found = best(&problem).expect("halves");
        prop_assert!(found.proven);
        prop_assert!(keeps_halves(&candidates, &found));
        let count = candidates[0].choices.len();
        for number in 0..count.pow(4) {
            let choices: Vec<usize> = (0..4_u32).map(|hop| number / count.pow(hop) % count).collect();
            let fixed = candidates.iter().zip(&choices).map(|(candidate, choice)| Candidate {
                choices: vec![candidate.choices[*choice]], now: Some(0), ..candidate.clone()
            });
            let fixed: Vec<Candidate> = fixed.collect();
            let plan = Plan { choices: vec![0; 4], ..found.clone() };
            if !keeps_halves(&fixed, &plan) {
                continue;
            }
            let worth = today(&Problem::of(fixed, &made)).expect("settings");
            prop_assert!(!worth.is_better_than(&found.worth), "{worth:?} {:?}", found.worth);
        }
    }

    /// Whatever the settings of today are, what is proposed is no worse.
    #[test]
    fn a_plan_is_never_worse_than_that_of_today(seed: u64, now in proptest::collection::vec(0..3_usize, 9)) {
        let (made, mut candidates) = (Made { hops: 9, seed, reach: 2 }, chain(9, 3));
        for (candidate, now) in candidates.iter_mut().zip(now) {
            candidate.now = candidate.now.map(|first| first + 4 * now);
        }
        let problem = Problem::of(candidates.clone(), &made);
        let (before, found) = (today(&problem).expect("settings"), best(&problem).expect("halves"));
        prop_assert!(!before.is_better_than(&found.worth));
        prop_assert!(keeps_halves(&candidates, &found));
    }
}

#[test]
fn a_plan_is_the_same_on_any_number_of_threads() {
    let (made, candidates) = (Made { hops: 20, seed: 7, reach: 3 }, chain(20, 2));
    let of = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().expect("threads");
        pool.install(|| best(&Problem::of(candidates.clone(), &made)).expect("halves"))
    };
    let alone = of(1);
    assert_eq!(alone, of(4));
    assert!(keeps_halves(&candidates, &alone));
}

#[test]
fn what_disturbs_nobody_stays_as_it_is() {
    struct Silence;
    impl Ether for Silence {
        fn near(&self, _: usize) -> Vec<usize> {
            (0..6).collect()
        }
        fn over_noise(&self, _: End, _: End, _: &[Gigahertz]) -> Option<Vec<[f64; 2]>> {
            None
        }
        fn passed(&self, _: End, _: Gigahertz, _: End, _: Gigahertz) -> f64 {
            1.0
        }
        fn class(&self, _: End) -> usize {
            0
        }
    }
    let candidates = chain(6, 4);
    let now: Vec<usize> = candidates.iter().filter_map(|candidate| candidate.now).collect();
    let found = best(&Problem::of(candidates, &Silence)).expect("halves");
    assert_eq!(found.choices, now);
    assert!(found.proven);
}

#[test]
fn hops_that_stay_hold_the_halves_of_their_sites() {
    let made = Made { hops: 3, seed: 3, reach: 3 };
    let mut candidates = chain(3, 2);
    let upper = candidates[0].choices.iter().find(|choice| choice.first_is_upper() == Some(true)).copied();
    candidates[0].choices = vec![upper.expect("an upper one")];
    candidates[0].now = Some(0);
    let found = best(&Problem::of(candidates.clone(), &made)).expect("halves");
    assert!(keeps_halves(&candidates, &found));
    assert_eq!(candidates[1].choices[found.choices[1]].first_is_upper(), Some(false));
}

#[test]
fn sites_that_cannot_be_told_into_halves_are_named() {
    let searched = |candidates: Vec<Candidate>| {
        let made = Made { hops: candidates.len(), seed: 3, reach: 4 };
        best(&Problem::of(candidates, &made))
    };
    let hop = |one, other| Candidate { sites: [one, other], band: 0, choices: choices(2, true), now: None };
    let refused = |candidates| searched(candidates).expect_err("no halves");
    let NoPlan::OddRing(ring) = refused(vec![hop(9, 0), hop(0, 1), hop(1, 2), hop(2, 0)]) else { panic!("a ring") };
    assert_eq!(ring.len(), 3);
    assert!([0, 1, 2].iter().all(|site| ring.contains(site)));
    // One of another band is no part of it.
    let mut of_another = hop(2, 0);
    of_another.band = 1;
    assert!(searched(vec![hop(0, 1), hop(1, 2), of_another]).is_ok());

    // Hops that stay as they are.
    let stays = |one, other, upper: bool| Candidate {
        choices: choices(1, true).into_iter().filter(|c| c.first_is_upper() == Some(upper)).take(1).collect(),
        ..hop(one, other)
    };
    let mixed = refused(vec![stays(0, 5, true), stays(0, 6, false), hop(0, 1)]);
    assert_eq!(mixed, NoPlan::Mixed { site: 0, hops: [0, 1] });
    let held = refused(vec![stays(0, 5, true), stays(2, 6, false), hop(0, 1), hop(1, 2)]);
    assert_eq!(held, NoPlan::Held(vec![0, 1, 2]));
    // Where none of those that may change are touched it is not theirs to judge.
    assert!(searched(vec![stays(0, 5, true), stays(0, 6, false), hop(1, 2)]).is_ok());
}
