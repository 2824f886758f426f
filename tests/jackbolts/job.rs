//! From the keys of a job to the ledger: the joint with tie rods of the reference job, and changes of it. Expected
//! values are worked by hand from sizes and friction.

use studbook::calc::{Basis, Common, Id};
use studbook::joint::{Joint, Origin};
use studbook::methods::Computed;
use studbook::methods::jackbolt::ids;
use studbook::methods::jackbolt::{JackboltPlan, RoundKind};
use studbook::report::{Finding, Sources};
use studbook::units::Quantity;
use studbook::{job, methods, resolve};

use super::near;

const JOB: &str = include_str!("../../jobs/reference.yaml");
const TAG: &str = "E-900-TR-01";

fn opened(changes: &[(&str, &str)]) -> (Joint, Vec<Finding>) {
    let mut text = JOB.to_owned();
    for (old, new) in changes {
        assert_eq!(text.matches(old).count(), 1, "`{old}` must stand once");
        text = text.replace(old, new);
    }
    let mut sources = Sources::default();
    let (job, mut found) = job::open("job.yaml", text.as_bytes(), &mut sources);
    let job = job.unwrap_or_else(|| panic!("{found:?}"));
    let (joints, resolved) = resolve::resolve(&job);
    found.extend(resolved);
    let joint = joints.into_iter().find(|joint| joint.tag == TAG).unwrap();
    (joint, found)
}

pub(super) fn computed(changes: &[(&str, &str)]) -> Computed {
    let (joint, found) = opened(changes);
    assert!(found.is_empty(), "{found:?}");
    methods::compute(&joint, &Common::default())
}

pub(super) fn of<Q: Quantity>(computed: &Computed, id: Id<Q>) -> f64 {
    let lack = computed.ledger.lack(id);
    let value = computed.ledger.get(id);
    value
        .unwrap_or_else(|| panic!("{} is missing: {lack:?}", id.key()))
        .si()
}

fn plan(computed: &Computed) -> &JackboltPlan {
    computed.plan.jackbolts().expect("a plan")
}

#[test]
fn load_torque_and_back() {
    let got = computed(&[]);
    // M64: 2 676 mm² at 300 MPa on twelve M20 with 18.376 mm of pitch diameter, tips of 14 mm, friction 0.13.
    near(of(&got, ids::TARGET_LOAD) / 802.8e3, 1.0, 2e-4);
    near(of(&got, ids::JACKBOLT_TARGET) / 66.9e3, 1.0, 2e-4);
    let arm = 2.5 / std::f64::consts::TAU + 0.577 * 0.13 * 18.376 + 0.13 * 14.0 / 3.0;
    near(of(&got, ids::TORQUE) / (66.9 * arm), 1.0, 3e-4);
    // 117.6 ft·lb on a wrench of 900 mm with an adapter of 90 mm are 106.9 on its dial; in steps of 5 it is set to 105,
    // the jackbolt gets 105 × 990 / 900 = 115.5, and everything again from there.
    let set = 115.5 * 1.355_817_948;
    near(of(&got, ids::SET_TORQUE), set, 1e-6);
    near(of(&got, ids::JACKBOLT_LOAD) * arm / 1e3, set, 0.01);
    near(
        of(&got, ids::LOAD),
        12.0 * of(&got, ids::JACKBOLT_LOAD),
        1e-6,
    );
    // 15 % of scatter on it, on a tip of 153.9 mm² and a stress area of 244.8 mm².
    let greatest = 1.15 * of(&got, ids::JACKBOLT_LOAD);
    near(
        of(&got, ids::TIP_PRESSURE) / (greatest / 153.94e-6),
        1.0,
        1e-4,
    );
    near(
        of(&got, ids::JACKBOLT_STRESS) / (greatest / 244.79e-6),
        1.0,
        1e-4,
    );
    // The stud is pulled and not twisted, and its nut is not turned under load.
    assert!(got.ledger.entry(ids::THREAD_TORQUE.key()).is_none());
    assert!(got.ledger.entry(ids::TURN.key()).is_none());
    assert!(got.ledger.entry(ids::PROTRUSION.key()).is_none());
}

/// A measured turn gives the ratio by the two turns alone, and leaves the free length without a say.
#[test]
fn a_measured_turn_governs() {
    let got = computed(&[]);
    near(of(&got, ids::TURN_ONE).to_degrees(), 24.0, 1e-9);
    let ratio = of(&got, ids::TURN_ALL) / of(&got, ids::TURN_ONE) - 1.0;
    near(of(&got, ids::RING_RATIO), ratio, 1e-9);
    assert!(got.ledger.entry(ids::JACKBOLT_FREE_LENGTH.key()).is_none());
}

