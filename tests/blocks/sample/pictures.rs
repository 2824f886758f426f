//! A flange and a tensioner.

use studbook::document::blocks::{
    Bolts, Head, Mark, Outline, OutlineLine, Picture, Sector, Shape, ToolMark,
};

use super::parts::texts;

pub(crate) fn around(count: usize) -> Vec<f64> {
    (0..count)
        .map(|index| 360.0 / real(count) * real(index))
        .collect()
}

pub(crate) fn real(count: usize) -> f64 {
    f64::from(u32::try_from(count).expect("a small count"))
}

pub(crate) fn marks(angles: &[f64], text: impl Fn(usize) -> String) -> Vec<Mark> {
    let mark = |(index, angle): (usize, &f64)| Mark {
        angle: *angle,
        text: text(index),
        first: index == 0,
    };
    angles.iter().enumerate().map(mark).collect()
}

/// A flange with its nuts; above 32 they are numbered in groups of four.
pub(crate) fn flange(count: usize) -> Picture {
    let angles = around(count);
    let group = if count > 32 { 4 } else { 1 };
    let numbered: Vec<f64> = around(count / group);
    Picture {
        head: Head::new("From the nut side", "1 at the top, clockwise"),
        outline: Outline {
            edge: 650.0,
            washer: None,
            inner: 470.0,
            line: OutlineLine::Opening,
        },
        bolts: Bolts {
            shape: Shape::Nut,
            circle: 560.0,
            half: (560.0 * 2.2 / real(count)).min(43.0),
            angles: angles.clone(),
            driven: vec![],
        },
        numbers: marks(&numbered, |it| (it + 1).to_string()),
        letters: marks(&numbered, |it| {
            char::from(b'A' + u8::try_from(it % 12).expect("a letter")).to_string()
        }),
        divisions: if group > 1 {
            numbered
                .iter()
                .map(|it| it - 180.0 / real(count / group))
                .collect()
        } else {
            vec![]
        },
        clockwise: true,
        top: "top".into(),
        middle: texts(&["numbers run", "clockwise"]),
        tools: vec![ToolMark {
            angle: 0.0,
            reaction: angles.get(1).copied(),
        }],
        no_hands: vec![Sector {
            from: 2.0,
            to: 28.0,
        }],
        obstacles: vec![Sector {
            from: 232.0,
            to: 248.0,
        }],
        legend: texts(&["grey: no hands", "bar: arm bears here", "hatched: bracket"]),
        ..Picture::default()
    }
}

/// A tensioner with its jackbolts.
pub(crate) fn tensioner(count: usize) -> Picture {
    let angles = around(count);
    let driven = angles.iter().step_by(2).copied().collect();
    Picture {
        head: Head::new("Seen from above", "numbers run clockwise"),
        outline: Outline {
            edge: 90.0,
            washer: Some(82.0),
            inner: 40.0,
            line: OutlineLine::Stud,
        },
        bolts: Bolts {
            shape: Shape::Screw,
            circle: 65.0,
            half: 15.0_f64.min(65.0 * 2.6 / real(count)),
            angles: angles.clone(),
            driven,
        },
        numbers: marks(&angles, |it| (it + 1).to_string()),
        clockwise: true,
        middle: texts(&["stud", "M80×6"]),
        reaction: Some(Sector {
            from: 100.0,
            to: 170.0,
        }),
        positions: marks(&angles[..2], |it| ["X", "Y"][it].to_owned()),
        legend: texts(&[
            "heavy rings: driver in position X",
            "hatched: the driver leans here",
        ]),
        ..Picture::default()
    }
}
