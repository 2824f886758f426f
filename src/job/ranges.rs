//! The ranges in which numbers of a job must lie, in SI.

pub(super) use super::table::Range::{self, Open, Positive, Within};

/// Friction, nut factors: nothing slides without friction, and no thread turns above one.
pub(super) const FRICTION: Range = Open(0.0, 1.0);
/// Of a load to both sides; at all of it the least load is nothing.
pub(super) const SCATTER: Range = Within(0.0, 0.99);
/// From absolute zero to where every bolting steel is soft.
pub(super) const TEMPERATURE: Range = Within(0.0, 1773.15);
/// Gauge pressure of contents, from vacuum.
pub(super) const CONTENTS: Range = Within(-101_325.0, 1e9);
/// A turn that is let go at once.
pub(super) const TURN: Range = Within(0.0, std::f64::consts::TAU);
/// A turn that was measured; none would mean a jackbolt without give.
pub(super) const ONE_TURN: Range = Open(0.0, std::f64::consts::TAU);
/// A wanted mean load of a stud: from half of it, below which no plan makes sense, to all but the last half per cent.
pub(super) const WANTED_MEAN: Range = Within(0.5, 0.995);
/// Jackbolts of a tensioner: fewer than four cannot keep its body square, more than 32 are not built.
pub(super) const JACKBOLTS: Range = Within(4.0, 32.0);
/// Release rounds: more than twenty no crew would ever turn at a joint.
pub(super) const ROUNDS: Range = Within(1.0, 20.0);
/// The peak of a release: above the installed load, and no more than twice it.
pub(super) const PEAK: Range = Within(1.02, 2.0);
/// A shift has at most the hours of a day.
pub(super) const SHIFT: Range = Within(60.0, 86_400.0);
/// A point is announced at most a month before.
pub(super) const NOTICE: Range = Within(0.0, 30.0 * 86_400.0);