/// Without any size of the jackbolts the ends lie far apart; the plan is that of the stiff end.
#[test]
fn what_is_not_given_is_worked_through_at_both_ends() {
    let got = computed(&[
        (
            "    measured_turn: 24 deg                     # one jackbolt, snug to full, the others tight\n",
            "",
        ),
        (
            "    free_length: 16 mm                        # of a jackbolt between body and washer\n",
            "",
        ),
        ("    tip_diameter: 14 mm\n", ""),
    ]);
    let free = got.ledger.entry(ids::JACKBOLT_FREE_LENGTH.key()).unwrap();
    assert!(matches!(
        &free.basis,
        Basis::Input(Origin::Default {
            key: "tensioners.*.free_length"
        })
    ));
    near(of(&got, ids::JACKBOLT_FREE_LENGTH), 0.016, 1e-12);
    near(of(&got, ids::TIP_DIAMETER), 0.014, 1e-12);
    let low = of(&got, ids::RING_RATIO_LOW);
    let (likely, high) = (of(&got, ids::RING_RATIO), of(&got, ids::RING_RATIO_HIGH));
    assert!(
        low * 1.5 < likely && likely * 1.1 < high,
        "{low} {likely} {high}"
    );
    let bands = &plan(&got).predictions;
    near(bands.likely.ring_ratio, likely, 1e-9);
    assert!(bands.low.full_rounds < bands.likely.full_rounds);
    assert!(bands.likely.full_rounds < bands.high.full_rounds);
    assert_eq!(plan(&got).full_rounds, bands.high.full_rounds);
    near(
        of(&got, ids::FULL_ROUNDS),
        bands.high.full_rounds as f64,
        0.0,
    );
}

/// Seating by hand, two settings of the driver, full-value rounds; every setting can be set, each lands in the ledger.
#[test]
fn rounds_stand_in_the_ledger() {
    let got = computed(&[]);
    let made = plan(&got);
    let kinds: Vec<RoundKind> = made.rounds.iter().map(|round| round.kind).collect();
    assert_eq!(kinds[0], RoundKind::Seat);
    assert_eq!(kinds[1..3], [RoundKind::Bulk { position: 0 }; 2]);
    assert!(kinds[3..].iter().all(|kind| *kind == RoundKind::Full));
    for (number, round) in (1u16..).zip(&made.rounds) {
        near(of(&got, ids::ROUND_TORQUE.at(number)), round.torque, 1e-12);
        near(
            of(&got, ids::ROUND_MEAN.at(number)),
            round.predicted.likely.mean,
            0.0,
        );
        // One ft·lb on the dial of a wrench of 900 mm with an adapter of 90 mm.
        let one = 1.1 * 1.355_817_948;
        let by_hand = !matches!(round.kind, RoundKind::Bulk { .. });
        let steps = round.torque / one;
        assert!(
            !by_hand || (steps - steps.round()).abs() < 1e-6,
            "{}",
            round.torque
        );
    }
    let driver = made.driver.as_ref().unwrap();
    near(
        driver.level * of(&got, ids::SET_TORQUE),
        of(&got, ids::DRIVER_TORQUE),
        1e-9,
    );
    assert!(of(&got, ids::REVERSAL_LIMIT) * 3.0 <= of(&got, ids::DRIVER_TORQUE));
    // The same stud without its driver needs more.
    assert!(made.by_hand.as_ref().unwrap().full_rounds >= made.full_rounds);
}

/// The torque that is never exceeded is the least of five, rounded down on the dial, in steps of 5 ft·lb: 1.3 × 115.5 are
/// 150.15 at the jackbolt and 136.5 on a wrench of 900 mm with an adapter of 90 mm, so 135, and 148.5 at the jackbolt.
#[test]
fn a_jackbolt_is_never_given_more() {
    let got = computed(&[]);
    let peak = 1.3 * of(&got, ids::SET_TORQUE);
    near(of(&got, ids::PEAK_TORQUE), peak, 1e-9);
    near(of(&got, ids::NEVER_EXCEED), 148.5 * 1.355_817_948, 1e-6);
    let release = &plan(&got).release;
    assert!(release.breach.is_none(), "{:?}", release.breach);
    near(
        of(&got, ids::RELEASE_SET),
        release.rounds[0].angle.unwrap(),
        0.0,
    );
    near(
        of(&got, ids::RELEASE_ROUNDS),
        release.rounds.len() as f64,
        0.0,
    );
}

