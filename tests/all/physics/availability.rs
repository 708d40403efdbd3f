//! Wet snow, equipment and supply, and what all causes come to together.

use hopwright::physics::link;
use hopwright::physics::multipath::{ClearAirPath, Multipath, OutOfRange};
use hopwright::physics::rain::Polarisation;
use hopwright::physics::rain_outage::{Outage, RainFade};
use hopwright::physics::share::Share;
use hopwright::physics::snow::{factor, middle};
use hopwright::physics::unavailability::{of_any, of_equipment, of_supply};
use hopwright::physics::worst_month::MonthOutage;
use hopwright::units::{Decibels, Degrees, Gigahertz, Hours, Latitude, Metres, MillimetresPerHour, Percent};

use super::table::{Row, rows};

fn polarisation(row: &Row) -> Polarisation {
    if row.text("pol") == "H" { Polarisation::Horizontal } else { Polarisation::Vertical }
}

fn rain(row: &Row, frequency: &str) -> RainFade {
    let (distance, rate) = (Metres(1000.0 * row.number("d_km")), MillimetresPerHour(row.number("r001_mm_h")));
    let frequency = Gigahertz(row.number(frequency));
    RainFade::new(frequency, polarisation(row), Degrees(0.0), distance, rate).expect("in range")
}

fn antennas(row: &Row) -> [Metres; 2] {
    ["h1_m", "h2_m"].map(|column| Metres(row.number(column)))
}

/// Holds an outage against a share that the table cuts to the range of the method.
fn check_rain(row: &Row, [share, status]: [&str; 2], outage: Outage) {
    match row.text(status) {
        "in_range" => {
            let Outage::Within(got) = outage else { panic!("{outage:?}") };
            row.check_relative(share, got.0);
        }
        "le_0.001" => assert_eq!(outage, Outage::Below),
        "ge_1" => assert_eq!(outage, Outage::Above),
        "dry_snow" | "none" | "zero" | "no_rain" => assert_eq!(outage, Outage::Never),
        other => panic!("{other}"),
    }
}

#[test]
fn wet_snow_and_what_it_makes_of_an_outage_match_the_table() {
    for row in rows(include_str!("../../tables/wet_snow.csv")) {
        let height = middle(antennas(&row), Metres(1000.0 * row.number("d_km")));
        row.check_relative("h_link_m", height.0);
        let factor = factor(height, Metres(row.number("h_rain_mean_m")));
        row.check("factor", factor, 1e-6 * row.number("factor") + 1e-12);
        let (rain, margin) = (rain(&row, "f_ghz"), Decibels(row.number("margin_db")));
        row.check_relative("a001_db", rain.attenuation_0_01.0);
        check_rain(&row, ["outage_rain_pct", "status_rain"], rain.outage(margin));
        let snow = rain.with_wet_snow(factor);
        row.check("a_rs001_db", snow.attenuation_0_01.0, 1e-6 * row.number("a_rs001_db") + 1e-9);
        check_rain(&row, ["outage_rain_snow_pct", "status_rain_snow"], snow.outage(margin));
        // The average along the path of ITU-R P.2001-4 is another reading of the same snow.
        if let Some(inclined) = row.maybe("factor_inclined") {
            assert!((factor - inclined).abs() <= 0.03, "{factor} {inclined}");
        }
    }
}

#[test]
fn wet_snow_never_makes_a_hop_below_all_snow_worse_and_nothing_above_it() {
    let height = Metres(3000.0);
    assert!((factor(Metres(-600.0), height) - 1.0).abs() < 1e-12);
    // At 3600 m below the mean all 49 rain heights of the table are rain: their shares add up to one.
    assert!((factor(Metres(-599.999), height) - 1.0).abs() < 1e-4);
    assert!(factor(Metres(5400.1), height) == 0.0);
    let most = (-3600..2400).map(|above| factor(height + Metres(f64::from(above)), height)).fold(0.0, f64::max);
    assert!((1.30..1.31).contains(&most), "{most}");
}

/// Share of time an end is down by its equipment, and by its supply.
fn end(row: &Row, number: u8) -> [Percent; 2] {
    let at = |name: &str| row.number(name);
    let column = |name: &str| name.replace('#', &number.to_string());
    let single = of_equipment(Hours(at(&column("mtbf#_h"))), Hours(at(&column("mttr#_h"))));
    let equipment = if row.text(&column("protected#")) == "1" { Percent(single.0 * single.0 / 100.0) } else { single };
    let per_year = at(&column("mains_failures#_per_year"));
    let (mean, bridged) = (Hours(at(&column("mains_outage#_h"))), Hours(at(&column("autonomy#_h"))));
    let supply = if per_year > 0.0 { of_supply(Hours(8760.0 / per_year), mean, bridged) } else { Percent(0.0) };
    [equipment, supply]
}

fn multipath(row: &Row, frequency: &str) -> Result<Multipath, OutOfRange> {
    Multipath::new(&ClearAirPath {
        distance: Metres(1000.0 * row.number("d_km")),
        frequency: Gigahertz(row.number(frequency)),
        antennas: antennas(row),
        terrain: Metres(row.number("ht_m")),
        log_k: row.number("log10_k"),
        dn_75: row.number("dn75"),
    })
}

