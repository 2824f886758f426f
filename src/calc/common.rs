//! What like joints have in common, kept once for all of them.

use std::collections::HashSet;
use std::hash::Hash;
use std::sync::{Arc, Mutex, PoisonError};

use super::ledger::{Form, Ledger};
use super::order::Order;

/// What the joints of a job have in common. Thousands of joints are in memory at once; the ledgers of like ones
/// differ in their values and origins alone, and all with as many studs are gone through in the same order.
#[derive(Debug, Default)]
pub struct Common {
    /// What stands in ledgers.
    forms: Kept<Form>,
    /// Orders of studs.
    orders: Kept<Order>,
}

impl Common {
    /// Closes a ledger that is complete; it takes the form that like ledgers have.
    pub(crate) fn close(&self, ledger: &mut Ledger) {
        ledger.close(&self.forms);
    }

    /// The one copy of an order.
    pub(crate) fn order(&self, order: Order) -> Arc<Order> {
        self.orders.share(Arc::new(order))
    }
}

/// Values of which each is kept once.
#[derive(Debug)]
pub(super) struct Kept<T>(Mutex<HashSet<Arc<T>>>);

impl<T> Default for Kept<T> {
    fn default() -> Self {
        Self(Mutex::default())
    }
}

impl<T: Eq + Hash> Kept<T> {
    /// The value that is kept for this one.
    pub(super) fn share(&self, value: Arc<T>) -> Arc<T> {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(kept) = kept.get(&value) {
            return Arc::clone(kept);
        }
        kept.insert(Arc::clone(&value));
        value
    }
}
