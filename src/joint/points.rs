//! Between the calibration points of one serial number, never beyond them.

use super::{Lack, Who};
use crate::formula::Symbol;
use crate::standards::{mechanics, symbols};
use crate::units::{Pressure, Quantity, Torque};

/// A pressure of the pump and the torque that one wrench gives at it.
pub type CalibrationPoint = (Pressure, Torque);

/// What a torque lacks that lies outside the calibration points.
pub(crate) const NO_POINTS: Lack = Lack {
    key: "tools.*.calibration.points",
    who: Who::ToolStore,
};
/// A torque that was worked out from the pressure of an end may miss that end by its last digit.
const SLACK: f64 = 1e-12;

/// The neighbouring points between which a torque lies; none beyond the ends.
pub(crate) fn points_about(
    points: &[CalibrationPoint],
    torque: Torque,
) -> Option<(CalibrationPoint, CalibrationPoint)> {
    segment(points, |point| point.1.si(), torque.si())
}

/// The torque at a pressure within calibration points.
pub(crate) fn torque_at(points: &[CalibrationPoint], pressure: Pressure) -> Option<Torque> {
    let (low, high) = segment(points, |point| point.0.si(), pressure.si())?;
    let asked = (symbols::PUMP_PRESSURE, pressure.si());
    let torque = mechanics::TORQUE_BETWEEN.value_with(&between(low, high, asked));
    Some(Torque::from_si(torque))
}

pub(super) fn pressure_at(points: &[CalibrationPoint], torque: Torque) -> Option<Pressure> {
    let (low, high) = points_about(points, torque)?;
    let asked = (symbols::TORQUE, torque.si());
    let pressure = mechanics::PRESSURE_BETWEEN.value_with(&between(low, high, asked));
    Some(Pressure::from_si(pressure))
}

fn segment(
    points: &[CalibrationPoint],
    column: impl Fn(&CalibrationPoint) -> f64,
    value: f64,
) -> Option<(CalibrationPoint, CalibrationPoint)> {
    let slack = value.abs() * SLACK;
    points.windows(2).find_map(|pair| match pair {
        [low, high] if column(low) - slack <= value && value <= column(high) + slack => {
            Some((*low, *high))
        }
        _ => None,
    })
}

fn between(
    low: CalibrationPoint,
    high: CalibrationPoint,
    asked: (Symbol, f64),
) -> [(Symbol, f64); 5] {
    [
        asked,
        (symbols::PRESSURE_BELOW, low.0.si()),
        (symbols::TORQUE_BELOW, low.1.si()),
        (symbols::PRESSURE_ABOVE, high.0.si()),
        (symbols::TORQUE_ABOVE, high.1.si()),
    ]
}
