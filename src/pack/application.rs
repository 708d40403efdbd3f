//! The page of an application for a licence as data: both ends side by side.

use serde::Serialize;

use super::phrases::angle;
use super::words::{Table, text_or};
use crate::sheet::{Application, HopSheet};
use crate::spec::{Both, EndName};
use crate::units::{latitude_in_seconds, longitude_in_seconds};
use crate::voice::{Voice, shown};

/// The page.
#[derive(Debug, Clone, Serialize)]
pub(super) struct ApplicationPage {
    table: Table,
}

impl ApplicationPage {
    /// That of a hop.
    pub(super) fn of(sheet: &HopSheet<'_>, voice: Voice) -> Self {
        let ends = Both::ends(|end| sheet.application(end));
        let mut table = Table::new(voice, ["item", "apply-end-a", "apply-end-b"]);
        let mut row = |key: &str, cell: &dyn Fn(&Application<'_>) -> String| {
            table.row([voice.say(key), cell(&ends[EndName::A]), cell(&ends[EndName::B])]);
        };
        row("apply-site", &|end| shown(&end.end.site.title));
        row("apply-latitude", &|end| {
            let latitude = &end.end.site.position.latitude;
            angle(latitude, latitude_in_seconds(latitude.value), voice)
        });
        row("apply-longitude", &|end| {
            let longitude = &end.end.site.position.longitude;
            angle(longitude, longitude_in_seconds(longitude.value), voice)
        });
        row("apply-ground", &|end| voice.given_in_both(&end.end.site.ground_height));
        row("apply-height", &|end| voice.given_in_both(&end.end.end.height));
        row("apply-azimuth", &|end| voice.line(end.azimuth));
        row("apply-elevation", &|end| voice.line(end.elevation));
        row("apply-far", &|end| shown(&end.far.site.title));
        row("apply-distance", &|end| voice.line_in_both(end.distance));
        row("apply-sends", &|end| voice.line(end.frequency));
        row("apply-receives", &|end| voice.line(end.receives));
        row("apply-bandwidth", &|end| voice.number(end.bandwidth));
        row("apply-emission", &|end| voice.line(&end.emission));
        row("apply-polarisation", &|end| voice.term(end.polarisation.word()));
        row("apply-power", &|end| voice.line(end.power));
        row("apply-eirp", &|end| voice.line(end.eirp));
        row("apply-radio", &|end| shown(&end.end.radio.title));
        row("apply-antenna", &|end| shown(&end.end.antenna.title));
        row("apply-gain", &|end| voice.line(end.gain));
        row("apply-beamwidth", &|end| voice.number(&end.end.antenna.beamwidth));
        let pattern = |end: &Application<'_>| if end.measured { "apply-measured" } else { "apply-reference" };
        row("apply-pattern", &|end| voice.say(pattern(end)));
        let diameter = |end: &Application<'_>| end.end.antenna.diameter.as_ref().map(|it| voice.given_in_both(it));
        row("apply-diameter", &|end| text_or(diameter(end), voice.say("not-stated")));
        row("apply-number", &|end| {
            end.number.value().map_or_else(|_| voice.say("not-stated"), |number| shown(&number.to_string()))
        });
        Self { table }
    }
}
