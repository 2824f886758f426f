//! Tools as they lie in the store: one entry for each serial number.

use super::ranges::{Open, Positive};
use super::table::keys;
use super::{Driver, ToolKind, TorqueUnit};
use crate::units::{Date, Length, Mass, Pressure, Ratio, Torque};
use crate::yaml::{At, Text};

keys! {
    /// A tool.
    Tool at "tools.*." asks ToolStore {
        /// Its kind.
        kind [required]: ToolKind;
        /// Serial number.
        serial: Text<24>;
        /// Lowest and highest torque of the scale.
        range: Vec<At<Torque>>;
        /// Lowest marked value, where it is not the bottom of the range.
        lowest_marked: Torque, range = Positive;
        /// The unit on the tool itself.
        scale: TorqueUnit;
        /// The step to which it can be set: a torque or a pressure.
        step: Text<16>;
        /// Male square.
        square: Length, range = Positive;
        /// Highest torque through that square, from its maker's papers.
        square_rating: Torque, range = Positive;
        /// Mass.
        mass: Mass, range = Positive;
        /// From the centre of the square to the middle of the grip.
        length: Length, range = Positive;
        /// Highest pressure it is rated for.
        rating: Pressure, range = Positive;
        /// Top of the gauge.
        gauge_top: Pressure, range = Positive;
        /// Class of the gauge, in per cent of its top.
        gauge_class: Ratio, range = Open(0.0, 1.0);
        /// Across flats of a socket or spanner.
        across_flats: Length, range = Positive;
        /// Outer diameter of a socket.
        outer_diameter: Length, range = Positive;
        /// Highest torque of a socket.
        torque_rating: Torque, range = Positive;
        /// Free radius that the tool needs around the nut.
        radius: Length, range = Positive;
        /// Calibration.
        calibration: Calibration;
        /// An open-end adapter in line with the handle.
        adapter: Adapter;
        /// The tool's own checks before use, one line each.
        checks: Vec<At<Text<46>>>;
        /// A second tool that can take its place.
        spare: Text<32>;
        /// The multi-spindle driver's own data.
        driver: Driver;
    }

    /// A calibration.
    Calibration at "tools.*.calibration." asks ToolStore {
        /// Certificate number.
        certificate: Text<24>;
        /// Last day of validity.
        due: Date;
        /// Points of pressure and torque of this serial, rising.
        points: Vec<At<CalibrationPoint>>, range = Positive;
    }
}

/// Pressure and the torque that it gives.
pub type CalibrationPoint = (At<Pressure>, At<Torque>);

keys! {
    /// An open-end adapter that lengthens a torque wrench in line with its handle.
    Adapter at "tools.*.adapter." asks ToolStore {
        /// From the centre of the wrench's square to the middle of the grip.
        wrench_length [required]: Length, range = Positive;
        /// From the square to the centre of the nut.
        extension [required]: Length, range = Positive;
    }
}
