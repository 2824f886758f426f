//! The order in which the fasteners of a joint are tightened or let go.
//!
//! One tool follows the listed cross patterns where a pattern is listed, and the rule behind them
//! for any other count. Two or four tools take the pairs and quads of that rule at once, so that
//! the joint is drawn together evenly whatever stands on site.
//!
//! Studs are numbered from 1, clockwise as the person tightening sees them.
//!
//! Source of the lists: the cross patterns of ASME PCC-1 (legacy order, one bolt at a time), as
//! restated in open texts; `tests/cases/order.yaml` names the source and the confidence of each.
//! The rule for any count is the program's own and gives the lists of 4 to 24 and of 32 exactly.

use std::fmt;

use serde::Serialize;

use crate::job::Pattern;

/// Above this count an order is refused: such a joint wants a plan of its own.
pub const MOST_FASTENERS: usize = 400;
/// Above this count the picture of a joint numbers groups instead of studs.
pub const MOST_NUMBERED: usize = 32;
/// Above this count the full list stands on the calculation note and not on the card.
pub const MOST_LISTED_ON_CARD: usize = 64;

/// Why there is no order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OrderError {
    /// A joint without fasteners.
    None,
    /// More than [`MOST_FASTENERS`].
    TooMany {
        /// How many there are.
        count: usize,
    },
}

impl fmt::Display for OrderError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::None => out.write_str("no fasteners"),
            Self::TooMany { count } => write!(out, "{count} fasteners, at most {MOST_FASTENERS}"),
        }
    }
}

impl std::error::Error for OrderError {}

/// How the studs of one move are done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Move {
    /// All at the same time, one tool on each.
    AtOnce,
    /// One after the other, clockwise, with one tool.
    OneByOne,
}

/// An order: every stud exactly once.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Order {
    /// Its shape.
    pub pattern: Pattern,
    /// How the studs of one move are done.
    pub within: Move,
    /// The moves in order, each with its stud numbers from 1.
    pub moves: Vec<Vec<usize>>,
}

impl Order {
    /// The order of `count` fasteners with `tools` tools working at once (1, 2 or 4; see
    /// [`tools_at_once`], which never returns a number that does not divide the count).
    ///
    /// # Errors
    /// No fasteners, or more than [`MOST_FASTENERS`].
    pub fn new(pattern: Pattern, count: usize, tools: usize) -> Result<Self, OrderError> {
        match count {
            0 => return Err(OrderError::None),
            1..=MOST_FASTENERS => {}
            _ => return Err(OrderError::TooMany { count }),
        }
        let tools = tools_at_once(count, tools).at_once;
        Ok(match pattern {
            Pattern::Circular => circular(count, tools),
            Pattern::Cross if tools == 1 => cross_with_one_tool(count),
            Pattern::Cross => Self::at_once(Pattern::Cross, &cross_by_rule(count), tools),
        })
    }

    /// Cuts one long sequence into moves of `tools` studs.
    fn at_once(pattern: Pattern, sequence: &[usize], tools: usize) -> Self {
        Self {
            pattern,
            within: Move::AtOnce,
            moves: sequence.chunks(tools).map(<[usize]>::to_vec).collect(),
        }
    }

    /// All stud numbers in the order in which they are reached.
    pub fn sequence(&self) -> Vec<usize> {
        self.moves.iter().flatten().copied().collect()
    }

    /// The moves with their letters.
    pub fn lettered(&self) -> impl Iterator<Item = (String, &[usize])> {
        self.moves
            .iter()
            .enumerate()
            .map(|(index, studs)| (move_letter(index), studs.as_slice()))
    }
}

/// How many tools work at the same time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct ToolsAtOnce {
    /// 4, 2 or 1: the largest that is on hand and divides the count.
    pub at_once: usize,
    /// How many of the tools on hand (at most four) stand idle because the count does not divide:
    /// rule T22 speaks when this is not zero.
    pub idle: usize,
}

/// The largest of 4, 2 and 1 that is not above the tools on hand and divides the count.
pub fn tools_at_once(count: usize, on_hand: usize) -> ToolsAtOnce {
    let at_once = [4, 2]
        .into_iter()
        .find(|&tools| tools <= on_hand && count.is_multiple_of(tools))
        .unwrap_or(1);
    ToolsAtOnce {
        at_once,
        idle: on_hand.clamp(1, 4) - at_once,
    }
}

/// The letter of a move, from 0: A to Z without I and O (they read as 1 and 0), then AA, AB...
pub fn move_letter(index: usize) -> String {
    const LETTERS: &[u8; 24] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";
    let last = char::from(LETTERS[index % LETTERS.len()]);
    match index / LETTERS.len() {
        0 => last.to_string(),
        rest => format!("{}{last}", move_letter(rest - 1)),
    }
}

