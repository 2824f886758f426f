//! What the pump is set to: a pressure rounded to what the gauge can be read to, pass by pass.

use crate::calc::setting::{no_points, to_step};
use crate::calc::{Basis, Chosen, Id, Key, Lack, Ledger, ids};
use crate::joint::{Mechanics, Tool, Who};
use crate::standards::mechanics;
use crate::units::{Pressure, Quantity, Torque};

use super::calibration::{enter_segment, pressure_at, segment, segment_keys, torque_at, within};

/// Enters the pressure of the final value, and what each further wrench gives at it.
pub(super) fn enter(ledger: &mut Ledger, _: &Mechanics, chosen: &Chosen) {
    let ids = PressureIds {
        number: 0,
        torque: ids::TORQUE.key(),
        exact: ids::PRESSURE,
        set: ids::SET_PRESSURE,
        set_torque: ids::SET_TORQUE,
    };
    set_pressure(ledger, chosen, &ids);
    for (index, tool) in chosen.turning.iter().enumerate().skip(1) {
        let number = u16::try_from(index + 1).unwrap_or(u16::MAX);
        let torque = ledger
            .get(ids::SET_PRESSURE)
            .and_then(|pressure| torque_at(&tool.points, pressure));
        let value = torque.ok_or(no_points());
        ledger.enter(
            ids::TOOL_TORQUE.at(number),
            value,
            Basis::Rounded(ids::SET_PRESSURE.key()),
        );
    }
}

/// Enters the pressure of a pass below the final value.
pub(super) fn enter_pass(ledger: &mut Ledger, _: &Mechanics, chosen: &Chosen, number: u16) {
    let ids = PressureIds {
        number,
        torque: ids::PASS_TORQUE_EXACT.at(number).key(),
        exact: ids::PASS_PRESSURE_EXACT.at(number),
        set: ids::PASS_PRESSURE.at(number),
        set_torque: ids::PASS_TORQUE.at(number),
    };
    set_pressure(ledger, chosen, &ids);
}

/// The ids of one pressure setting.
struct PressureIds {
    number: u16,
    torque: Key,
    exact: Id<Pressure>,
    set: Id<Pressure>,
    set_torque: Id<Torque>,
}

/// Pressure for a torque by straight lines between the calibration points of the first wrench,
/// rounded to what the gauge can be read to, and the torque at that pressure.
fn set_pressure(ledger: &mut Ledger, chosen: &Chosen, ids: &PressureIds) {
    let tool = chosen.turning.first();
    let points = tool.map(|tool| tool.points.as_slice()).unwrap_or_default();
    let torque = ledger.entry(ids.torque).and_then(|entry| entry.value.ok());
    let segment = torque.and_then(|torque| segment(points, |point| point.1.si(), torque));
    let place = tool.and_then(|tool| tool.points_place);
    enter_segment(ledger, ids.number, segment, place);
    let keys = segment_keys(ids.number);
    ledger.apply(
        ids.exact,
        &mechanics::PRESSURE_BETWEEN,
        &[("T", ids.torque), keys[0], keys[1], keys[2], keys[3]],
    );
    let step = chosen.pressure_step();
    let set = match (ledger.get(ids.exact), ledger.lack(ids.exact)) {
        (Some(exact), _) => {
            let rounded = to_step(exact.si(), step.si());
            Ok(Pressure::from_si(within(points, rounded, step.si())))
        }
        (None, lack) => Err(lack.unwrap_or(no_points())),
    };
    ledger.enter(ids.set, set, Basis::Rounded(ids.exact.key()));
    ledger.apply(
        ids.set_torque,
        &mechanics::TORQUE_BETWEEN,
        &[("p_t", ids.set.key()), keys[0], keys[1], keys[2], keys[3]],
    );
}

/// Enters the pressure that is never exceeded while loosening: by the calibration points, at most the weakest rating
/// on the pump.
pub(super) fn enter_never_exceed(ledger: &mut Ledger, chosen: &Chosen) {
    let tool: Option<&Tool> = chosen.loosening.first().map(AsRef::as_ref);
    let points = tool.map(|tool| tool.points.as_slice()).unwrap_or_default();
    let torque = ledger.get(ids::NEVER_EXCEED);
    let by_torque = torque.and_then(|torque| {
        let top = points.last().map(|point| point.1)?;
        pressure_at(points, if torque > top { top } else { torque })
    });
    let rating = chosen
        .weakest_with(&chosen.loosening)
        .map(|(_, rating)| rating);
    let step = Pressure::bar(5.0).si();
    let value = match (by_torque, rating) {
        (Some(pressure), Some(rating)) => Some(pressure.si().min(rating.si())),
        (Some(pressure), None) => Some(pressure.si()),
        _ => None,
    };
    let value = value
        .map(|pressure| Pressure::from_si((pressure / step * (1.0 + 1e-12)).floor() * step))
        .ok_or(Lack {
            key: "tools.*.calibration.points",
            who: Who::ToolStore,
        });
    ledger.enter(
        ids::NEVER_EXCEED_PRESSURE,
        value,
        Basis::Rounded(ids::NEVER_EXCEED.key()),
    );
}
