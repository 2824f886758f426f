//! The springs of a joint: by formulas for the likely case, and the same formulas at both ends of what is defaulted.

use crate::joint::{Fact, Mechanics, Tensioner};
use crate::standards::jackbolts;
use crate::standards::symbols as s;
use crate::units::{Force, Quantity};

use super::ids;
use super::{Bands, Springs};
use crate::calc::{Basis, Id, Key, Ledger};

/// Enters the compliances and the ratio of them, and returns the springs of all bands.
pub(super) fn enter(ledger: &mut Ledger, joint: &Mechanics) -> Option<Bands<Springs>> {
    enter_joint(ledger);
    let measured = joint
        .tensioner
        .as_ref()
        .and_then(|tensioner| tensioner.measured_turn.as_ref());
    match measured {
        Some(turn) => enter_measured(ledger, turn),
        None => enter_sizes(ledger),
    }
    enter_ratios(ledger, measured.is_none());
    let (bands, softest) = bands(ledger, joint.tensioner.as_deref()?)?;
    enter_ends(ledger, &bands, &softest);
    Some(bands)
}

fn enter_joint(ledger: &mut Ledger) {
    ledger.apply(
        ids::BODY_COMPLIANCE,
        &jackbolts::BODY_COMPLIANCE_OF,
        &[
            ("e_b", ids::BODY_SHARE.key()),
            ("d", ids::DIAMETER.key()),
            ("E", ids::MODULUS.key()),
            ("A_n", ids::NOMINAL_AREA.key()),
        ],
    );
    ledger.apply(
        ids::JOINT_COMPLIANCE,
        &jackbolts::JOINT_COMPLIANCE_OF,
        &[
            ("δ_s", ids::STUD_COMPLIANCE.key()),
            ("δ_b", ids::BODY_COMPLIANCE.key()),
            ("δ_c", ids::PLATE_COMPLIANCE.key()),
        ],
    );
}

fn enter_sizes(ledger: &mut Ledger) {
    ledger.apply(
        ids::JACKBOLT_COMPLIANCE,
        &jackbolts::JACKBOLT_COMPLIANCE_OF,
        &[
            ("l_f", ids::JACKBOLT_FREE_LENGTH.key()),
            ("d_j", ids::JACKBOLT_DIAMETER.key()),
            ("A_rj", ids::JACKBOLT_ROOT_AREA.key()),
            ("A_nj", ids::JACKBOLT_NOMINAL_AREA.key()),
            ("d_t", ids::TIP_DIAMETER.key()),
            ("E_j", ids::JACKBOLT_MODULUS.key()),
        ],
    );
}

fn enter_measured(ledger: &mut Ledger, turn: &Fact<crate::units::Angle>) {
    ledger.input(ids::MEASURED_TURN, turn);
    ledger.apply(
        ids::OWN_COMPLIANCE,
        &jackbolts::OWN_COMPLIANCE_OF_TURN,
        &[
            ("θ_1", ids::MEASURED_TURN.key()),
            ("P_j", ids::JACKBOLT_PITCH.key()),
            ("F_j", ids::JACKBOLT_LOAD.key()),
        ],
    );
    ledger.apply(
        ids::JACKBOLT_COMPLIANCE,
        &jackbolts::JACKBOLT_COMPLIANCE_OF_TURN,
        &[
            ("δ_1", ids::OWN_COMPLIANCE.key()),
            ("n_j", ids::JACKBOLT_COUNT.key()),
            ("δ_K", ids::JOINT_COMPLIANCE.key()),
        ],
    );
}

fn enter_ratios(ledger: &mut Ledger, with_own: bool) {
    let count = ("n_j", ids::JACKBOLT_COUNT.key());
    let own = ("δ_j", ids::JACKBOLT_COMPLIANCE.key());
    let joint = ("δ_K", ids::JOINT_COMPLIANCE.key());
    let ratio = ("r", ids::STIFFNESS_RATIO.key());
    let ring = ("R", ids::RING_RATIO.key());
    ledger.apply(
        ids::STIFFNESS_RATIO,
        &jackbolts::STIFFNESS_RATIO_OF,
        &[joint, own],
    );
    ledger.apply(ids::RING_RATIO, &jackbolts::RING_RATIO_OF, &[count, ratio]);
    if with_own {
        ledger.apply(
            ids::OWN_COMPLIANCE,
            &jackbolts::OWN_COMPLIANCE_OF,
            &[own, count, ratio, ring],
        );
    }
    let load = ("F_j", ids::JACKBOLT_LOAD.key());
    let pitch = ("P_j", ids::JACKBOLT_PITCH.key());
    ledger.apply(
        ids::TURN_ONE,
        &jackbolts::TURN_ONE_OF,
        &[load, pitch, ("δ_1", ids::OWN_COMPLIANCE.key())],
    );
    ledger.apply(
        ids::TURN_ALL,
        &jackbolts::TURN_ALL_OF,
        &[load, pitch, own, count, joint],
    );
}

