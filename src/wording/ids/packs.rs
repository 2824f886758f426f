//! What the work pack asks for.

ids! {
    pack {
        COVER_JOINTS = "cover.joints";
        COVER_STUDS = "cover.studs";
        COVER_HOLDS = "cover.holds";
        COVER_CREWS = "cover.crews";
        COVER_SHIFTS = "cover.shifts";
        COVER_EQUIPMENT_MORE = "cover.equipment_more";
        COVER_DISTRIBUTION = "cover.distribution";
        COVER_FINDINGS_COUNT = "cover.findings_count";
        COVER_FINDINGS_MORE = "cover.findings_more";
        COVER_STOP = "cover.stop";
        SCOPE_DEFAULT = "scope.default";
        SCOPE_DEFAULT_NO_GASKET = "scope.default_no_gasket";
        SCOPE_EXCLUDED_DEFAULT = "scope.excluded_default";
        SCOPE_NOT_GIVEN = "scope.not_given";
        ASSUMPTIONS_LINE = "assumptions.line";
        ASSUMPTIONS_MANY = "assumptions.many";
        ASSUMPTIONS_MEMORY = "assumptions.memory";
        PLAN_RANGE = "plan.range";
        CAUTIONS_MORE = "cautions.more";
        ITP_NOTICE_DEFAULT = "itp.notice_default";
        ITP_ROWS = "itp.rows";
        ITP_DEFINITIONS = "itp.definitions";
        DEVIATION_DECISIONS = "deviation.decisions";
        PHOTOS_CAPTION = "photos.caption";
        VOLUMES_NOTE = "volumes.note";
    }
    procedure {
        BEFORE_ROWS = "before.rows";
        BREAK_JOINT_ROWS = "break_joint.rows";
        ASSEMBLE_ROWS = "assemble.rows";
        HAND_TIGHTEN_ROWS = "hand.tighten.rows";
        HAND_LOOSEN_ROWS = "hand.loosen.rows";
        HYDRAULIC_RULES_ROWS = "hydraulic.rules.rows";
        HYDRAULIC_TIGHTEN_ROWS = "hydraulic.tighten.rows";
        HYDRAULIC_LOOSEN_ROWS = "hydraulic.loosen.rows";
        FINISH_ROWS = "finish.rows";
        STUCK_ROWS = "stuck.rows";
        STOP_ROWS = "stop.rows";
    }
}
