//! What a tool is set to. A torque at the nut becomes what is read on the dial, through an adapter in line or the
//! calibration points of a hydraulic wrench; it is rounded there, to the steps of that dial, and turned back into what
//! the nut gets. Only a [`Dial`] makes a reading, and nothing else is printed where a setting is meant.

use std::sync::Arc;

use super::points::{CalibrationPoint, NO_POINTS, pressure_at, torque_at};
use super::steps::{fine_step, usual_snug, usual_step};
use super::{Lack, Tool, Who};
use crate::standards::mechanics;
use crate::units::{Pressure, Printed, Quantity, Torque, Unit, Units};

/// What a torque lacks that is less than half a step.
const NO_STEP: Lack = Lack {
    key: "tools.*.step",
    who: Who::ToolStore,
};
/// What a torque lacks that its tool does not reach.
const NO_TOOL: Lack = Lack {
    key: "tighten.with",
    who: Who::ToolStore,
};

/// A number counts as on a step when it is as near to it as floating point comes, as a share.
const SLACK: f64 = 1e-12;

/// Which way a reading is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Toward {
    /// To the nearest step: a setting or an estimate.
    Nearest,
    /// To the step below: what is never passed.
    Down,
}

impl Toward {
    fn round(self, value: f64, step: f64) -> f64 {
        let steps = value / step * (1.0 + SLACK);
        let whole = match self {
            Self::Nearest => steps.round(),
            Self::Down => steps.floor(),
        };
        whole * step
    }
}

/// How finely a dial is read, and what it shows.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Face {
    /// A torque, in steps of this torque; without one in the usual steps of the scale.
    Torque(Option<Torque>),
    /// A torque, in the steps of a small wrench.
    Fine,
    /// A pressure, in such steps; the pump, the gauge and all between bear so much.
    Pressure {
        step: Pressure,
        bears: Option<Pressure>,
    },
}

/// What is read while a tool turns: its scale and steps, the adapter on it, its calibration. Where no tool is known, a
/// scale with its usual steps.
#[derive(Clone, Copy, Debug)]
pub struct Dial<'a> {
    tool: Option<&'a Arc<Tool>>,
    scale: &'static Unit,
    face: Face,
}

impl<'a> Dial<'a> {
    /// The scale of a torque wrench; `usual` is the scale where no tool is known.
    pub fn of_torque(tool: Option<&'a Arc<Tool>>, usual: &'static Unit) -> Self {
        Self {
            tool,
            scale: tool.map_or(usual, |tool| tool.scale),
            face: Face::Torque(tool.and_then(|tool| tool.torque_step)),
        }
    }

    /// The scale of a multi-spindle driver, by whole units where it says no step: no driver is set finer.
    pub fn of_driver(driver: &'a Arc<Tool>) -> Self {
        let dial = Self::of_torque(Some(driver), driver.scale);
        match driver.torque_step {
            Some(_) => dial,
            None => dial.fine(),
        }
    }

    /// The same tool read on the gauge of its pump, to such steps. What is never passed stays within what the
    /// hydraulics bear.
    #[must_use]
    pub fn on_gauge(self, step: Pressure, bears: Option<Pressure>) -> Self {
        let face = Face::Pressure { step, bears };
        Self { face, ..self }
    }

    /// The same tool read as a torque, whatever else it shows.
    #[must_use]
    pub fn by_torque(self) -> Self {
        let face = Face::Torque(self.tool.and_then(|tool| tool.torque_step));
        Self { face, ..self }
    }

    /// The same scale and adapter on a small wrench, with which low values are set.
    #[must_use]
    pub fn fine(self) -> Self {
        let face = Face::Fine;
        Self { face, ..self }
    }

    /// Snug by hand where the job gives none.
    pub fn usual_snug(self) -> Torque {
        usual_snug(self.scale)
    }

    /// What is set, to the nearest step.
    ///
    /// # Errors
    ///
    /// What is missing where the torque lies above the scale of the tool, outside its calibration points or below half
    /// a step. A torque below a scale is set with a smaller wrench, which T01 asks for.
    pub fn set(self, torque: Torque) -> Result<ToolReading, Lack> {
        let reading = self.about(torque)?;
        let top = match self.face {
            Face::Torque(_) => self.tool.and_then(|tool| tool.highest.value()),
            Face::Fine | Face::Pressure { .. } => None,
        };
        match (reading.shown, top) {
            (Shown::Torque(shown), Some(top)) if shown.si() > top.si() * (1.0 + 1e-9) => {
                Err(NO_TOOL)
            }
            _ => Ok(reading),
        }
    }

    /// The nearest step, whether or not the scale of the tool reaches so far: an estimate, or what a calculation goes
    /// on with.
    ///
    /// # Errors
    ///
    /// What is missing where the torque lies outside the calibration points or below half a step.
    pub fn about(self, torque: Torque) -> Result<ToolReading, Lack> {
        self.read(torque, Toward::Nearest)
    }

    /// What is never passed, in whole steps below the torque.
    ///
    /// # Errors
    ///
    /// What is missing where the torque lies below the calibration points or below one step.
    pub fn never(self, torque: Torque) -> Result<ToolReading, Lack> {
        self.read(torque, Toward::Down)
    }

    /// What a torque scale shows at a torque of the nut, before rounding: less with an adapter in line. This is what
    /// the tool and its square bear.
    pub fn shows(self, torque: Torque) -> Torque {
        Torque::from_si(torque.si() * self.share())
    }

