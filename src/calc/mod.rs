//! What is computed for one joint: pure functions from typed values to typed values.
//!
//! Nothing here knows a file, a date or a sentence. A breached limit is a value, never an error.

pub mod labour;
pub mod order;
