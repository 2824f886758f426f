//! Which cautions stand where: one line each, at most so many on a side, the gravest of each family first.

use std::collections::BTreeSet;

use crate::document::blocks::{Block, Caution, Cautions};
use crate::document::build::capital;
use crate::work::{Hazard, HazardKind, Kind, Phase, Priority, Signal, Step};

use super::View;

/// The cautions of a card.
#[derive(Default)]
pub(super) struct Told {
    /// Before the ticks of side one.
    pub(super) early: Option<Block>,
    /// Before its settings.
    pub(super) late: Option<Block>,
    /// On the record side.
    pub(super) overleaf: Option<Block>,
}

/// Where a step is printed, or where it would be.
fn is_overleaf(step: &Step) -> bool {
    match step.kind {
        Kind::Tick | Kind::Act => super::front::is_overleaf(step.phase),
        Kind::Reading(_) | Kind::Point(_) => true,
        Kind::Setting(_) | Kind::Decision => false,
    }
}

fn is_early(step: &Step) -> bool {
    step.phase <= Phase::Prepare && matches!(step.kind, Kind::Tick | Kind::Act)
}

impl View<'_> {
    /// What stands behind the joint is told by the danger panel; the full text of all of them by the pack.
    pub(super) fn cautions(&self) -> Told {
        let mut told = BTreeSet::new();
        let front = self.choose(|step| !is_overleaf(step), &mut told);
        let met_early = self.met(is_early);
        let (early, late): (Vec<_>, Vec<_>) = front
            .into_iter()
            .partition(|hazard| met_early.contains(&hazard.kind));
        let on_record = |step: &Step| is_overleaf(step) && step.priority != Priority::PackOnly;
        let overleaf = self.choose(on_record, &mut told);
        Told {
            early: self.block(early),
            late: self.block(late),
            overleaf: self.block(overleaf),
        }
    }

    fn met(&self, is_here: impl Fn(&Step) -> bool) -> BTreeSet<HazardKind> {
        let steps = self.work.steps.iter().filter(|step| is_here(step));
        steps.flat_map(|step| step.meets).copied().collect()
    }

    /// The gravest of each family, then what room is left for, in the order of harm.
    fn choose(
        &self,
        is_here: impl Fn(&Step) -> bool,
        told: &mut BTreeSet<HazardKind>,
    ) -> Vec<&Hazard> {
        let met = self.met(is_here);
        let mut found: Vec<&Hazard> = self
            .work
            .hazards
            .iter()
            .filter(|it| !it.is_behind && met.contains(&it.kind) && !told.contains(&it.kind))
            .collect();
        found.sort_by_key(|it| (it.signal, it.kind));
        let mut families = BTreeSet::new();
        let (mut chosen, others): (Vec<_>, Vec<_>) = found
            .into_iter()
            .partition(|it| families.insert(it.kind.family()));
        chosen.extend(others);
        chosen.truncate(self.g.cautions.most);
        chosen.sort_by_key(|it| (it.signal, it.kind));
        told.extend(chosen.iter().map(|it| it.kind));
        chosen
    }

    fn block(&self, hazards: Vec<&Hazard>) -> Option<Block> {
        let items: Vec<Caution> = hazards
            .into_iter()
            .map(|hazard| Caution {
                word: self
                    .voice
                    .label(&["signal", hazard.signal.key()])
                    .to_owned(),
                triangle: hazard.signal != Signal::Notice,
                text: capital(&self.voice.hazard(hazard, "line").unwrap_or_default()),
            })
            .collect();
        (!items.is_empty()).then_some(Block::Cautions(Cautions { items }))
    }
}
