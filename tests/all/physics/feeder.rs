//! Feeders: the walls of a guide, the skin of a cable, and what lies between the points of a sheet.

use hopwright::physics::feeder::{by_frequency, coaxial, copper_guide, cutoff, guide};
use hopwright::units::{DecibelsPerKilometre, Gigahertz, Millimetres};

use super::table::rows;

#[test]
fn guides_and_cables_match_the_table() {
    for row in rows(include_str!("../../tables/feeder.csv")) {
        let sides = [Millimetres(row.number("a_mm")), Millimetres(row.number("b_mm"))];
        let (f0, f) = (Gigahertz(row.number("f0_ghz")), Gigahertz(row.number("f_ghz")));
        row.check_relative("cutoff_ghz", cutoff(sides[0]).0);
        let loss = copper_guide(sides[0], sides[1], f).expect("above its cut-off");
        row.check_relative("te10_db_per_m", loss.0 / 1000.0);
        if let Some(stated) = row.maybe("coax_f0_db_per_m") {
            row.check_relative("coax_f_db_per_m", coaxial(DecibelsPerKilometre(1000.0 * stated), f0, f).0 / 1000.0);
        }
        // Twice the copper at one frequency is twice the copper at another.
        let at_f0 = copper_guide(sides[0], sides[1], f0).expect("above its cut-off");
        let scaled = guide(sides, DecibelsPerKilometre(2.0 * at_f0.0), f0, f).expect("above its cut-off");
        assert!((scaled.0 / loss.0 - 2.0).abs() < 1e-12);
        assert_eq!(copper_guide(sides[0], sides[1], cutoff(sides[0])), None);
    }
}

#[test]
fn between_two_points_any_power_of_the_frequency_is_exact() {
    let at = |f: f64| (Gigahertz(f), DecibelsPerKilometre(100.0 * f.powf(0.7)));
    let stated = [at(18.0), at(6.0), at(11.0)];
    for f in [6.0, 7.3, 11.0, 14.2, 18.0] {
        let got = by_frequency(&stated, Gigahertz(f)).expect("between them");
        assert!((got.0 - at(f).1.0).abs() < 1e-9 * got.0, "{f}");
    }
    assert_eq!(by_frequency(&stated, Gigahertz(5.9)), None);
    assert_eq!(by_frequency(&stated, Gigahertz(18.1)), None);
    assert_eq!(by_frequency(&[], Gigahertz(18.1)), None);
    let nothing = [(Gigahertz(1.0), DecibelsPerKilometre(0.0)), (Gigahertz(3.0), DecibelsPerKilometre(4.0))];
    assert_eq!(by_frequency(&nothing, Gigahertz(2.0)), Some(DecibelsPerKilometre(2.0)));
}
