//! What stands at the top of a side: which joint, what kills, what must be seen first.

use crate::document::blocks::{Badge, Block, Danger, Heads, Identity, IdentityLines, Tag};
use crate::document::build::capital;
use crate::document::geometry::Mm;
use crate::document::width;
use crate::joint::Who;
use crate::wording::Values;
use crate::work::{Point, Task};

use super::View;
use super::front::{IN_PANEL, IN_STRIP};

impl View<'_> {
    /// Everything on the first side to do, tag and word on further ones.
    pub(super) fn front_heads(&self) -> Heads {
        let identity = |lines| {
            Block::Identity(Identity {
                tag: Tag::new(&self.subject.joint.tag, self.g),
                badge: Badge {
                    word: self.context.label(match self.work.task {
                        Task::Loosen => "word.loosen",
                        Task::Tighten => "word.tighten",
                        Task::Recheck => "word.recheck",
                    }),
                    outlined: self.work.task == Task::Loosen,
                },
                lines,
            })
        };
        Heads {
            first: vec![identity(Some(self.lines()))],
            again: vec![identity(None)],
        }
    }

    /// Tag and word of a side to record.
    pub(super) fn record_identity(&self) -> Block {
        Block::Identity(Identity {
            tag: Tag::new(&self.subject.joint.tag, self.g),
            badge: Badge {
                word: self.context.label("word.record"),
                outlined: false,
            },
            lines: None,
        })
    }

    fn lines(&self) -> IdentityLines {
        let identity = &self.subject.joint.identity;
        let name = match (&identity.equipment_name, identity.equipment.get()) {
            (Some(name), Some(tag)) => format!("{tag} · {name}"),
            (None, Some(tag)) => tag.clone(),
            (Some(name), None) => name.clone(),
            (None, None) => self.context.to_be_given(Who::Planner),
        };
        let drawing = match &identity.drawing {
            Some((number, Some(revision))) => {
                let values = Values::new()
                    .with("number", number)
                    .with("revision", revision);
                self.context.say("card.drawing", &values)
            }
            Some((number, None)) => number.clone(),
            None => String::new(),
        };
        IdentityLines {
            name,
            place: identity.location.get().cloned().unwrap_or_default(),
            class: self.class_line(),
            drawing,
        }
    }

    /// The class, with the point that is signed beside it.
    fn class_line(&self) -> String {
        let class = match self.subject.joint.mechanics.class.value() {
            Some(class) => self.context.say1("card.class", "class", class.word()),
            None => self.context.label("card.class_unknown"),
        };
        match self
            .signed_at(IN_STRIP)
            .and_then(|point| point.name.as_ref())
        {
            Some(point) => {
                let values = Values::new().with("class", class).with("point", point);
                self.context.say("card.class_and_point", &values)
            }
            None => class,
        }
    }

    /// The point of a step, where somebody signs it in the class of the joint.
    pub(super) fn signed_at(&self, id: &str) -> Option<&Point> {
        let mut points = self.work.points().filter(|(step, _)| step.id == id);
        let (_, point) = points.next()?;
        point.attendance_of(self.class).is_signed().then_some(point)
    }

    /// What stands behind the joint. Words of the planner's own take the place of the gravest.
    pub(super) fn danger(&self) -> Block {
        let behind = self.work.hazards.iter().filter(|it| it.is_behind);
        let mut hazards: Vec<String> = behind
            .filter_map(|hazard| self.voice.hazard(hazard, "danger"))
            .map(|text| capital(&text))
            .collect();
        if let Some(own) = &self.subject.joint.identity.danger {
            match hazards.first_mut() {
                Some(first) => own.clone_into(first),
                None => hazards.push(own.clone()),
            }
        }
        if hazards.is_empty() {
            hazards.push(self.label("danger_unknown").to_owned());
        }
        let hazards = hazards.iter().flat_map(|it| self.in_panel(it)).collect();
        let point = self.signed_at(IN_PANEL);
        Block::Danger(Danger {
            word: self.context.label("signal.danger"),
            hazards,
            stop: self.label("danger_stop").to_owned(),
            point: point.and_then(|it| it.name.clone()).unwrap_or_default(),
            boxes: [
                "card.danger.certificate",
                "card.danger.seen",
                "card.danger.time",
                "card.danger.initials",
            ]
            .map(|id| self.context.label(id)),
        })
    }

    /// A line of the danger panel, or two halves of it.
    fn in_panel(&self, text: &str) -> Vec<String> {
        let panel = &self.g.danger;
        let room = self.g.page.width - panel.cell - panel.inset - Mm::new(3.0);
        match width::of(text, self.g.sizes.step) <= room.mm() {
            true => vec![text.to_owned()],
            false => width::halves(text),
        }
    }
}
