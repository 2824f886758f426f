//! What names a joint on paper.

use crate::joint::{Fact, Identity, Level, Who};
use crate::yaml::At;

use super::Catalog;
use super::layers::Layers;

pub(super) fn identity(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Identity {
    let pack_unit = catalog
        .pack()
        .and_then(|pack| pack.unit.as_ref())
        .and_then(|unit| {
            unit.get()
                .map(|name| Fact::job(name.as_str().to_owned(), unit.place(), Level::Shared))
        });
    let drawing = layers.leaf(|keys| keys.drawing.as_ref()).and_then(|leaf| {
        let number = leaf.value.number.get()?.as_str().to_owned();
        let revision = leaf.value.revision.as_ref().and_then(At::get);
        Some((
            number,
            revision.map(|revision| revision.as_str().to_owned()),
        ))
    });
    Identity {
        equipment: layers.text("equipment", Who::Planner, |keys| keys.equipment.as_ref()),
        equipment_name: layers
            .leaf(|keys| keys.equipment_name.as_ref())
            .map(|leaf| leaf.value.as_str().to_owned()),
        unit: layers
            .text("unit", Who::Planner, |keys| keys.unit.as_ref())
            .or(|| pack_unit.unwrap_or(Fact::missing("pack.unit", Who::Planner))),
        location: layers.text("place", Who::Planner, |keys| keys.place.as_ref()),
        drawing,
        photo: layers
            .leaf(|keys| keys.photo.as_ref())
            .map(|leaf| (leaf.value.as_str().to_owned(), leaf.place)),
        danger: layers
            .leaf(|keys| keys.danger.as_ref())
            .map(|leaf| leaf.value.as_str().to_owned()),
    }
}
