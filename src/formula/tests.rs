//! The four readings of one expression: number, dimension, text, tree.

use proptest::prelude::*;

use super::*;
use crate::units::{Dimension, Units};

const A: Symbol = Symbol::new("a", Dimension::Length, "a");
const B: Symbol = Symbol::new("b", Dimension::Length, "b");
const C: Symbol = Symbol::new("c", Dimension::Length, "c");
const D2: Symbol = Symbol::new("d2", Dimension::Length, "d2");
const FRICTION: Symbol = Symbol::new("µ_th", Dimension::Ratio, "thread_friction");
const AREA: Symbol = Symbol::new("A_s", Dimension::Area, "area");
const RATIO: Symbol = Symbol::new("q", Dimension::Ratio, "ratio");

fn made(symbol: Symbol, expression: impl Into<Expression>) -> Formula {
    Formula::new("test.formula", symbol, expression, "no source", "geometry")
}

fn text(expression: impl Into<Expression>) -> String {
    made(A, expression).text()
}

#[test]
fn brackets_stand_only_where_they_are_needed() {
    let lines = [
        (text(A + B + C), "a + b + c"),
        (text(A + (B - C)), "a + b − c"),
        (text(A - (B - C)), "a − (b − c)"),
        (text((A - B) - C), "a − b − c"),
        (text(A * (B + C)), "a · (b + c)"),
        (text((A + B) * C), "(a + b) · c"),
        (text(A * B / C), "a · b / c"),
        (text(A * (B / C)), "a · b / c"),
        (text((A / B) * C), "(a / b) · c"),
        (text(A / (B * C)), "a / (b · c)"),
        (text((A / B) / C), "(a / b) / c"),
        (text(A / (B / C)), "a / (b / c)"),
        (text(A / B + C), "a / b + c"),
        (text(A * (B / C) * A), "a · (b / c) · a"),
        (text(A.square()), "a²"),
        (text((A + B).square() / C), "(a + b)² / c"),
        (text((A * B).square()), "(a · b)²"),
        (text(-(A + B)), "−(a + b)"),
        (text(-(A * B)), "−a · b"),
        (text(C - (-A)), "c − (−a)"),
        (text(C * (-A)), "c · (−a)"),
        (text(sqrt(A)), "√a"),
        (text(sqrt(A + B)), "√(a + b)"),
        (text(cube_root(A * B)), "∛(a · b)"),
        (text(min(A, B + C)), "min(a, b + c)"),
        (
            text(tan(FRICTION) / cos(degrees(30.0))),
            "tan(µth) / cos(30°)",
        ),
        (text(A / (2.0 * pi())), "a / (2\u{a0}π)"),
        (text(0.577 * D2 * FRICTION), "0.577 · d2 · µth"),
        (
            text(1.5 * A + fixed("1/8", "in", 0.003175, Dimension::Length)),
            "1.5 · a + 1/8\u{a0}in",
        ),
    ];
    for (line, wanted) in lines {
        assert_eq!(line, wanted);
    }
}

#[test]
fn numbers_are_put_in_with_their_units() {
    let area = made(AREA, (pi() / 4.0) * (A - 0.938194 * B).square());
    let units = Units::metric();
    let numbers = [
        units.print_si(0.048, Dimension::Length),
        units.print_si(0.005, Dimension::Length),
    ];
    assert_eq!(
        area.text_with_numbers(&numbers).replace('\u{a0}', " "),
        "(π / 4) · (48 mm − 0.938194 · 5 mm)²"
    );
    let square = made(AREA, A.square());
    assert_eq!(
        square
            .text_with_numbers(&numbers[..1])
            .replace('\u{a0}', " "),
        "(48 mm)²"
    );
}

#[test]
fn a_negative_number_is_put_in_brackets() {
    let units = Units::metric();
    let sum = made(A, A - B);
    let numbers = [
        units.print_si(-0.002, Dimension::Length),
        units.print_si(-0.005, Dimension::Length),
    ];
    assert_eq!(
        sum.text_with_numbers(&numbers).replace('\u{a0}', " "),
        "−2 mm − (−5 mm)"
    );
}

#[test]
fn inputs_stand_in_order_of_appearance_and_once() {
    let formula = made(AREA, B * (A + B) + C.square());
    let names: Vec<&str> = formula.inputs.iter().map(|symbol| symbol.name).collect();
    assert_eq!(names, ["b", "a", "c"]);
    // 2·(3 + 2) + 5² = 35, whatever the order in which the values are named.
    assert!((formula.value(&[2.0, 3.0, 5.0]) - 35.0).abs() < 1e-12);
    assert!((formula.value_with(&[(C, 5.0), (A, 3.0), (B, 2.0)]) - 35.0).abs() < 1e-12);
    assert!(formula.value_with(&[(A, 3.0), (B, 2.0)]).is_nan());
    assert!(
        made(A, min(A, B)).value(&[1.0]).is_nan(),
        "a missing input is never hidden"
    );
}

#[test]
fn a_wrong_formula_is_caught_by_its_dimensions() {
    assert_eq!(made(AREA, A * B).check_dimensions(), Ok(()));
    assert_eq!(made(A, sqrt(A * B)).check_dimensions(), Ok(()));
    assert_eq!(
        made(RATIO, cube_root(A * B / C.square())).check_dimensions(),
        Ok(())
    );
    for wrong in [
        made(AREA, A + B),
        made(A, A + B * C),
        made(A, sqrt(A * B * C)),
        made(A, tan(A) * B),
        made(A, min(A, AREA)),
        made(A, A + 1.0),
        made(AREA, A * FRICTION),
        made(RATIO, cube_root(A)),
    ] {
        assert!(wrong.check_dimensions().is_err(), "{}", wrong.text());
    }
}

