//! Names of tube sizes, which are no measures: `DN 50`, `NPS 2 1/2`, `DN 65 EN 10255`.
//!
//! A name stands for an outside diameter, and not for the same one in every standard: that of `DN 65` is 76.1 mm in Europe
//! and 73 mm across the Atlantic. Where they differ by more than a clamp forgives, the name alone is refused.

use super::fault::Fault;

/// Sizes by name, with the outside diameter in millimetres by EN 10255, by ISO 4200, by ASME B36.10M; nought where the
/// standard has none.
///
/// Source: section tables as other open tables quote them (from memory; 100, 125 and 150 of EN 10255 second-hand).
const SIZES: [(u16, &str, [f64; 3]); 13] = [
    (15, "1/2", [21.3, 21.3, 21.34]),
    (20, "3/4", [26.9, 26.9, 26.67]),
    (25, "1", [33.7, 33.7, 33.4]),
    (32, "1 1/4", [42.4, 42.4, 42.16]),
    (40, "1 1/2", [48.3, 48.3, 48.26]),
    (50, "2", [60.3, 60.3, 60.33]),
    (65, "2 1/2", [76.1, 76.1, 73.03]),
    (80, "3", [88.9, 88.9, 88.9]),
    (90, "3 1/2", [0.0, 101.6, 101.6]),
    (100, "4", [114.3, 114.3, 114.3]),
    (125, "5", [139.7, 139.7, 141.3]),
    (150, "6", [165.1, 168.3, 168.28]),
    (200, "8", [0.0, 219.1, 219.08]),
];

/// The standards, as a name may be followed by one.
const STANDARDS: [&str; 3] = ["EN 10255", "ISO 4200", "ASME B36.10M"];

/// Diameters of one name that differ by no more fit the same clamp.
const SAME: f64 = 1.0;

/// The outside diameter that a name stands for, in millimetres; none for a text that starts like no name.
pub(super) fn read(text: &str) -> Option<Result<f64, Fault>> {
    let words = text.trim();
    let (system, rest) = ["DN", "NPS"].into_iter().find_map(|system| Some((system, words.strip_prefix(system)?)))?;
    let by = STANDARDS.iter().position(|standard| rest.trim_end().ends_with(standard));
    let number = by.map_or(rest, |by| rest.trim_end().trim_end_matches(STANDARDS[by])).trim().replace('-', " ");
    let fault = |reason: String, help: String| {
        Some(Err(Fault { span: 0..text.len(), reason, help, unit: None, out_of_range: false }))
    };
    let found =
        SIZES.iter().find(|(dn, nps, _)| if system == "DN" { number == dn.to_string() } else { number == *nps });
    let Some((dn, nps, across)) = found else {
        let known = SIZES.map(|(dn, nps, _)| if system == "DN" { dn.to_string() } else { nps.to_owned() }).join(", ");
        return fault(
            format!("there is no tube size `{words}`"),
            format!("sizes of {system}: {known}; a standard may follow: {}; or measure it", STANDARDS.join(", ")),
        );
    };
    // The name by inches is that of ASME.
    let by = by.or((system == "NPS").then_some(2));
    if let Some(by) = by {
        return match across[by] {
            0.0 => fault(format!("{} has no size `{system} {number}`", STANDARDS[by]), "measure the tube".into()),
            across => Some(Ok(across)),
        };
    }
    let each = || STANDARDS.iter().zip(across).filter(|(_, across)| **across > 0.0);
    let (least, most) = each().fold((f64::MAX, 0.0_f64), |(least, most), (_, d)| (least.min(*d), most.max(*d)));
    if most - least > SAME {
        let sizes: Vec<String> = each().map(|(standard, across)| format!("{across} mm by {standard}")).collect();
        return fault(
            format!("`{words}` is the name of more than one tube: {}", sizes.join(", ")),
            format!("say by which standard: `DN {dn} EN 10255`, `DN {dn} ISO 4200` or `NPS {nps}`; or measure it"),
        );
    }
    Some(Ok(each().next().map_or(most, |(_, across)| *across)))
}

/// Whether words are the name of a size rather than a measure.
pub(super) fn is_name(words: &str) -> bool {
    words.trim_start().starts_with(['D', 'N'])
}

/// What an editor takes for a name.
pub(super) const PATTERN: &str = r"(DN|NPS)\s*[0-9]+([ -]?[0-9]*/?[0-9]+)?(\s+(EN 10255|ISO 4200|ASME B36\.10M))?";

#[cfg(test)]
mod tests {
    use super::read;

    fn value(text: &str) -> Option<f64> {
        read(text)?.ok()
    }

    fn refused(text: &str) -> String {
        let fault = read(text).expect("a name").expect_err("refused");
        format!("{}; {}", fault.reason, fault.help)
    }

    #[test]
    fn a_name_stands_for_the_diameter_of_its_standard() {
        for (name, across) in [
            ("DN 50", 60.3),
            ("DN50", 60.3),
            ("DN 65 EN 10255", 76.1),
            ("DN 65 ASME B36.10M", 73.03),
            ("DN 150 ISO 4200", 168.3),
            ("NPS 2 1/2", 73.03),
            ("NPS 2-1/2", 73.03),
            ("NPS 1/2", 21.34),
            ("NPS 6", 168.28),
        ] {
            assert_eq!(value(name), Some(across), "{name}");
        }
        assert!(read("60.3 mm").is_none() && read("2 in").is_none());
    }

    #[test]
    fn a_name_of_more_than_one_tube_is_refused_with_all_of_them() {
        for name in ["DN 65", "DN 125", "DN 150"] {
            assert!(refused(name).contains("more than one tube"), "{name}");
        }
        assert!(refused("DN 65").contains("76.1 mm by EN 10255, 76.1 mm by ISO 4200, 73.03 mm by ASME B36.10M"));
        assert!(refused("DN 65").contains("`NPS 2 1/2`"));
        assert!(refused("DN 55").contains("no tube size"));
        assert!(refused("DN 90 EN 10255").contains("has no size"));
        assert!(refused("NPS").contains("no tube size"));
    }
}
