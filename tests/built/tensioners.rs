//! The example with multi-jackbolt tensioners, as it is and with other tools.

use super::example;
use super::flanges::change;

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

/// What the anchors of the example are to have instead.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Anchors {
    /// Jackbolts of one tensioner.
    pub(crate) jackbolts: usize,
    /// Studs with a tensioner each.
    pub(crate) studs: usize,
    /// Spindles of the driver; none without one.
    pub(crate) spindles: Option<usize>,
    /// Peak of the release over the installed load.
    pub(crate) peak: f64,
}

/// Anchors with a driver that turns all jackbolts of a stud at once.
pub(crate) const fn anchors(jackbolts: usize, studs: usize) -> Anchors {
    Anchors {
        jackbolts,
        studs,
        spindles: Some(jackbolts),
        peak: 1.3,
    }
}

impl Anchors {
    /// The job of these anchors alone. Few jackbolts carry less and many are small, so that their tensioner
    /// could be built.
    pub(crate) fn job(self) -> String {
        let (thread, flats, tip) = match self.jackbolts {
            0..=16 => ("M20", 17, 14),
            _ => ("M12", 10, 9),
        };
        let stress = match self.jackbolts {
            0..=16 => (25 * self.jackbolts).min(300),
            _ => 200,
        };
        let text = match self.spindles {
            Some(_) => tie_rods_with_a_larger_wrench(),
            None => by_hand_alone(),
        };
        let (rods, anchors) = ("  - { tag: PR-120-TR-01", "  - { tag: PR-120-AN-01");
        let text: String = text
            .lines()
            .filter(|line| !line.starts_with(rods))
            .flat_map(|line| [line, "\n"])
            .collect();
        assert!(text.contains(anchors), "the anchors are there");
        let spindles = self.spindles.unwrap_or(self.jackbolts);
        [
            (
                "jackbolts: 12\n    thread: M20\n",
                format!("jackbolts: {}\n    thread: {thread}\n", self.jackbolts),
            ),
            (
                "across_flats: 17 mm\n",
                format!("across_flats: {flats} mm\n"),
            ),
            ("tip_diameter: 14 mm", format!("tip_diameter: {tip} mm")),
            ("spindles: 12\n", format!("spindles: {spindles}\n")),
            ("socket: 17 mm\n", format!("socket: {flats} mm\n")),
            ("{ count: 16, ", format!("{{ count: {}, ", self.studs)),
            ("stretch: [1, 9]", "stretch: [1]".to_owned()),
            ("stress: 300 MPa", format!("stress: {stress} MPa")),
            ("peak: 1.3", format!("peak: {}", self.peak)),
            ("[60 N·m, 320 N·m]", "[5 N·m, 600 N·m]".to_owned()),
            ("[110 N·m, 1000 N·m]", "[5 N·m, 2000 N·m]".to_owned()),
        ]
        .iter()
        .fold(text, |text, (from, to)| change(&text, from, to))
    }
}
