//! What the pressure behind an isolation boundary pushes on the largest opening: the figure that
//! shows a crew why nearly zero is not zero.

use crate::joint::{Fact, Origin, Who};
use crate::standards::mechanics;
use crate::units::{Area, Length, Pressure};

use super::ids;
use super::ledger::{Basis, Ledger};

/// The opening as the job gives it.
#[derive(Clone, Debug, PartialEq)]
pub enum Opening {
    /// A round one, by its diameter.
    Round(Fact<Length>),
    /// One of any shape, by its area.
    Area(Fact<Area>),
}

impl Opening {
    /// An opening of which nothing is said.
    pub const UNKNOWN: Self = Self::Area(Fact::Missing {
        key: "isolations.*.opening",
        who: Who::Engineer,
    });
}

/// Area, force for one unit of pressure, and force and mass at a little pressure.
///
/// `little` is a pressure that a gauge of usual class leaves unseen (common practice: 0.1 bar, or
/// 1 psi where the pack is in inch units).
pub fn enter(opening: &Opening, little: Pressure) -> Ledger {
    let mut ledger = Ledger::default();
    match opening {
        Opening::Round(diameter) => {
            ledger.input(ids::OPENING_DIAMETER, diameter);
            let inputs = [("D_p", ids::OPENING_DIAMETER.key())];
            ledger.apply(ids::OPENING_AREA, &mechanics::OPENING_AREA_OF, &inputs);
        }
        Opening::Area(area) => ledger.input(ids::OPENING_AREA, area),
    }
    let area = [("A_o", ids::OPENING_AREA.key())];
    ledger.apply(
        ids::FORCE_PER_PRESSURE,
        &mechanics::FORCE_PER_PRESSURE_ON,
        &area,
    );
    ledger.enter(
        ids::LITTLE_PRESSURE,
        Ok(little),
        Basis::Input(&Origin::Computed),
    );
    ledger.apply(
        ids::FORCE_AT_A_LITTLE,
        &mechanics::COVER_FORCE_OF,
        &[
            ("p", ids::LITTLE_PRESSURE.key()),
            ("A_p", ids::FORCE_PER_PRESSURE.key()),
        ],
    );
    let force = [("F_c", ids::FORCE_AT_A_LITTLE.key())];
    ledger.apply(ids::MASS_AT_A_LITTLE, &mechanics::MASS_OF_FORCE, &force);
    ledger
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Quantity, Units};

    fn printed(diameter: Length, units: &Units, little: Pressure) -> [String; 3] {
        let ledger = enter(&Opening::Round(Fact::computed(diameter)), little);
        let keys = [
            ids::FORCE_PER_PRESSURE.key(),
            ids::FORCE_AT_A_LITTLE.key(),
            ids::MASS_AT_A_LITTLE.key(),
        ];
        keys.map(|key| {
            let entry = ledger.entry(key).expect("entered");
            let value = entry.value.as_ref().expect("known");
            units
                .print_si(*value, entry.dimension)
                .joined()
                .replace('\u{a0}', " ")
        })
    }

    /// From first principles: π/4 · 1 m² = 0.785398 m²; on it 1 bar = 100 000 N/m² pushes
    /// 78.54 kN; 0.1 bar pushes 7854 N, the weight of 7854 / 9.80665 = 800.9 kg.
    /// Ø 2 m: four times as much.
    #[test]
    fn a_cover_of_one_metre() {
        let little = Pressure::bar(0.1);
        let metric = Units::metric();
        assert_eq!(
            printed(Length::mm(1000.0), &metric, little),
            ["78.54 kN/bar", "7.854 kN", "800.9 kg"]
        );
        let [force, _, mass] = printed(Length::mm(2000.0), &metric, little);
        assert_eq!((force.as_str(), mass.as_str()), ("314.2 kN/bar", "3204 kg"));
    }

    /// From first principles: π/4 · 20² = 314.16 in²; 1 psi on it pushes 314.2 lbf, the weight of
    /// 314.2 lb, because the pound-force is the weight of a pound under standard gravity.
    #[test]
    fn a_cover_of_twenty_inches() {
        let psi = Pressure::parse("1 psi").expect("a pressure");
        let inch = printed(Length::inch(20.0), &Units::inch(), psi);
        assert_eq!(inch, ["314.2 lbf/psi", "314.2 lbf", "314.2 lb"]);
    }

    #[test]
    fn an_unknown_opening_pushes_nothing_that_could_be_printed() {
        let ledger = enter(&Opening::UNKNOWN, Pressure::bar(0.1));
        assert!(ledger.get(ids::FORCE_PER_PRESSURE).is_none());
        assert_eq!(
            ledger.lack(ids::MASS_AT_A_LITTLE).map(|lack| lack.who),
            Some(Who::Engineer)
        );
    }
}
