//! The nodes of a tree, in pieces.

use super::tree::{Id, Node};

/// Nodes of one piece.
const PIECE: usize = 1024;

/// A list of nodes that grows by pieces. A job of thousands of joints would else be one piece of several MB, and
/// an allocator that got such a one back keeps as much of everything that follows.
#[derive(Clone, Debug, Default)]
pub(super) struct Nodes {
    /// All but the last hold [`PIECE`] nodes.
    pieces: Vec<Vec<Node>>,
}

impl Nodes {
    pub(super) fn len(&self) -> usize {
        let last = self.pieces.last().map_or(0, Vec::len);
        self.pieces.len().saturating_sub(1) * PIECE + last
    }

    /// Adds a node behind the last one.
    pub(super) fn push(&mut self, node: Node) -> Id {
        let id = Id(u32::try_from(self.len()).unwrap_or(u32::MAX));
        match self.pieces.last_mut() {
            Some(last) if last.len() < PIECE => last.push(node),
            _ => {
                let mut piece = Vec::with_capacity(PIECE);
                piece.push(node);
                self.pieces.push(piece);
            }
        }
        id
    }

    pub(super) fn get(&self, id: Id) -> Option<&Node> {
        let at = usize::try_from(id.0).ok()?;
        self.pieces.get(at / PIECE)?.get(at % PIECE)
    }

    pub(super) fn get_mut(&mut self, id: Id) -> Option<&mut Node> {
        let at = usize::try_from(id.0).ok()?;
        self.pieces.get_mut(at / PIECE)?.get_mut(at % PIECE)
    }
}
