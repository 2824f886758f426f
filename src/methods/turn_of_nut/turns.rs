//! How far a nut is turned from snug: by length over diameter, as the specification says.

use crate::units::Angle;

/// What a specification says of the turn of a nut.
#[derive(Debug)]
pub(super) struct Standard {
    /// As the job writes it.
    pub(super) name: &'static str,
    /// Rows by length: in diameters up to so many, the turn, and how far it may fall short or go beyond.
    pub(super) rows: &'static [Row],
    /// The least tension of a tested lot, as a share of the wanted tension.
    pub(super) lot_share: f64,
}

/// A row: both faces square to the bolt.
#[derive(Debug)]
pub(super) struct Row {
    /// Longest bolt in diameters, from below the head to its end.
    pub(super) most: f64,
    /// Turn from snug.
    pub(super) turn: Angle,
    /// How far it may fall short, and go beyond.
    pub(super) tolerance: [Angle; 2],
}

const fn row(most: f64, turn: f64, short: f64, beyond: f64) -> Row {
    Row {
        most,
        turn: Angle::degrees(turn),
        tolerance: [Angle::degrees(short), Angle::degrees(beyond)],
    }
}

/// The turns were read in a restatement of the specification; tolerances and the share of a lot are from memory.
pub(super) const STANDARDS: [Standard; 2] = [
    Standard {
        name: "RCSC 2014",
        rows: &[
            row(4.0, 120.0, 30.0, 30.0),
            row(8.0, 180.0, 30.0, 30.0),
            row(12.0, 240.0, 45.0, 45.0),
        ],
        lot_share: 1.05,
    },
    Standard {
        name: "RCSC 2020",
        rows: &[
            row(4.0, 120.0, 30.0, 60.0),
            row(8.0, 180.0, 30.0, 60.0),
            row(12.0, 240.0, 30.0, 60.0),
        ],
        lot_share: 1.05,
    },
];

/// Where a turn is given and no table says how far it may be missed (RCSC up to half a turn, from memory).
pub(super) const USUAL_TOLERANCE: [Angle; 2] = [Angle::degrees(30.0), Angle::degrees(30.0)];

/// The specification of this name.
pub(super) fn named(name: &str) -> Option<&'static Standard> {
    STANDARDS.iter().find(|standard| standard.name == name)
}

impl Standard {
    /// The row of a bolt of so many diameters; none where it is longer than every row.
    pub(super) fn row(&self, diameters: f64) -> Option<&'static Row> {
        let fits = |row: &&Row| diameters <= row.most * (1.0 + 1e-9);
        self.rows.iter().find(fits)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RCSC: up to 4 d a third, up to 8 d half, up to 12 d two thirds of a turn, both faces square, as restated by a
    /// supplier (read); ±30° and ±45° up to 2014, −30° and +60° in 2020 (from memory).
    #[test]
    fn turns_follow_length_over_diameter() {
        let turn = |name, diameters| {
            let row = named(name)?.row(diameters)?;
            let [short, beyond] = row.tolerance.map(Angle::to_degrees);
            Some([row.turn.to_degrees(), short, beyond].map(|it| it.round()))
        };
        for (diameters, expected) in [
            (1.0, [120.0, 30.0, 30.0]),
            (4.0, [120.0, 30.0, 30.0]),
            (4.01, [180.0, 30.0, 30.0]),
            (8.0, [180.0, 30.0, 30.0]),
            (8.01, [240.0, 45.0, 45.0]),
            (12.0, [240.0, 45.0, 45.0]),
        ] {
            assert_eq!(turn("RCSC 2014", diameters), Some(expected), "{diameters}");
        }
        assert_eq!(turn("RCSC 2020", 9.0), Some([240.0, 30.0, 60.0]));
        assert_eq!(turn("RCSC 2014", 12.01), None, "tested on a calibrator");
        assert_eq!(turn("RCSC", 3.0), None);
    }
}
