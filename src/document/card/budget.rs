//! The room that each text of a card has, measured before the layout, so that a check of the job
//! speaks without typesetting and agrees with the page.

/// The room of one text.
#[derive(Clone, Copy, Debug)]
pub struct Budget {
    /// Its field in the data of the card.
    pub field: &'static str,
    /// Size of type in pt, as in `style.typ`.
    pub size: f64,
    /// Width of its column in mm, as in `cards.typ`.
    pub width: f64,
    /// Lines.
    pub lines: usize,
}

/// What an [`Overrun`] counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Characters of one text.
    Characters,
    /// Items of one list.
    Items,
    /// Millimetres of one side.
    Millimetres,
}

/// Something that does not fit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Overrun {
    /// The field, or the side.
    pub field: &'static str,
    /// The text; empty when a list or a side is too long.
    pub text: String,
    /// How much there is.
    pub got: usize,
    /// How much fits.
    pub limit: usize,
    /// Of what.
    pub measure: Measure,
}

/// The room of one line or more of a text.
pub(super) const fn room(field: &'static str, size: f64, width: f64, lines: usize) -> Budget {
    Budget {
        field,
        size,
        width,
        lines,
    }
}

/// Width of the sentences of a caution, in mm.
pub(super) const CAUTION_ROOM: f64 = 138.0;

/// The texts whose room is fixed. Those of tables depend on the number of their columns.
pub const BUDGETS: &[Budget] = &[
    room("running.left", 8.5, 116.0, 1),
    room("running.right", 8.5, 58.0, 1),
    room("identity.equipment", 13.0, 120.0, 1),
    room("identity.place", 11.0, 122.0, 1),
    room("identity.class", 11.0, 54.0, 1),
    room("identity.drawing", 8.5, 52.0, 1),
    room("identity.badge", 20.0, 42.0, 1),
    room("draft.word", 13.0, 22.0, 1),
    room("draft.reason", 8.5, 90.0, 1),
    room("danger.word", 20.0, 34.0, 1),
    room("danger.hazard", 13.0, 133.0, 1),
    room("danger.stop", 13.0, 133.0, 1),
    room("cautions.word", 13.0, 26.0, 1),
    room("cautions.text", 11.0, CAUTION_ROOM, 3),
    room("ticks.items", 11.0, 43.5, 2),
    room("target.label", 11.0, 84.0, 1),
    room("target.words", 11.0, 84.0, 1),
    room("target.value.missing", 8.5, 76.0, 1),
    room("target.facts.label", 11.0, 21.0, 1),
    room("target.facts.first", 20.0, 66.0, 1),
    room("target.facts.value", 13.0, 66.0, 1),
    room("target.facts.missing", 8.5, 62.0, 1),
    room("picture.direction", 11.0, 24.0, 1),
    room("picture.top", 11.0, 16.0, 1),
    room("picture.legend", 8.5, 84.0, 1),
    room("steps.name", 13.0, 9.6, 1),
    room("steps.end", 11.0, 88.0, 1),
    room("order.title", 11.0, 15.0, 1),
    room("order.note", 11.0, 160.0, 1),
    room("footer.number", 11.0, 62.0, 1),
    room("footer.code", 11.0, 62.0, 1),
    room("footer.issued", 8.5, 62.0, 1),
    room("footer.notes", 8.5, 68.0, 3),
    room("footer.pages", 11.0, 22.0, 1),
    room("record.deviation", 11.0, 13.0, 1),
    room("record.signatures", 8.5, 86.0, 1),
    room("record.stub", 11.0, 64.0, 1),
];
