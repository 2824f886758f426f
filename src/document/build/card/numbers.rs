//! The numbers of the boxes, for the radio and the deviation sheet.

/// Numbers the boxes in the order in which they are made.
pub(super) struct Numbers(u32);

impl Numbers {
    /// Starts at 1.
    pub(super) const fn new() -> Self {
        Self(0)
    }

    pub(super) fn next(&mut self) -> String {
        self.0 += 1;
        self.0.to_string()
    }
}
