//! One tool of the store.

use super::{CalibrationPoint, Driver, Fact};
use crate::job::ToolKind;
use crate::report::Place;
use crate::units::{Length, Mass, Pressure, Torque, Unit};

/// One tool, resolved.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// Name painted on it.
    pub name: String,
    /// Where it is described.
    pub place: Place,
    /// Kind.
    pub kind: ToolKind,
    /// Serial number.
    pub serial: Fact<String>,
    /// Lowest usable torque: the lowest marked value, else a fifth of the top.
    pub lowest: Fact<Torque>,
    /// Highest torque.
    pub highest: Fact<Torque>,
    /// Unit of the scale.
    pub scale: &'static Unit,
    /// Step in torque.
    pub torque_step: Option<Torque>,
    /// Step in pressure.
    pub pressure_step: Option<Pressure>,
    /// Male square.
    pub square: Fact<Length>,
    /// Highest torque through the square.
    pub square_rating: Fact<Torque>,
    /// Mass.
    pub mass: Fact<Mass>,
    /// From the centre of the square to the middle of the grip.
    pub length: Fact<Length>,
    /// Highest pressure.
    pub rating: Fact<Pressure>,
    /// Top of the gauge.
    pub gauge_top: Fact<Pressure>,
    /// Across flats.
    pub across_flats: Fact<Length>,
    /// Outer diameter.
    pub outer_diameter: Fact<Length>,
    /// Highest torque of a socket.
    pub torque_rating: Fact<Torque>,
    /// Radius that it needs.
    pub radius: Fact<Length>,
    /// Certificate.
    pub certificate: Fact<String>,
    /// Last day of validity.
    pub due: Fact<crate::units::Date>,
    /// Calibration points, rising.
    pub points: Vec<CalibrationPoint>,
    /// Where the points stand.
    pub points_place: Option<Place>,
    /// Adapter: wrench length and extension.
    pub adapter: Option<(Length, Length)>,
    /// Its own checks.
    pub checks: Vec<String>,
    /// Its spare.
    pub spare: Option<String>,
    /// What only a multi-spindle driver has.
    pub driver: Option<Driver>,
}

impl Tool {
    /// The pressure that it bears: its rating, or the top of its gauge if that is lower.
    pub fn bears(&self) -> &Fact<Pressure> {
        match (self.rating.value(), self.gauge_top.value()) {
            (Some(rating), Some(top)) if top < rating => &self.gauge_top,
            (None, Some(_)) => &self.gauge_top,
            _ => &self.rating,
        }
    }
}
