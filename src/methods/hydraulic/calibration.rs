//! Between the calibration points of one serial number, never beyond them.

use crate::calc::setting::no_points;
use crate::calc::{Basis, Key, Ledger, ids};
use crate::formula::Symbol;
use crate::joint::Origin;
use crate::standards::{mechanics, symbols};
use crate::units::{Pressure, Quantity, Torque};

/// Rounding must not leave the range of the calibration points.
pub(super) fn within(points: &[(Pressure, Torque)], pressure: f64, step: f64) -> f64 {
    let low = points.first().map_or(pressure, |point| point.0.si());
    let high = points.last().map_or(pressure, |point| point.0.si());
    if pressure < low {
        pressure + step
    } else if pressure > high {
        pressure - step
    } else {
        pressure
    }
}

pub(super) type Point = (Pressure, Torque);

/// The two neighbouring points between which `value` lies; never beyond the ends.
pub(super) fn segment(
    points: &[Point],
    column: impl Fn(&Point) -> f64,
    value: f64,
) -> Option<(Point, Point)> {
    points.windows(2).find_map(|pair| match pair {
        [low, high] if column(low) <= value && value <= column(high) => Some((*low, *high)),
        _ => None,
    })
}

/// The torque of a tool at a pressure inside its calibration points.
pub(super) fn torque_at(points: &[Point], pressure: Pressure) -> Option<Torque> {
    let (low, high) = segment(points, |point| point.0.si(), pressure.si())?;
    let torque = mechanics::TORQUE_BETWEEN.value_with(&between(
        low,
        high,
        (symbols::PUMP_PRESSURE, pressure.si()),
    ));
    Some(Torque::from_si(torque))
}

/// The pressure of a tool for a torque inside its calibration points.
pub(super) fn pressure_at(points: &[Point], torque: Torque) -> Option<Pressure> {
    let (low, high) = segment(points, |point| point.1.si(), torque.si())?;
    let pressure =
        mechanics::PRESSURE_BETWEEN.value_with(&between(low, high, (symbols::TORQUE, torque.si())));
    Some(Pressure::from_si(pressure))
}

fn between(low: Point, high: Point, asked: (Symbol, f64)) -> [(Symbol, f64); 5] {
    [
        asked,
        (symbols::PRESSURE_BELOW, low.0.si()),
        (symbols::TORQUE_BELOW, low.1.si()),
        (symbols::PRESSURE_ABOVE, high.0.si()),
        (symbols::TORQUE_ABOVE, high.1.si()),
    ]
}

pub(super) fn enter_segment(
    ledger: &mut Ledger,
    number: u16,
    segment: Option<(Point, Point)>,
    place: Option<crate::report::Place>,
) {
    let origin = match place {
        Some(place) => Origin::Job {
            place,
            level: crate::joint::Level::Shared,
        },
        None => Origin::Computed,
    };
    let basis = || Basis::Input(&origin);
    let low = segment.map(|(low, _)| low).ok_or(no_points());
    let high = segment.map(|(_, high)| high).ok_or(no_points());
    ledger.enter(
        ids::LOW_PRESSURE.at(number),
        low.map(|point| point.0),
        basis(),
    );
    ledger.enter(
        ids::LOW_TORQUE.at(number),
        low.map(|point| point.1),
        basis(),
    );
    ledger.enter(
        ids::HIGH_PRESSURE.at(number),
        high.map(|point| point.0),
        basis(),
    );
    ledger.enter(
        ids::HIGH_TORQUE.at(number),
        high.map(|point| point.1),
        basis(),
    );
}

pub(super) fn segment_keys(number: u16) -> [(&'static str, Key); 4] {
    [
        ("p1", ids::LOW_PRESSURE.at(number).key()),
        ("T1", ids::LOW_TORQUE.at(number).key()),
        ("p2", ids::HIGH_PRESSURE.at(number).key()),
        ("T2", ids::HIGH_TORQUE.at(number).key()),
    ]
}
