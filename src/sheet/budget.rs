//! The level budget of one direction: from the sender's power to the level that is received, and what takes from it.

use std::sync::Arc;

use super::gain;
use super::geometry::frequency;
use super::line::{AS_WRITTEN, lines};
use super::losses;
use super::method::{Method, cited};
use super::missing::Missing;
use super::near_field::NearField;
use super::path::{DIFFRACTION, PathLines};
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use super::traced::{Traced, all, read, see, written};
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedHop};
use crate::physics::atmosphere::Air;
use crate::physics::gas::Spectrum;
use crate::physics::rain_outage::RainFade;
use crate::physics::{antenna, fog, free_space, link, rain};
use crate::spec::{Antenna, Polarisation, Way};
use crate::units::{Dbi, Dbm, Decibels, DecibelsPerKilometre, Gigahertz, Given, MillimetresPerHour, Percent};

const RAIN: Method = cited("ITU-R P.530-18 §2.4.1 with P.838-3; wet snow by §2.4.2 where a rain height is given");
const GAS: Method = cited("ITU-R P.676-13 Annex 1, all lines, in the reference atmosphere");
const GAS_LOSS: Method = cited("ITU-R P.676-13 Annex 1 over the slant distance, in the reference atmosphere");
const OWN_GAS: Method = cited("ITU-R P.676-13 Annex 1, all lines, in the air as written");
const OWN_GAS_LOSS: Method = cited("ITU-R P.676-13 Annex 1 over the slant distance, in the air as written");
const LOSSES: &str = "sum of what lies between, as written; none where nothing is written";
const NEAR_FIELD: Method = cited(
    "scalar Fresnel diffraction between two round apertures, face to face, field at the rim 10 dB below the middle (Rabello and Nobili 1973, abstract seen)",
);
/// Fog is modelled up to here.
const HIGHEST_FOG: Gigahertz = Gigahertz(200.0);

lines! {
    /// The sum from power to level.
    DirectionLines {
        frequency: Given<Gigahertz>, "f", "frequency", AS_WRITTEN;
        transmit_power: Given<Dbm>, "P_t", "transmit power", AS_WRITTEN;
        transmit_gain: Given<Dbi>, "G_t", "gain of the sending antenna", AS_WRITTEN;
        receive_gain: Given<Dbi>, "G_r", "gain of the receiving antenna", AS_WRITTEN;
        free_space_loss: Decibels, "L_bf", "free-space loss", cited("20 lg(4πs/λ), ITU-R P.525-4");
        gas_attenuation: DecibelsPerKilometre, "γ", "gas attenuation", GAS;
        gas_loss: Decibels, "A_g", "gas loss", GAS_LOSS;
        diffraction_loss: Decibels, "A_d", "diffraction loss", DIFFRACTION;
        transmit_losses: Saying, "", "between radio and antenna where it is sent", AS_WRITTEN;
        transmit_loss: Decibels, "L_t", "losses where it is sent", LOSSES;
        receive_losses: Saying, "", "between antenna and radio where it is received", AS_WRITTEN;
        receive_loss: Decibels, "L_r", "losses where it is received", LOSSES;
        near_field_loss: Decibels, "L_n", "loss in the near field of the antennas", NEAR_FIELD;
        level: Dbm, "P_r", "received level, clear sky", "P_t − L_t + G_t + G_r − L_r − L_bf − A_g − A_d − L_n";
        wet_loss: Decibels, "A_w", "loss of wet antenna covers, both ends",
            "sum of both antennas as written, none where nothing is written; no ITU method";
        aim_loss: Decibels, "L_p", "loss of aim when locked, both ends",
            cited("sum of 12 (θ/θ_3)² for each aim error as written, none where nothing is written (ITU-R F.699-8, main beam)");
        fog_loss: Decibels, "A_f", "loss in fog", cited("ITU-R P.840-9 at the path temperature, over the slant distance");
        rain_fade: Decibels, "A_0.01", "rain fade exceeded 0.01 % of the year", RAIN;
        objective_fade: Decibels, "A_p", "rain fade at the availability asked for", RAIN;
    }
}

