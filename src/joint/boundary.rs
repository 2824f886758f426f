//! What the isolation boundary of a joint holds back and how: resolved once, shared by all joints behind it.

use crate::job::EnergyKind;
use crate::units::{Duration, Temperature};

/// The isolation boundary that a joint stands behind.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Boundary {
    /// Whether the job names what is inside.
    pub has_contents: bool,
    /// What it was purged with.
    pub purge: Option<String>,
    /// Tags of vents and drains that stay open, in the order of the flow.
    pub vents: Vec<String>,
    /// Tags of the motors that are locked off.
    pub drives: Vec<String>,
    /// Energies other than pressure.
    pub energies: Vec<Energy>,
    /// Surface temperature below which work may start.
    pub cool_below: Option<Temperature>,
    /// How often zero is proved again while the joint is open.
    pub prove_again_every: Option<Duration>,
}

/// An energy other than pressure, and what holds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Energy {
    /// Its kind.
    pub kind: EnergyKind,
    /// What has it.
    pub what: String,
    /// How it is released or blocked; none where nobody says.
    pub control: Option<String>,
}
