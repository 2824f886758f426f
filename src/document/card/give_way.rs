//! What a card for jackbolts can do without where side one is too full.

use super::{Card, Jackbolts};

impl Card {
    /// The card with what it can do without left out, one thing after the other, until side one fits:
    /// first the drawing of the studs, then the words beside it where the strip of the order says the
    /// same, then what rounds between the first and the last of their kind are expected to reach.
    /// What does not fit then is found by [`Card::over_budget`].
    #[must_use]
    pub fn giving_way(mut self) -> Self {
        let is_full = |card: &Self| card.free_height()[0] < 0.0;
        if is_full(&self)
            && let Some(ring) = self.jackbolts.as_mut().and_then(|it| it.studs.as_mut())
        {
            ring.studs.clear();
        }
        if is_full(&self)
            && self.order.rows > 0
            && let Some(work) = &mut self.jackbolts
        {
            work.studs = None;
        }
        while is_full(&self) {
            let Some(row) = self.jackbolts.as_deref().and_then(spare_row) else {
                break;
            };
            if let Some(work) = &mut self.jackbolts {
                work.rounds.rows.remove(row);
            }
        }
        self
    }
}

/// The middle of the rows that only say what further rounds reach; none when one is left.
fn spare_row(work: &Jackbolts) -> Option<usize> {
    let rows = work.rounds.rows.iter().enumerate();
    let further: Vec<usize> = rows
        .filter(|(_, row)| row.value.is_none())
        .map(|(index, _)| index)
        .collect();
    let spare = further.len().checked_sub(1).filter(|spare| *spare > 0)?;
    further.get(spare / 2).copied()
}
