//! Which tools work on a joint: those that the job names, else the best of its list.

use std::sync::Arc;

use crate::joint::{Dial, Joint, Mechanics, Tool};
use crate::units::{Dimension, Length, Pressure, Quantity, Unit, unit_named};

use super::ids;
use super::labour::Task;
use super::ledger::Ledger;

/// To what a gauge of 1,000 bar can be read (common practice, no source).
pub(crate) const GAUGE_STEP: Pressure = Pressure::bar(5.0);

/// The tools of a joint, named by the job or chosen from its list.
#[derive(Clone, Debug, Default)]
pub struct Chosen {
    /// What turns when tightening.
    pub turning: Vec<Arc<Tool>>,
    /// Whether the job named them.
    pub named: bool,
    /// Socket.
    pub socket: Option<Arc<Tool>>,
    /// What holds the far nut.
    pub back_up: Option<Arc<Tool>>,
    /// Pump, hoses, couplers, gauge.
    pub hydraulics: Vec<Arc<Tool>>,
    /// The multi-spindle driver.
    pub driver: Option<Arc<Tool>>,
    /// What turns when loosening.
    pub loosening: Vec<Arc<Tool>>,
    /// Whether what turns is read on the gauge of its pump; its method says so.
    pub shows_pressure: bool,
}

impl Chosen {
    /// The part that bears the lowest pressure when tightening; it governs. Parts without a rating
    /// are skipped here and found by T07.
    pub fn weakest(&self) -> Option<(&Arc<Tool>, Pressure)> {
        self.weakest_with(&self.turning)
    }

    /// The same with other wrenches on the hoses, as when loosening.
    pub fn weakest_with<'a>(
        &'a self,
        wrenches: &'a [Arc<Tool>],
    ) -> Option<(&'a Arc<Tool>, Pressure)> {
        wrenches
            .iter()
            .chain(&self.hydraulics)
            .filter_map(|tool| tool.bears().value().map(|rating| (tool, rating)))
            .min_by(|a, b| a.1.si().total_cmp(&b.1.si()))
    }

    /// What is read while a joint is worked on: the gauge of a hydraulic wrench, else the scale of the wrench in hand.
    /// A bar has no scale; what it may be turned with is said on that of the wrench that tightens.
    pub fn dial(&self, joint: &Mechanics, task: Task) -> Dial<'_> {
        let tightening = self.turning.first();
        let usual = tightening.map_or_else(|| usual_scale(joint), |tool| tool.scale);
        let (tool, wrenches) = match task {
            Task::Tighten | Task::Recheck => (tightening, &self.turning),
            Task::Loosen => (
                self.loosening.first().filter(|tool| tool.kind.shows_load()),
                &self.loosening,
            ),
        };
        let dial = Dial::of_torque(tool, usual);
        if !self.shows_pressure {
            return dial;
        }
        let weakest = self.weakest_with(wrenches);
        dial.on_gauge(
            self.pressure_step(wrenches),
            weakest.map(|(_, rating)| rating),
        )
    }

    /// The step to which the pressure can be set: the wrench's own, else that of gauge or pump, else [`GAUGE_STEP`].
    fn pressure_step(&self, wrenches: &[Arc<Tool>]) -> Pressure {
        let mut parts = wrenches.iter().take(1).chain(&self.hydraulics);
        let own = parts.find_map(|tool| tool.pressure_step);
        own.unwrap_or(GAUGE_STEP)
    }

    /// What turns when tightening or loosening, each once.
    pub fn wrenches(&self) -> impl Iterator<Item = &Arc<Tool>> {
        self.turning.iter().chain(self.only_loosening())
    }

    /// What turns when loosening alone.
    fn only_loosening(&self) -> impl Iterator<Item = &Arc<Tool>> {
        let is_new = |tool: &&Arc<Tool>| !self.turning.iter().any(|other| other.name == tool.name);
        self.loosening.iter().filter(is_new)
    }

    /// Everything that must be in calibration or rated, in the order of the card, each once.
    pub fn all(&self) -> impl Iterator<Item = &Arc<Tool>> {
        self.turning
            .iter()
            .chain(&self.hydraulics)
            .chain(&self.driver)
            .chain(&self.socket)
            .chain(&self.back_up)
            .chain(self.only_loosening())
    }
}

