//! What names a joint on paper.

use crate::job::{DrawingReference, JointKeys, Pack};
use crate::joint::Identity;

use super::catalog::Catalog;
use super::layers::Layers;

pub(super) fn identity(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Identity {
    let drawing = layers.leaf(&JointKeys::drawing).map(|leaf| leaf.value);
    Identity {
        equipment: layers.fact(&JointKeys::equipment),
        equipment_name: layers.value(&JointKeys::equipment_name),
        unit: layers
            .fact(&JointKeys::unit)
            .or(|| Pack::unit.shared(catalog.pack())),
        location: layers.fact(&JointKeys::place),
        drawing: DrawingReference::number
            .value(drawing)
            .map(|number| (number, DrawingReference::revision.value(drawing))),
        photo: layers
            .leaf(&JointKeys::photo)
            .map(|leaf| (leaf.value.as_str().to_owned(), leaf.place)),
        danger: layers.value(&JointKeys::danger),
    }
}
