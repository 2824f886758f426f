//! What is done with a hand torque wrench.

use crate::job::ToolKind;
use crate::methods::Case;
use crate::work::{Bound, HazardKind, OPTIONAL, Phase, Priority, Task, Value, Work};

use crate::methods::steps::nuts::{NutSteps, back_up};
use HazardKind::{LastFasteners, StudInLine};

pub(super) const STEPS: NutSteps = NutSteps {
    method: super::ID,
    has_arm: false,
    target: ["target", "targets"],
    hazards: |_, _| (),
    set_up,
    stroke: |work| {
        let id = match work.task {
            Task::Loosen => "pull_slowly",
            Task::Tighten | Task::Recheck => "pull",
        };
        work.act(id)
            .accept("no_pipe", Bound::Words)
            .priority(Priority::PackOnly);
    },
    put_away: |work| {
        if work.task != Task::Loosen {
            work.phase(Phase::Finish);
            work.act("wrench_down").priority(Priority::PackOnly);
        }
    },
    meets: &[StudInLine],
    meets_release: &[LastFasteners, StudInLine],
};

fn set_up(work: &mut Work, case: &Case<'_>) {
    let chosen = &case.computed.chosen;
    let wrench = chosen.turning.first();
    if let Some(spanner) = back_up(case) {
        work.tick("back_up").with("back_up", spanner);
    }
    if work.task != Task::Loosen {
        if let Some(wrench) = wrench {
            work.act("trial")
                .with("tool", Value::Text(wrench.name.clone()))
                .accept("trial", Bound::Words)
                .priority(Priority::PackOnly);
        }
        work.tick("footing").priority(OPTIONAL);
        return;
    }
    let bar = chosen.loosening.first();
    let bar = bar.filter(|tool| tool.kind == ToolKind::LooseningBar);
    match (bar, wrench) {
        (Some(bar), _) => work.tick("bar").with("bar", Value::Text(bar.name.clone())),
        (None, Some(wrench)) if !chosen.loosening.iter().any(|it| it.name == wrench.name) => work
            .tick("bar_not_wrench")
            .with("tool", Value::Text(wrench.name.clone())),
        _ => work.tick("bar_any"),
    };
}
