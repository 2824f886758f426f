//! One value to be decoded: what stands there, and where a finding about it points.

use std::cell::{Cell, RefCell};

use super::check;
use super::fault::{Complaint, Fault};
use super::ids::may_name;
use super::tree::{Id, Tree, View};
use crate::report::{Finding, Place};

/// What decoding shares: the tree, the findings, the budget.
pub(super) struct Context<'t> {
    pub(super) tree: &'t Tree,
    pub(super) findings: RefCell<Vec<Finding>>,
    pub(super) visits: Cell<usize>,
}

/// Where a value stands, or should stand.
#[derive(Clone, Copy)]
pub(super) enum Position<'t> {
    /// At a node.
    Node(Id),
    /// A key that does not stand in its map.
    Missing {
        /// The place of the map.
        map: Place,
        /// The key that holds the map.
        within: &'t str,
        /// The map is an entry of that key's list.
        item: bool,
    },
}

/// One value to be decoded.
#[derive(Clone, Copy)]
pub(super) struct Slot<'t, 'c> {
    pub(super) context: &'c Context<'t>,
    pub(super) at: Position<'t>,
    /// The key that holds it; elements of a list have the key of the list.
    pub(super) key: &'t str,
    pub(super) key_node: Option<Id>,
    /// It is an element of a list.
    pub(super) item: bool,
}

impl<'t> Slot<'t, '_> {
    pub(super) fn tell(&self, finding: Finding) {
        self.context.findings.borrow_mut().push(finding);
    }

    /// Where the value stands. An empty value has no extent, so its key stands for it.
    pub(super) fn place(&self) -> Place {
        match self.at {
            Position::Missing { map, .. } => map,
            Position::Node(id) => {
                let tree = self.context.tree;
                match (tree.view(id), self.key_node) {
                    (View::Null, Some(key)) => tree.place(key),
                    _ => tree.place(id),
                }
            }
        }
    }

    /// Where a map that lacks a key is pointed at: at its key, or at its bracket.
    pub(super) fn map_place(&self) -> Place {
        let tree = self.context.tree;
        let block = match self.at {
            Position::Node(id) => tree.node(id).is_some_and(|node| node.block),
            Position::Missing { .. } => false,
        };
        match self.key_node.filter(|_| block) {
            Some(key) => tree.place(key),
            None => self.place(),
        }
    }

    /// Turns an error into a finding at this place.
    pub(super) fn report(&self, fault: Fault) {
        match fault {
            Fault::Silent => {}
            Fault::Placed(finding) => self.tell(*finding),
            Fault::Complaint(complaint) => {
                let part = match self.at {
                    Position::Node(id) => complaint
                        .part()
                        .and_then(|part| self.context.tree.part_of(id, part)),
                    Position::Missing { .. } => None,
                };
                let mut finding = complaint
                    .at(Some(part.unwrap_or_else(|| self.place())))
                    .with("key", self.key);
                let item = match self.at {
                    Position::Missing { item, .. } => item,
                    Position::Node(_) => self.item,
                };
                if item && may_name(finding.id, "item") {
                    finding = finding.with("item", "yes");
                }
                self.tell(finding);
            }
        }
    }

    /// What stands here, or why nothing does. Every visit counts, so that aliases of aliases end.
    pub(super) fn enter(&self) -> Result<View<'t>, Fault> {
        let id = match self.at {
            Position::Node(id) => id,
            Position::Missing { within, .. } => {
                return Err(Fault::new(
                    Complaint::new("job.missing_key").with("within", within),
                ));
            }
        };
        let visits = &self.context.visits;
        match visits.get() {
            0 => return Err(Fault::Silent),
            1 => {
                visits.set(0);
                let finding = Finding::job("yaml.alias_budget", self.place());
                return Err(Fault::Placed(Box::new(finding)));
            }
            left => visits.set(left - 1),
        }
        match self.context.tree.view(id) {
            View::Bad => Err(Fault::Silent),
            View::Null => Err(Fault::new(Complaint::new("job.missing_value"))),
            view => Ok(view),
        }
    }

    /// Whether the value is simply left out.
    pub(super) fn is_absent(&self) -> bool {
        match self.at {
            Position::Missing { .. } => true,
            Position::Node(id) => self.context.tree.view(id) == View::Null,
        }
    }

    fn shape(found: View<'_>, wanted: &'static str) -> Fault {
        let found = match found {
            View::List(_) => "list",
            View::Map(_) => "map",
            _ => "text",
        };
        Fault::new(
            Complaint::new("job.wrong_shape")
                .with("found", found)
                .with("wanted", wanted),
        )
    }

    pub(super) fn text(&self, wanted: &'static str) -> Result<&'t str, Fault> {
        match self.enter()? {
            View::Text(text) => Ok(text.trim()),
            other => Err(Self::shape(other, wanted)),
        }
    }

    pub(super) fn whole<N: TryFrom<i128>>(&self, least: i128, most: i128) -> Result<N, Fault> {
        let text = self.text("whole number")?;
        check::whole_number(text, least, most)
            .and_then(|number| N::try_from(number).map_err(|_| check::range(text, least, most)))
            .map_err(Fault::new)
    }

    pub(super) fn items(&self) -> Result<&'t [Id], Fault> {
        match self.enter()? {
            View::List(items) => Ok(items),
            other => Err(Self::shape(other, "list")),
        }
    }

    pub(super) fn pairs(&self) -> Result<&'t [(Id, Id)], Fault> {
        match self.enter()? {
            View::Map(pairs) => Ok(pairs),
            other => Err(Self::shape(other, "map")),
        }
    }

    /// A list or map that is absent is empty; one of the wrong shape is reported here, so that its
    /// neighbours are still read, and is empty too.
    pub(super) fn or_empty<E>(
        &self,
        read: impl FnOnce(&Self) -> Result<&'t [E], Fault>,
    ) -> &'t [E] {
        if self.is_absent() {
            return &[];
        }
        read(self).unwrap_or_else(|fault| {
            self.report(fault);
            &[]
        })
    }
}
