//! What the samples of a `GeoTIFF` mean: which are voids, in what unit, scaled how, above what.

use super::terrain::{GROUND, NotATile, refuse};

/// Metres, by EPSG number of the unit: metre, international foot, US survey foot.
///
/// Source: OGC 19-008r4, requirement class for linear units; lengths of the feet by definition.
const UNITS: [(u16, f64); 3] = [(9001, 1.0), (9002, 0.3048), (9003, 1200.0 / 3937.0)];

/// Systems of heights above sea level that are in metres: EGM2008, EGM96, EGM84, mean sea level, and those of countries.
///
/// Source: EPSG numbers from memory, not seen; what is not among them needs a unit of its own.
const IN_METRES: [u16; 29] = [
    3855, 5773, 5798, 5714, 5703, 5701, 5783, 7837, 5730, 5621, 9389, 9390, 5710, 5709, 5720, 5728, 5729, 5711, 5613,
    5717, 3900, 5941, 5776, 5737, 6647, 5713, 6695, 5778, 7839,
];

/// Systems of heights in feet and their unit: NAVD88 and NGVD29 in US survey feet, NAVD88 in international ones.
///
/// Source: as [`IN_METRES`].
const IN_FEET: [(u16, u16); 3] = [(6360, 9003), (5702, 9003), (8228, 9002)];

/// Systems that count from an ellipsoid, in the numbering of `GeoTIFF` 1.0 (from memory).
const ELLIPSOIDAL: std::ops::RangeInclusive<u16> = 5001..=5033;

/// A number that stands for a system defined in the file itself, or for none.
const OWN: [u16; 2] = [0, 32767];

/// How samples become heights.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Heights {
    /// What a void holds: as 64-bit number and, rounded once, as 32-bit one.
    void: Option<(f64, f32)>,
    scale: f64,
    offset: f64,
    /// Metres of one unit.
    unit: f64,
}

/// A sample of a tile. A void is one in the sample's own type: as 64-bit number it would look like ground.
pub(super) trait Sample: Copy {
    /// Whether it is what a void holds.
    fn is(self, void: (f64, f32)) -> bool;
    /// Its number.
    fn number(self) -> f64;
}

macro_rules! whole {
    ($($type:ty),*) => { $(impl Sample for $type {
        #[expect(clippy::float_cmp, reason = "a void is one value, to the bit")]
        fn is(self, void: (f64, f32)) -> bool {
            f64::from(self) == void.0
        }

        fn number(self) -> f64 {
            self.into()
        }
    })* };
}

whole!(i16, u16, i32, f64);

impl Sample for f32 {
    #[expect(clippy::float_cmp, reason = "a void is one value, to the bit")]
    fn is(self, void: (f64, f32)) -> bool {
        self == void.1
    }

    fn number(self) -> f64 {
        self.into()
    }
}

impl Heights {
    /// How samples become heights, by the numbers of their system and unit and by what the file says of its voids and of
    /// its band.
    pub(super) fn new(
        system: Option<u16>,
        unit: Option<u16>,
        void: Option<&str>,
        metadata: Option<&str>,
    ) -> Result<Self, NotATile> {
        let number = |text: &str, what: &str| {
            let text = text.trim_matches(|c: char| c.is_whitespace() || c == '\0');
            text.parse::<f64>().map_err(|_| refuse(format!("its {what} `{}` is not a number", shown(text))))
        };
        let role = |role: &str| metadata.and_then(|metadata| of_role(metadata, role));
        #[expect(clippy::cast_possible_truncation, reason = "a 32-bit sample holds the void rounded like this")]
        let void = void.map(|text| number(text, "no-data value")).transpose()?.map(|void| (void, void as f32));
        let factor = |name: &str, otherwise: f64| {
            let value = role(name).map_or(Ok(otherwise), |text| number(text, name))?;
            if value.is_finite() { Ok(value) } else { Err(refuse(format!("its {name} is not a number"))) }
        };
        let (scale, offset) = (factor("scale", 1.0)?, factor("offset", 0.0)?);
        Ok(Self { void, scale, offset, unit: metres_of(system, unit, role("unittype"))? })
    }

    /// The height of a sample in metres; not a number in a void, or where no ground is as low or high.
    #[expect(clippy::cast_possible_truncation, reason = "a height to a millimetre is enough")]
    pub(super) fn of(&self, sample: impl Sample) -> f32 {
        let height = (sample.number() * self.scale + self.offset) * self.unit;
        let void = self.void.is_some_and(|void| sample.is(void)) || !GROUND.contains(&height);
        if void { f32::NAN } else { height as f32 }
    }
}

/// Metres of one unit of the heights, which up to three places of the file may name.
fn metres_of(system: Option<u16>, unit: Option<u16>, word: Option<&str>) -> Result<f64, NotATile> {
    let system = system.filter(|system| !OWN.contains(system));
    if let Some(system) = system.filter(|system| ELLIPSOIDAL.contains(system)) {
        return Err(refuse(format!(
            "its heights are above the ellipsoid (vertical system {system}); convert them to those above sea level"
        )));
    }
    let by_number = |number: u16| UNITS.iter().find(|(unit, _)| *unit == number).map(|(_, metres)| *metres);
    let stated =
        match unit.filter(|unit| !OWN.contains(unit)) {
            Some(unit) => Some(by_number(unit).ok_or_else(|| {
                refuse(format!("unit {unit} of its heights is not known here; convert them to metres"))
            })?),
            None => None,
        };
    let of_system = match system {
        None => None,
        Some(system) if IN_METRES.contains(&system) => Some(1.0),
        Some(system) => IN_FEET.iter().find(|(of, _)| *of == system).and_then(|(_, unit)| by_number(*unit)),
    };
    let of_word = match word.map(str::trim).filter(|word| !word.is_empty()) {
        None => None,
        Some("m" | "metre" | "meter" | "metres" | "meters") => Some(1.0),
        Some("ft" | "foot" | "feet") => by_number(9002),
        Some("US survey foot" | "ftUS" | "us-ft" | "sfoot") => by_number(9003),
        Some(other) => {
            return Err(refuse(format!(
                "unit `{}` of its heights is not known here; convert them to metres",
                shown(other)
            )));
        }
    };
    let known: Vec<f64> = [stated, of_system, of_word].into_iter().flatten().collect();
    let Some(first) = known.first() else {
        return match system {
            // Without any word of it heights are taken for metres, as tiles of degrees are.
            None => Ok(1.0),
            Some(system) => Err(refuse(format!(
                "the unit of its vertical system {system} is not known here; convert them to metres above sea level"
            ))),
        };
    };
    if known.iter().any(|other| (other - first).abs() > f64::EPSILON) {
        return Err(refuse("it says two different units of its heights"));
    }
    Ok(*first)
}

/// What the band metadata hold for a role: `<Item name="SCALE" sample="0" role="scale">0.1</Item>`.
fn of_role<'m>(metadata: &'m str, role: &str) -> Option<&'m str> {
    let after = metadata.split_once(&format!("role=\"{role}\""))?.1;
    Some(after.split_once('>')?.1.split_once('<')?.0)
}

/// The beginning of a text, fit for a line.
fn shown(text: &str) -> String {
    text.chars().take(24).map(|c| if c.is_control() { '?' } else { c }).collect()
}