/// How many neighbours the picture of a joint numbers together: 1 up to [`MOST_NUMBERED`]
/// fasteners, above that 4, and 3 for 36 as in the listed pattern.
pub fn picture_group(count: usize) -> usize {
    match count {
        0..=MOST_NUMBERED => 1,
        36 => 3,
        _ => 4,
    }
}

/// The stud numbers of each group of the picture; the last group holds what is left.
pub fn picture_groups(count: usize) -> Vec<Vec<usize>> {
    let studs: Vec<usize> = (1..=count).collect();
    studs
        .chunks(picture_group(count))
        .map(<[usize]>::to_vec)
        .collect()
}

/// The studs at which the gap is read: eight equally spaced places, four up to eight studs, and
/// never more places than studs. Source: eight equal positions, four for eight studs or fewer,
/// common practice, no source.
pub fn gap_positions(count: usize) -> Vec<usize> {
    let places = if count <= 8 { 4 } else { 8 }.min(count);
    (0..places)
        .map(|place| 1 + place * count / places)
        .collect()
}

/// What is wrong with a sequence that somebody gave.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SequenceFault {
    /// The stud is not in the sequence.
    Missing(usize),
    /// The stud is in the sequence more than once.
    Repeated(usize),
    /// There is no such stud.
    NoSuchStud(usize),
}

/// The faults of a given sequence for `count` studs, in the order of the stud numbers; empty if
/// every stud stands in it exactly once.
pub fn check_sequence(sequence: &[usize], count: usize) -> Vec<SequenceFault> {
    let mut seen = vec![0usize; count + 1];
    let mut strange = Vec::new();
    for &stud in sequence {
        match seen.get_mut(stud).filter(|_| stud > 0) {
            Some(times) => *times += 1,
            None => strange.push(SequenceFault::NoSuchStud(stud)),
        }
    }
    let counted = (1..=count).zip(seen.into_iter().skip(1));
    let mut faults: Vec<SequenceFault> = counted
        .filter_map(|(stud, times)| match times {
            0 => Some(SequenceFault::Missing(stud)),
            1 => None,
            _ => Some(SequenceFault::Repeated(stud)),
        })
        .collect();
    strange.sort_unstable();
    strange.dedup();
    faults.append(&mut strange);
    faults
}

fn circular(count: usize, tools: usize) -> Order {
    let step = count / tools;
    let places = 1..=step;
    Order {
        pattern: Pattern::Circular,
        within: Move::AtOnce,
        moves: places
            .map(|first| (0..tools).map(|tool| first + tool * step).collect())
            .collect(),
    }
}

/// The listed pattern where there is one, else the rule.
fn cross_with_one_tool(count: usize) -> Order {
    if let Some((size, first_studs)) = listed_groups(count) {
        return Order {
            pattern: Pattern::Cross,
            within: Move::OneByOne,
            moves: first_studs
                .iter()
                .map(|&first| (first..first + size).collect())
                .collect(),
        };
    }
    let sequence = match count {
        28 => LIST_OF_28.to_vec(),
        _ => cross_by_rule(count),
    };
    Order::at_once(Pattern::Cross, &sequence, 1)
}

/// The only listed pattern of single studs that the rule does not give: its last two quads stand
/// the other way round.
const LIST_OF_28: [usize; 28] = [
    1, 15, 8, 22, 4, 18, 11, 25, 6, 20, 13, 27, 2, 16, 9, 23, 5, 19, 12, 26, 7, 21, 14, 28, 3, 17,
    10, 24,
];

/// Listed patterns that take neighbours as a group: the size of a group and its first studs.
fn listed_groups(count: usize) -> Option<(usize, &'static [usize])> {
    Some(match count {
        36 => (3, &[1, 19, 10, 28, 4, 22, 13, 31, 7, 25, 16, 34]),
        40 => (4, &[1, 21, 13, 33, 5, 25, 17, 37, 9, 29]),
        44 => (4, &[1, 25, 13, 37, 5, 29, 17, 41, 9, 33, 21]),
        48 => (4, &[1, 25, 13, 37, 5, 29, 17, 41, 9, 33, 21, 45]),
        52 => (4, &[1, 29, 13, 41, 5, 33, 17, 45, 21, 49, 25, 9, 37]),
        _ => return None,
    })
}

/// The rule for any count. Counts that divide by four are taken in quads a, a + n/2, a + n/4,
/// a + 3n/4; other even counts in pairs a, a + n/2; odd counts stud by stud.
fn cross_by_rule(count: usize) -> Vec<usize> {
    let members: &[usize] = match count % 4 {
        0 => &[0, 2, 1, 3],
        2 => &[0, 1],
        _ => &[0],
    };
    let places = count / members.len();
    spread(places)
        .into_iter()
        .flat_map(|first| {
            members
                .iter()
                .map(move |member| first + member * places + 1)
        })
        .collect()
}

