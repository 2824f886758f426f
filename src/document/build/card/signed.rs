//! Who signs: the points of the class in the order of the work with what they accept, then the people.

use crate::document::blocks::{Block, Head, Line, Signature, Signatures};
use crate::document::width;
use crate::work::{Phase, Point, Priority, Step, Value};

use super::View;
use super::front::{IN_PANEL, IN_STRIP};
use super::numbers::Numbers;
use super::record::{STUB, is_spare};

type Signed<'a> = (&'a Step, &'a Point);

impl View<'_> {
    /// `least` leaves away who may go.
    pub(super) fn signatures(&self, least: bool, numbers: &mut Numbers) -> Block {
        let is_here = |(step, point): &Signed<'_>| {
            let is_elsewhere = [IN_STRIP, IN_PANEL].contains(&step.id);
            let is_signed = point.attendance_of(self.class).is_signed();
            is_signed && !is_elsewhere && step.priority != Priority::PackOnly
        };
        let (points, people): (Vec<_>, Vec<_>) = self
            .work
            .points()
            .filter(is_here)
            .partition(|(_, point)| point.name.is_some());
        let mut items = Vec::new();
        for lines in shared_lines(points) {
            let number = numbers.next();
            let label = self.point_label(&number, &lines);
            items.push(Signature {
                number,
                label,
                hold: true,
            });
        }
        let has_own_point = |person: &Point| {
            self.work
                .points()
                .filter(is_here)
                .any(|(_, point)| point.name.is_some() && point.signs == person.signs)
        };
        for (step, point) in people {
            if least && is_spare(step.priority) && has_own_point(point) {
                continue;
            }
            let label = self.voice.step(self.work, step, "sign").unwrap_or_default();
            items.push(Signature {
                number: numbers.next(),
                label,
                hold: false,
            });
        }
        let stub = self.work.step(STUB);
        let stub = stub.and_then(|step| self.voice.step(self.work, step, "card"));
        let stub = stub.map(|name| Line::new(numbers.next(), name, ""));
        let head = Head::new(
            self.context.label("card.record.signed"),
            self.context.label("card.record.signed_note"),
        );
        Block::Signatures(Signatures::new(head, items, stub))
    }

    /// The fullest form that its line holds: what is accepted stands there where it can.
    fn point_label(&self, number: &str, points: &[Signed<'_>]) -> String {
        let names = points
            .iter()
            .enumerate()
            .map(|(at, (_, point))| match at + 1 {
                last if last == points.len() => self.point_name(point),
                _ => point.name.clone().unwrap_or_default(),
            });
        let names = self.side_by_side(names.collect());
        let words = points
            .iter()
            .map(|(step, _)| self.voice.step(self.work, step, "sign"));
        let words: Vec<String> = words.map(Option::unwrap_or_default).collect();
        let last = words.last().cloned().unwrap_or_default();
        let words = self.side_by_side(words);
        let mut roles: Vec<&str> = Vec::new();
        for (_, point) in points {
            let signs = [Some(point.signs), point.also];
            for role in signs.into_iter().flatten().map(|it| self.voice.role(it)) {
                if !roles.contains(&role) {
                    roles.push(role);
                }
            }
        }
        let roles = self.side_by_side(roles.into_iter().map(str::to_owned).collect());
        let accepted: Vec<String> = points
            .iter()
            .flat_map(|it| self.work.accepted(it.1))
            .map(|limit| self.voice.limit(limit))
            .collect();
        let accepted = std::iter::once(words.clone()).chain(accepted).collect();
        let forms = [self.side_by_side(accepted), words, last];
        let said = |what: String| {
            let values = [
                ("points", Value::Text(names.clone())),
                ("what", Value::Text(what)),
                ("who", Value::Text(roles.clone())),
            ];
            self.voice.say(&["work", "card", "signs"], &values)
        };
        let room = self.g.signatures.width.mm();
        let fits =
            |label: &String| width::of(&format!("{number}  {label}"), self.g.sizes.note) <= room;
        let [fullest, shorter, least] = forms.map(said);
        [fullest, shorter].into_iter().find(fits).unwrap_or(least)
    }

    /// `HOLD H3`.
    fn point_name(&self, point: &Point) -> String {
        let key = point.attendance_of(self.class).key();
        let word = self.voice.label(&["work", "attendance", key, "word"]);
        let name = point.name.as_deref().unwrap_or_default();
        format!("{word} {name}")
    }
}

/// What is looked at while the joint is made up shares the line of the next point, where the same person signs both.
fn shared_lines(points: Vec<Signed<'_>>) -> Vec<Vec<Signed<'_>>> {
    let mut lines: Vec<Vec<Signed<'_>>> = Vec::new();
    for (step, point) in points {
        let shared = lines.last_mut().filter(|line| {
            line.last()
                .is_some_and(|(last, it)| last.phase == Phase::MakeUp && it.signs == point.signs)
        });
        match shared {
            Some(line) => line.push((step, point)),
            None => lines.push(vec![(step, point)]),
        }
    }
    lines
}
