//! Lengths, bends and ground wires.

use hopwright::physics::cable_handling::{fixed_bend, pulling_bend};
use hopwright::physics::channel_length::{equivalent, fixed_cable};
use hopwright::physics::conductor::{area_of, resistance_per_km};
use hopwright::physics::ground_wire::inductance;
use hopwright::units::{Celsius, Metres, Microhenries, Millimetres, Quantity, SquareMillimetres, read};
use proptest::prelude::{prop_assert, proptest};

use super::table::rows;

#[test]
fn hot_cable_is_shorter() {
    for row in rows(include_str!("../../tables/channel_length.csv")) {
        let celsius = Celsius(row.number("temperature"));
        for (screened, column) in [(false, "unscreened"), (true, "screened")] {
            row.check(column, fixed_cable(celsius, screened).0, 1e-9);
            // The longest fixed cable counts as the 90 m that stand beside 10 m of cords.
            let whole = equivalent(Metres(row.number(column)), celsius, screened);
            assert!((whole.0 - 90.0).abs() < 1e-9, "{whole}");
        }
    }
    assert_eq!(fixed_cable(Celsius(-30.0), false), Metres(90.0));
    assert!((fixed_cable(Celsius(22.5), false).0 - 89.5).abs() < 1e-9, "halfway between two rows");
    assert!((fixed_cable(Celsius(65.0), false).0 - 72.8).abs() < 1e-9, "on with the last slope");
}

#[test]
fn a_ground_wire_is_an_inductance() {
    for row in rows(include_str!("../../tables/inductance.csv")) {
        let area = read(SquareMillimetres::KIND, &format!("{} AWG", row.text("gauge"))).expect("a gauge");
        let got = inductance(Metres(row.number("length")), SquareMillimetres(area));
        row.check("inductance", got.0, row.number("tolerance"));
    }
    assert_eq!(inductance(Metres(0.0), SquareMillimetres(16.0)), Microhenries(0.0));
}

#[test]
fn bends_are_multiples_of_the_diameter() {
    // 4 and 8 diameters: 30 mm and 60 mm for a cable of 7.5 mm, 36 mm and 72 mm for one of 9 mm.
    for (outside, fixed, pulling) in [(7.5, 30.0, 60.0), (9.0, 36.0, 72.0)] {
        assert_eq!(fixed_bend(Millimetres(outside)), Millimetres(fixed));
        assert_eq!(pulling_bend(Millimetres(outside)), Millimetres(pulling));
    }
}

proptest! {
    #[test]
    fn hotter_never_counts_for_less(length in 1.0..100.0_f64, celsius in -40.0..90.0_f64, hotter in 0.0..20.0_f64) {
        for screened in [false, true] {
            let at = |celsius| equivalent(Metres(length), Celsius(celsius), screened).0;
            prop_assert!(at(celsius + hotter) >= at(celsius) - 1e-9);
        }
    }

    #[test]
    fn an_area_has_its_resistance(area in 0.05..100.0_f64) {
        let back = area_of(resistance_per_km(SquareMillimetres(area), Celsius(20.0)));
        prop_assert!((back.0 / area - 1.0).abs() < 1e-12);
    }
}
