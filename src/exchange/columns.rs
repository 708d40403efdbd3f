//! The columns of tables of sites and hops: what each is called, what it holds, and the key it stands for.

use crate::spec::Kind;
use crate::units::{
    Dbm, Gigahertz, Kind as Unit, Latitude, Longitude, Megahertz, Metres, Millimetres, MillimetresPerHour,
    Quantity as _,
};

/// What a table is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// Places.
    Sites,
    /// Hops between them.
    Hops,
}

impl What {
    /// The kind of document.
    #[must_use]
    pub const fn kind(self) -> Kind {
        match self {
            Self::Sites => Kind::Site,
            Self::Hops => Kind::Hop,
        }
    }

    /// The folder new documents go into, below that of the network.
    #[must_use]
    pub const fn folder(self) -> &'static str {
        match self {
            Self::Sites => "sites",
            Self::Hops => "hops",
        }
    }
}

/// A column of a table.
#[derive(Debug)]
pub struct Column {
    /// What it is called, and by what name export writes it.
    pub name: &'static str,
    /// What it may be called too: in small letters, one underscore where blanks, hyphens and points stand.
    pub also: &'static [&'static str],
    /// What it holds.
    pub holds: Holds,
    /// The key it stands for.
    pub route: &'static str,
}

/// What a column holds.
#[derive(Debug, Clone, Copy)]
pub enum Holds {
    /// Text of people.
    Text,
    /// A word of the language: an id, a choice.
    Word,
    /// A quantity, whose unit stands in the header.
    Quantity(&'static Unit),
}

const fn column(name: &'static str, also: &'static [&'static str], holds: Holds, route: &'static str) -> Column {
    Column { name, also, holds, route }
}

/// The columns of a table of sites. Those of a support are about the one that `support` names.
pub static SITES: [Column; 14] = [
    column("id", &["site", "site_id"], Holds::Word, "id"),
    column("title", &["name", "site_name"], Holds::Text, "title"),
    column("latitude", &["lat"], Holds::Quantity(Latitude::KIND), "position.latitude"),
    column("longitude", &["lon", "long", "lng"], Holds::Quantity(Longitude::KIND), "position.longitude"),
    column(
        "ground_height",
        &["ground", "elevation", "ground_elevation", "amsl"],
        Holds::Quantity(Metres::KIND),
        "ground_height",
    ),
    column("rain_rate", &["r001"], Holds::Quantity(MillimetresPerHour::KIND), "rain_rate"),
    column("access", &["directions"], Holds::Text, "access"),
    column("support", &["support_id"], Holds::Word, "supports[i].id"),
    column("support_kind", &["support_type"], Holds::Word, "supports[i].kind"),
    column("outside_diameter", &["diameter"], Holds::Quantity(Millimetres::KIND), "supports[i].outside_diameter"),
    column("wall_thickness", &["wall"], Holds::Quantity(Millimetres::KIND), "supports[i].wall_thickness"),
    column("material", &[], Holds::Word, "supports[i].material"),
    column("base_height", &["base"], Holds::Quantity(Metres::KIND), "supports[i].base_height"),
    column("free_length", &["length"], Holds::Quantity(Metres::KIND), "supports[i].free_length"),
];

/// The columns of a table of hops.
pub static HOPS: [Column; 23] = [
    column("id", &["hop", "hop_id", "link", "link_id"], Holds::Word, "id"),
    column("title", &["name", "hop_name", "link_name"], Holds::Text, "title"),
    column("a_to_b", &["frequency_a", "frequency_a_to_b", "tx_a"], Holds::Quantity(Gigahertz::KIND), "channel.a_to_b"),
    column("b_to_a", &["frequency_b", "frequency_b_to_a", "tx_b"], Holds::Quantity(Gigahertz::KIND), "channel.b_to_a"),
    column("bandwidth", &["channel_width"], Holds::Quantity(Megahertz::KIND), "channel.bandwidth"),
    column("polarisation", &["polarization"], Holds::Word, "channel.polarisation"),
    column("licence", &["license", "licence_number", "license_number"], Holds::Text, "licence.number"),
    column("site_a", &["a"], Holds::Word, "ends.a.site"),
    column("support_a", &[], Holds::Word, "ends.a.support"),
    column("height_a", &["antenna_height_a"], Holds::Quantity(Metres::KIND), "ends.a.height"),
    column("radio_a", &[], Holds::Word, "ends.a.radio"),
    column("half_a", &[], Holds::Word, "ends.a.half"),
    column("antenna_a", &[], Holds::Word, "ends.a.antenna"),
    column("transmit_power_a", &["power_a"], Holds::Quantity(Dbm::KIND), "ends.a.transmit_power"),
    column("bracket_a", &[], Holds::Word, "ends.a.bracket.model"),
    column("site_b", &["b"], Holds::Word, "ends.b.site"),
    column("support_b", &[], Holds::Word, "ends.b.support"),
    column("height_b", &["antenna_height_b"], Holds::Quantity(Metres::KIND), "ends.b.height"),
    column("radio_b", &[], Holds::Word, "ends.b.radio"),
    column("half_b", &[], Holds::Word, "ends.b.half"),
    column("antenna_b", &[], Holds::Word, "ends.b.antenna"),
    column("transmit_power_b", &["power_b"], Holds::Quantity(Dbm::KIND), "ends.b.transmit_power"),
    column("bracket_b", &[], Holds::Word, "ends.b.bracket.model"),
];

/// A header word as it is looked up: small letters, one underscore where blanks, hyphens and points stand.
#[must_use]
pub fn plain(word: &str) -> String {
    let parts = word.split([' ', '-', '_', '.', '\u{a0}']).filter(|part| !part.is_empty());
    parts.map(str::to_lowercase).collect::<Vec<_>>().join("_")
}

/// The columns of a kind of table.
#[must_use]
pub fn columns_of(what: What) -> &'static [Column] {
    match what {
        What::Sites => &SITES,
        What::Hops => &HOPS,
    }
}

/// The column of a name.
pub(super) fn column_of(what: What, name: &str) -> Option<&'static Column> {
    let name = plain(name);
    columns_of(what).iter().find(|column| column.name == name || column.also.contains(&name.as_str()))
}

impl Column {
    /// The unit that export writes, as a header spells it.
    #[must_use]
    pub fn unit(&self) -> Option<&'static str> {
        match self.holds {
            Holds::Quantity(kind) if kind.unit == "°" => Some("deg"),
            Holds::Quantity(kind) => Some(kind.unit),
            Holds::Text | Holds::Word => None,
        }
    }

    /// The header that export writes.
    #[must_use]
    pub fn header(&self) -> String {
        self.unit().map_or_else(|| self.name.to_owned(), |unit| format!("{} [{unit}]", self.name))
    }
}