#[test]
fn symbols_are_split_into_base_and_index() {
    let split = |name| Symbol::new(name, Dimension::Ratio, "x").split();
    assert_eq!(split("F"), ("F", ""));
    assert_eq!(split("d2"), ("d", "2"));
    assert_eq!(split("µ_th"), ("µ", "th"));
    assert_eq!(split("R_p0.2"), ("R", "p0.2"));
}

#[test]
fn the_tree_carries_its_own_brackets() {
    let formula = made(AREA, (pi() / 4.0) * (A - 0.5 * B).square());
    let json = serde_json::to_value(formula.tree()).unwrap();
    assert_eq!(
        json,
        serde_json::json!({ "kind": "product", "factors": [
            { "kind": "fraction", "over": { "kind": "pi" }, "under": { "kind": "number", "text": "4" } },
            { "kind": "power", "exponent": "2", "base": { "kind": "group", "inner": { "kind": "sum", "terms": [
                { "minus": false, "node": { "kind": "symbol", "base": "a", "index": "" } },
                { "minus": true, "node": { "kind": "product", "factors": [
                    { "kind": "number", "text": "0.5" },
                    { "kind": "symbol", "base": "b", "index": "" },
                ] } },
            ] } } },
        ] })
    );
    let numbers = [Units::metric().print_si(0.048, Dimension::Length)];
    let json = serde_json::to_value(made(AREA, A.square()).tree_with_numbers(&numbers)).unwrap();
    assert_eq!(
        json,
        serde_json::json!({ "kind": "power", "exponent": "2", "base": { "kind": "group", "inner":
            { "kind": "quantity", "value": "48", "unit": "mm" } } })
    );
}

/// A reader of the printed lines, with the rules of arithmetic that every pocket calculator keeps. It is written
/// apart from the program, so that a bracket too few shows as another number.
struct Calculator<'a> {
    signs: std::iter::Peekable<std::str::Chars<'a>>,
    values: [f64; 3],
}

impl Calculator<'_> {
    fn sum(&mut self) -> f64 {
        let mut value = if self.take('−') {
            -self.product()
        } else {
            self.product()
        };
        loop {
            if self.take('+') {
                value += self.product();
            } else if self.take('−') {
                value -= self.product();
            } else {
                return value;
            }
        }
    }

    fn product(&mut self) -> f64 {
        let mut value = self.power();
        loop {
            if self.take('·') {
                value *= self.power();
            } else if self.take('/') {
                value /= self.power();
            } else {
                return value;
            }
        }
    }

    fn power(&mut self) -> f64 {
        let base = self.atom();
        if self.take('²') { base * base } else { base }
    }

    fn atom(&mut self) -> f64 {
        if self.take('(') {
            let value = self.sum();
            assert!(self.take(')'));
            return value;
        }
        match self.signs.next() {
            Some('√') => self.atom().sqrt(),
            Some(name @ ('a'..='c')) => self.values["abc".find(name).unwrap()],
            Some(digit) => f64::from(digit.to_digit(10).unwrap()),
            None => panic!("a line that ends too early"),
        }
    }

    fn take(&mut self, sign: char) -> bool {
        self.signs.next_if_eq(&sign).is_some()
    }
}

fn any_expression() -> impl Strategy<Value = Expression> {
    let leaf = prop_oneof![
        Just(Expression::from(A)),
        Just(Expression::from(B)),
        Just(Expression::from(C)),
        (1_u32..9).prop_map(|digit| number(f64::from(digit))),
    ];
    leaf.prop_recursive(5, 40, 2, |inner| {
        let two = (inner.clone(), inner.clone());
        prop_oneof![
            two.clone().prop_map(|(a, b)| a + b),
            two.clone().prop_map(|(a, b)| a - b),
            two.clone().prop_map(|(a, b)| a * b),
            two.prop_map(|(a, b)| a / b),
            inner.clone().prop_map(Expression::square),
            inner.clone().prop_map(|a| -a),
            inner.prop_map(|a| sqrt(a.square())),
        ]
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(2000) })]

    /// What is printed, read back by other hands, is what is computed.
    #[test]
    fn a_printed_line_read_back_gives_the_value(
        expression in any_expression(),
        values in prop::array::uniform3(0.5_f64..4.0),
    ) {
        let formula = made(A, expression);
        let line = formula.text().replace([' ', '\u{a0}'], "");
        let mut calculator = Calculator { signs: line.chars().peekable(), values };
        let read = calculator.sum();
        prop_assert!(calculator.signs.next().is_none(), "not all of {line} was read");
        let ordered = formula.arrange(|symbol| values["abc".find(symbol.name).unwrap()]);
        let computed = formula.value(&ordered);
        if computed.is_finite() && computed.abs() < 1e12 {
            let tolerance = 1e-6 * computed.abs().max(1.0);
            prop_assume!(read.is_finite());
            prop_assert!((read - computed).abs() <= tolerance, "{line}: {read} instead of {computed}");
        }
    }
}
