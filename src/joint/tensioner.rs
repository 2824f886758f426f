//! A multi-jackbolt tensioner and the driver that loads it, resolved.

use super::Fact;
use crate::job::DriverInput;
use crate::report::Place;
use crate::standards::Thread;
use crate::units::{
    Acceleration, Angle, Count, Flow, Force, Length, Noise, Pressure, Ratio, Stress, Torque,
};

/// A nut body with its jackbolts; one of them sits on each stud.
#[derive(Clone, Debug, PartialEq)]
pub struct Tensioner {
    /// Its name.
    pub name: String,
    /// Where it is described.
    pub place: Place,
    /// Number of jackbolts.
    pub jackbolts: Fact<Count>,
    /// Thread of a jackbolt.
    pub thread: Fact<Thread>,
    /// Grade of the jackbolts.
    pub grade: Fact<String>,
    /// Least yield strength of the jackbolts.
    pub yield_strength: Fact<Stress>,
    /// Modulus of elasticity of the jackbolts.
    pub modulus: Fact<Stress>,
    /// Thread of a jackbolt that is engaged in the body, least.
    pub thread_engagement: Fact<Length>,
    /// Least yield strength of the body.
    pub body_yield: Fact<Stress>,
    /// Circle of the jackbolts.
    pub circle: Fact<Length>,
    /// Outer diameter of the body.
    pub body_diameter: Fact<Length>,
    /// Height of the body.
    pub body_height: Fact<Length>,
    /// Across flats of the jackbolts.
    pub across_flats: Fact<Length>,
    /// Length of a jackbolt between body and washer.
    pub free_length: Fact<Length>,
    /// Diameter of the tip.
    pub tip_diameter: Fact<Length>,
    /// Give of the body, in diameters of the stud.
    pub body_share: Fact<Ratio>,
    /// Gap between body and washer before the first turn.
    pub start_gap: Fact<Length>,
    /// Greatest gap when the load is on.
    pub greatest_gap: Fact<Length>,
    /// Travel of a jackbolt.
    pub travel: Fact<Length>,
    /// Highest load of one jackbolt, from the tensioner's papers.
    pub jackbolt_load: Fact<Force>,
    /// Measured turn of one jackbolt from snug to its load, the others tight.
    pub measured_turn: Option<Fact<Angle>>,
    /// Name of the lubricant of threads and tips.
    pub lubricant: Fact<String>,
    /// Friction in the thread of a jackbolt.
    pub thread_friction: Fact<Ratio>,
    /// Friction under its tip.
    pub tip_friction: Fact<Ratio>,
    /// Nut factor of that lubricant; taken where it has not both frictions.
    pub nut_factor: Fact<Ratio>,
    /// Hardness of the washer, as its papers word it.
    pub washer_hardness: Fact<String>,
    /// Highest pressure of a tip on the washer.
    pub tip_pressure: Fact<Stress>,
    /// How far the stud may stand above the body.
    pub stud_above_body: Fact<Length>,
}

impl Tensioner {
    /// Whether the torque of a jackbolt comes from a nut factor: friction wins where the job gives both of it.
    pub fn has_only_nut_factor(&self) -> bool {
        let friction = self.thread_friction.get().and(self.tip_friction.get());
        friction.is_none() && self.nut_factor.get().is_some()
    }
}

/// What only a multi-spindle driver has.
#[derive(Clone, Debug, PartialEq)]
pub struct Driver {
    /// Number of spindles.
    pub spindles: Fact<Count>,
    /// Circle of the spindles.
    pub spindle_circle: Fact<Length>,
    /// Across flats of its sockets.
    pub socket: Fact<Length>,
    /// Depth of its sockets.
    pub socket_depth: Fact<Length>,
    /// What drives it.
    pub input: Fact<DriverInput>,
    /// ± limit of the torque from spindle to spindle.
    pub scatter: Fact<Ratio>,
    /// Highest torque in reverse.
    pub reverse_torque: Fact<Torque>,
    /// Air pressure or oil pressure that it needs.
    pub supply: Fact<Pressure>,
    /// Air that it needs.
    pub flow: Fact<Flow>,
    /// Studs on one battery.
    pub studs_per_battery: Fact<Count>,
    /// Noise at the operator's ear.
    pub noise: Fact<Noise>,
    /// Vibration at the handle.
    pub vibration: Fact<Acceleration>,
    /// Marking for explosive zones, or `none`.
    pub zone: Fact<String>,
    /// Where its reaction goes.
    pub reaction: Fact<String>,
    /// How it hangs.
    pub lift: Fact<String>,
}
