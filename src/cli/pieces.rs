//! The files of an issue, one after the other: each is made, written and forgotten, so that memory
//! does not grow with the number of joints.

use std::collections::BTreeMap;
use std::ops::Range;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use crate::document::blocks;
use crate::document::build::{
    Boundary, CardPages, Inner, NoteVolume, PhotoOf, isolation, isolation_label, joint_label, note,
    note_label, register, work_pack,
};
use crate::document::desk::{CardsOfJoint, Document, Part};
use crate::document::isolation::IsolationSheet;
use crate::document::note::Note;
use crate::document::{Builder, DocumentKind};
use crate::typeset::{Request, deep_thread};
use crate::yaml::{At, entries};

use super::Exit;
use super::data::{all_results, register_csv};
use super::issue::make_or_copy;
use super::piece::{Piece, Work};
use super::store::Making;
use super::volumes::{MOST_JOINTS, Volume, card_volumes, cards_of, note_volumes, volumes};

/// Makes everything that is wanted.
pub(super) fn make_all(
    work: &Work<'_>,
    wanted: &[&DocumentKind],
    making: &Making,
) -> Result<Vec<Piece>, Exit> {
    let mut pieces = Vec::new();
    for kind in wanted {
        match kind.builder {
            Builder::Pack => {
                let volumes = note_volumes(work.loaded.joints.len(), &work.loaded.plan, work.stem);
                for volume in &volumes {
                    pieces.push(note_volume(work, volume, making)?);
                }
                pieces.push(pack(work, volumes, making)?);
            }
            Builder::Cards => pieces.extend(cards(work, making)?),
            Builder::Register => pieces.push(register_csv(work, making)?),
            Builder::Results => pieces.push(all_results(work, making)?),
            Builder::Sheet(data) => {
                let data = data(work.context).map_err(|error| Exit::Failed(error.to_string()))?;
                let content = Content {
                    layout: kind.layout,
                    data,
                    files: BTreeMap::new(),
                };
                pieces.push(desk_document(work, &kind.file(work.stem), content, making)?);
            }
        }
    }
    Ok(pieces)
}

/// Two volumes at a time, one of them on this thread: the typesetter itself uses the cores only in part.
/// They are not in the shared pool, because the typesetter works there: a member of the pool that waits
/// for a volume would wait for the pool, and with as many volumes as members nobody would be left to
/// work. Each thread takes the next volume when it has done one, so that none waits for the other.
fn cards(work: &Work<'_>, making: &Making) -> Result<Vec<Piece>, Exit> {
    const AT_ONCE: usize = 2;
    let volumes = volumes(&work.loaded.joints, work.stem);
    let next = AtomicUsize::new(0);
    let run = || -> Result<Vec<(usize, Piece)>, Exit> {
        let mut made = Vec::new();
        loop {
            let number = next.fetch_add(1, Ordering::Relaxed);
            let Some(volume) = volumes.get(number) else {
                return Ok(made);
            };
            // After a fault nobody begins another volume.
            let piece = card_volume(work, volume, making)
                .inspect_err(|_| next.store(volumes.len(), Ordering::Relaxed))?;
            made.push((number, piece));
        }
    };
    let made: Vec<Result<Vec<(usize, Piece)>, Exit>> = thread::scope(|scope| {
        let others: Vec<_> = (1..AT_ONCE.min(volumes.len()))
            .map(|_| deep_thread(scope, run))
            .collect();
        let own = run();
        let others = others.into_iter().map(|one| match one {
            Ok(one) => one.join().unwrap_or_else(|panic| resume_unwind(panic)),
            Err(error) => Err(Exit::Failed(error.to_string())),
        });
        [own].into_iter().chain(others).collect()
    });
    let mut pieces = BTreeMap::new();
    for some in made {
        pieces.extend(some?);
    }
    Ok(pieces.into_values().collect())
}

/// One volume of cards.
pub(super) fn card_volume(
    work: &Work<'_>,
    volume: &Volume,
    making: &Making,
) -> Result<Piece, Exit> {
    let cards = volume
        .joints
        .iter()
        .filter_map(|&index| work.subject(index))
        .flat_map(|subject| cards_of(work.context, &subject))
        .collect();
    let data = blocks::Volume {
        language: work.loaded.wording.language().to_owned(),
        cards,
    };
    let data = serde_json::to_vec(&data).map_err(|error| Exit::Failed(error.to_string()))?;
    let request = Request {
        template: "cards.typ",
        data,
        files: BTreeMap::new(),
        overrides: &work.loaded.user.layout,
        properties: work.properties(&volume.name),
        tagged: false,
    };
    pdf(work, &volume.name, &request, making)
}

/// Makes a PDF, or copies it from an earlier issue, and writes it.
fn pdf(work: &Work<'_>, name: &str, request: &Request<'_>, making: &Making) -> Result<Piece, Exit> {
    work.progress.begin(name);
    let (bytes, listed, copied) = make_or_copy(work, name, request)?;
    work.write(making, name, &bytes)?;
    work.progress.done();
    Ok(Piece {
        name: name.to_owned(),
        listed,
        copied,
    })
}

