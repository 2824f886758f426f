//! Lubricants, gaskets, and bolting materials beyond the program's tables.

use serde::Deserialize;

use super::GasketKind;
use crate::units::{Length, Pressure, Ratio, Stress, Temperature};
use crate::yaml::{At, Text};

/// A lubricant with its friction.
#[derive(Debug, Deserialize)]
pub struct Lubricant {
    /// Coefficient of friction in the thread.
    pub thread_friction: Option<At<Ratio>>,
    /// Coefficient of friction under the turned nut.
    pub bearing_friction: Option<At<Ratio>>,
    /// Nut factor K, instead of the two coefficients.
    pub nut_factor: Option<At<Ratio>>,
    /// ± limit of the load at constant torque.
    pub scatter: Option<At<Ratio>>,
    /// Highest temperature.
    pub highest_temperature: Option<At<Temperature>>,
    /// Substances that it does not contain.
    pub free_of: Option<At<Vec<At<Text<24>>>>>,
    /// Whether it is safe with oxygen.
    pub oxygen_safe: Option<At<bool>>,
    /// Where the friction comes from: test, data sheet or standard.
    pub source: Option<At<Text<90>>>,
}

/// A gasket.
#[derive(Debug, Deserialize)]
pub struct Gasket {
    /// Its kind.
    pub kind: At<GasketKind>,
    /// Inner diameter of the sealing face.
    pub inner: Option<At<Length>>,
    /// Outer diameter of the sealing face.
    pub outer: Option<At<Length>>,
    /// Thickness before it is compressed.
    pub thickness: Option<At<Length>>,
    /// Material or filler.
    pub material: Option<At<Text<40>>>,
    /// Highest stress on it.
    pub highest_stress: Option<At<Stress>>,
    /// Highest temperature.
    pub highest_temperature: Option<At<Temperature>>,
    /// Highest pressure.
    pub highest_pressure: Option<At<Pressure>>,
    /// Whether it has been used before.
    pub used: Option<At<bool>>,
    /// The owner's approval of a used gasket.
    pub approval: Option<At<Text<40>>>,
}

/// Facts of a bolting material.
#[derive(Debug, Deserialize)]
pub struct Material {
    /// Least yield strength (or 0.2 % proof stress).
    pub yield_strength: Option<At<Stress>>,
    /// Least tensile strength.
    pub tensile_strength: Option<At<Stress>>,
    /// Modulus of elasticity.
    pub modulus: Option<At<Stress>>,
    /// Highest temperature of use.
    pub highest_temperature: Option<At<Temperature>>,
    /// Lowest temperature of use without an impact test.
    pub lowest_temperature: Option<At<Temperature>>,
    /// Nut grades that may go with it.
    pub nuts: Option<At<Vec<At<Text<24>>>>>,
    /// Where these facts come from.
    pub source: Option<At<Text<90>>>,
}
