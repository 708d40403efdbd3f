//! How close one may come to an antenna that sends.

use hopwright::physics::exposure::{PUBLIC, Sender, WORKERS};
use hopwright::units::{Dbi, Dbm, Gigahertz, Millimetres, WattsPerSquareMetre};

use super::table::rows;

#[test]
fn distances_match_the_table() {
    for row in rows(include_str!("../../tables/exposure.csv")) {
        let sender = Sender {
            frequency: Gigahertz(row.number("frequency")),
            power: Dbm(row.number("power")),
            gain: Dbi(row.number("gain")),
            diameter: Millimetres(1000.0 * row.number("diameter_m")),
        };
        row.check_relative("at_aperture", sender.at_aperture().0);
        row.check_relative("near_field", sender.near_field().0);
        row.check_relative("distance", sender.distance(WattsPerSquareMetre(row.number("limit"))).0);
    }
    assert!(PUBLIC < WORKERS);
}
