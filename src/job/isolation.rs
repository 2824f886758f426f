//! Isolation boundaries.

use serde::Deserialize;

use super::{DrawingReference, EnergyKind, IsolationClass, Name, PointKind};
use crate::units::{Area, Duration, Length, Pressure, Temperature, Volume};
use crate::yaml::{At, Text};

/// One isolation boundary; all joints behind it name it.
#[derive(Debug, Deserialize)]
pub struct Isolation {
    /// What it encloses.
    pub boundary: At<Text<60>>,
    /// Flow diagram.
    pub drawing: Option<At<DrawingReference>>,
    /// Class of isolation that is wanted.
    pub class: Option<At<IsolationClass>>,
    /// Why that class.
    pub reason: Option<At<Text<60>>>,
    /// What is inside.
    pub contents: Option<At<Vec<At<Contents>>>>,
    /// Other energy and what holds it.
    pub energies: Option<At<Vec<At<EnergyControl>>>>,
    /// The largest opening behind the boundary.
    pub opening: Option<At<Opening>>,
    /// Isolation points in the order of the flow.
    pub points: Option<At<Vec<At<Point>>>>,
    /// How zero is proved.
    pub proof: Option<At<Proof>>,
    /// Operating procedure for the shutdown.
    pub procedure: Option<At<Text<32>>>,
    /// Purge or flush.
    pub purge: Option<At<Purge>>,
    /// Hold test.
    pub hold_test: Option<At<HoldTest>>,
    /// Surface temperature below which work may start.
    pub cool_below: Option<At<Temperature>>,
    /// How often zero is proved again while the joint is open.
    pub prove_again_every: Option<At<Duration>>,
    /// A picture of the boundary, in place of the line of points.
    pub picture: Option<At<Text<120>>>,
    /// Permit number.
    pub permit: Option<At<Text<24>>>,
    /// Number of the site's isolation certificate.
    pub certificate: Option<At<Text<24>>>,
    /// Who accepts zero energy at the joint.
    pub accepted_by: Option<At<Name>>,
}

/// What is inside a boundary.
#[derive(Debug, Deserialize)]
pub struct Contents {
    /// Substance.
    pub fluid: At<Text<40>>,
    /// Normal pressure.
    pub pressure: Option<At<Pressure>>,
    /// Normal temperature.
    pub temperature: Option<At<Temperature>>,
    /// Volume between the points.
    pub volume: Option<At<Volume>>,
    /// What it does to people.
    pub hazard: Option<At<Text<40>>>,
}

/// Another kind of energy.
#[derive(Debug, Deserialize)]
pub struct EnergyControl {
    /// Its kind.
    pub kind: At<EnergyKind>,
    /// What holds it.
    pub what: At<Text<40>>,
    /// How it is released or blocked.
    pub control: Option<At<Text<60>>>,
}

/// The largest opening.
#[derive(Debug, Deserialize)]
pub struct Opening {
    /// What is opened.
    pub name: Option<At<Text<40>>>,
    /// Its diameter.
    pub diameter: Option<At<Length>>,
    /// Its area, where it is not round.
    pub area: Option<At<Area>>,
}

/// One isolation point.
#[derive(Debug, Deserialize)]
pub struct Point {
    /// Tag.
    pub tag: At<Text<16>>,
    /// Kind.
    pub kind: At<PointKind>,
    /// Required position, in words.
    pub position: Option<At<Text<24>>>,
    /// Where it is.
    pub location: Option<At<Text<30>>>,
}

/// How zero is proved at the joint side.
#[derive(Debug, Deserialize)]
pub struct Proof {
    /// Where it is read.
    pub at: At<Text<40>>,
    /// The gauge, a tool of the job or an instrument's tag.
    pub gauge: Option<At<Text<32>>>,
}

/// Purge or flush.
#[derive(Debug, Deserialize)]
pub struct Purge {
    /// Medium.
    pub medium: At<Text<30>>,
    /// Number of cycles.
    pub cycles: Option<At<u32>>,
    /// The value at which it ends.
    pub until: Option<At<Text<30>>>,
}

/// A hold test of the boundary.
#[derive(Debug, Deserialize)]
pub struct HoldTest {
    /// How long.
    pub duration: At<Duration>,
    /// Greatest rise.
    pub rise: Option<At<Pressure>>,
}