    /// By how much the torque of the nut changes with one step, at a torque of this size; zero on a gauge, whose steps
    /// differ from point to point.
    pub fn step(self, torque: Torque) -> Torque {
        let step = self.step_at(self.shows(torque));
        Torque::from_si(step / self.share())
    }

    fn read(self, torque: Torque, toward: Toward) -> Result<ToolReading, Lack> {
        let (shown, gives) = match self.face {
            Face::Pressure { step, bears } => {
                let pressure = self.pressure(torque, (step, bears), toward)?;
                let gives = torque_at(self.points(), pressure).ok_or(NO_POINTS)?;
                (Shown::Pressure(pressure), gives)
            }
            Face::Torque(_) | Face::Fine => {
                let exact = self.shows(torque);
                let shown = toward.round(exact.si(), self.step_at(exact));
                if shown <= 0.0 {
                    return Err(NO_STEP);
                }
                let gives = Torque::from_si(shown / self.share());
                (Shown::Torque(Torque::from_si(shown)), gives)
            }
        };
        Ok(ToolReading {
            tool: self.tool.cloned(),
            scale: self.scale,
            shown,
            gives,
        })
    }

    /// The part of the nut's torque that a wrench shows with an adapter in line.
    fn share(self) -> f64 {
        match self.tool.and_then(|tool| tool.adapter) {
            Some((wrench, adapter)) => {
                mechanics::WRENCH_SETTING_OF.value(&[1.0, wrench.si(), adapter.si()])
            }
            None => 1.0,
        }
    }

    /// The step of a torque scale at a torque that it shows, in N·m.
    fn step_at(self, shown: Torque) -> f64 {
        let number = self.scale.from_si(shown.si());
        let usual = |step: fn(&Unit, f64) -> f64| self.scale.to_si(step(self.scale, number));
        match self.face {
            Face::Torque(Some(own)) => own.si(),
            Face::Torque(None) => usual(usual_step),
            Face::Fine => usual(fine_step),
            Face::Pressure { .. } => 0.0,
        }
    }

    /// The tool that is read; none where nobody names one.
    pub fn tool(self) -> Option<&'a Arc<Tool>> {
        self.tool
    }

    /// Its calibration points; none of a torque scale.
    pub fn points(self) -> &'a [CalibrationPoint] {
        self.tool.map_or(&[], |tool| tool.points.as_slice())
    }

    /// A pressure that the gauge can be read to, within the calibration points.
    fn pressure(
        self,
        torque: Torque,
        (step, bears): (Pressure, Option<Pressure>),
        toward: Toward,
    ) -> Result<Pressure, Lack> {
        let points = self.points();
        let (Some(low), Some(high)) = (points.first(), points.last()) else {
            return Err(NO_POINTS);
        };
        let torque = match toward {
            Toward::Down if torque > high.1 => high.1,
            _ => torque,
        };
        let exact = pressure_at(points, torque).ok_or(NO_POINTS)?;
        let most = match (toward, bears) {
            (Toward::Down, Some(bears)) if bears < exact => bears,
            _ => exact,
        };
        let rounded = toward.round(most.si(), step.si());
        let within = match toward {
            Toward::Nearest if rounded < low.0.si() => rounded + step.si(),
            Toward::Nearest if rounded > high.0.si() => rounded - step.si(),
            _ => rounded,
        };
        let is_within = low.0.si() <= within && within <= high.0.si();
        is_within
            .then_some(Pressure::from_si(within))
            .ok_or(NO_POINTS)
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Shown {
    Torque(Torque),
    Pressure(Pressure),
}

/// What the dial of one tool shows, and what that gives at the nut.
#[derive(Clone, Debug, PartialEq)]
pub struct ToolReading {
    tool: Option<Arc<Tool>>,
    scale: &'static Unit,
    shown: Shown,
    gives: Torque,
}

impl ToolReading {
    /// As it is read: a torque in the unit of the tool's scale, a pressure in that of the reader.
    pub fn printed(&self, units: &Units) -> Printed {
        match self.shown {
            Shown::Torque(torque) => self.scale.print_si(torque.si()),
            Shown::Pressure(pressure) => units.print(pressure),
        }
    }

    /// What the nut or jackbolt gets: loads, stresses and limits follow from it.
    pub fn gives(&self) -> Torque {
        self.gives
    }

    /// The same on the tool's scale, where the dial shows something else: with an adapter, or a pressure.
    pub fn at_nut(&self) -> Option<Printed> {
        let is_adapted = self
            .tool
            .as_ref()
            .is_some_and(|tool| tool.adapter.is_some());
        let differs = is_adapted || self.pressure().is_some();
        differs.then(|| self.scale.print_si(self.gives.si()))
    }

    /// The pressure, where a gauge is read.
    pub fn pressure(&self) -> Option<Pressure> {
        match self.shown {
            Shown::Pressure(pressure) => Some(pressure),
            Shown::Torque(_) => None,
        }
    }

    /// The tool that is read; none where nobody names one.
    pub fn tool(&self) -> Option<&Tool> {
        self.tool.as_deref()
    }

    /// The unit of the tool's torque scale.
    pub fn scale(&self) -> &'static Unit {
        self.scale
    }

    /// The lower and the higher of two readings; none where they stand on different scales.
    pub fn span<'a>(&'a self, other: &'a Self) -> Option<[&'a Self; 2]> {
        let is_lower = match (self.shown, other.shown) {
            (Shown::Torque(one), Shown::Torque(two)) if self.scale == other.scale => one <= two,
            (Shown::Pressure(one), Shown::Pressure(two)) => one <= two,
            _ => return None,
        };
        Some(if is_lower {
            [self, other]
        } else {
            [other, self]
        })
    }
}
