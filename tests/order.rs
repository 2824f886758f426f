//! The order of tightening against the published patterns, and as a permutation for every count.

use serde::Deserialize;
use studbook::calc::order::{Order, check_sequence, tools_at_once};
use studbook::job::Pattern;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Cases {
    orders: Vec<Case>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    id: String,
    count: usize,
    order: String,
    source: String,
    provenance: String,
}

impl Case {
    /// `1-3-2-4` or `1..3 > 19..21`: one move per part, as the printed list has it.
    fn moves(&self) -> Vec<Vec<usize>> {
        let number = |text: &str| text.trim().parse::<usize>().expect("a stud number");
        if !self.order.contains('>') {
            return self
                .order
                .split('-')
                .map(|stud| vec![number(stud)])
                .collect();
        }
        let parts = self.order.split('>');
        parts
            .map(|part| {
                let (first, last) = part.split_once("..").expect("a range of studs");
                (number(first)..=number(last)).collect()
            })
            .collect()
    }
}

fn cases() -> Vec<Case> {
    let text = include_str!("cases/order.yaml");
    let cases: Cases = serde_yaml::from_str(text).expect("the cases are well formed");
    cases.orders
}

#[test]
fn every_listed_pattern_is_followed() {
    let cases = cases();
    assert_eq!(cases.len(), 18, "13 lists and 5 examples of the rule");
    for case in cases {
        assert!(!case.source.is_empty() && !case.provenance.is_empty());
        let expected = case.moves();
        let listed: Vec<usize> = expected.iter().flatten().copied().collect();
        assert!(
            check_sequence(&listed, case.count).is_empty(),
            "{}: the list itself",
            case.id
        );
        let order = Order::new(Pattern::Cross, case.count, 1).expect("in range");
        assert_eq!(order.moves, expected, "{} from {}", case.id, case.source);
    }
}

#[test]
fn every_count_with_every_number_of_tools_reaches_every_stud_once() {
    for count in 1..=400 {
        for tools in [1, 2, 4] {
            for pattern in [Pattern::Cross, Pattern::Circular] {
                let order = Order::new(pattern, count, tools).expect("in range");
                let faults = check_sequence(&order.sequence(), count);
                assert!(faults.is_empty(), "{count} with {tools}: {faults:?}");
                if count % 25 == 0 {
                    assert_eq!(order, Order::new(pattern, count, tools).expect("in range"));
                }
            }
        }
    }
}

/// With several tools a count that divides by four starts with the two pairs of its first quad.
#[test]
fn pairs_and_quads_belong_to_the_same_order() {
    for count in (4..=400).step_by(4) {
        let quads = Order::new(Pattern::Cross, count, 4)
            .expect("in range")
            .sequence();
        let pairs = Order::new(Pattern::Cross, count, 2)
            .expect("in range")
            .sequence();
        assert_eq!(quads, pairs, "{count}");
        assert_eq!(tools_at_once(count, 4).at_once, 4);
        let half = count / 2;
        let first_pair = [1, 1 + half];
        assert_eq!(pairs[..2], first_pair);
    }
}
