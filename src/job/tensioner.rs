//! Multi-jackbolt tensioners and the multi-spindle drivers that load them.

use serde::Deserialize;

use super::{DriverInput, Name};
use crate::units::{Acceleration, Angle, Flow, Length, Noise, Pressure, Ratio, Stress, Torque};
use crate::yaml::{At, Text};

/// A nut body with its jackbolts; one of them sits on each stud.
#[derive(Debug, Deserialize)]
pub struct Tensioner {
    /// Number of jackbolts.
    pub jackbolts: At<u32>,
    /// Thread of a jackbolt.
    pub thread: At<Text<16>>,
    /// Grade of the jackbolts.
    pub grade: Option<At<Text<24>>>,
    /// Circle of the jackbolts.
    pub circle: Option<At<Length>>,
    /// Outer diameter of the nut body.
    pub body_diameter: Option<At<Length>>,
    /// Height of the nut body.
    pub body_height: Option<At<Length>>,
    /// Across flats of the jackbolt heads or sockets.
    pub across_flats: Option<At<Length>>,
    /// Thread of a jackbolt that is engaged in the body, the least of the work.
    pub thread_engagement: Option<At<Length>>,
    /// Least yield strength of the body.
    pub body_yield: Option<At<Stress>>,
    /// Length of a jackbolt between body and washer at the start.
    pub free_length: Option<At<Length>>,
    /// Diameter of the tip.
    pub tip_diameter: Option<At<Length>>,
    /// Gap between body and washer before the jackbolts are turned.
    pub start_gap: Option<At<Length>>,
    /// Greatest gap when the load is on.
    pub greatest_gap: Option<At<Length>>,
    /// Travel of a jackbolt.
    pub travel: Option<At<Length>>,
    /// Highest load of one jackbolt, from the tensioner's papers.
    pub jackbolt_load: Option<At<crate::units::Force>>,
    /// Measured turn of one jackbolt, snug to full load with the others tight.
    pub measured_turn: Option<At<Angle>>,
    /// Lubricant of jackbolt threads and tips.
    pub lubricant: Option<At<Name>>,
    /// Hardness of the washer, as its papers word it.
    pub washer_hardness: Option<At<Text<24>>>,
    /// Highest pressure of a tip on the washer.
    pub tip_pressure: Option<At<Stress>>,
    /// How far the stud may stand above the body.
    pub stud_above_body: Option<At<Length>>,
}

/// What only a multi-spindle driver has.
#[derive(Debug, Deserialize)]
pub struct Driver {
    /// Number of spindles.
    pub spindles: At<u32>,
    /// Circle of the spindles.
    pub spindle_circle: Option<At<Length>>,
    /// Across flats of its sockets.
    pub socket: Option<At<Length>>,
    /// Depth of its sockets.
    pub socket_depth: Option<At<Length>>,
    /// What drives it.
    pub input: Option<At<DriverInput>>,
    /// ± limit of the torque from spindle to spindle.
    pub scatter: Option<At<Ratio>>,
    /// Highest torque in reverse.
    pub reverse_torque: Option<At<Torque>>,
    /// Air pressure or oil pressure that it needs.
    pub supply: Option<At<Pressure>>,
    /// Air that it needs.
    pub flow: Option<At<Flow>>,
    /// Studs on one battery.
    pub studs_per_battery: Option<At<u32>>,
    /// Noise at the operator's ear.
    pub noise: Option<At<Noise>>,
    /// Vibration at the handle.
    pub vibration: Option<At<Acceleration>>,
    /// Marking for explosive zones, or `none`.
    pub zone: Option<At<Text<40>>>,
    /// Where its reaction goes.
    pub reaction: Option<At<Text<60>>>,
    /// How it hangs: hoist, balancer, by hand.
    pub lift: Option<At<Text<60>>>,
}
