//! The calibration points in the ledger, between which a pressure was found.

use crate::calc::{Basis, Key, Ledger, ids};
use crate::joint::{CalibrationPoint, Level, NO_POINTS, Origin};
use crate::report::Place;

pub(super) fn enter_segment(
    ledger: &mut Ledger,
    number: u16,
    segment: Option<(CalibrationPoint, CalibrationPoint)>,
    place: Option<Place>,
) {
    let origin = match place {
        Some(place) => Origin::Job {
            place,
            level: Level::Shared,
        },
        None => Origin::Computed,
    };
    let basis = || Basis::Input(&origin);
    let low = segment.map(|(low, _)| low).ok_or(NO_POINTS);
    let high = segment.map(|(_, high)| high).ok_or(NO_POINTS);
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
