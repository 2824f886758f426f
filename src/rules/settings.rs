//! Settings against what the tools can be set to and what their squares bear.

use crate::calc::{PassKind, ids};
use crate::job::ToolKind;
use crate::joint::Tool;
use crate::report::{Finding, Place, Severity};
use crate::units::{Quantity, Torque};

use crate::methods::jackbolt::release_rules;
use crate::methods::rule::{Check, JointSubject, Rule, percent_si};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "T01",
        severity: Severity::Error,
        check: Check::Joint(below_range),
    },
    Rule {
        id: "T02",
        severity: Severity::Error,
        check: Check::Joint(above_range),
    },
    Rule {
        id: "T03",
        severity: Severity::Accept,
        check: Check::Joint(near_top),
    },
    Rule {
        id: "T13",
        severity: Severity::Error,
        check: Check::Joint(square_too_weak),
    },
];

/// The lowest and highest torque of a tool.
fn bounds(tool: &Tool) -> Option<(Torque, Torque)> {
    if tool.kind == ToolKind::HydraulicTorqueWrench {
        let (low, high) = (tool.points.first()?, tool.points.last()?);
        return Some((low.1, high.1));
    }
    Some((tool.lowest.value()?, tool.highest.value()?))
}

/// Where the bounds of a tool stand, else the tool.
fn bounds_place(tool: &Tool) -> Place {
    tool.points_place
        .or(tool.highest.place())
        .unwrap_or(tool.place)
}

/// What is read off the tool for a torque at the nut: less with an adapter in line with the handle.
fn on_the_scale(subject: &JointSubject<'_>, torque: Torque) -> Torque {
    let readings = subject.computed.readings(subject.joint);
    readings.tightening().shows(torque)
}

/// What the first tool is set to at the end. A torque outside the calibration points of a hydraulic
/// wrench has no setting; then it is the torque itself that is outside.
fn final_setting(subject: &JointSubject<'_>) -> Option<Torque> {
    let ledger = &subject.computed.ledger;
    let torque = ledger
        .get(ids::SET_TORQUE)
        .or_else(|| ledger.get(ids::TORQUE))?;
    Some(on_the_scale(subject, torque))
}

/// One setting against the bounds of one tool.
struct Asked<'a> {
    tool: &'a Tool,
    /// `P1`; empty for the final value.
    pass: String,
    setting: String,
    lowest: String,
    highest: String,
    below: bool,
    above: bool,
}

impl Asked<'_> {
    fn below(self, subject: &JointSubject<'_>) -> Finding {
        let severity = if self.pass.is_empty() {
            Severity::Error
        } else {
            Severity::Accept
        };
        subject
            .finding("T01", severity, Some(bounds_place(self.tool)))
            .with("torque", self.setting)
            .with("lowest", self.lowest)
            .with("highest", self.highest)
            .with("tool", self.tool.name.clone())
            .with("pass", self.pass)
    }

    fn above(self, subject: &JointSubject<'_>) -> Finding {
        subject
            .finding("T02", Severity::Error, Some(bounds_place(self.tool)))
            .with("torque", self.setting)
            .with("highest", self.highest)
            .with("tool", self.tool.name.clone())
    }
}

fn asked<'a, Q: Quantity + PartialOrd>(
    subject: &JointSubject<'_>,
    tool: &'a Tool,
    pass: String,
    setting: Q,
    (low, high): (Q, Q),
) -> Asked<'a> {
    let slack = 1e-9 * high.si();
    Asked {
        tool,
        pass,
        setting: subject.print(setting),
        lowest: subject.print(low),
        highest: subject.print(high),
        below: setting.si() < low.si() - slack,
        above: setting.si() > high.si() + slack,
    }
}

