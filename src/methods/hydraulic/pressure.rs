//! What the pump is set to: a pressure rounded to what the gauge can be read to, pass by pass.

use crate::calc::labour::Task;
use crate::calc::setting::reading;
use crate::calc::{Basis, Chosen, Id, Ledger, ids};
use crate::joint::{CalibrationPoint, Dial, Mechanics, NO_POINTS, points_about, torque_at};
use crate::standards::mechanics;
use crate::units::{Pressure, Torque};

use super::calibration::{enter_segment, segment_keys};

/// Enters the pressure of the final value, and what each further wrench gives at it.
pub(super) fn enter(ledger: &mut Ledger, joint: &Mechanics, chosen: &Chosen) {
    let ids = PressureIds {
        number: 0,
        torque: ids::TORQUE,
        exact: ids::PRESSURE,
        set: ids::SET_PRESSURE,
        set_torque: ids::SET_TORQUE,
    };
    set_pressure(ledger, chosen.dial(joint, Task::Tighten), &ids);
    for (index, tool) in chosen.turning.iter().enumerate().skip(1) {
        let number = u16::try_from(index + 1).unwrap_or(u16::MAX);
        let torque = ledger
            .get(ids::SET_PRESSURE)
            .and_then(|pressure| torque_at(&tool.points, pressure));
        let value = torque.ok_or(NO_POINTS);
        ledger.enter(
            ids::TOOL_TORQUE.at(number),
            value,
            Basis::Rounded(ids::SET_PRESSURE.key()),
        );
    }
}

/// Enters the pressure of a pass below the final value.
pub(super) fn enter_pass(ledger: &mut Ledger, dial: Dial<'_>, number: u16) {
    let ids = PressureIds {
        number,
        torque: ids::PASS_TORQUE_EXACT.at(number),
        exact: ids::PASS_PRESSURE_EXACT.at(number),
        set: ids::PASS_PRESSURE.at(number),
        set_torque: ids::PASS_TORQUE.at(number),
    };
    set_pressure(ledger, dial, &ids);
}

/// The ids of one pressure setting.
struct PressureIds {
    number: u16,
    torque: Id<Torque>,
    exact: Id<Pressure>,
    set: Id<Pressure>,
    set_torque: Id<Torque>,
}

/// Pressure for a torque by straight lines between the calibration points of the first wrench,
/// rounded to what the gauge can be read to, and the torque at that pressure.
fn set_pressure(ledger: &mut Ledger, dial: Dial<'_>, ids: &PressureIds) {
    let torque = ledger.get(ids.torque);
    let between = torque.and_then(|torque| points_about(dial.points(), torque));
    let place = dial.tool().and_then(|tool| tool.points_place);
    enter_segment(ledger, ids.number, between, place);
    let keys = segment_keys(ids.number);
    ledger.apply(
        ids.exact,
        &mechanics::PRESSURE_BETWEEN,
        &[("T", ids.torque.key()), keys[0], keys[1], keys[2], keys[3]],
    );
    let reading = reading(ledger, dial, ids.torque, ids.exact.key());
    let set = reading.as_ref().map_err(|lack| *lack);
    let pressure = set.and_then(|reading| reading.pressure().ok_or(NO_POINTS));
    ledger.enter(ids.set, pressure, Basis::Rounded(ids.exact.key()));
    // The gauge may round past a point; then the torque lies on the line behind it.
    let is_past = |pressure: Pressure, (low, high): (CalibrationPoint, CalibrationPoint)| {
        pressure < low.0 || high.0 < pressure
    };
    let ends = pressure.ok().zip(between);
    if ends.is_some_and(|(pressure, ends)| is_past(pressure, ends)) {
        let gives = reading.map(|reading| reading.gives());
        ledger.enter(ids.set_torque, gives, Basis::Rounded(ids.set.key()));
        return;
    }
    ledger.apply(
        ids.set_torque,
        &mechanics::TORQUE_BETWEEN,
        &[("p_t", ids.set.key()), keys[0], keys[1], keys[2], keys[3]],
    );
}

/// Enters the pressure that is never exceeded while loosening: by the calibration points, at most the weakest rating
/// on the pump.
pub(super) fn enter_never_exceed(ledger: &mut Ledger, dial: Dial<'_>) {
    let torque = ledger.get(ids::NEVER_EXCEED).ok_or(NO_POINTS);
    let reading = torque.and_then(|torque| dial.never(torque));
    let pressure = reading.and_then(|reading| reading.pressure().ok_or(NO_POINTS));
    ledger.enter(
        ids::NEVER_EXCEED_PRESSURE,
        pressure,
        Basis::Rounded(ids::NEVER_EXCEED.key()),
    );
}
