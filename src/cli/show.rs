//! `studbook show`.

use std::path::Path;

use crate::calc::ids;
use crate::document::results::{self, JointResults, Terms};
use crate::report::near;
use crate::wording::Values;

use super::Exit;
use super::args::{Format, Overrides};
use super::load::{Loaded, load};
use super::output::{exit_of, print, print_json, say};

/// Prints the numbers of a job, or of one joint.
pub(super) fn run(
    job: &Path,
    tag: Option<&str>,
    format: Format,
    overrides: &Overrides,
) -> Result<Exit, Exit> {
    let loaded = load(job, overrides)?;
    loaded.sound()?;
    match (tag, format) {
        (Some(tag), Format::Json) => print_json(&of_joint(&loaded, find(&loaded, tag)?))?,
        (Some(tag), Format::Text) => print(&listing(&of_joint(&loaded, find(&loaded, tag)?)))?,
        (None, Format::Json) => {
            let all: Vec<JointResults> = (0..loaded.joints.len())
                .map(|index| of_joint(&loaded, index))
                .collect();
            print_json(&all)?;
        }
        (None, Format::Text) => print(&table(&loaded))?,
    }
    Ok(exit_of(&loaded.findings))
}

/// The joint of a tag, else an exit that offers the near one.
pub(super) fn find(loaded: &Loaded, tag: &str) -> Result<usize, Exit> {
    let found = loaded.joints.iter().position(|joint| joint.tag == tag);
    found.ok_or_else(|| {
        let tags = loaded.joints.iter().map(|joint| joint.tag.as_str());
        let values = Values::new()
            .with("tag", tag)
            .with("near", near(tag, tags).unwrap_or_default());
        Exit::Failed(say(&loaded.wording, "cli.no_joint", &values))
    })
}

/// The results of one joint.
pub(super) fn of_joint(loaded: &Loaded, index: usize) -> JointResults {
    let units = loaded
        .job
        .as_ref()
        .map_or_else(crate::units::Units::metric, |job| job.units());
    let group = loaded
        .plan
        .of(index)
        .expect("the plan holds every joint that was resolved");
    let terms = Terms {
        units: &units,
        sources: &loaded.sources,
        wording: &loaded.wording,
    };
    results::of_joint(&loaded.joints[index], group, terms)
}

fn listing(results: &JointResults) -> String {
    let lines: Vec<String> = results
        .results
        .iter()
        .map(|row| {
            let value = match (&row.printed, row.missing) {
                (Some(printed), _) => format!("{printed} {}", row.unit),
                (None, Some(key)) => format!("? ({key})"),
                (None, None) => String::new(),
            };
            format!("{:44} {value}", row.id).trim_end().to_owned()
        })
        .collect();
    format!(
        "{} · {}\n\n{}",
        results.tag,
        results.group,
        lines.join("\n")
    )
}

/// One line a joint: tag, studs, load, setting, share of yield.
fn table(loaded: &Loaded) -> String {
    let units = loaded
        .job
        .as_ref()
        .map_or_else(crate::units::Units::metric, |job| job.units());
    let lines: Vec<String> = loaded
        .joints
        .iter()
        .enumerate()
        .filter_map(|(index, joint)| {
            let computed = &loaded.plan.of(index)?.computed;
            let ledger = &computed.ledger;
            let of = |key| -> String {
                ledger
                    .entry(key)
                    .and_then(|entry| entry.value.as_ref().ok().map(|value| (entry, *value)))
                    .map_or_else(
                        || "?".to_owned(),
                        |(entry, value)| units.print_si(value, entry.dimension).joined(),
                    )
            };
            let studs = joint.mechanics.studs.thread.get();
            let studs = studs.map_or("?", |thread| thread.designation.as_str());
            let reading = computed.readings(joint).full();
            let setting = reading.map_or_else(
                |_| "?".to_owned(),
                |reading| reading.printed(&units).joined(),
            );
            Some(format!(
                "{:20} {:>3} × {:12} {:>12} {:>14} {:>8}",
                joint.tag,
                of(ids::COUNT.key()),
                studs,
                of(ids::LOAD.key()),
                setting,
                of(ids::SHARE_OF_YIELD.key()),
            ))
        })
        .collect();
    lines.join("\n")
}
