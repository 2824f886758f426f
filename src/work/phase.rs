//! When in the work a step stands, and who does it.

/// Where in the work a step stands. Kind and phase decide the side of a card: ticks before the load comes on stand on
/// side one, those of making up and after loading overleaf.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Phase {
    /// Before anyone goes to the joint, and making it safe.
    Before,
    /// Making the joint up: faces, gasket, studs, lubricant. Ticked overleaf, counted as one on side one.
    MakeUp,
    /// Tools set up at the joint.
    Prepare,
    /// The load comes on.
    Load,
    /// The load is proved.
    Check,
    /// What closes the work on the joint.
    Finish,
    /// The load goes off.
    Loosen,
    /// Fasteners come out.
    RunOut,
    /// The joint goes back to its owner.
    HandOver,
    /// When something is not as it should be.
    Stop,
}

impl Phase {
    /// The key of its words.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Before => "before",
            Self::MakeUp => "make_up",
            Self::Prepare => "prepare",
            Self::Load => "load",
            Self::Check => "check",
            Self::Finish => "finish",
            Self::Loosen => "loosen",
            Self::RunOut => "run_out",
            Self::HandOver => "hand_over",
            Self::Stop => "stop",
        }
    }
}

/// Who acts or signs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// A technician of the crew.
    Technician,
    /// The crew lead.
    CrewLead,
    /// Who runs the pump or driver.
    ToolOperator,
    /// The rigger.
    Rigger,
    /// The supervisor.
    Supervisor,
    /// The inspector, who did not assemble.
    Inspector,
    /// The operator of the plant or machine.
    PlantOperator,
    /// The person in charge of the permit.
    PersonInCharge,
    /// Who tests the air.
    GasTester,
    /// The engineer.
    Engineer,
    /// The planner.
    Planner,
    /// The client.
    Client,
    /// A third party.
    ThirdParty,
}

impl Role {
    /// The key of its word below `role`.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Technician => "technician",
            Self::CrewLead => "crew_lead",
            Self::ToolOperator => "tool_operator",
            Self::Rigger => "rigger",
            Self::Supervisor => "supervisor",
            Self::Inspector => "inspector",
            Self::PlantOperator => "operator",
            Self::PersonInCharge => "person_in_charge",
            Self::GasTester => "gas_tester",
            Self::Engineer => "engineer",
            Self::Planner => "planner",
            Self::Client => "client",
            Self::ThirdParty => "third_party",
        }
    }
}
