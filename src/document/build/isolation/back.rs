//! Page three: give it back.

use crate::document::blocks::Head;
use crate::document::isolation::{Grid, Labelled, Return, SignList};
use crate::job::Isolation;
use crate::joint::Joint;

use super::super::context::Context;
use super::steps;

/// Names that page three prints; more are counted.
const NAMES: usize = 12;
/// Rows of handovers: three shifts.
const HANDOVERS: usize = 3;

/// What must be true, the joints to be signed, the handovers of the lock box.
pub(super) fn page(context: &Context<'_>, isolation: &Isolation, behind: &[&Joint]) -> Return {
    let label = |key: &str| context.label(&format!("isolation.{key}"));
    let column = |key: &str, width: f64| Labelled {
        number: String::new(),
        label: label(key),
        width,
        unit: String::new(),
    };
    let more = behind.len().saturating_sub(NAMES);
    Return {
        head: Head {
            title: label("back.title"),
            note: label("back.note"),
        },
        steps: steps::back(context, isolation, behind.len()),
        joints: SignList {
            head: Head {
                title: label("joints.title"),
                note: label("joints.note"),
            },
            names: behind
                .iter()
                .take(NAMES)
                .map(|joint| joint.tag.clone())
                .collect(),
            more: match more {
                0 => String::new(),
                more => context.say1("isolation.joints.more", "count", more),
            },
        },
        handover: Grid {
            head: Head {
                title: label("handover.title"),
                note: label("handover.note"),
            },
            columns: vec![
                column("handover.time", 36.0),
                column("handover.outgoing", 58.0),
                column("handover.incoming", 58.0),
                column("handover.key", 24.0),
            ],
            rows: HANDOVERS,
        },
        closing: format!("{} {}", label("supports"), context.label("footer.defer")),
    }
}