/// The spectral lines of the air along a path, found once for both ways.
pub(super) type Gas = Traced<Arc<Spectrum>>;

/// One direction before anything is computed.
pub(super) struct Sending<'n> {
    pub(super) way: Way,
    /// More power than is written, to see what it would give.
    pub(super) more: Decibels,
    pub(super) resolved: &'n ResolvedHop<'n>,
    pub(super) sender: &'n ResolvedEnd<'n>,
    pub(super) receiver: &'n ResolvedEnd<'n>,
    /// As written, and to compute with.
    channel: Traced<Given<Gigahertz>>,
    frequency: Traced<Gigahertz>,
}

impl<'n> Sending<'n> {
    /// The centre frequency, to compute with.
    pub(super) const fn frequency(&self) -> &Traced<Gigahertz> {
        &self.frequency
    }

    pub(super) fn of(resolved: &'n ResolvedHop<'n>, way: Way, more: Decibels) -> Self {
        let (sender, receiver) = (&resolved.ends[way.sender()], &resolved.ends[way.receiver()]);
        let channel = frequency(resolved, way);
        Self { way, more, resolved, sender, receiver, frequency: channel.map(|given| given.value), channel }
    }
}

/// The sum of one direction.
pub(super) fn compute(
    sending: &Sending<'_>,
    path: &PathLines,
    gas: &Gas,
    rain: &Traced<RainFade>,
    target: &Target,
) -> DirectionLines {
    let (end, here, there) = (sending.sender.end, sending.sender.antenna, sending.receiver.antenna);
    let (f, more, way) = (&sending.frequency, sending.more, sending.way);
    let (power, gain, far_gain) = (read!(end.transmit_power), gain::at(here, f), gain::at(there, f));
    let free_space_loss = all((f, &path.slant)).map(|(f, s)| free_space::loss(f, s));
    let gas_attenuation = all((f, gas)).map(|(f, gas)| gas.specific_attenuation(f));
    let gas_loss = all((&gas_attenuation, &path.slant)).map(|(attenuation, s)| attenuation * s);
    let diffraction_loss = path.diffraction.map(|both| both.0[way]);
    // A path that nobody described is taken as clear, and a rule says so; one that is broken is not.
    let in_the_way = diffraction_loss.or(|| Traced::constant(Decibels(0.0)));
    let [out, back] = losses::of([sending.sender, sending.receiver], f);
    let other = frequency(sending.resolved, way.reversed()).map(|given| given.value);
    let near_field = NearField::of([here, there], [f, &other], &path.slant);
    let at_ends = all((&out.counted(), &back.counted(), &near_field.counted));
    let level = all((&power, &gain, &far_gain, &free_space_loss, &gas_loss, &in_the_way, &at_ends));
    let level = level.map(|(power, gain, far_gain, free_space, gas, in_the_way, (out, back, near))| {
        link::received_level(power + more, [gain, far_gain], &[free_space, gas, in_the_way, out, back, near])
    });
    let availability = &target.availability;
    let objective_fade = all((availability, rain))
        .check(|(wanted, rain)| rain.attenuation(Percent(100.0) - wanted).ok_or(Reason::RainModelRange));
    let (gas_by, gas_loss_by) = if target.air.is_reference() { (GAS, GAS_LOSS) } else { (OWN_GAS, OWN_GAS_LOSS) };
    DirectionLines {
        frequency: sending.channel.clone().line(),
        transmit_power: written!(end.transmit_power).line(),
        transmit_gain: gain::line(here, f),
        receive_gain: gain::line(there, f),
        free_space_loss: free_space_loss.line(),
        gas_attenuation: gas_attenuation.by(gas_by),
        gas_loss: gas_loss.by(gas_loss_by),
        diffraction_loss: diffraction_loss.line(),
        transmit_losses: out.names.line(),
        transmit_loss: out.sum.line(),
        receive_losses: back.names.line(),
        receive_loss: back.sum.line(),
        near_field_loss: near_field.line.line(),
        level: level.line(),
        wet_loss: wet_loss(here, there).line(),
        aim_loss: aim_loss(sending.sender, sending.receiver).line(),
        fog_loss: fog_loss(sending, path, target).line(),
        rain_fade: rain.map(|rain| rain.attenuation_0_01).line(),
        objective_fade: objective_fade.line(),
    }
}