/// Outages of one direction in the year and the worst month: rain, and multipath.
fn direction(row: &Row, names: &str, snow: f64) -> (Outage, [Percent; 2]) {
    let margin = Decibels(row.number(&format!("margin{names}_db")));
    let frequency = format!("f{names}_ghz");
    let outage = rain(row, &frequency).with_wet_snow(snow).outage(margin);
    check_rain(row, [&format!("rain_snow{names}_year_pct"), &format!("rain_status{names}")], outage);
    let [year, month] = match multipath(row, &frequency) {
        Ok(fading) => {
            let latitude = Latitude(row.number("lat"));
            [fading.year(margin, latitude), fading.worst_month(margin)].map(|share| share.expect("a share"))
        }
        Err(_) => [Percent(0.0); 2],
    };
    if row.text(&format!("multipath_status{names}")) == "computed" {
        row.check_relative(&format!("multipath{names}_year_pct"), year.0);
        row.check_relative(&format!("multipath{names}_month_pct"), month.0);
    }
    (outage, [year, month])
}

#[test]
fn whole_hops_by_all_causes_match_the_table() {
    let (mut count, mut beyond) = (0, 0);
    for row in rows(include_str!("../../tables/whole_hops_all_causes.csv")) {
        count += 1;
        // Where layers of air fade a hop for hours a month no number is given here, and none or a useless one there.
        if matches!(multipath(&row, "f12_ghz"), Err(OutOfRange::Occurrence(_))) {
            assert!(!row.text("multipath12_year_pct").parse::<f64>().is_ok_and(|share| share < 1.0));
            beyond += 1;
            continue;
        }
        let height = middle(antennas(&row), Metres(1000.0 * row.number("d_km")));
        let snow = factor(height, Metres(row.number("h_rain_mean_m")));
        row.check("snow_factor", snow, 1e-6 * row.number("snow_factor") + 1e-12);
        let ends = [end(&row, 1), end(&row, 2)];
        let [equipment, supply] = [0, 1].map(|part| of_any(&ends.map(|end| end[part])));
        row.check("equipment_pct", equipment.0, 1e-6 * row.number("equipment_pct") + 1e-13);
        // The table took small shares from one, which leaves them fourteen digits.
        row.check("power_pct", supply.0, 1e-6 * row.number("power_pct") + 1e-13);
        let ways @ [there, back] = ["12", "21"].map(|names| direction(&row, names, snow));
        let total = |rain: Share, multipath: Percent| rain.plus(multipath).plus(equipment).plus(supply);
        for ((outage, [year, month]), names) in ways.into_iter().zip(["12", "21"]) {
            row.check_relative(&format!("total{names}_year_pct"), shown(outage, total(outage.into(), year)));
            let rain_month = MonthOutage::of(outage);
            row.check_relative(&format!("total{names}_month_pct"), shown(outage, total(rain_month.into(), month)));
        }
        let rain = link::two_way(there.0, back.0);
        let both = total(Share::from(rain), there.1[0] + back.1[0]);
        row.check_relative("total_both_year_pct", shown(rain, both));
        let month = total(Share::from(MonthOutage::of(rain)), there.1[1] + back.1[1]);
        row.check_relative("total_both_month_pct", shown(rain, month));
        let bound = match rain {
            Outage::Below => "at_most",
            Outage::Above => "at_least",
            Outage::Never | Outage::Within(_) => "exact",
        };
        assert_eq!(row.text("total_both_bound"), bound);
        if rain != Outage::Above {
            row.check("availability_both_pct", link::availability(both.most).0, 1e-7);
            row.check_relative("outage_both_min_per_year", link::minutes_per_year(both.most).0);
        }
    }
    assert_eq!((count, beyond), (24, 2));
}

/// The bound of a total that the table has: the least where rain takes at least 1 %, else the most.
fn shown(rain: Outage, total: Share) -> f64 {
    if rain == Outage::Above { total.least.0 } else { total.most.0 }
}

#[test]
fn equipment_and_supply_that_are_known_by_heart() {
    // 200,000 h and 8 h; six failures a year of an hour with four hours of battery: independently computed.
    assert!((of_equipment(Hours(200_000.0), Hours(8.0)).0 - 3.999_84e-3).abs() < 1e-8);
    assert!((of_supply(Hours(8760.0 / 6.0), Hours(1.0), Hours(4.0)).0 - 1.254_50e-3).abs() < 1e-8);
    assert_eq!(of_supply(Hours(100.0), Hours(0.0), Hours(0.0)), Percent(0.0));
    assert_eq!(of_supply(Hours(1.0), Hours(2.0), Hours(0.0)), Percent(100.0));
    assert!((of_any(&[Percent(50.0), Percent(50.0)]).0 - 75.0).abs() < 1e-12);
    assert_eq!(of_any(&[]), Percent(0.0));
}

#[test]
fn shares_add_up_to_all_of_the_time_and_no_more() {
    let share = Share::from(Outage::Within(Percent(0.5)));
    assert_eq!(share.plus(Percent(99.9)), Share { least: Percent(100.0), most: Percent(100.0) });
    let below = Share::from(Outage::Below).plus(Percent(0.002));
    assert!((below.least.0 - 0.002).abs() < 1e-15 && (below.most.0 - 0.003).abs() < 1e-15);
    assert_eq!(Share::from(Outage::Above).plus(Percent(0.2)).most, Percent(100.0));
}
