//! Calculation notes from the example jobs.

mod built;

use std::collections::BTreeMap;

use built::{example, lay_out, show, with_job};
use studbook::document::build::note;
use studbook::document::desk::Part;

#[test]
fn look() {
    for job in ["effluent-cooler.yaml", "inch-units.yaml", "smallest.yaml"] {
        let notes = with_job(job, &example(job), |context| {
            context
                .plan
                .groups
                .iter()
                .filter_map(|group| note(context, group, "n".into()))
                .collect::<Vec<_>>()
        });
        for (index, made) in notes.into_iter().enumerate() {
            let pages = lay_out(Part::Note(Box::new(made.content)), BTreeMap::new());
            show(&pages, &format!("note-{job}-{index}.pdf"));
        }
    }
}
