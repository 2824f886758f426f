//! Tools as they lie in the store: one entry for each serial number.

use serde::Deserialize;

use super::{Driver, ToolKind, TorqueUnit};
use crate::units::{Date, Length, Mass, Pressure, Ratio, Torque};
use crate::yaml::{At, Text};

/// A tool.
#[derive(Debug, Deserialize)]
pub struct Tool {
    /// Its kind.
    pub kind: At<ToolKind>,
    /// Serial number.
    pub serial: Option<At<Text<24>>>,
    /// Lowest and highest torque of the scale.
    pub range: Option<At<Vec<At<Torque>>>>,
    /// Lowest marked value, where it is not the bottom of the range.
    pub lowest_marked: Option<At<Torque>>,
    /// The unit on the tool itself.
    pub scale: Option<At<TorqueUnit>>,
    /// The step to which it can be set: a torque or a pressure.
    pub step: Option<At<Text<16>>>,
    /// Male square.
    pub square: Option<At<Length>>,
    /// Highest torque through that square, from its maker's papers.
    pub square_rating: Option<At<Torque>>,
    /// Mass.
    pub mass: Option<At<Mass>>,
    /// From the centre of the square to the middle of the grip.
    pub length: Option<At<Length>>,
    /// Highest pressure it is rated for.
    pub rating: Option<At<Pressure>>,
    /// Top of the gauge.
    pub gauge_top: Option<At<Pressure>>,
    /// Class of the gauge, in per cent of its top.
    pub gauge_class: Option<At<Ratio>>,
    /// Across flats of a socket or spanner.
    pub across_flats: Option<At<Length>>,
    /// Outer diameter of a socket.
    pub outer_diameter: Option<At<Length>>,
    /// Highest torque of a socket.
    pub torque_rating: Option<At<Torque>>,
    /// Free radius that the tool needs around the nut.
    pub radius: Option<At<Length>>,
    /// Calibration.
    pub calibration: Option<At<Calibration>>,
    /// An open-end adapter in line with the handle.
    pub adapter: Option<At<Adapter>>,
    /// The tool's own checks before use, one line each.
    pub checks: Option<At<Vec<At<Text<46>>>>>,
    /// A second tool that can take its place.
    pub spare: Option<At<Text<32>>>,
    /// The multi-spindle driver's own data.
    pub driver: Option<At<Driver>>,
}

/// A calibration.
#[derive(Debug, Deserialize)]
pub struct Calibration {
    /// Certificate number.
    pub certificate: Option<At<Text<24>>>,
    /// Last day of validity.
    pub due: Option<At<Date>>,
    /// Points of pressure and torque of this serial, rising.
    pub points: Option<At<Vec<At<CalibrationPoint>>>>,
}

/// Pressure and the torque that it gives.
pub type CalibrationPoint = (At<Pressure>, At<Torque>);

/// An open-end adapter that lengthens a torque wrench in line with its handle.
#[derive(Debug, Deserialize)]
pub struct Adapter {
    /// From the centre of the wrench's square to the middle of the grip.
    pub wrench_length: At<Length>,
    /// From the square to the centre of the nut.
    pub extension: At<Length>,
}
