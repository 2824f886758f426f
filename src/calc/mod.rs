//! What methods share on the way from a joint to its numbers: loads, settings, order, stresses, release, hours.
//!
//! Pure and total: a missing fact gives missing results, a breached limit is a value that a rule
//! will find. No file, no text, no clock, no method.

pub(crate) mod choose;
mod common;
pub mod ids;
pub mod labour;
mod ledger;
pub(crate) mod load;
pub mod opening;
pub mod order;
pub(crate) mod release;
pub(crate) mod setting;
pub(crate) mod stress;
pub(crate) mod studs;

pub use choose::Chosen;
pub(crate) use choose::{GAUGE_STEP, same_size};
pub use common::Common;
pub use ledger::{Basis, Entry, Id, Key, Ledger};
pub(crate) use load::is_root;
pub use order::Order;
pub(crate) use release::LEAST_ANGLE;
pub use setting::{Pass, PassKind};
pub(crate) use studs::{longest_protrusion, shortest_protrusion};

/// A count that was entered as a whole number, back as one.
pub fn whole(count: f64) -> usize {
    (0..=order::MOST_FASTENERS)
        .rev()
        .find(|&number| number as f64 <= count)
        .unwrap_or(0)
}
