//! The program as a whole: `cargo bench --bench whole`, or with the numbers of joints behind `--`, and `--cards`
//! to leave out the other documents of large jobs.
//!
//! Prints a table: a cold start, `check` of 3,000 joints, `issue` of jobs that share little and of
//! thirty families that share. The rate counts all processor time of the run against the pages of
//! the card volumes alone; the last column is the same against the bare typesetter, which gets the
//! same data and only lays out and writes.

#![allow(
    clippy::print_stdout,
    clippy::panic,
    clippy::disallowed_methods,
    reason = "a bench prints what it measured and works with files"
)]

mod large;
#[path = "large/measured.rs"]
mod measured;
#[path = "large/volumes.rs"]
mod volumes;

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use large::Kind;
use measured::{Cost, processor, run};
use studbook::typeset::{Date, Properties, Request, deep_thread, make_pdf};

fn program(folder: &Path, args: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_studbook"));
    command.args(args).current_dir(folder);
    command
}

/// The cheapest of some runs: the others were disturbed.
fn best(runs: usize, mut once: impl FnMut() -> Cost) -> Cost {
    let mut best = once();
    for _ in 1..runs {
        let next = once();
        if next.wall < best.wall {
            best = next;
        }
    }
    best
}

fn line(what: &str, cost: Cost) {
    println!(
        "{what:44} {:8.3} s {:8.3} s CPU {:6.0} MB",
        cost.wall, cost.processor, cost.peak
    );
}

fn cold_start(folder: &Path) {
    let smallest = Path::new(env!("CARGO_MANIFEST_DIR")).join("jobs/smallest.yaml");
    std::fs::copy(smallest, folder.join("smallest.yaml")).expect("copied");
    for args in [
        &["check", "smallest.yaml"][..],
        &["issue", "smallest.yaml", "--only", "cards"],
        &["issue", "smallest.yaml"],
    ] {
        let cost = best(5, || {
            let _ = std::fs::remove_dir_all(folder.join("SMALLEST_DRAFT"));
            run(&mut program(folder, args))
        });
        line(&format!("one joint, cold: {}", args.join(" ")), cost);
    }
}

/// Pages of the card volumes in the issued folder, from its manifest.
fn card_pages(issued: &Path) -> usize {
    let manifest = std::fs::read(issued.join("manifest.json")).expect("a manifest");
    let manifest: serde_json::Value = serde_json::from_slice(&manifest).expect("JSON");
    let files = manifest["files"].as_object().expect("files");
    files
        .iter()
        .filter(|(name, _)| name.contains("_cards"))
        .filter_map(|(_, file)| file["pages"].as_u64())
        .map(|pages| usize::try_from(pages).expect("few"))
        .sum()
}

fn issue(folder: &Path, kind: Kind, joints: usize, cards_alone: bool) {
    let name = format!("job-{joints}.yaml");
    std::fs::write(folder.join(&name), large::job(kind, joints)).expect("written");
    let issued = folder.join("HL-31-WP-007_B_DRAFT");
    let fresh = |args: &[&str]| {
        let _ = std::fs::remove_dir_all(&issued);
        run(&mut program(folder, args))
    };
    let cards = fresh(&["issue", &name, "--only", "cards"]);
    let pages = card_pages(&issued);
    let rate = pages as f64 / cards.processor;
    let what = format!("{joints} joints, {}: cards", kind.name());
    line(&what, cards);
    let bare = bare(folder, kind, joints);
    println!(
        "{:44} {pages} pages, {rate:.0} pages per CPU second, {:.2} x the bare typesetter",
        "",
        cards.processor / bare
    );
    if cards_alone {
        return;
    }
    let all = fresh(&["issue", &name, "--draft"]);
    line(
        &format!("{joints} joints, {}: everything", kind.name()),
        all,
    );
    let again = run(&mut program(folder, &["issue", &name, "--draft"]));
    line(
        &format!("{joints} joints, {}: again, unchanged", kind.name()),
        again,
    );
}

/// Processor time of the typesetter alone for the card volumes of a job, in s: a process of its own
/// reads the data of every volume from the folder and makes PDFs of it, two at once as the program does: threads
/// that share a core take more processor time each.
fn bare(folder: &Path, kind: Kind, joints: usize) -> f64 {
    volumes::write(folder, kind, joints);
    let exe = std::env::current_exe().expect("the bench itself");
    let out = Command::new(exe)
        .args(["--bare"])
        .arg(folder)
        .output()
        .expect("it runs");
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    text.trim().parse().expect("a number of seconds")
}

/// The child's side of [`bare`].
fn bare_child(folder: &Path) {
    let mut names: Vec<_> = std::fs::read_dir(folder)
        .expect("a folder")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|end| end == "volume"))
        .collect();
    names.sort();
    let next = AtomicUsize::new(0);
    let run = || {
        let mut pages = 0;
        while let Some(name) = names.get(next.fetch_add(1, Ordering::Relaxed)) {
            pages += bare_pages(name);
        }
        pages
    };
    let pages: usize = thread::scope(|scope| {
        let threads = [(); 2].map(|()| deep_thread(scope, run).expect("a thread"));
        let pages = threads.map(|thread| thread.join().expect("the template is sound"));
        pages.into_iter().sum()
    });
    assert!(pages > 0, "no volume was found");
    println!("{}", processor(std::process::id()));
}

/// Lays out and writes one volume; says its pages.
fn bare_pages(name: &Path) -> usize {
    let overrides = BTreeMap::new();
    let request = Request {
        template: "cards.typ",
        data: std::fs::read(name).expect("data"),
        files: BTreeMap::new(),
        overrides: &overrides,
        properties: Properties {
            title: String::new(),
            author: Vec::new(),
            keywords: Vec::new(),
            date: Date {
                year: 2027,
                month: 3,
                day: 8,
            },
            ident: String::new(),
        },
        tagged: false,
    };
    make_pdf(&request).expect("the template is sound").pages
}

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    if let [first, file, joints] = args.as_slice()
        && first == "--write"
    {
        let joints = joints.parse().expect("a number of joints");
        std::fs::write(file, large::job(Kind::Varied, joints)).expect("written");
        return;
    }
    if let [first, folder] = args.as_slice()
        && first == "--bare"
    {
        bare_child(Path::new(folder));
        return;
    }
    let cards_alone = args.iter().any(|arg| arg == "--cards");
    let mut sizes: Vec<usize> = args.iter().filter_map(|arg| arg.parse().ok()).collect();
    if sizes.is_empty() {
        sizes = vec![100, 1000, 3000];
    }
    let folder = tempfile::tempdir().expect("a folder");
    let folder = folder.path();
    cold_start(folder);
    for kind in Kind::ALL {
        std::fs::write(folder.join("check.yaml"), large::job(kind, 3000)).expect("written");
        let cost = best(3, || run(&mut program(folder, &["check", "check.yaml"])));
        line(&format!("check of 3000 joints, {}", kind.name()), cost);
    }
    for kind in Kind::ALL {
        for &joints in &sizes {
            issue(folder, kind, joints, cards_alone);
        }
    }
}
