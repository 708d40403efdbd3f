//! Clear air: free space, the reference atmosphere and its gases.

use hopwright::physics::atmosphere::{Air, OutsideTroposphere, reference, saturation_pressure, vapour_pressure};
use hopwright::physics::free_space;
use hopwright::physics::gas::Spectrum;
use hopwright::sheet::Reason;
use hopwright::units::{Celsius, Decibels, Gigahertz, Hectopascals, Metres, Percent};

use super::table::rows;

#[test]
fn free_space_loss_matches_the_table() {
    for row in rows(include_str!("../../tables/free_space.csv")) {
        let (f, d) = (Gigahertz(row.number("frequency")), Metres(1000.0 * row.number("distance_km")));
        row.check_relative("wavelength_mm", 1000.0 * free_space::wavelength(f).0);
        row.check("loss", free_space::loss(f, d).0, 1e-6);
    }
}

#[test]
fn twice_the_distance_costs_six_decibels() {
    let loss = |d| free_space::loss(Gigahertz(73.5), Metres(d));
    for d in [50.0, 400.0, 9000.0] {
        assert!(((loss(2.0 * d) - loss(d)).0 - 6.020_6).abs() < 1e-4);
    }
    assert_eq!(loss(0.0), Decibels(f64::NEG_INFINITY));
}

#[test]
fn reference_atmosphere_matches_the_table() {
    for row in rows(include_str!("../../tables/atmosphere.csv")) {
        let air = reference(Metres(1000.0 * row.number("height_km"))).expect("in the troposphere");
        row.check("temperature", air.kelvin(), 5.01e-4);
        row.check("total_pressure", air.dry_pressure.0 + air.vapour_pressure.0, 5.01e-4);
        row.check("vapour_pressure", air.vapour_pressure.0, 5.01e-4);
    }
}

#[test]
fn reference_atmosphere_ends_where_it_says() {
    // Geopotential heights of -1 km and 11 km are geometric ones of -999.8 m and 11 019.1 m.
    assert!(reference(Metres(-999.0)).is_ok() && reference(Metres(11_019.0)).is_ok());
    for height in [Metres(-1001.0), Metres(11_020.0), Metres(f64::NAN)] {
        assert!(reference(height).is_err());
    }
    let message = "the reference atmosphere holds from -1 km to 11 km, not at 20000.0 m";
    assert_eq!(Reason::from(OutsideTroposphere(Metres(20_000.0))).to_string(), message);
}

#[test]
fn saturation_matches_the_table() {
    for row in rows(include_str!("../../tables/saturation.csv")) {
        let (t, p) = (Celsius(row.number("temperature")), Hectopascals(row.number("pressure")));
        row.check("saturation", saturation_pressure(t, p).0, 5.01e-6);
        assert_eq!(vapour_pressure(Percent(100.0), t, p), saturation_pressure(t, p));
        assert_eq!(vapour_pressure(Percent(0.0), t, p), Hectopascals(0.0));
    }
}

#[test]
fn gas_matches_the_workbook_and_the_computed_values() {
    for row in rows(include_str!("../../tables/gas.csv")) {
        let f = Gigahertz(row.number("frequency"));
        let air = Air {
            dry_pressure: Hectopascals(row.number("dry_pressure")),
            vapour_pressure: Hectopascals(row.number("vapour_pressure")),
            temperature: Celsius(row.number("temperature") - 273.15),
        };
        let gas = Spectrum::of(&air);
        row.check_relative("oxygen", gas.oxygen(f).0);
        row.check_relative("water_vapour", gas.water_vapour(f).0);
        let sum = row.number("oxygen") + row.number("water_vapour");
        assert!((gas.specific_attenuation(f).0 - sum).abs() <= 1e-6 * sum);
    }
}

#[test]
fn gas_matches_the_table_in_the_reference_air() {
    let [sea, hill] = [0.0, 1500.0].map(|height| Spectrum::of(&reference(Metres(height)).expect("troposphere")));
    for row in rows(include_str!("../../tables/gas_reference_air.csv")) {
        let f = Gigahertz(row.number("frequency"));
        row.check("oxygen", sea.oxygen(f).0, 5.01e-6);
        row.check("water_vapour", sea.water_vapour(f).0, 5.01e-6);
        row.check("sum_1500", hill.specific_attenuation(f).0, 5.01e-6);
    }
}

#[test]
fn gas_thins_with_height() {
    let at = |height| Spectrum::of(&reference(Metres(height)).expect("troposphere"));
    let (low, high) = (at(500.0), at(1500.0));
    for f in [6.0, 23.0, 60.0, 73.5, 83.5].map(Gigahertz) {
        assert!(high.specific_attenuation(f) < low.specific_attenuation(f), "{f}");
    }
}
