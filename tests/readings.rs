//! What tools are set to: through an adapter, on their own scale, to their own step, up, down or to the nearest.
//!
//! Figures are hand calculations, written out; the usual steps are common practice without a source, the adapter is that
//! of a car service manual (120 ft·lb with 12 in and 2 in: 103).

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use std::sync::Arc;

use built::with_job;
use studbook::joint::{Dial, Lack, Tool, ToolReading, Who};
use studbook::units::{Dimension, Pressure, Quantity, Torque, Unit, Units, parse_si, unit_named};

const JOB: &str = "studbook: 1
pack: { title: Readings }
lubricants: { paste: { thread_friction: 0.13, bearing_friction: 0.13 } }
tools:
  own step: { kind: hand torque wrench, range: [100 N·m, 600 N·m], step: 2 N·m }
  tenths: { kind: hand torque wrench, range: [0.1 N·m, 2 N·m], step: 0.1 N·m }
  adapter: { kind: hand torque wrench, range: [20 ft·lb, 250 ft·lb], scale: ft·lb, step: 1 ft·lb, adapter: { wrench_length: 12 in, extension: 2 in } }
  coarse adapter: { kind: hand torque wrench, range: [20 ft·lb, 250 ft·lb], scale: ft·lb, step: 5 ft·lb, adapter: { wrench_length: 12 in, extension: 2 in } }
  large: { kind: hand torque wrench, range: [1 kN·m, 8 kN·m], scale: kN·m }
  pump wrench: { kind: hydraulic torque wrench, calibration: { points: [[100 bar, 905 N·m], [400 bar, 3660 N·m], [690 bar, 6340 N·m]] } }
  odd ends: { kind: hydraulic torque wrench, calibration: { points: [[102 bar, 920 N·m], [402 bar, 3680 N·m]] } }
joints:
  - tag: R-1
    studs: { count: 8, thread: 5/8-11 UNC, grade: A193 B7 }
    lubricant: paste
    target: { torque: 120 ft·lb }
    tighten: { with: [own step, tenths, adapter, coarse adapter, large, pump wrench, odd ends] }
";

fn tool(name: &str) -> Arc<Tool> {
    with_job("readings.yaml", JOB, |context| {
        let tools = &context.joints[0].mechanics.tools.tightening;
        let found = tools.iter().find(|tool| tool.name == name);
        Arc::clone(found.unwrap_or_else(|| panic!("no tool {name}")))
    })
}

fn scale(name: &str) -> &'static Unit {
    unit_named(Dimension::Torque, name).expect("a unit of torque")
}

fn torque(text: &str) -> Torque {
    let si = parse_si(text, Dimension::Torque);
    Torque::from_si(si.unwrap_or_else(|error| panic!("{text}: {error:?}")))
}

fn printed(reading: Result<ToolReading, Lack>) -> String {
    match reading {
        Ok(reading) => reading
            .printed(&Units::metric())
            .joined()
            .replace('\u{a0}', " "),
        Err(lack) => format!("{} by {}", lack.key, lack.who.key()),
    }
}

/// What is wanted at the nut, what is set, what is never passed.
fn shows(dial: Dial<'_>, rows: &[(&str, &str, &str)]) {
    for (wanted, set, never) in rows {
        assert_eq!(printed(dial.set(torque(wanted))), *set, "set to {wanted}");
        assert_eq!(
            printed(dial.never(torque(wanted))),
            *never,
            "never above {wanted}"
        );
    }
}

fn near(value: Torque, wanted: &str) {
    let wanted = torque(wanted).si();
    assert!((value.si() / wanted - 1.0).abs() < 1e-9, "{value:?}");
}

