//! Every unit the program understands, with its exact size.

use super::Dimension;

const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const POUND: f64 = 0.453_592_37;
/// Pound-force: the pound under standard gravity, 9.80665 m/s².
const LBF: f64 = POUND * 9.806_65;
/// Pound-force per square inch.
pub(crate) const PSI: f64 = LBF / (INCH * INCH);
const DEGREE: f64 = std::f64::consts::PI / 180.0;

/// One unit: how it is printed, how it may be typed, how large it is.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// The one spelling that is printed.
    pub name: &'static str,
    /// What it measures.
    pub dimension: Dimension,
    /// Other spellings that are understood, in lower case and after folding
    /// (`·` to `.`, `²` to `2`, no spaces).
    pub(crate) spellings: &'static [&'static str],
    /// SI value of one unit.
    pub factor: f64,
    /// SI value of zero units; only temperatures have one.
    pub offset: f64,
}

const fn unit(
    dimension: Dimension,
    name: &'static str,
    spellings: &'static [&'static str],
    factor: f64,
) -> Unit {
    Unit {
        name,
        dimension,
        spellings,
        factor,
        offset: 0.0,
    }
}

const fn warm(
    name: &'static str,
    spellings: &'static [&'static str],
    factor: f64,
    offset: f64,
) -> Unit {
    Unit {
        name,
        dimension: Dimension::Temperature,
        spellings,
        factor,
        offset,
    }
}

use Dimension as D;

/// All units, the leading metric one of each dimension first.
pub(crate) static UNITS: &[Unit] = &[
    unit(D::Ratio, "%", &["percent"], 0.01),
    unit(D::Length, "mm", &[], 1e-3),
    unit(D::Length, "cm", &[], 1e-2),
    unit(D::Length, "m", &[], 1.0),
    unit(D::Length, "µm", &["um"], 1e-6),
    unit(D::Length, "in", &["\"", "inch", "inches"], INCH),
    unit(D::Length, "ft", &["feet"], FOOT),
    unit(D::Area, "mm²", &["mm2"], 1e-6),
    unit(D::Area, "cm²", &["cm2"], 1e-4),
    unit(D::Area, "m²", &["m2"], 1.0),
    unit(D::Area, "in²", &["in2", "sq.in"], INCH * INCH),
    unit(D::Volume, "m³", &["m3"], 1.0),
    unit(D::Volume, "l", &["litre", "liter"], 1e-3),
    unit(D::Volume, "ft³", &["ft3"], FOOT * FOOT * FOOT),
    unit(D::SectionModulus, "mm³", &["mm3"], 1e-9),
    unit(D::SectionModulus, "in³", &["in3"], INCH * INCH * INCH),
    unit(D::Force, "kN", &[], 1e3),
    unit(D::Force, "N", &[], 1.0),
    unit(D::Force, "MN", &[], 1e6),
    unit(D::Force, "lbf", &["lb"], LBF),
    unit(D::Force, "kip", &["kips"], 1e3 * LBF),
    unit(D::Stress, "MPa", &["n/mm2"], 1e6),
    unit(D::Stress, "GPa", &[], 1e9),
    unit(D::Stress, "Pa", &[], 1.0),
    unit(D::Stress, "ksi", &[], 1e3 * PSI),
    unit(D::Stress, "psi", &[], PSI),
    unit(D::Pressure, "bar", &["barg", "bar.g"], 1e5),
    unit(D::Pressure, "mbar", &[], 1e2),
    unit(D::Pressure, "MPa", &[], 1e6),
    unit(D::Pressure, "kPa", &[], 1e3),
    unit(D::Pressure, "Pa", &[], 1.0),
    unit(D::Pressure, "psi", &["psig"], PSI),
    unit(D::Torque, "N·m", &["nm", "n.m", "n-m"], 1.0),
    unit(D::Torque, "kN·m", &["knm", "kn.m"], 1e3),
    unit(
        D::Torque,
        "ft·lb",
        &[
            "ft.lb", "ft-lb", "ft.lbf", "ft-lbf", "lbf.ft", "lb.ft", "lb-ft", "lbf-ft", "lbfft",
            "ftlb", "ftlbf", "lbft",
        ],
        FOOT * LBF,
    ),
    unit(
        D::Torque,
        "in·lb",
        &[
            "in.lb", "in-lb", "in.lbf", "in-lbf", "lbf.in", "lb.in", "lb-in", "lbf-in", "lbfin",
            "inlb", "inlbf", "lbin",
        ],
        INCH * LBF,
    ),
    unit(D::Energy, "J", &[], 1.0),
    unit(D::Energy, "kJ", &[], 1e3),
    unit(
        D::Energy,
        "ft·lb",
        &["ft.lb", "ft-lb", "ft.lbf", "ft-lbf"],
        FOOT * LBF,
    ),
    unit(D::Angle, "deg", &["°", "degree", "degrees"], DEGREE),
    unit(D::Angle, "rad", &[], 1.0),
    unit(D::Angle, "turn", &["turns"], 360.0 * DEGREE),
    warm("°C", &["degc", "c"], 1.0, 273.15),
    warm("°F", &["degf", "f"], 5.0 / 9.0, 459.67 * 5.0 / 9.0),
    warm("K", &[], 1.0, 0.0),
    unit(D::Mass, "kg", &[], 1.0),
    unit(D::Mass, "g", &[], 1e-3),
    unit(D::Mass, "t", &["tonne", "tonnes"], 1e3),
    unit(D::Mass, "lb", &["lbs"], POUND),
    unit(D::Duration, "h", &["hour", "hours"], 3600.0),
    unit(D::Duration, "min", &["minute", "minutes"], 60.0),
    unit(D::Duration, "s", &["second", "seconds"], 1.0),
    unit(D::Duration, "d", &["day", "days"], 86_400.0),
    unit(D::Compliance, "mm/kN", &[], 1e-6),
    unit(D::Compliance, "in/kip", &[], INCH / (1e3 * LBF)),
    unit(D::Compliance, "in/lbf", &[], INCH / LBF),
    unit(D::ForcePerPressure, "kN/bar", &[], 1e3 / 1e5),
    unit(D::ForcePerPressure, "lbf/psi", &[], LBF / PSI),
    unit(D::Noise, "dB(A)", &["db", "dba"], 1.0),
    unit(D::Acceleration, "m/s²", &["m/s2"], 1.0),
    unit(D::Flow, "l/min", &[], 1e-3 / 60.0),
    unit(D::Flow, "m³/min", &["m3/min"], 1.0 / 60.0),
    unit(D::Flow, "cfm", &["ft3/min"], FOOT * FOOT * FOOT / 60.0),
];