/// The torque scale where no tool is known: that of the thread's system.
fn usual_scale(joint: &Mechanics) -> &'static Unit {
    let thread = joint.studs.thread.get();
    let is_inch = thread.is_some_and(|thread| !thread.series.is_metric());
    let name = if is_inch { "ft·lb" } else { "N·m" };
    unit_named(Dimension::Torque, name).expect("the table of units holds both")
}

/// Chooses the tools. A hand torque wrench that the job does not name is chosen among those whose
/// range holds the torque and whose square a fitting socket has: in calibration first, then the one
/// that works nearest the middle of its best range (40 to 90 % of its top, common practice), then
/// the lighter one. `turned` is what the crew turns, across flats; without `chooses_wrench` only named wrenches work.
pub(crate) fn choose(
    ledger: &Ledger,
    joint: &Joint,
    turned: Option<Length>,
    chooses_wrench: bool,
) -> Chosen {
    let tools = &joint.mechanics.tools;
    let named = !tools.tightening.is_empty();
    let mut turning = tools.tightening.clone();
    if !named && chooses_wrench {
        turning.extend(wrench(ledger, joint, turned));
    }
    let square = turning.first().and_then(|tool| tool.square.value());
    let socket = tools.socket.clone().or_else(|| {
        tools
            .sockets
            .iter()
            .find(|socket| fits(socket, turned, square))
            .cloned()
    });
    let nut = joint.mechanics.studs.across_flats.value();
    let back_up = tools.back_up.clone().or_else(|| {
        tools
            .back_ups
            .iter()
            .find(|spanner| has_flats(spanner, nut))
            .cloned()
    });
    let loosening = if tools.loosening.is_empty() {
        turning.clone()
    } else {
        tools.loosening.clone()
    };
    Chosen {
        turning,
        named,
        socket,
        back_up,
        hydraulics: tools.hydraulics.clone(),
        driver: tools.driver.clone(),
        loosening,
        shows_pressure: false,
    }
}

fn wrench(ledger: &Ledger, joint: &Joint, turned: Option<Length>) -> Option<Arc<Tool>> {
    let torque = ledger.get(ids::TORQUE)?;
    let sockets = &joint.mechanics.tools.sockets;
    let suits = |tool: &&Arc<Tool>| {
        let in_range = tool.lowest.value().is_some_and(|lowest| torque >= lowest)
            && tool
                .highest
                .value()
                .is_some_and(|highest| torque <= highest);
        let has_socket = sockets.is_empty()
            || sockets
                .iter()
                .any(|socket| fits(socket, turned, tool.square.value()));
        in_range && has_socket
    };
    let rank = |tool: &Arc<Tool>| {
        let due = tool.due.value();
        let late = !matches!((due, joint.work.last_day), (Some(due), Some(last)) if due >= last);
        let share = tool
            .highest
            .value()
            .map_or(1.0, |top| torque.si() / top.si());
        let mass = tool.mass.value().map_or(f64::INFINITY, Quantity::si);
        (late, (share - 0.65).abs(), mass)
    };
    joint
        .mechanics
        .tools
        .wrenches
        .iter()
        .filter(suits)
        .min_by(|a, b| {
            let (a, b) = (rank(a), rank(b));
            a.0.cmp(&b.0)
                .then(a.1.total_cmp(&b.1))
                .then(a.2.total_cmp(&b.2))
        })
        .cloned()
}

/// Sizes that a store names in fractions or millimetres agree within a tenth of a millimetre.
pub(crate) fn same_size(a: Length, b: Length) -> bool {
    (a.to_mm() - b.to_mm()).abs() < 0.1
}

fn has_flats(tool: &Tool, flats: Option<Length>) -> bool {
    matches!((tool.across_flats.value(), flats), (Some(own), Some(nut)) if same_size(own, nut))
}

fn fits(socket: &Tool, flats: Option<Length>, square: Option<Length>) -> bool {
    let square_fits = match (socket.square.value(), square) {
        (Some(own), Some(wrench)) => same_size(own, wrench),
        _ => true,
    };
    has_flats(socket, flats) && square_fits
}
