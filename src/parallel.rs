//! Independent pieces of work, side by side on all cores.

use rayon::prelude::*;

/// What `work` makes of each item, in the order of the items.
///
/// The threads live for this call alone. The memory that they gave back is then used by the threads that come
/// after them; those of a lasting pool would keep it for themselves.
pub fn map<T: Sync, R: Send>(items: &[T], work: impl Fn(&T) -> R + Send + Sync) -> Vec<R> {
    if items.len() < 2 {
        return items.iter().map(work).collect();
    }
    match rayon::ThreadPoolBuilder::new().build() {
        Ok(pool) => pool.install(|| items.par_iter().map(work).collect()),
        Err(_) => items.iter().map(work).collect(),
    }
}
