//! The example with multi-jackbolt tensioners, as it is and with other tools.

use super::example;

/// The tie rods with the bearing faces that the prediction asks for, as far as the example lacks them.
pub(crate) fn tie_rods() -> String {
    let mut text = example("tie-rods.yaml");
    if !text.contains("bearing_outer") {
        for (tensioner, face) in [("JT-125", "176 mm"), ("JT-80", "112 mm")] {
            let given = format!("tensioner: {tensioner}, bearing_outer: {face}");
            text = text.replace(&format!("tensioner: {tensioner}"), &given);
        }
    }
    text
}

/// The same with a wrench that bears the break-out of the highest load: then the release has a plan.
pub(crate) fn tie_rods_with_a_larger_wrench() -> String {
    let text = tie_rods().replace("range: [110 N·m, 600 N·m]", "range: [110 N·m, 1000 N·m]");
    ["TW-31", "TW-33"].iter().fold(text, |text, wrench| {
        text.replace(
            &format!("loosen: {{ with: {wrench}"),
            "loosen: { with: TW-32",
        )
    })
}

/// All studs without their drivers.
pub(crate) fn by_hand_alone() -> String {
    tie_rods_with_a_larger_wrench()
        .replace("driver: MD-3, driver_level: 80 %, reversal: 60 N·m, ", "")
        .replace("driver: MD-4, driver_level: 80 %, reversal: 110 N·m, ", "")
}

/// The rods cannot be let go in rounds by a wrench that does not bear even the installed load's break-out.
pub(crate) fn rods_with_a_small_wrench() -> String {
    tie_rods().replace("range: [110 N·m, 600 N·m]", "range: [110 N·m, 500 N·m]")
}
