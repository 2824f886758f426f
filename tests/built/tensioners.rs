//! The example with multi-jackbolt tensioners, as it is and with other tools.

use super::example;

/// The tie rods and anchors of the example.
pub(crate) fn tie_rods() -> String {
    example("tie-rods.yaml")
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

/// Long rods on short jackbolts cannot be let go in rounds by a wrench that hardly bears the break-out
/// of the installed load.
pub(crate) fn rods_with_a_small_wrench() -> String {
    tie_rods()
        .replace("range: [110 N·m, 600 N·m]", "range: [110 N·m, 500 N·m]")
        .replace("    free_length: 90 mm\n", "")
        .replace(
            "length: 1480 mm, grip: 1130 mm",
            "length: 2310 mm, grip: 1960 mm",
        )
}
