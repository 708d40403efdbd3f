//! Reach and loss of fibre.

use hopwright::physics::fibre_reach::{channel_loss, most_attenuation, reach};
use hopwright::spec::{FibreCategory, Interface};
use hopwright::units::Metres;

use super::table::rows;

#[test]
fn fibres_reach_and_lose_as_the_table_says() {
    for row in rows(include_str!("../../tables/fibre.csv")) {
        let found = reach(row.text("interface"), row.text("fibre")).expect("they go together");
        assert!((found.length.0 - row.number("reach")).abs() < 1e-12);
        assert!((found.loss.0 - row.number("most_loss")).abs() < 1e-12);
        let attenuation = most_attenuation(row.text("fibre"), found.wavelength);
        assert!((attenuation.0 - row.number("attenuation")).abs() < 1e-12);
        let count = |key: &str| row.text(key).parse().expect("a number");
        let loss = channel_loss(attenuation, Metres(row.number("length")), count("pairs"), count("splices"));
        assert!((loss.0 - row.number("loss")).abs() < 1e-9, "{loss}");
    }
}

#[test]
fn every_interface_that_can_be_written_has_a_fibre_and_a_partner() {
    for interface in Interface::ALL {
        assert!(FibreCategory::ALL.iter().any(|fibre| reach(interface.word(), fibre.word()).is_some()));
        assert_eq!(interface.partner().partner(), *interface);
        assert!((interface.partner().rate().0 - interface.rate().0).abs() < 1e-12);
    }
    assert_eq!(reach("10GBASE-SR", "OS2"), None);
}