/// 120 × 12 / 14 = 102.86. A step of 5 makes 105 of it, and the nut gets 105 × 14 / 12 = 122.5. Below 102.86 lie 102
/// and 100; at 102 the nut gets 119.
#[test]
fn an_adapter_is_rounded_on_the_dial() {
    let (fine, coarse) = (tool("adapter"), tool("coarse adapter"));
    let (fine, coarse) = (
        Dial::of_torque(Some(&fine), fine.scale),
        Dial::of_torque(Some(&coarse), coarse.scale),
    );
    shows(fine, &[("120 ft·lb", "103 ft·lb", "102 ft·lb")]);
    shows(coarse, &[("120 ft·lb", "105 ft·lb", "100 ft·lb")]);
    let set = coarse.set(torque("120 ft·lb")).expect("within its scale");
    near(set.gives(), "122.5 ft·lb");
    assert_eq!(set.at_nut().map(|it| it.value), Some("122.5".into()));
    near(
        fine.never(torque("120 ft·lb")).expect("a bound").gives(),
        "119 ft·lb",
    );
    // What the nut gets asks for the same reading again; one step is 5 × 14 / 12 at the nut.
    assert_eq!(coarse.set(set.gives()), Ok(set.clone()));
    near(coarse.step(set.gives()), "5.833333333333333 ft·lb");
    // The top of the scale, 250, gives 291.67 at the nut.
    shows(fine, &[("291 ft·lb", "249 ft·lb", "249 ft·lb")]);
    assert_eq!(
        printed(fine.set(torque("293 ft·lb"))),
        "tighten.with by tool_store"
    );
}

/// 5 below 500, 10 below 2,000, then 50 N·m or 25 ft·lb (common practice, no source), by the number before rounding.
#[test]
fn usual_steps_change_at_their_ends() {
    shows(
        Dial::of_torque(None, scale("N·m")),
        &[
            ("497.4 N·m", "495 N·m", "495 N·m"),
            ("497.5 N·m", "500 N·m", "495 N·m"),
            ("499.9 N·m", "500 N·m", "495 N·m"),
            ("500 N·m", "500 N·m", "500 N·m"),
            ("504 N·m", "500 N·m", "500 N·m"),
            ("505 N·m", "510 N·m", "500 N·m"),
            ("1999 N·m", "2000 N·m", "1990 N·m"),
            ("2000 N·m", "2000 N·m", "2000 N·m"),
            ("2024 N·m", "2000 N·m", "2000 N·m"),
            ("2025 N·m", "2050 N·m", "2000 N·m"),
            (
                "2.4 N·m",
                "tools.*.step by tool_store",
                "tools.*.step by tool_store",
            ),
            ("4 N·m", "5 N·m", "tools.*.step by tool_store"),
        ],
    );
    shows(
        Dial::of_torque(None, scale("ft·lb")),
        &[
            ("499 ft·lb", "500 ft·lb", "495 ft·lb"),
            ("506 ft·lb", "510 ft·lb", "500 ft·lb"),
            ("2012 ft·lb", "2000 ft·lb", "2000 ft·lb"),
            ("2013 ft·lb", "2025 ft·lb", "2000 ft·lb"),
        ],
    );
}

/// A twentieth of the power of ten, from five times that power a tenth: 4.15 = 83 × 0.05, 6.2 = 62 × 0.1,
/// 0.46 = 92 × 0.005 and below it 0.455.
#[test]
fn a_scale_without_usual_steps_goes_by_the_size_of_the_number() {
    let large = tool("large");
    shows(
        Dial::of_torque(Some(&large), large.scale),
        &[
            ("4150 N·m", "4.15 kN·m", "4.15 kN·m"),
            ("4174 N·m", "4.15 kN·m", "4.15 kN·m"),
            ("4176 N·m", "4.2 kN·m", "4.15 kN·m"),
            ("4980 N·m", "5 kN·m", "4.95 kN·m"),
            ("6249 N·m", "6.2 kN·m", "6.2 kN·m"),
            ("6251 N·m", "6.3 kN·m", "6.2 kN·m"),
            ("458 N·m", "0.46 kN·m", "0.455 kN·m"),
        ],
    );
}

/// 0.3 / 0.1 is 2.9999999999999996 in floating point and still three steps.
#[test]
fn a_torque_on_a_step_is_that_step() {
    let tenths = tool("tenths");
    shows(
        Dial::of_torque(Some(&tenths), tenths.scale),
        &[
            ("0.3 N·m", "0.3 N·m", "0.3 N·m"),
            ("0.7 N·m", "0.7 N·m", "0.7 N·m"),
            ("0.79 N·m", "0.8 N·m", "0.7 N·m"),
        ],
    );
    let own = tool("own step");
    shows(
        Dial::of_torque(Some(&own), own.scale),
        &[
            ("400 N·m", "400 N·m", "400 N·m"),
            ("401 N·m", "402 N·m", "400 N·m"),
            ("600 N·m", "600 N·m", "600 N·m"),
            ("602 N·m", "tighten.with by tool_store", "602 N·m"),
        ],
    );
    // An estimate may lie above the scale.
    let dial = Dial::of_torque(Some(&own), own.scale);
    assert_eq!(printed(dial.about(torque("700 N·m"))), "700 N·m");
}

