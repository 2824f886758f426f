//! The room that each text of a card has, measured before the layout.

/// The room of one text.
#[derive(Clone, Copy, Debug)]
pub struct Budget {
    /// Its field in the data of the card.
    pub field: &'static str,
    /// Size of type in pt.
    pub size: f64,
    /// Width of its column in mm.
    pub width: f64,
    /// Lines.
    pub lines: usize,
}
/// Height between the running line and the footer, in mm.
pub const SIDE_HEIGHT: f64 = 256.0;
/// todo
pub const BUDGETS: &[Budget] = &[];
/// A text that does not fit.
#[derive(Clone, Debug, PartialEq)]
pub struct Overrun {
    /// The field.
    pub field: String,
    /// Characters or millimetres.
    pub got: f64,
    /// How many fit.
    pub limit: f64,
}
