//! Every figure that decides whether a step or a caution applies, with its source. What a job may replace stands in
//! [`crate::joint::LIMITS`].

use crate::standards::practice;
use crate::units::{Angle, Duration, Length, Temperature, Torque};

/// A figure and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Threshold<T> {
    /// The figure.
    pub value: T,
    /// A document, or a key of the wording's `source`.
    pub source: &'static str,
}

const fn practice<T: Copy>(value: T) -> Threshold<T> {
    Threshold {
        value,
        source: practice::SOURCE,
    }
}

/// Above this a surface burns at a touch, and work waits.
pub const HOT: Threshold<Temperature> = practice(Temperature::celsius(60.0));
/// Above this it burns through a glove.
pub const VERY_HOT: Threshold<Temperature> = practice(Temperature::celsius(120.0));
/// Below this skin sticks to steel.
pub const COLD: Threshold<Temperature> = practice(Temperature::celsius(-10.0));
/// What the barrier keeps free, where the permit says nothing else.
pub const BARRIER: Threshold<Length> = practice(Length::mm(3000.0));
/// The last pass after which gaps are read: later the joint is closed.
pub const LAST_GAP_PASS: Threshold<u16> = practice(2);
/// Full rounds until no nut turns, before somebody looks for the reason.
pub const MOST_FULL_ROUNDS: Threshold<usize> = practice(6);
/// Release rounds that stand one by one; the record counts the rest.
pub const MOST_RELEASE_ROUNDS: Threshold<usize> = practice(4);
/// Above this torque two people pull a hand wrench.
pub const ONE_PERSON: Threshold<Torque> = practice(Torque::nm(400.0));
/// How long oil works on threads before they are turned back.
pub const SOAK: Threshold<[Duration; 2]> =
    practice([Duration::minutes(10.0), Duration::minutes(30.0)]);
/// How long it works on a nut that is stuck.
pub const STUCK_SOAK: Threshold<[Duration; 2]> =
    practice([Duration::minutes(240.0), Duration::minutes(1440.0)]);
/// By how much a stuck nut is tightened before it is loosened again.
pub const NUDGE: Threshold<Angle> = practice(Angle::degrees(5.0));
/// The largest turn back of a far nut at a time.
pub const FAR_STEP: Threshold<Angle> = practice(Angle::degrees(90.0));
