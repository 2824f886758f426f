//! The names of rounds on paper: `C0` seats, `U` raises by hand, `D` is the driver, `C` goes in circle at full value.

use super::{JackboltPlan, Round, RoundKind};

/// Rounds that share a name: one, or all runs of a driver at one level.
pub(super) struct Named<'a> {
    /// The name.
    pub(super) name: String,
    /// What the last of them reaches is what they reach.
    pub(super) last: &'a Round,
    /// Its positions in the order in which they are gone through, from 0; none by hand.
    pub(super) positions: Vec<usize>,
}

/// All rounds of a plan under their names.
pub(super) fn named(plan: &JackboltPlan) -> Vec<Named<'_>> {
    let mut all: Vec<Named<'_>> = Vec::new();
    let (mut raised, mut driven, mut full) = (0, 0, 0);
    for round in &plan.rounds {
        let RoundKind::Bulk { position } = round.kind else {
            let (letter, number) = match round.kind {
                RoundKind::Raise => ('U', counted(&mut raised)),
                RoundKind::Full => ('C', counted(&mut full)),
                _ => ('C', 0),
            };
            let positions = Vec::new();
            all.push(Named {
                name: format!("{letter}{number}"),
                last: round,
                positions,
            });
            continue;
        };
        match all
            .last_mut()
            .filter(|level| is_same_level(level.last, round))
        {
            Some(level) => {
                level.last = round;
                level.positions.push(position);
            }
            None => {
                let name = format!("D{}", counted(&mut driven));
                all.push(Named {
                    name,
                    last: round,
                    positions: vec![position],
                });
            }
        }
    }
    all
}

fn is_same_level(one: &Round, other: &Round) -> bool {
    matches!(one.kind, RoundKind::Bulk { .. }) && (one.share - other.share).abs() < 1e-9
}

fn counted(count: &mut usize) -> usize {
    *count += 1;
    *count
}
