//! What an application for a licence asks for, as a table: a row for each end that sends.

use super::figures::{as_written, fixed, significant};
use crate::sheet::{Application, HopSheet};
use crate::spec::EndName;
use crate::text::csv::{Marks, Out, Writer};
use crate::units::{Gigahertz, Kind, Latitude, Longitude, Megahertz, Metres, Quantity as _};

const HEADERS: [&str; 24] = [
    "hop",
    "end",
    "site",
    "site_title",
    "latitude [deg]",
    "longitude [deg]",
    "ground_height [m]",
    "antenna_height [m]",
    "antenna_above_sea [m]",
    "azimuth [deg]",
    "elevation [deg]",
    "far_site",
    "distance [m]",
    "transmit_frequency [GHz]",
    "receive_frequency [GHz]",
    "bandwidth [MHz]",
    "emission",
    "transmit_power [dBm]",
    "eirp [dBm]",
    "antenna",
    "gain [dBi]",
    "pattern",
    "polarisation",
    "licence",
];

/// The rows of both ends of a hop.
#[must_use]
pub fn application_rows(sheet: &HopSheet<'_>) -> Vec<Vec<Out>> {
    let hop = &sheet.resolved.hop.id;
    EndName::BOTH.map(|end| row(hop, &sheet.application(end))).into()
}

/// The rows of all hops as a table.
#[must_use]
pub fn applications(rows: Vec<Vec<Vec<Out>>>, marks: Marks) -> String {
    let mut out = Writer::new(marks);
    out.row(HEADERS.map(|header| Out::Text(header.to_owned())));
    rows.into_iter().flatten().for_each(|row| out.row(row));
    out.text().to_owned()
}

fn row(hop: &str, of: &Application<'_>) -> Vec<Out> {
    let text = |text: &str| Out::Text(text.to_owned());
    let own = |kind: &Kind, words: String| Out::number(as_written(kind, &words));
    let site = of.end.site;
    let row: [Out; HEADERS.len()] = [
        text(hop),
        text(of.name.letter()),
        text(&site.id),
        text(&site.title),
        own(Latitude::KIND, site.position.latitude.to_string()),
        own(Longitude::KIND, site.position.longitude.to_string()),
        own(Metres::KIND, site.ground_height.to_string()),
        own(Metres::KIND, of.end.end.height.to_string()),
        Out::number(of.altitude.get().map(|height| fixed(height.0, 2))),
        Out::number(of.azimuth.get().map(|angle| fixed(angle.0, 7))),
        Out::number(of.elevation.get().map(|angle| fixed(angle.0, 7))),
        text(&of.far.site.id),
        Out::number(of.distance.get().map(|length| fixed(length.0, 2))),
        Out::number(of.frequency.value().ok().and_then(|it| as_written(Gigahertz::KIND, &it.to_string()))),
        Out::number(of.receives.value().ok().and_then(|it| as_written(Gigahertz::KIND, &it.to_string()))),
        own(Megahertz::KIND, of.bandwidth.to_string()),
        Out::text(of.emission.value().ok()),
        Out::number(of.power.value().ok().map(|power| significant(power.value.0))),
        Out::number(of.eirp.get().map(|power| fixed(power.0, 2))),
        text(&of.end.antenna.title),
        Out::number(of.gain.value().ok().map(|gain| significant(gain.value.0))),
        text(if of.measured { "measured" } else { "reference" }),
        text(of.polarisation.word()),
        Out::text(of.number.value().ok()),
    ];
    row.into()
}