fn wet_loss(here: &Document<Antenna>, there: &Document<Antenna>) -> Traced<Decibels> {
    let both = all((&read!(here.wet_loss), &read!(there.wet_loss)));
    both.map(|(here, there)| here.unwrap_or_default() + there.unwrap_or_default())
}

/// What the aim of both ends may cost once they are locked.
fn aim_loss(sender: &ResolvedEnd<'_>, receiver: &ResolvedEnd<'_>) -> Traced<Decibels> {
    let of = |own: &ResolvedEnd<'_>| {
        let (end, antenna) = (own.end, own.antenna);
        all((&read!(end.aim_error), &read!(antenna.beamwidth))).check(|(error, beam)| match error {
            None => Ok(Decibels(0.0)),
            Some(error) => antenna::pointing_loss(error, beam).ok_or(Reason::AimBeyondBeam),
        })
    };
    all((&of(sender), &of(receiver))).map(|(here, there)| here + there)
}

/// How far a level may be off by all that is stated of power and gains, at its worst together.
pub(super) fn level_tolerance(sender: &ResolvedEnd<'_>, receiver: &ResolvedEnd<'_>) -> Traced<Option<Decibels>> {
    let (radio, here, there) = (sender.radio, sender.antenna, receiver.antenna);
    stated_sum(&[read!(radio.transmit_tolerance), read!(here.gain_tolerance), read!(there.gain_tolerance)])
}

/// The sum of what is stated; none where nothing is.
pub(super) fn stated_sum(list: &[Traced<Option<Decibels>>]) -> Traced<Option<Decibels>> {
    Traced::each(list).map(|list| list.into_iter().flatten().reduce(|sum, next| sum + next))
}

fn fog_loss(sending: &Sending<'_>, path: &PathLines, target: &Target) -> Traced<Decibels> {
    let hop = sending.resolved.hop;
    let Some(water) = &target.fog else {
        return Traced::missing(Missing::judged(Reason::NoFog, at!(hop.climate.fog)));
    };
    let modelled = sending.frequency.unless(|f| (*f > HIGHEST_FOG).then_some(Reason::FogFrequency));
    all((water, &modelled, &path.temperature, &path.slant)).map(|(water, f, t, s)| fog::loss(f, t, water, s))
}

/// The spectral lines of the air along the path.
pub(super) fn gas(path: &PathLines) -> Gas {
    let air = all((&path.dry_pressure, &path.vapour_pressure, &path.temperature));
    air.map(|(dry_pressure, vapour_pressure, temperature)| {
        Arc::new(Spectrum::of(&Air { dry_pressure, vapour_pressure, temperature }))
    })
}

/// The polarisation of a hop, as rain meets it.
pub(super) fn polarisation(resolved: &ResolvedHop<'_>) -> Traced<rain::Polarisation> {
    let hop = resolved.hop;
    see!(hop.channel.polarisation).map(|polarisation| match polarisation {
        // Of two, the one that rain fades more.
        Polarisation::Horizontal | Polarisation::Dual => rain::Polarisation::Horizontal,
        Polarisation::Vertical => rain::Polarisation::Vertical,
    })
}

/// The fades that a rain rate brings on the path, and wet snow where a rain height is given.
pub(super) fn rain_fade(
    sending: &Sending<'_>,
    path: &PathLines,
    rate: &Traced<MillimetresPerHour>,
) -> Traced<RainFade> {
    let (f, polarised) = (&sending.frequency, polarisation(sending.resolved));
    let rain = all((f, rate, &polarised, &path.elevation_a, &path.slant));
    let rain = rain.check(|(f, rate, polarised, elevation, slant)| RainFade::new(f, polarised, elevation, slant, rate));
    // Without a rain height all that falls is taken as rain, and a rule says so.
    let factor = path.snow_factor.map(|factor| factor.0).or(|| Traced::constant(1.0));
    all((&rain, &factor)).map(|(rain, factor)| rain.with_wet_snow(factor))
}
