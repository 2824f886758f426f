//! A wrench with an adapter in line is set lower than the torque that the nut gets: every page says the
//! same setting, and the card says both.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use built::cards::cards_of;
use built::with_job;
use studbook::document::build::{CardPages, register};
use studbook::document::card::{Entry, Value};

/// A car service manual: 120 ft·lb with a wrench of 12 in and an extension of 2 in; the manual prints 103.
/// The passes by the same law of levers: 30 % is 36, of which 12/14 are 30.86; 70 % is 84, of which 72.
const JOB: &str = "studbook: 1
pack: { title: Adapter }
lubricants: { paste: { thread_friction: 0.13, bearing_friction: 0.13 } }
tools:
  TW-1: { kind: hand torque wrench, range: [20 ft·lb, 250 ft·lb], scale: ft·lb, step: 1 ft·lb, adapter: { wrench_length: 12 in, extension: 2 in } }
joints:
  - tag: R-1
    studs: { count: 8, thread: 5/8-11 UNC, grade: A193 B7 }
    lubricant: paste
    target: { torque: 120 ft·lb }
    tighten: { with: TW-1, passes: [30 %, 70 %, 100 %] }
";

fn given(value: &Value) -> String {
    match &value.number {
        Entry::Given(number) => format!("{number} {}", value.unit),
        Entry::Missing(who) => panic!("missing: {who}"),
    }
}

#[test]
fn every_page_says_what_the_wrench_is_set_to() {
    with_job("adapter.yaml", JOB, |context| {
        let [card, _] = cards_of(context, 0);
        assert_eq!(given(&card.target.value), "103 ft·lb");
        let second = card
            .target
            .second
            .as_ref()
            .unwrap_or_else(|| panic!("one value"));
        assert_eq!(
            (second.number.as_str(), second.words.as_str()),
            ("120", "at the nut")
        );
        let rows = format!("{:?}", card.steps);
        for pass in ["\"31\"", "\"72\"", "\"103\""] {
            assert!(rows.contains(pass), "{pass}: {rows}");
        }
        for wrong in ["\"36\"", "\"84\"", "\"120\""] {
            assert!(!rows.contains(wrong), "{wrong}: {rows}");
        }
        let text = register(context, CardPages::Here).csv();
        let text = String::from_utf8_lossy(&text).into_owned();
        assert!(text.contains("103"), "{text}");
    });
}
