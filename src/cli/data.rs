//! The files of an issue for other programs: the register as CSV, the results as JSON.

use crate::document::build::{CardPages, register};
use crate::document::code;
use crate::document::results::{self, Terms};

use super::Exit;
use super::piece::{Piece, Work};
use super::store::{Listed, Making};
use super::volumes::{card_volumes, volumes};

/// The register as CSV, with the rows of the printed one.
pub(super) fn register_csv(work: &Work<'_>, making: &Making) -> Result<Piece, Exit> {
    let name = format!("{}_register.csv", work.stem);
    let volumes = volumes(&work.loaded.joints, work.stem);
    let pages = card_volumes(&work.loaded.joints, &volumes, &work.loaded.sheets);
    let bytes = register(work.context, CardPages::Volumes(&pages)).csv();
    work.write(making, &name, &bytes)?;
    Ok(Piece {
        name,
        listed: listed(&bytes),
        copied: false,
    })
}

/// The results are written joint by joint, as one list.
pub(super) fn all_results(work: &Work<'_>, making: &Making) -> Result<Piece, Exit> {
    let name = format!("{}_results.json", work.stem);
    let mut bytes = b"[\n".to_vec();
    for (index, joint) in work.loaded.joints.iter().enumerate() {
        let Some(group) = work.loaded.plan.of(index) else {
            continue;
        };
        let results = results::of_joint(
            joint,
            group,
            Terms {
                units: &work.context.units,
                sources: &work.loaded.sources,
                wording: &work.loaded.wording,
            },
        );
        if index > 0 {
            bytes.extend_from_slice(b",\n");
        }
        serde_json::to_writer(&mut bytes, &results)
            .map_err(|error| Exit::Failed(error.to_string()))?;
    }
    bytes.extend_from_slice(b"\n]\n");
    work.write(making, &name, &bytes)?;
    Ok(Piece {
        name,
        listed: listed(&bytes),
        copied: false,
    })
}

/// The line of the manifest for a file whose bytes are its whole input.
fn listed(bytes: &[u8]) -> Listed {
    let hash = code::hash(bytes);
    let length = u64::try_from(bytes.len()).unwrap_or(u64::MAX);
    Listed {
        input: hash.clone(),
        hash,
        bytes: length,
        pages: None,
    }
}