/// The final value on every tool: a torque on the first, on the others of a pump its pressure.
fn final_values<'a>(subject: &JointSubject<'a>) -> Vec<Asked<'a>> {
    let computed = subject.computed;
    let pressure = computed.ledger.get(ids::SET_PRESSURE);
    let tools = computed.chosen.turning.iter().enumerate();
    tools
        .filter_map(|(index, tool)| match (index, pressure) {
            (1.., Some(pressure)) => {
                let ends = (tool.points.first()?.0, tool.points.last()?.0);
                Some(asked(subject, tool, String::new(), pressure, ends))
            }
            _ => {
                let setting = final_setting(subject)?;
                Some(asked(subject, tool, String::new(), setting, bounds(tool)?))
            }
        })
        .collect()
}

/// The passes before the last on the first tool.
fn earlier_passes<'a>(subject: &JointSubject<'a>) -> Vec<Asked<'a>> {
    let computed = subject.computed;
    let Some(tool) = computed.chosen.turning.first() else {
        return Vec::new();
    };
    let stepped = computed
        .passes
        .iter()
        .filter(|pass| pass.kind == PassKind::Stepped);
    stepped
        .filter_map(|pass| {
            let ledger = &computed.ledger;
            let share = ledger.get(ids::PASS_SHARE.at(pass.number))?;
            let set = ledger.get(ids::PASS_TORQUE.at(pass.number));
            let torque = set.or_else(|| ledger.get(ids::PASS_TORQUE_EXACT.at(pass.number)))?;
            let name = format!("P{}", pass.number);
            (share.si() < 1.0).then_some((name, on_the_scale(subject, torque)))
        })
        .filter_map(|(name, torque)| Some(asked(subject, tool, name, torque, bounds(tool)?)))
        .collect()
}

/// A setting below the calibrated range: an error for the final value, to be accepted for earlier
/// passes, which are then done by hand or with another tool.
fn below_range(subject: &JointSubject<'_>) -> Vec<Finding> {
    let at_end = final_values(subject);
    let asked = if at_end.iter().any(|asked| asked.below) {
        at_end
    } else {
        earlier_passes(subject)
    };
    let below = asked.into_iter().filter(|asked| asked.below);
    below.map(|asked| asked.below(subject)).collect()
}

fn above_range(subject: &JointSubject<'_>) -> Vec<Finding> {
    let above = final_values(subject)
        .into_iter()
        .filter(|asked| asked.above);
    above.map(|asked| asked.above(subject)).collect()
}

fn near_top(subject: &JointSubject<'_>) -> Vec<Finding> {
    let limit = subject.limit("T03");
    let Some(torque) = final_setting(subject) else {
        return Vec::new();
    };
    let near = subject.computed.chosen.turning.iter().filter_map(|tool| {
        let (_, high) = bounds(tool)?;
        let share = torque.si() / high.si();
        (share > limit * (1.0 + 1e-9) && share <= 1.0 + 1e-9).then_some((tool, share))
    });
    near.map(|(tool, share)| {
        subject
            .finding("T03", Severity::Accept, Some(bounds_place(tool)))
            .with("share", percent_si(share))
            .with("tool", tool.name.clone())
            .with("needed", "")
            .with("highest", "")
    })
    .chain(release_rules::short_of_break_out(subject))
    .collect()
}

/// The square carries the setting; the socket on it the torque at the nut.
fn square_too_weak(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let at_nut = ledger
        .get(ids::SET_TORQUE)
        .or_else(|| ledger.get(ids::TORQUE));
    let Some(at_nut) = at_nut else {
        return Vec::new();
    };
    let chosen = &subject.computed.chosen;
    let at_square = on_the_scale(subject, at_nut);
    let squares = chosen
        .turning
        .iter()
        .map(|tool| (tool, &tool.square_rating, at_square));
    let socket = chosen
        .socket
        .iter()
        .map(|tool| (tool, &tool.torque_rating, at_nut));
    let weak = squares.chain(socket).filter_map(|(tool, rating, torque)| {
        let most = rating.value()?;
        (torque.si() > most.si() * (1.0 + 1e-9)).then_some((tool, rating.place(), torque, most))
    });
    weak.map(|(tool, place, torque, rating)| {
        subject
            .finding("T13", Severity::Error, place)
            .with("tool", tool.name.clone())
            .with("torque", subject.print(torque))
            .with("rating", subject.print(rating))
    })
    .collect()
}