/// Calculation notes of some of the groups, as a document of their own.
fn note_volume(work: &Work<'_>, volume: &NoteVolume, making: &Making) -> Result<Piece, Exit> {
    let notes = notes(work, volume.groups.clone());
    let parts = notes.into_iter().map(|note| Part::Note(Box::new(note)));
    let data = Document::new(work.loaded.wording.language(), parts.collect());
    of_pack(work, &volume.file, &data, BTreeMap::new(), making)
}

/// Lays out and writes a part of the pack, or the whole of it.
fn of_pack(
    work: &Work<'_>,
    name: &str,
    data: &Document,
    files: BTreeMap<String, Vec<u8>>,
    making: &Making,
) -> Result<Piece, Exit> {
    let data = serde_json::to_vec(data).map_err(|error| Exit::Failed(error.to_string()))?;
    let content = Content {
        layout: "pack.typ",
        data,
        files,
    };
    desk_document(work, name, content, making)
}

/// What is laid out: a layout, the JSON that it reads and the pictures that this names.
struct Content {
    layout: &'static str,
    data: Vec<u8>,
    files: BTreeMap<String, Vec<u8>>,
}

/// Lays out and writes a document for the desk.
fn desk_document(
    work: &Work<'_>,
    name: &str,
    content: Content,
    making: &Making,
) -> Result<Piece, Exit> {
    let request = Request {
        template: content.layout,
        data: content.data,
        files: content.files,
        overrides: &work.loaded.user.layout,
        properties: work.properties(name),
        tagged: true,
    };
    pdf(work, name, &request, making)
}

/// The work pack: one document for the desk, with everything but, above fifty joints, the cards and
/// the calculation notes.
fn pack(work: &Work<'_>, note_volumes: Vec<NoteVolume>, making: &Making) -> Result<Piece, Exit> {
    let name = format!("{}.pdf", work.stem);
    let mut files = Files::default();
    let inner = Inner {
        cards: cards_in_pack(work),
        isolations: isolations(work, &mut files),
        notes: if note_volumes.is_empty() {
            notes(work, 0..work.loaded.plan.groups.len())
        } else {
            Vec::new()
        },
        note_volumes,
        photos: photos(work, &mut files),
    };
    let volumes = volumes(&work.loaded.joints, work.stem);
    let pages = card_volumes(&work.loaded.joints, &volumes, &work.loaded.sheets);
    let pages = if work.loaded.joints.len() > MOST_JOINTS {
        CardPages::Volumes(&pages)
    } else {
        CardPages::Here
    };
    let rows = register(work.context, pages);
    let data = work_pack(work.context, &rows, pages, inner);
    of_pack(work, &name, &data, files.0, making)
}

/// Pictures of one PDF under the few names that every PDF uses again.
#[derive(Default)]
struct Files(BTreeMap<String, Vec<u8>>);

impl Files {
    fn add(&mut self, bytes: &[u8]) -> String {
        let name = format!("picture-{}.jpg", self.0.len() + 1);
        self.0.insert(name.clone(), bytes.to_vec());
        name
    }
}

fn cards_in_pack(work: &Work<'_>) -> Vec<CardsOfJoint> {
    if work.loaded.joints.len() > MOST_JOINTS {
        return Vec::new();
    }
    (0..work.loaded.joints.len())
        .filter_map(|index| Some((index, work.subject(index)?)))
        .map(|(index, subject)| CardsOfJoint {
            bookmark: subject.joint.tag.clone(),
            label: joint_label(index),
            cards: cards_of(work.context, &subject),
        })
        .collect()
}

/// The boundaries that joints stand behind, in the order of the job.
fn isolations(work: &Work<'_>, files: &mut Files) -> Vec<IsolationSheet> {
    let named = |name: &str| {
        work.loaded.joints.iter().any(|joint| {
            joint
                .work
                .isolation
                .get()
                .is_some_and(|isolation| isolation == name)
        })
    };
    let all = entries(work.context.job.isolations.as_ref());
    all.filter_map(|(name, isolation)| Some((name.get()?, isolation.get()?)))
        .filter(|(name, _)| named(name))
        .enumerate()
        .map(|(number, (name, entry))| {
            let path = entry.picture.as_ref().and_then(At::get);
            let bytes = path.and_then(|path| work.loaded.pictures.get(path.as_str()));
            let boundary = Boundary {
                name,
                isolation: entry,
                label: isolation_label(number),
                picture: bytes.map(|bytes| files.add(bytes)),
                in_pack: true,
            };
            isolation(work.context, &boundary).content
        })
        .collect()
}

/// The calculation notes of some of the groups, by their places in the plan.
fn notes(work: &Work<'_>, wanted: Range<usize>) -> Vec<Note> {
    let groups = work.loaded.plan.groups.iter().enumerate();
    groups
        .skip(wanted.start)
        .take(wanted.len())
        .filter_map(|(index, group)| note(work.context, group, note_label(index)))
        .map(|note| note.content)
        .collect()
}

fn photos(work: &Work<'_>, files: &mut Files) -> Vec<PhotoOf> {
    let joints = work.loaded.joints.iter().enumerate();
    joints
        .filter_map(|(index, joint)| {
            let (path, _) = joint.identity.photo.as_ref()?;
            let file = files.add(work.loaded.pictures.get(path)?);
            Some(PhotoOf { joint: index, file })
        })
        .collect()
}