/// What is not given lies between two ends: long thin tips in a stiff body make soft jackbolts and a low ratio, short
/// blunt ones in a soft body a high one. The last of what is returned has soft jackbolts in a soft body: no ratio at an
/// end, but the longest way to the load.
fn bands(ledger: &Ledger, tensioner: &Tensioner) -> Option<(Bands<Springs>, Springs)> {
    let of = |id: Id<_>| ledger.get::<crate::units::Compliance>(id).map(Quantity::si);
    let joint = of(ids::JOINT_COMPLIANCE)? - of(ids::BODY_COMPLIANCE)?;
    let give = ledger.get(ids::DIAMETER)?.si()
        / (ledger.get(ids::MODULUS)?.si() * ledger.get(ids::NOMINAL_AREA)?.si());
    let size = ledger.get(ids::JACKBOLT_DIAMETER)?.si();
    let count = crate::calc::whole(ledger.get(ids::JACKBOLT_COUNT)?.si());
    let load = ledger.get::<Force>(ids::JACKBOLT_LOAD)?.si();
    let pitch = ledger.get(ids::JACKBOLT_PITCH)?.si();
    let at = |fact: Option<f64>, is_default: bool, end: f64| {
        if is_default { Some(end) } else { fact }
    };
    let one = |[free, tip, body]: [f64; 3]| {
        let body = joint + body * give;
        let free = at(
            tensioner.free_length.value().map(Quantity::si),
            tensioner.free_length.is_default(),
            free * size,
        )?;
        let tip = at(
            tensioner.tip_diameter.value().map(Quantity::si),
            tensioner.tip_diameter.is_default(),
            tip * size,
        )?;
        let own = match &tensioner.measured_turn {
            Some(turn) => own_of_turn(turn.value()?.si(), (count, body), (pitch, load)),
            None => own_of_sizes(ledger, free, tip)?,
        };
        Some(Springs::new(count, own, body, pitch, load))
    };
    let [free, tip, body] = [
        jackbolts::FREE_LENGTHS,
        jackbolts::TIP_DIAMETERS,
        jackbolts::BODY_SHARES,
    ];
    let bands = Bands {
        low: one([free[2], tip[0], body[0]])?,
        likely: one([free[1], tip[1], body[1]])?,
        high: one([free[0], tip[2], body[2]])?,
    };
    Some((bands, one([free[2], tip[0], body[2]])?))
}

fn own_of_turn(turn: f64, (count, joint): (usize, f64), (pitch, load): (f64, f64)) -> f64 {
    let own = jackbolts::OWN_COMPLIANCE_OF_TURN.value_with(&[
        (s::TURN_ONE, turn),
        (s::JACKBOLT_PITCH, pitch),
        (s::JACKBOLT_LOAD, load),
    ]);
    jackbolts::JACKBOLT_COMPLIANCE_OF_TURN.value_with(&[
        (s::OWN_COMPLIANCE, own),
        (s::JACKBOLTS, count as f64),
        (s::JOINT_COMPLIANCE, joint),
    ])
}

fn own_of_sizes(ledger: &Ledger, free: f64, tip: f64) -> Option<f64> {
    Some(jackbolts::JACKBOLT_COMPLIANCE_OF.value_with(&[
        (s::FREE_LENGTH, free),
        (s::TIP_DIAMETER, tip),
        (
            s::JACKBOLT_DIAMETER,
            ledger.get(ids::JACKBOLT_DIAMETER)?.si(),
        ),
        (
            s::JACKBOLT_ROOT_AREA,
            ledger.get(ids::JACKBOLT_ROOT_AREA)?.si(),
        ),
        (
            s::JACKBOLT_NOMINAL_AREA,
            ledger.get(ids::JACKBOLT_NOMINAL_AREA)?.si(),
        ),
        (s::JACKBOLT_MODULUS, ledger.get(ids::JACKBOLT_MODULUS)?.si()),
    ]))
}

fn enter_ends(ledger: &mut Ledger, bands: &Bands<Springs>, softest: &Springs) {
    let from: Vec<Key> = [
        ids::JACKBOLT_FREE_LENGTH.key(),
        ids::MEASURED_TURN.key(),
        ids::TIP_DIAMETER.key(),
        ids::BODY_SHARE.key(),
    ]
    .into_iter()
    .filter(|key| ledger.entry(*key).is_some())
    .collect();
    let basis = || Basis::Simulated(&from);
    ledger.enter(
        ids::RING_RATIO_LOW,
        Ok(ratio(bands.low.ring_ratio)),
        basis(),
    );
    ledger.enter(
        ids::RING_RATIO_HIGH,
        Ok(ratio(bands.high.ring_ratio)),
        basis(),
    );
    ledger.enter(ids::TURN_ONE_LOW, Ok(angle(bands.low.turn_one)), basis());
    ledger.enter(ids::TURN_ONE_HIGH, Ok(angle(bands.high.turn_one)), basis());
    ledger.enter(ids::TURN_ALL_LOW, Ok(angle(bands.low.turn_all)), basis());
    ledger.enter(ids::TURN_ALL_HIGH, Ok(angle(bands.high.turn_all)), basis());
    // With a measured turn a soft body goes with stiff jackbolts, so the greatest may be that of a band.
    let greatest = bands.map(|springs| springs.turn_all).greatest();
    let greatest = angle(greatest.max(softest.turn_all));
    ledger.enter(ids::TURN_ALL_GREATEST, Ok(greatest), basis());
}

fn ratio(value: f64) -> crate::units::Ratio {
    Quantity::from_si(value)
}

fn angle(value: f64) -> crate::units::Angle {
    Quantity::from_si(value)
}
