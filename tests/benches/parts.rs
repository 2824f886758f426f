//! The parts of the way from YAML to numbers: `cargo bench --bench parts`.

#![allow(clippy::disallowed_methods, reason = "a bench works with files")]

mod large;

use divan::{Bencher, black_box};
use large::Kind;
use studbook::job::{self, Job};
use studbook::joint::Joint;
use studbook::methods::calculate;
use studbook::report::Sources;
use studbook::resolve;
use studbook::rules;

const JOINTS: [usize; 2] = [300, 3000];

fn main() {
    divan::main();
}

fn open(text: &str) -> Job {
    let (job, _) = job::open("job.yaml", text.as_bytes(), &mut Sources::default());
    job.expect("the job is sound")
}

fn joints(job: &Job) -> Vec<Joint> {
    resolve::resolve(job).0
}

/// Text to typed values with their places.
#[divan::bench(args = JOINTS)]
fn read(bencher: Bencher<'_, '_>, count: usize) {
    let text = large::job(Kind::Varied, count);
    bencher.bench(|| open(black_box(&text)));
}

/// References followed, families and joints laid over each other.
#[divan::bench(args = JOINTS)]
fn resolved(bencher: Bencher<'_, '_>, count: usize) {
    let job = open(&large::job(Kind::Varied, count));
    bencher.bench(|| joints(black_box(&job)));
}

/// All numbers of joints that share nothing.
#[divan::bench(args = JOINTS)]
fn computed(bencher: Bencher<'_, '_>, count: usize) {
    let joints = joints(&open(&large::job(Kind::Varied, count)));
    bencher.bench(|| calculate(black_box(&joints)));
}

/// All numbers of joints of thirty families.
#[divan::bench(args = JOINTS)]
fn computed_of_families(bencher: Bencher<'_, '_>, count: usize) {
    let joints = joints(&open(&large::job(Kind::Families, count)));
    bencher.bench(|| calculate(black_box(&joints)));
}

/// Every rule over the whole job.
#[divan::bench(args = JOINTS)]
fn ruled(bencher: Bencher<'_, '_>, count: usize) {
    let job = open(&large::job(Kind::Varied, count));
    let joints = joints(&job);
    let plan = calculate(&joints);
    bencher.bench(|| {
        let subject = rules::Subject::new(&job, &joints, &plan, &[]);
        rules::check(black_box(&subject), Vec::new())
    });
}
