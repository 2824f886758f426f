//! Lubricants, gaskets, and bolting materials beyond the program's tables.

use super::GasketKind;
use super::ranges::{FRICTION, Positive, SCATTER, TEMPERATURE};
use super::table::keys;
use crate::units::{Length, Pressure, Ratio, Stress, Temperature};
use crate::yaml::{At, Text};

keys! {
    /// A lubricant with its friction.
    Lubricant at "lubricants.*." asks Engineer {
        /// Coefficient of friction in the thread.
        thread_friction: Ratio, range = FRICTION;
        /// Coefficient of friction under the turned nut.
        bearing_friction: Ratio, range = FRICTION;
        /// Nut factor K, instead of the two coefficients.
        nut_factor: Ratio, range = FRICTION;
        /// ± limit of the load at constant torque.
        scatter: Ratio, range = SCATTER;
        /// Highest temperature.
        highest_temperature: Temperature, range = TEMPERATURE;
        /// Substances that it does not contain.
        free_of: Vec<At<Text<24>>>;
        /// Whether it is safe with oxygen.
        oxygen_safe: bool;
        /// Where the friction comes from: test, data sheet or standard.
        source: Text<90>;
    }

    /// A gasket.
    Gasket at "gaskets.*." asks Engineer {
        /// Its kind.
        kind [required]: GasketKind;
        /// Inner diameter of the sealing face.
        inner: Length, range = Positive;
        /// Outer diameter of the sealing face.
        outer: Length, range = Positive;
        /// Thickness before it is compressed.
        thickness: Length, range = Positive;
        /// Material or filler.
        material: Text<40>;
        /// Highest stress on it.
        highest_stress: Stress, range = Positive;
        /// Highest temperature.
        highest_temperature: Temperature, range = TEMPERATURE;
        /// Highest pressure.
        highest_pressure: Pressure, range = Positive;
        /// Whether it has been used before.
        used: bool;
        /// The owner's approval of a used gasket.
        approval: Text<40>;
    }

    /// Facts of a bolting material.
    Material at "materials.*." asks Engineer {
        /// Least yield strength (or 0.2 % proof stress).
        yield_strength: Stress, range = Positive;
        /// Least tensile strength.
        tensile_strength: Stress, range = Positive;
        /// Modulus of elasticity.
        modulus: Stress = Stress::mpa(205_000.0), range = Positive;
        /// Highest temperature of use.
        highest_temperature: Temperature, range = TEMPERATURE;
        /// Lowest temperature of use without an impact test.
        lowest_temperature: Temperature, range = TEMPERATURE;
        /// Nut grades that may go with it.
        nuts: Vec<At<Text<24>>>;
        /// Where these facts come from.
        source: Text<90>;
    }
}