/// A small wrench is set to whole units of a usual scale, elsewhere to the third figure.
#[test]
fn low_values_are_set_with_a_small_wrench() {
    shows(
        Dial::of_torque(None, scale("N·m")).fine(),
        &[
            ("23.4 N·m", "23 N·m", "23 N·m"),
            ("23.5 N·m", "24 N·m", "23 N·m"),
        ],
    );
    let large = tool("large");
    shows(
        Dial::of_torque(Some(&large), large.scale).fine(),
        &[("415.7 N·m", "0.416 kN·m", "0.415 kN·m")],
    );
}

/// Straight lines: 4,146 N·m are 400 + (4146 − 3660) × 290 / 2680 = 452.6 bar, 455 or below it 450 in steps of 5. At
/// 455 bar the nut gets 3660 + 55 × 2680 / 290 = 4168.3 N·m, at 450 bar 4122.1.
#[test]
fn a_gauge_is_read_between_its_points_only() {
    let wrench = tool("pump wrench");
    let dial = Dial::of_torque(Some(&wrench), wrench.scale);
    let five = dial.on_gauge(Pressure::bar(5.0), None);
    let none = "tools.*.calibration.points by tool_store";
    shows(
        five,
        &[
            ("905 N·m", "100 bar", "100 bar"),
            ("904 N·m", none, none),
            ("3660 N·m", "400 bar", "400 bar"),
            ("4146 N·m", "455 bar", "450 bar"),
            ("6340 N·m", "690 bar", "690 bar"),
            ("6341 N·m", none, "690 bar"),
        ],
    );
    let set = five.set(torque("4146 N·m")).expect("between the points");
    assert!((set.gives().si() - 4168.276).abs() < 1e-3);
    assert_eq!(five.set(set.gives()), Ok(set));
    let never = five.never(torque("4146 N·m")).expect("a bound");
    assert!((never.gives().si() - 4122.069).abs() < 1e-3);
    // A hose that bears 393 bar holds every bound to 390, and no setting.
    let weak = dial.on_gauge(Pressure::bar(5.0), Some(Pressure::bar(393.0)));
    shows(weak, &[("4146 N·m", "455 bar", "390 bar")]);
    shows(
        dial.on_gauge(Pressure::bar(10.0), None),
        &[
            ("4146 N·m", "450 bar", "450 bar"),
            ("4200 N·m", "460 bar", "450 bar"),
        ],
    );
}

/// 920 and 3,680 N·m are 102 and 402 bar: the nearest 100 lies below the points, so 105; the nearest to 401.5 bar is 400.
/// What is never passed has no step between 102 and 104 bar.
#[test]
fn rounding_does_not_leave_the_points() {
    let wrench = tool("odd ends");
    let dial = Dial::of_torque(Some(&wrench), wrench.scale).on_gauge(Pressure::bar(5.0), None);
    shows(
        dial,
        &[
            (
                "920 N·m",
                "105 bar",
                "tools.*.calibration.points by tool_store",
            ),
            ("3680 N·m", "400 bar", "400 bar"),
        ],
    );
    // 947.6 N·m are 105 bar.
    shows(dial, &[("947.6 N·m", "105 bar", "105 bar")]);
}

#[test]
fn two_readings_of_one_scale_make_a_span() {
    let dial = Dial::of_torque(None, scale("N·m"));
    let [high, low] = ["200 N·m", "100 N·m"].map(|text| dial.set(torque(text)).expect("a reading"));
    assert_eq!(high.span(&low), Some([&low, &high]));
    let other = Dial::of_torque(None, scale("ft·lb")).set(torque("100 ft·lb"));
    assert_eq!(high.span(&other.expect("a reading")), None);
    assert!(high.tool().is_none() && high.at_nut().is_none());
}

/// Without a gauge there is nobody to ask but the tool store.
#[test]
fn a_wrench_without_points_has_no_reading() {
    let own = tool("own step");
    let dial = Dial::of_torque(Some(&own), own.scale).on_gauge(Pressure::bar(5.0), None);
    let lack = dial.set(torque("400 N·m")).expect_err("no points");
    assert_eq!(
        (lack.key, lack.who),
        ("tools.*.calibration.points", Who::ToolStore)
    );
}
