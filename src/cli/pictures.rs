//! Pictures that a job names: photos of joints and sketches of isolations, read and prepared.

use std::collections::BTreeMap;
use std::path::Path;

use crate::job::Job;
use crate::joint::Joint;
use crate::parallel;
use crate::photo;
use crate::report::{Finding, Place};
use crate::units::Length;
use crate::yaml::{At, entries};

use super::files;

/// Prepared pictures by the path that the job names.
pub(super) type Pictures = BTreeMap<String, Vec<u8>>;

/// Photos that are decoded at the same time: one may take 36 MB while it is.
const AT_ONCE: usize = 4;

/// Reads and prepares every picture once. One that cannot be used is an error of the job that says
/// why, at the place where it is named.
pub(super) fn read(
    job: &Job,
    joints: &[Joint],
    base: &Path,
    allow_outside: bool,
) -> (Pictures, Vec<Finding>) {
    let wanted = wanted(job, joints);
    let mut pictures = Pictures::new();
    let mut findings = Vec::new();
    for chunk in wanted.chunks(AT_ONCE) {
        let made = parallel::map(chunk, |(path, (place, size))| {
            prepare(base, path, *place, *size, allow_outside).map(|bytes| (path.clone(), bytes))
        });
        for result in made {
            match result {
                Ok((path, bytes)) => {
                    pictures.insert(path, bytes);
                }
                Err(finding) => findings.push(finding),
            }
        }
    }
    (pictures, findings)
}

type Size = (Length, Length);
type Wanted = Vec<(String, (Place, Size))>;

/// Frame of a photo in the pack, four a page.
const QUARTER_PAGE: Size = (Length::mm(84.0), Length::mm(100.0));
/// Frame of a sketch on an isolation sheet.
const SKETCH: Size = (Length::mm(176.0), Length::mm(76.0));

fn wanted(job: &Job, joints: &[Joint]) -> Wanted {
    let mut wanted: BTreeMap<String, (Place, Size)> = BTreeMap::new();
    for joint in joints {
        if let Some((path, place)) = &joint.identity.photo {
            wanted.entry(path.clone()).or_insert((*place, QUARTER_PAGE));
        }
    }
    let isolations = entries(job.isolations.as_ref());
    for (_, isolation) in isolations {
        let picture = isolation
            .get()
            .and_then(|isolation| isolation.picture.as_ref());
        if let Some((path, place)) = picture.and_then(At::both) {
            wanted
                .entry(path.as_str().to_owned())
                .or_insert((place, SKETCH));
        }
    }
    wanted.into_iter().collect()
}

fn prepare(
    base: &Path,
    path: &str,
    place: Place,
    size: Size,
    allow_outside: bool,
) -> Result<Vec<u8>, Finding> {
    let Some(full) = files::inside(base, path, allow_outside) else {
        return Err(Finding::job("job.path_outside", place).with("path", path));
    };
    let bytes = files::read(&full).map_err(|error| {
        Finding::job("job.file_unreadable", place)
            .with("path", path)
            .with("error", error.to_string())
    })?;
    let prepared = photo::prepare(&bytes, size.0, size.1);
    prepared.map(|photo| photo.jpeg).map_err(|refusal| {
        Finding::job(refusal.id(), place)
            .with("path", path)
            .with("detail", refusal.detail())
    })
}
