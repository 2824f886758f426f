//! The channel flanges of the main example with other joints, numbers and words.

use super::example;

/// The example with hydraulic wrenches on its channel flanges.
pub(crate) fn channel() -> String {
    example("effluent-cooler.yaml")
}

/// A text with a part of it changed, which must be there.
pub(crate) fn change(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "`{from}` is not in the job");
    text.replace(from, to)
}

/// A job with other joints, each given by its keys.
pub(crate) fn with_joints(text: &str, joints: impl IntoIterator<Item = String>) -> String {
    let (head, _) = text
        .split_once("\njoints:\n")
        .expect("a job has joints at its end");
    joints
        .into_iter()
        .fold(format!("{head}\njoints:\n"), |text, joint| {
            text + "  - { " + &joint + " }\n"
        })
}

/// The keys of a channel flange with as many studs, on a circle that holds them.
pub(crate) fn flange(count: usize) -> String {
    let circle = (45 * count).max(1085);
    // An obstacle takes a line of the legend: above 32 studs none is left, at 32 the letters would touch.
    let obstacle = match count {
        0..=24 => ", obstacles: [{ what: bracket, at: 1 }]",
        _ => "",
    };
    format!(
        "tag: E-310-CH-{count:02}, family: channel flange, place: \"north channel, +6 m platform\", \
         studs: {{ count: {count}, bolt_circle: {circle} mm, flange_diameter: {} mm }}, \
         checks: {{ stretch: [1] }}{obstacle}",
        circle + 115
    )
}

/// The example with a flange for each of these counts of studs.
pub(crate) fn flanges(counts: &[usize]) -> String {
    with_joints(&channel(), counts.iter().map(|count| flange(*count)))
}

/// The same when neither target nor pump is known.
pub(crate) fn unknown(text: &str) -> String {
    let text = change(text, "    target: { stress: 345 MPa }\n", "");
    change(&text, "      hydraulics: [P-03, G-21, HS-4, QC-2]\n", "")
}

/// Text of so many signs, made of words that a planner would write.
pub(crate) fn words(count: usize) -> String {
    let words = "lower hemisphere nozzle beside the stairway above level four ".chars();
    let text: String = words.cycle().take(count).collect();
    match text.strip_suffix(' ') {
        Some(text) => format!("{text}x"),
        None => text,
    }
}
