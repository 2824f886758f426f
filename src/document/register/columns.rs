//! The columns of the register: all of them in the CSV file, some of them on paper.

/// The columns with text, in the order of the CSV file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ColumnId {
    /// Tag of the joint.
    Tag,
    /// Equipment.
    Equipment,
    /// Unit of the plant.
    Unit,
    /// Location in words.
    Place,
    /// Flow diagram or drawing with its revision.
    Drawing,
    /// Type of joint.
    JointType,
    /// Size and class.
    Size,
    /// Number of studs and thread.
    Studs,
    /// Length of the studs.
    StudLength,
    /// Materials of stud and nut.
    Material,
    /// Gasket.
    Gasket,
    /// Lubricant.
    Lubricant,
    /// Method.
    Method,
    /// Target load with its unit in the heading.
    Load,
    /// Torque or pressure with its unit.
    Setting,
    /// Tools.
    Tool,
    /// Criticality class.
    Class,
    /// Isolation sheet.
    Isolation,
    /// Permit.
    Permit,
    /// Crew.
    Crew,
    /// Planned start.
    Start,
    /// Hours of labour, typical.
    Hours,
    /// Page of the card.
    CardPage,
    /// Revision of the card.
    Revision,
}

impl ColumnId {
    /// All columns in the order of the CSV file.
    pub const ALL: [Self; 24] = [
        Self::Tag,
        Self::Equipment,
        Self::Unit,
        Self::Place,
        Self::Drawing,
        Self::JointType,
        Self::Size,
        Self::Studs,
        Self::StudLength,
        Self::Material,
        Self::Gasket,
        Self::Lubricant,
        Self::Method,
        Self::Load,
        Self::Setting,
        Self::Tool,
        Self::Class,
        Self::Isolation,
        Self::Permit,
        Self::Crew,
        Self::Start,
        Self::Hours,
        Self::CardPage,
        Self::Revision,
    ];

    /// The key of its heading in the wording.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Tag => "register.tag",
            Self::Equipment => "register.equipment",
            Self::Unit => "register.unit",
            Self::Place => "register.place",
            Self::Drawing => "register.drawing",
            Self::JointType => "register.joint_type",
            Self::Size => "register.size",
            Self::Studs => "register.studs",
            Self::StudLength => "register.stud_length",
            Self::Material => "register.material",
            Self::Gasket => "register.gasket",
            Self::Lubricant => "register.lubricant",
            Self::Method => "register.method",
            Self::Load => "register.load",
            Self::Setting => "register.setting",
            Self::Tool => "register.tool",
            Self::Class => "register.class",
            Self::Isolation => "register.isolation",
            Self::Permit => "register.permit",
            Self::Crew => "register.crew",
            Self::Start => "register.start",
            Self::Hours => "register.hours",
            Self::CardPage => "register.card_page",
            Self::Revision => "register.revision",
        }
    }

    /// Width on paper in mm, where the column is printed; the rest stands in the CSV file only.
    pub(super) const fn width_on_paper(self) -> Option<f64> {
        Some(match self {
            Self::Tag => 23.0,
            Self::Place => 26.8,
            Self::Studs => 21.0,
            Self::Gasket => 22.2,
            Self::Lubricant => 10.0,
            Self::Method => 14.6,
            Self::Load => 13.0,
            Self::Setting => 14.5,
            Self::Tool => 16.0,
            Self::Class => 8.0,
            Self::Crew => 8.7,
            Self::Isolation => 8.5,
            Self::Start => 17.8,
            Self::Hours => 8.4,
            Self::CardPage => 0.0,
            _ => return None,
        })
    }

    pub(super) const fn is_number(self) -> bool {
        matches!(self, Self::Load | Self::Hours | Self::CardPage)
    }

    pub(super) const fn is_strong(self) -> bool {
        matches!(self, Self::Tag | Self::Setting)
    }
}

/// The columns on paper with their widths: what is left of 265 mm goes to the page of the card.
pub(super) fn printed_columns() -> impl Iterator<Item = (ColumnId, f64)> {
    let wide = ColumnId::ALL
        .iter()
        .filter_map(|column| column.width_on_paper());
    let page = 265.0 - BOX_WIDTH * 8.0 - wide.sum::<f64>();
    ColumnId::ALL.into_iter().filter_map(move |column| {
        let width = column.width_on_paper()?;
        Some((
            column,
            if column == ColumnId::CardPage {
                page
            } else {
                width
            },
        ))
    })
}

/// Width of a status box, in mm.
pub(super) const BOX_WIDTH: f64 = 5.5;
