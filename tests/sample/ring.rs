//! The bolt circle of the sample joint and the order of its studs.

use studbook::document::card::{Mark, Order, Picture, Sector, ToolMark};

use super::head;

/// Letters of moves: A to Z without I and O, then AA and so on.
pub(crate) fn letter(index: usize) -> String {
    const LETTERS: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";
    let last = char::from(LETTERS[index % LETTERS.len()]).to_string();
    match index / LETTERS.len() {
        0 => last,
        above => format!("{}{last}", letter(above - 1)),
    }
}

/// Opposite pairs when the count is even and two tools work, else one after the other.
fn moves(count: usize, tools: usize) -> Vec<Vec<usize>> {
    let half = count / 2;
    if tools == 2 && count.is_multiple_of(2) {
        (1..=half).map(|stud| vec![stud, stud + half]).collect()
    } else {
        (1..=count).map(|stud| vec![stud]).collect()
    }
}

pub(crate) fn angle(index: usize, count: usize) -> f64 {
    360.0 * index as f64 / count as f64
}

pub(crate) fn picture(count: usize, tools: usize) -> Picture {
    let grouped = count > 32;
    let group = 4;
    let (moves, half) = (moves(count, tools), count / 2);
    let (numbers, letters, divisions) = if grouped {
        let groups: Vec<(usize, usize)> = (0..count)
            .step_by(group)
            .map(|first| (first, (first + group).min(count) - 1))
            .collect();
        (
            groups
                .iter()
                .map(|(first, _)| Mark {
                    angle: angle(*first, count),
                    text: (first + 1).to_string(),
                    first: *first == 0,
                })
                .collect(),
            groups
                .iter()
                .enumerate()
                .map(|(index, (first, last))| Mark {
                    angle: angle(first + last, 2 * count),
                    text: letter(index),
                    first: false,
                })
                .collect(),
            groups
                .iter()
                .map(|(first, _)| angle(2 * first, 2 * count) - angle(1, 2 * count))
                .collect(),
        )
    } else {
        let numbers = (0..count)
            .map(|stud| Mark {
                angle: angle(stud, count),
                text: (stud + 1).to_string(),
                first: stud == 0,
            })
            .collect();
        let letters = moves.iter().enumerate().flat_map(|(index, studs)| {
            studs.iter().map(move |stud| Mark {
                angle: angle(stud - 1, count),
                text: letter(index),
                first: false,
            })
        });
        (numbers, letters.collect(), Vec::new())
    };
    Picture {
        head: head("From the nut side", "facing south"),
        outer: 1235.0,
        inner: 960.0,
        circle: 1120.0,
        nut: 86.6_f64.min(2200.0 / count as f64),
        fasteners: (0..count).map(|stud| angle(stud, count)).collect(),
        numbers,
        letters,
        divisions,
        clockwise: true,
        direction: vec!["numbers run".into(), "clockwise".into()],
        top: "top".into(),
        tools: (0..tools.min(count))
            .map(|tool| ToolMark {
                angle: angle(tool * half, count),
                reaction: (count > 2)
                    .then(|| angle(tool * half, count) + 26.0_f64.min(angle(1, count))),
            })
            .collect(),
        no_hands: (0..tools.min(count))
            .filter(|_| count > 2)
            .map(|tool| Sector {
                from: angle(tool * half, count) - 8.0,
                to: angle(tool * half, count) + 26.0_f64.min(angle(1, count)) + 8.0,
            })
            .collect(),
        obstacles: vec![Sector {
            from: 230.0,
            to: 246.0,
        }],
        legend: vec![
            "circle 1120 mm · hatched: bracket".into(),
            "sector: no hands · ring: wrench · bar: reaction".into(),
        ],
    }
}

pub(crate) fn order(count: usize, tools: usize) -> Order {
    if count > 64 {
        return Order::new(
            "Order",
            &[],
            "The full list stands on note HL-31-WP-007-CN-a.",
        );
    }
    let entries: Vec<(String, String)> = if count > 32 {
        let groups = 0..count.div_ceil(4);
        groups
            .map(|group| {
                (
                    letter(group),
                    format!("{}–{}", group * 4 + 1, (group * 4 + 4).min(count)),
                )
            })
            .collect()
    } else {
        let moves = moves(count, tools);
        let named = moves.iter().enumerate();
        named
            .map(|(index, studs)| {
                let studs: Vec<String> = studs.iter().map(usize::to_string).collect();
                (letter(index), studs.join("·"))
            })
            .collect()
    };
    Order::new("Order", &entries, "")
}