/// A torque that others give is that of a jackbolt.
#[test]
fn a_given_torque_is_that_of_a_jackbolt() {
    let got = computed(&[("target: { stress: 300 MPa }", "target: { torque: 150 N·m }")]);
    let arm = 2.5 / std::f64::consts::TAU + 0.577 * 0.13 * 18.376 + 0.13 * 14.0 / 3.0;
    near(
        of(&got, ids::TARGET_LOAD) / (12.0 * 150.0 / arm * 1e3),
        1.0,
        1e-4,
    );
    near(of(&got, ids::TORQUE), 150.0, 1e-9);
}

/// Nothing is invented for a tensioner that nobody named.
#[test]
fn without_a_tensioner_everything_waits_for_it() {
    let got = computed(&[(
        ", tensioner: JT-64, washers: hardened }",
        ", washers: hardened }",
    )]);
    assert!(got.plan.jackbolts().is_none());
    for lack in [
        got.ledger.lack(ids::TORQUE),
        got.ledger.lack(ids::SET_TORQUE),
        got.ledger.lack(ids::LOAD),
        got.ledger.lack(ids::FULL_ROUNDS),
        got.ledger.lack(ids::NEVER_EXCEED),
    ] {
        assert_eq!(lack.map(|lack| lack.key), Some("studs.tensioner"));
    }
}

/// The stud's tensioner says what is turned, where no method is written.
#[test]
fn a_tensioner_means_its_method() {
    let got = computed(&[(
        "{ method: multi-jackbolt tensioner, with: TW-14, ",
        "{ with: TW-14, ",
    )]);
    assert!(got.plan.jackbolts().is_some());
}

#[test]
fn counts_that_are_not_built_are_found() {
    for count in ["3", "33", "0"] {
        let (joint, found) = opened(&[("jackbolts: 12\n", &format!("jackbolts: {count}\n"))]);
        let told: Vec<&str> = found.iter().map(|finding| finding.id).collect();
        assert_eq!(told, ["job.out_of_range"], "{count}");
        assert_eq!(&found[0].values["text"], count);
        assert!(
            methods::compute(&joint, &Common::default())
                .plan
                .jackbolts()
                .is_none()
        );
    }
}

/// From 1 to 30 diameters a plan is made; beyond 20 it says that it has not been checked.
#[test]
fn long_studs_are_marked() {
    for (grip, plan, checked) in [
        ("60 mm", false, false),
        ("70 mm", true, true),
        ("1270 mm", true, true),
        ("1300 mm", true, false),
        ("1930 mm", false, false),
    ] {
        let got = computed(&[(
            "length: 640 mm, grip: 500 mm",
            &format!("length: 2200 mm, grip: {grip}"),
        )]);
        let made = got.plan.jackbolts();
        assert_eq!(made.is_some(), plan, "{grip}");
        assert_eq!(made.is_some_and(|made| made.checked), checked, "{grip}");
    }
}

/// A driver that nobody gives a level works at 80 %, or at what its scatter allows.
#[test]
fn the_level_follows_the_scatter() {
    let level = ("driver_level: 80 %, ", "");
    near(of(&computed(&[level]), ids::DRIVER_LEVEL), 0.80, 1e-12);
    let wide = (
        "scatter: 10 %                           # ± limit",
        "scatter: 30 %                           # ± limit",
    );
    near(
        of(&computed(&[level, wide]), ids::DRIVER_LEVEL),
        0.76,
        1e-12,
    );
}

/// A head with half of the spindles is set twice on each stud and leaves far less; one that does not fit is left out.
#[test]
fn half_a_head_is_set_twice() {
    let got = computed(&[("spindles: 12", "spindles: 6")]);
    let driver = plan(&got).driver.as_ref().unwrap();
    assert_eq!((driver.positions, driver.jackbolts.len()), (2, 2));
    assert_eq!(driver.jackbolts[0], [1, 3, 5, 7, 9, 11]);
    assert!(of(&got, ids::DRIVER_REACHED) < 0.75);
    let got = computed(&[("spindles: 12", "spindles: 8")]);
    assert!(plan(&got).driver.is_none());
    assert!(
        plan(&got)
            .rounds
            .iter()
            .all(|round| !matches!(round.kind, RoundKind::Bulk { .. }))
    );
}
