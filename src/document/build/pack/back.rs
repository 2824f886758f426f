//! Blank deviation sheets and the photos.

use crate::document::blocks::Head;
use crate::document::pack::{Deviations, PhotoEntry, Photos, Room, WriteIn, deviation_sheets};

use super::super::context::Context;
use super::super::furniture::{bare_furniture, sealed};

/// A picture from the site.
#[derive(Clone, Debug)]
pub struct PhotoOf {
    /// The joint, by its index in the job.
    pub joint: usize,
    /// Name of the file among the files of the request, such as `picture-1.jpg`.
    pub file: String,
}

/// Deviation sheets: 5 % of the joints, at least three.
pub(super) fn deviations(context: &Context<'_>) -> Deviations {
    let label = |key: &str| context.label(&format!("pack.deviation.{key}"));
    let head = |title: &str, note: &str| Head {
        title: label(title),
        note: if note.is_empty() {
            String::new()
        } else {
            label(note)
        },
    };
    let write_in = |key: &str, width: f64| WriteIn {
        label: label(key),
        width,
    };
    let room = |key: &str, lines: usize, blank: bool| Room {
        head: head(key, ""),
        lines,
        blank,
    };
    let document = context.label("document.deviation");
    let mut sheets = Deviations {
        furniture: bare_furniture(context, &document),
        label: "deviations".to_owned(),
        head: head("title", "note"),
        count: deviation_sheets(context.joints.len()),
        boxes: vec![
            vec![
                write_in("number", 40.0),
                write_in("joint", 70.0),
                write_in("card", 62.0),
            ],
            vec![
                write_in("box", 40.0),
                write_in("date", 40.0),
                write_in("found_by", 92.0),
            ],
        ],
        rooms: vec![
            room("required", 1, false),
            room("found", 2, false),
            room("sketch", 4, true),
            room("proposed", 2, false),
        ],
        decisions: context.list("pack.deviation.decisions", &crate::wording::Values::new()),
        decision_head: head("decision", "decision_note"),
        signatures: ["engineer", "supervisor", "client", "recheck", "closed"]
            .map(label)
            .to_vec(),
    };
    let code = context.code(&sheets);
    sheets.furniture = sealed(context, sheets.furniture, &code);
    sheets
}

/// The photos, four a page; none where the job has none.
pub(super) fn photos(context: &Context<'_>, photos: Vec<PhotoOf>) -> Option<Photos> {
    if photos.is_empty() {
        return None;
    }
    let label = |key: &str| context.label(&format!("pack.photos.{key}"));
    let entries = photos.into_iter().filter_map(|photo| {
        let joint = context.joints.get(photo.joint)?;
        let place = joint.identity.location.get().cloned().unwrap_or_default();
        let caption = context.say1("pack.photos.caption", "name", place);
        Some(PhotoEntry {
            file: photo.file,
            tag: joint.tag.clone(),
            caption,
        })
    });
    let document = context.label("document.photos");
    let mut pages = Photos {
        furniture: bare_furniture(context, &document),
        label: "photos".to_owned(),
        head: Head {
            title: label("title"),
            note: label("note"),
        },
        photos: entries.collect(),
    };
    let code = context.code(&pages);
    pages.furniture = sealed(context, pages.furniture, &code);
    Some(pages)
}
