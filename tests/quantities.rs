//! How people write quantities, and what each spelling is worth.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

use studbook::report::FileId;
use studbook::units::{
    Angle, Dimension, Force, Length, Mass, Pressure, Quantity, QuantityError, Ratio, Stress,
    Temperature, Torque, parse_si,
};
use studbook::yaml::{decode_text, read};

use Dimension as D;

fn close(value: f64, expected: f64) -> bool {
    (value - expected).abs() <= 1e-14 * expected.abs().max(1e-300)
}

/// Exact definitions; NIST SP 811 (2008), appendix B: inch 0.0254 m, pound-force
/// 4.448 221 615 260 5 N, zero Celsius 273.15 K, zero Fahrenheit 459.67 °R.
#[test]
fn spellings_that_are_understood() {
    let table: &[(&str, Dimension, f64)] = &[
        ("350 Nm", D::Torque, 350.0),
        ("350Nm", D::Torque, 350.0),
        ("3950 N·m", D::Torque, 3950.0),
        ("3950 N.m", D::Torque, 3950.0),
        ("1 kN·m", D::Torque, 1000.0),
        ("100 ft-lbf", D::Torque, 135.581_794_833_140_04),
        ("100 ft·lb", D::Torque, 135.581_794_833_140_04),
        ("100 lbf ft", D::Torque, 135.581_794_833_140_04),
        ("100 in-lb", D::Torque, 11.298_482_902_761_67),
        ("1 1/8 in", D::Length, 0.028_575),
        ("1-1/8\"", D::Length, 0.028_575),
        ("7/8 in", D::Length, 0.022_225),
        ("1½ in", D::Length, 0.0381),
        ("1\u{2044}2 in", D::Length, 0.0127),
        ("445\u{a0}mm", D::Length, 0.445),
        ("0.5 µm", D::Length, 0.5e-6),
        ("0.5 \u{3bc}m", D::Length, 0.5e-6),
        ("1e3 N", D::Force, 1000.0),
        ("1.5E+2 kN", D::Force, 150_000.0),
        ("1 kip", D::Force, 4_448.221_615_260_5),
        ("345 MPa", D::Stress, 345e6),
        ("345 N/mm²", D::Stress, 345e6),
        ("1 ksi", D::Stress, 6_894_757.293_168_361),
        ("410 bar", D::Pressure, 41e6),
        ("1 psi", D::Pressure, 6_894.757_293_168_361),
        ("310 °C", D::Temperature, 583.15),
        ("310 degC", D::Temperature, 583.15),
        ("212 °F", D::Temperature, 373.15),
        ("\u{2212}20 °C", D::Temperature, 253.15),
        ("60 %", D::Ratio, 0.6),
        ("0.13", D::Ratio, 0.13),
        ("8 h", D::Duration, 28_800.0),
        ("9.8 kg", D::Mass, 9.8),
        ("10 lb", D::Mass, 4.535_923_7),
    ];
    for &(text, dimension, expected) in table {
        let value = parse_si(text, dimension);
        assert!(
            value.as_ref().is_ok_and(|&value| close(value, expected)),
            "{text}: {value:?}, expected {expected}"
        );
    }
}

#[test]
fn spellings_that_are_refused() {
    let refused = |text: &str, dimension| parse_si(text, dimension).unwrap_err();
    assert_eq!(refused("12,5 mm", D::Length), QuantityError::Comma);
    assert_eq!(refused("1,000 N", D::Force), QuantityError::Comma);
    assert_eq!(refused("1_000 N", D::Force), QuantityError::Grouping);
    assert_eq!(refused("1 000 N", D::Force), QuantityError::Grouping);
    assert_eq!(refused("0430 mm", D::Length), QuantityError::LeadingZero);
    assert_eq!(refused(".5 mm", D::Length), QuantityError::BarePoint);
    assert_eq!(refused("12. mm", D::Length), QuantityError::BarePoint);
    assert_eq!(refused("1/3 in", D::Length), QuantityError::Fraction);
    assert_eq!(refused("9/8 in", D::Length), QuantityError::Fraction);
    assert_eq!(refused("1e999 N", D::Force), QuantityError::NotFinite);
    assert_eq!(refused("NaN N", D::Force), QuantityError::NoNumber);
    assert_eq!(refused("inf N", D::Force), QuantityError::NoNumber);
    assert_eq!(
        refused("about 30 bar", D::Pressure),
        QuantityError::NoNumber
    );
    assert_eq!(refused("", D::Force), QuantityError::Empty);
    assert!(matches!(
        refused("350", D::Torque),
        QuantityError::NoUnit { example: "N·m" }
    ));
    assert!(matches!(
        refused("350 Nm2", D::Torque),
        QuantityError::UnknownUnit { .. }
    ));
    assert!(matches!(
        refused("350 bar", D::Torque),
        QuantityError::WrongQuantity { .. }
    ));
}

/// Factors between units: exact definitions; NIST SP 811.
#[test]
fn factors_are_those_of_the_definitions() {
    let torque = |text| Torque::parse(text).unwrap().si();
    assert!(close(torque("1 ft·lb"), 1.355_817_948_331_400_4));
    assert!(close(torque("1 in·lb"), 0.112_984_829_027_616_7));
    let force = |text| Force::parse(text).unwrap().si();
    assert!(close(force("1 lbf"), 4.448_221_615_260_5));
    assert!(close(
        Stress::parse("1 ksi").unwrap().si(),
        6.894_757_293_168_361e6
    ));
    assert!(close(Stress::parse("1 MPa").unwrap().si(), 1e6));
    let bar_in_psi =
        Pressure::parse("1 bar").unwrap().si() / Pressure::parse("1 psi").unwrap().si();
    assert!(close(bar_in_psi, 14.503_773_773_020_923));
    assert!(close(Length::parse("1 in").unwrap().si(), 0.0254));
    assert!(close(parse_si("1 in²", D::Area).unwrap(), 645.16e-6));
    // A degree of Celsius is 1.8 degrees of Fahrenheit.
    let warm = |text| Temperature::parse(text).unwrap().si();
    assert!((warm("1 °C") - warm("0 °C") - (warm("1.8 °F") - warm("0 °F"))).abs() < 1e-12);
    assert!(close(
        Angle::parse("180 deg").unwrap().si(),
        std::f64::consts::PI
    ));
    assert!(close(Mass::parse("1 t").unwrap().si(), 1000.0));
    assert!(close(Ratio::parse("15 %").unwrap().si(), 0.15));
}

#[test]
fn a_complaint_says_what_to_write() {
    let place = read(b"", FileId(0)).start();
    let write = |text: &str| {
        let (_, findings) = decode_text::<Length>(text, place, "length");
        let values = &findings[0].values;
        assert_eq!(&values["key"], "length");
        assert_eq!(&values["text"], text);
        values.get("write").unwrap_or_default().to_owned()
    };
    assert_eq!(write("12,5 mm"), "12.5 mm");
    assert_eq!(write("430"), "430 mm");
    assert_eq!(write("1 000 mm"), "1000 mm");
    assert_eq!(write("1_000 mm"), "1000 mm");
}
