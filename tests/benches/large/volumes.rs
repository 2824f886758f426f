//! The data of the card volumes of a large job, as the program would hand them to the typesetter.

use std::path::Path;

use studbook::document::blocks::Volume;
use studbook::document::build::{Context, Subject, card};
use studbook::job;
use studbook::methods::{calculate, tasks};
use studbook::report::Sources;
use studbook::resolve;
use studbook::rules;
use studbook::wording::Wording;

use crate::large::{self, Kind};

/// Joints of one equipment in [`large::job`].
const OF_EQUIPMENT: usize = 40;

/// Joints of a volume: those of one equipment make four, as the program cuts them.
const OF_VOLUME: usize = 10;

/// Writes `0000.volume`, `0001.volume`... into a folder; older ones are removed.
pub(crate) fn write(folder: &Path, kind: Kind, joints: usize) {
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.extension().is_some_and(|end| end == "volume") {
            std::fs::remove_file(path).expect("removed");
        }
    }
    let text = large::job(kind, joints);
    let mut sources = Sources::default();
    let (job, findings) = job::open("job.yaml", text.as_bytes(), &mut sources);
    let job = job.unwrap_or_else(|| panic!("the job is sound: {findings:?}"));
    let (joints, _) = resolve::resolve(&job);
    let plan = calculate(&joints);
    let findings = rules::check(&rules::Subject::new(&job, &joints, &plan, &[]), Vec::new());
    let wording = Wording::embedded("en").expect("English is embedded");
    let context = Context::new(&job, &joints, &plan, &findings, &wording)
        .with_sources(&sources)
        .with_draft(true);
    let all: Vec<usize> = (0..joints.len()).collect();
    let volumes = all
        .chunks(OF_EQUIPMENT)
        .flat_map(|equipment| equipment.chunks(OF_VOLUME));
    for (number, members) in volumes.enumerate() {
        let cards = members.iter().flat_map(|&index| {
            let group = plan.of(index).expect("every joint has a group");
            let subject = Subject {
                joint: &joints[index],
                computed: &group.computed,
                group: &group.name,
            };
            let tasks: Vec<_> = tasks(subject.joint).collect();
            let made = tasks
                .into_iter()
                .filter_map(|task| card(&context, &subject, task));
            made.map(|made| made.content).collect::<Vec<_>>()
        });
        let data = Volume {
            language: "en".to_owned(),
            cards: cards.collect(),
        };
        let data = serde_json::to_vec(&data).expect("cards are plain data");
        std::fs::write(folder.join(format!("{number:04}.volume")), data).expect("written");
    }
}