/// The units that measure `dimension`, the leading one first.
pub fn units_of(dimension: Dimension) -> impl Iterator<Item = &'static Unit> {
    UNITS.iter().filter(move |unit| unit.dimension == dimension)
}

/// The unit of `dimension` that is printed as `name`.
pub fn unit_named(dimension: Dimension, name: &str) -> Option<&'static Unit> {
    units_of(dimension).find(|unit| unit.name == name)
}

/// The unit of `dimension` that is meant by the typed text, in any spelling.
pub fn unit_spelled(dimension: Dimension, typed: &str) -> Option<&'static Unit> {
    units_of(dimension).find(|unit| is_spelling(unit, typed))
}

/// Folds a typed unit to the form in which spellings are compared.
pub(crate) fn fold(text: &str) -> String {
    let mut folded = String::new();
    for sign in text.trim().chars() {
        match sign {
            '\u{b5}' => folded.push('\u{3bc}'),
            '·' | '⋅' | '*' | '×' => folded.push('.'),
            '²' => folded.push('2'),
            '³' => folded.push('3'),
            '″' | '”' | '“' => folded.push('"'),
            space if space.is_whitespace() => {
                if !folded.ends_with('.') {
                    folded.push('.');
                }
            }
            other => folded.push(other),
        }
    }
    folded
}

/// Whether `unit` is meant by the typed text. Upper and lower case matter only between units that
/// differ by nothing else (`MPa` is a stress, `mm` a length; `MN` is not a spelling of `mN`).
pub(crate) fn is_spelling(unit: &Unit, typed: &str) -> bool {
    if typed == unit.name {
        return true;
    }
    let folded = fold(typed);
    let name = fold(unit.name);
    folded == name
        || unit
            .spellings
            .iter()
            .any(|spelling| folded == *spelling || folded.to_lowercase() == *spelling)
}
