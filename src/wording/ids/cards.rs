//! What crew cards ask for.

ids! {
    page {
        OF = "of";
        VOLUME = "volume";
    }
    running {
        LEFT = "left";
        RIGHT = "right";
    }
    document {
        CARD = "card";
    }
    footer {
        NUMBER = "number";
        DESK = "desk";
        ISSUED = "issued";
        PRINTED = "printed";
        VALID_UNTIL = "valid_until";
    }
    draft {
        REASON = "reason";
    }
    units {
        LINE = "line";
    }
    missing {
        BY = "by";
        SHORT = "short";
    }
    register {
        ROWS = "rows";
    }
    danger {
        PRESSURE = "pressure";
        LOAD = "load";
        WEIGHT = "weight";
        UNKNOWN = "unknown";
        STOP_PRESSURE = "stop_pressure";
        STOP_WEIGHT = "stop_weight";
        STOP_LOAD = "stop_load";
    }
    tick {
        SEATS = "seats";
        GASKET = "gasket";
        NO_GASKET = "no_gasket";
        NUTS_RUN = "nuts_run";
        LUBRICANT = "lubricant";
        WASHERS = "washers";
        NO_WASHERS = "no_washers";
        PROTRUSION = "protrusion";
        PROTRUSION_ONE = "protrusion_one";
        ENGAGEMENT = "engagement";
        NUMBERS = "numbers";
        CALIBRATION_HAND = "calibration_hand";
        CALIBRATION_HYDRAULIC = "calibration_hydraulic";
        CLEAR_HAND = "clear_hand";
        CLEAR_HYDRAULIC = "clear_hydraulic";
        ALIGNMENT = "alignment";
        BACKUP = "backup";
        REACTION = "reaction";
        TRIAL_HAND = "trial_hand";
        TRIAL_HYDRAULIC = "trial_hydraulic";
        HOSES = "hoses";
        ISOLATION = "isolation";
        ZERO = "zero";
        VENT = "vent";
        RIGHT_JOINT = "right_joint";
        LOOK_ALIKE = "look_alike";
        COOL = "cool";
        SOAKED = "soaked";
        MARKED = "marked";
        SUPPORTED = "supported";
        WAY_OUT = "way_out";
        BREAKER = "breaker";
    }
    target {
        TORQUE = "torque";
        TORQUE_MANY = "torque_many";
        PRESSURE = "pressure";
        PRESSURE_MANY = "pressure_many";
        AT_PRESSURE = "at_pressure";
        OTHER_UNIT = "other_unit";
        LOAD = "load";
        NEVER = "never";
        NEVER_WORDS = "never_words";
        EXPECT = "expect";
        EXPECT_UNKNOWN = "expect_unknown";
        START_AT = "start_at";
        SET_FOR = "set_for";
        ONLY = "only";
    }
    pass {
        SNUG = "snug";
        SNUG_GAPS = "snug_gaps";
        CROSS = "cross";
        CROSS_ONE = "cross_one";
        CIRCLE = "circle";
        CIRCLE_ONE_TOOL = "circle_one_tool";
        AGAIN = "again";
        BY_HAND = "by_hand";
        BELOW_RANGE = "below_range";
        END = "end";
        END_COUNTED = "end_counted";
    }
    round {
        FIRST = "first";
        AGAIN = "again";
        GAP = "gap";
        SLACK = "slack";
        OUT = "out";
        COUNT = "count";
        UNKNOWN = "unknown";
        END = "end";
        END_OPEN = "end_open";
        PRACTICE = "practice";
    }
    order {
        NOTE = "note";
        GROUPS = "groups";
        CIRCLE = "circle";
    }
    gap {
        HEAD = "head";
        LIMIT = "limit";
    }
    record {
        SERIAL = "serial";
        DUE = "due";
        DUE_UNKNOWN = "due_unknown";
        LIMIT = "limit";
        OF = "of";
        ACCEPT_RANGE = "accept_range";
        ACCEPT_LEAST = "accept_least";
        ACCEPT_NONE = "accept_none";
        AT_LEAST = "at_least";
        REFERENCE = "reference";
    }
    sign {
        H1 = "h1";
        H2 = "h2";
        H3 = "h3";
        H4 = "h4";
        H5 = "h5";
        W1 = "w1";
        W2 = "w2";
        W3 = "w3";
    }
}
