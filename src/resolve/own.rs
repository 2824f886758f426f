//! Keys that one method alone asks for, as they were written.

use crate::job::JointKeys;
use crate::job::table::Field;
use crate::job::values::{Leaf, Value, Visit};
use crate::joint::{Given, Level, OwnKeys};
use crate::report::Place;
use crate::yaml::At;

use super::layers::Layers;

struct Taking<'a> {
    own: &'a mut OwnKeys,
    level: Level,
}

impl Visit for Taking<'_> {
    fn leaf(&mut self, field: &'static Field, leaf: Leaf<'_>, place: Place) {
        let given = match leaf {
            Leaf::Si(si, _) => Given::Si(si),
            Leaf::Text(text) => Given::Text(text.to_owned()),
        };
        self.own.take(field.path, given, (place, self.level));
    }
}

/// What family and joint say, the nearest last.
pub(super) fn own(layers: &Layers<'_>) -> OwnKeys {
    let mut own = OwnKeys::default();
    for (keys, level) in layers.family_keys() {
        let taking = &mut Taking {
            own: &mut own,
            level,
        };
        walk(keys, taking);
    }
    own
}

/// The groups of methods, a line for each.
fn walk(keys: &JointKeys, taking: &mut Taking<'_>) {
    take(keys.turn.as_ref(), &JointKeys::turn.field, taking);
}

fn take<T: Value>(group: Option<&At<T>>, field: &'static Field, taking: &mut Taking<'_>) {
    if let Some(group) = group {
        group.walk(field, group.place(), taking);
    }
}