/// The places 0..`places` of a circle, each next one the farthest from all that were taken; among
/// equals the farthest from the last one taken, then the lowest.
fn spread(places: usize) -> Vec<usize> {
    let distance = |a: usize, b: usize| a.abs_diff(b).min(places - a.abs_diff(b));
    // How far each free place is from the nearest one taken; None once it is taken itself.
    let mut nearest: Vec<Option<usize>> = vec![Some(places); places];
    let mut taken: Vec<usize> = Vec::with_capacity(places);
    for _ in 0..places {
        let free = nearest.iter().enumerate();
        let next = free
            .filter_map(|(place, gap)| gap.map(|gap| (place, gap)))
            .max_by_key(|&(place, gap)| {
                let from_last = taken.last().map_or(0, |&last| distance(place, last));
                (gap, from_last, std::cmp::Reverse(place))
            })
            .map(|(place, _)| place);
        let Some(next) = next else { break };
        nearest[next] = None;
        for (place, gap) in nearest.iter_mut().enumerate() {
            *gap = gap.map(|gap| gap.min(distance(place, next)));
        }
        taken.push(next);
    }
    taken
}

#[cfg(test)]
mod tests {
    use super::*;

    fn order(count: usize, tools: usize) -> Order {
        Order::new(Pattern::Cross, count, tools).expect("count is in range")
    }

    #[test]
    fn letters_leave_out_i_and_o() {
        let letters: Vec<String> = (0..26).map(move_letter).collect();
        assert_eq!(letters[..14].concat(), "ABCDEFGHJKLMNP");
        assert_eq!(letters[23..], ["Z", "AA", "AB"]);
        assert_eq!(move_letter(24 * 25), "AAA");
    }

    #[test]
    fn counts_outside_the_range_have_no_order() {
        assert_eq!(Order::new(Pattern::Cross, 0, 1), Err(OrderError::None));
        assert_eq!(
            Order::new(Pattern::Circular, 401, 2),
            Err(OrderError::TooMany { count: 401 })
        );
    }

    #[test]
    fn tools_that_do_not_divide_the_count_stand_idle() {
        let pick = |count, on_hand| {
            let tools = tools_at_once(count, on_hand);
            (tools.at_once, tools.idle)
        };
        assert_eq!(pick(24, 4), (4, 0));
        assert_eq!(pick(24, 3), (2, 1));
        assert_eq!(pick(6, 4), (2, 2));
        assert_eq!(pick(7, 2), (1, 1));
        assert_eq!(pick(24, 0), (1, 0));
        assert_eq!(pick(24, 9), (4, 0));
    }

    #[test]
    fn several_tools_stand_evenly_round_the_joint() {
        for count in (4..=400).step_by(2) {
            for tools in [2, 4] {
                let tools = tools_at_once(count, tools).at_once;
                for studs in &order(count, tools).moves {
                    let mut studs = studs.clone();
                    studs.sort_unstable();
                    assert_eq!(studs.len(), tools);
                    for pair in studs.windows(2) {
                        assert_eq!(pair[1] - pair[0], count / tools, "{count} with {tools}");
                    }
                }
            }
        }
    }

    #[test]
    fn given_sequences_are_checked() {
        assert!(check_sequence(&[1, 3, 2, 4], 4).is_empty());
        assert_eq!(
            check_sequence(&[1, 3, 3, 9, 0], 4),
            [
                SequenceFault::Missing(2),
                SequenceFault::Repeated(3),
                SequenceFault::Missing(4),
                SequenceFault::NoSuchStud(0),
                SequenceFault::NoSuchStud(9),
            ]
        );
    }

    #[test]
    fn gaps_are_read_at_equal_places() {
        assert_eq!(gap_positions(24), [1, 4, 7, 10, 13, 16, 19, 22]);
        assert_eq!(gap_positions(8), [1, 3, 5, 7]);
        assert_eq!(gap_positions(12), [1, 2, 4, 5, 7, 8, 10, 11]);
        assert_eq!(gap_positions(3), [1, 2, 3]);
        assert!(gap_positions(0).is_empty());
    }

    #[test]
    fn pictures_number_groups_above_32() {
        assert_eq!(picture_groups(32).len(), 32);
        assert_eq!(picture_groups(36)[1], [4, 5, 6]);
        assert_eq!(picture_groups(40).len(), 10);
        assert_eq!(picture_groups(34).last().map(Vec::len), Some(2));
    }
}
