//! What the isolation and pressure-release sheet asks for.

ids! {
    isolation {
        JOINTS_LINE = "joints_line";
        FORCE_TITLE = "force.title";
        FORCE_LITTLE = "force.little";
        FORCE_OPENING = "force.opening";
        FORCE_MISSING = "force.missing";
        BOUNDARY_ALT = "boundary.alt";
        PROOF_ROWS = "proof.rows";
        BACK_ROWS = "back.rows";
        JOINTS_MORE = "joints.more";
    }
}
