//! The state once more by dense matrices: A F − a ≥ 0, F ≥ 0, one of them nought for each jackbolt, with
//! A = diag(1/k) + 1/K, solved by a linear algebra crate.

use nalgebra::{DMatrix, DVector};
use proptest::prelude::*;

use studbook::methods::jackbolt::{Springs, State, Step, run};

use super::invariants::any_springs;

fn compliances(set: &Springs) -> DMatrix<f64> {
    DMatrix::from_fn(set.count, set.count, |row, column| {
        let own = if row == column {
            1.0 / set.jackbolt
        } else {
            0.0
        };
        own + 1.0 / set.joint
    })
}

/// Loads of the jackbolts in `free`, those of the others being given: the pulling ones leave until none pulls.
fn solve(set: &Springs, advances: &[f64], given: &[(usize, f64)]) -> Vec<f64> {
    let matrix = compliances(set);
    let mut loads = vec![0.0; set.count];
    let mut active: Vec<usize> = (0..set.count)
        .filter(|index| given.iter().all(|(other, _)| other != index))
        .collect();
    loop {
        if active.is_empty() {
            break;
        }
        let beside = |row: usize| {
            let pushes = given
                .iter()
                .map(|&(column, load)| matrix[(row, column)] * load);
            pushes.sum::<f64>()
        };
        let right = DVector::from_iterator(
            active.len(),
            active.iter().map(|&row| advances[row] - beside(row)),
        );
        let part = DMatrix::from_fn(active.len(), active.len(), |row, column| {
            matrix[(active[row], active[column])]
        });
        let found = part
            .lu()
            .solve(&right)
            .expect("the matrix is positive definite");
        let pulling = (0..active.len()).filter(|&at| found[at] < 0.0).count();
        if pulling == 0 {
            for (at, &index) in active.iter().enumerate() {
                loads[index] = found[at];
            }
            break;
        }
        let kept = (0..active.len()).filter(|&at| found[at] >= 0.0);
        active = kept.map(|at| active[at]).collect();
    }
    for &(index, load) in given {
        loads[index] = load;
    }
    loads
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    /// Random turns, forward and back, so that some jackbolts are loose.
    #[test]
    fn loads_by_a_dense_solve(set in any_springs(), turns in proptest::collection::vec(-0.3_f64..1.0, 32)) {
        let mut state = State::snug(&set);
        for (index, turn) in turns.iter().take(set.count).enumerate() {
            state.turn(index, turn * set.turn_all);
        }
        let expected = solve(&set, state.advances(), &[]);
        for (got, expected) in state.loads().iter().zip(expected) {
            prop_assert!((got - expected).abs() < 1e-9 * set.load, "{got} {expected}");
        }
    }

    /// Rounds at random levels: before each turn the loads of the others follow from the load that is set.
    #[test]
    fn tightening_by_a_dense_solve(set in any_springs(), levels in proptest::collection::vec(0.05_f64..1.0, 64)) {
        let mut state = State::snug(&set);
        for (at, level) in levels.iter().enumerate() {
            let index = (at * 5) % set.count;
            let load = level * set.load;
            let held = state.loads()[index];
            let before = state.advances().to_vec();
            let turned = state.tighten(index, load);
            if held >= load {
                prop_assert!(turned < 1e-9);
                continue;
            }
            let expected = solve(&set, &before, &[(index, load)]);
            for (got, expected) in state.loads().iter().zip(expected) {
                prop_assert!((got - expected).abs() < 1e-9 * set.load, "{got} {expected}");
            }
        }
    }

    /// The contraction is the spectral radius of the Gauss-Seidel matrix of S = A⁻¹.
    #[test]
    fn contraction_by_eigenvalues(set in any_springs()) {
        let stiffness = compliances(&set).try_inverse().expect("positive definite");
        let lower = stiffness.lower_triangle();
        let upper = &stiffness - &lower;
        let iteration = -lower.try_inverse().expect("a positive diagonal") * upper;
        let largest = iteration
            .complex_eigenvalues()
            .iter()
            .map(|value| libm::hypot(value.re, value.im))
            .fold(0.0, f64::max);
        let expected = set.contraction().of_round;
        prop_assert!((largest - expected).abs() < 1e-6, "{largest} {expected}");
    }

    /// A driver's block at once is the dense solve with all of its loads given.
    #[test]
    fn a_block_by_a_dense_solve(set in any_springs(), positions in 1_usize..4, level in 0.3_f64..1.0) {
        let mut state = State::even(&set, 0.2);
        let group: Vec<usize> = (0..set.count).step_by(positions).collect();
        let before = state.advances().to_vec();
        let given: Vec<(usize, f64)> = group.iter().map(|&index| (index, level * set.load)).collect();
        let record = run(&set, &mut state, &Step::at_once(group, level, Vec::new()));
        let expected = solve(&set, &before, &given);
        for (got, expected) in record.loads.iter().zip(expected) {
            prop_assert!((got * set.load - expected).abs() < 1e-9 * set.load, "{got} {expected}");
        }
    }
}
