//! One caution for each hazard.

ids! {
    cautions {
        STORED_PRESSURE_TEXT = "stored_pressure.text";
        TRAPPED_POCKET_TEXT = "trapped_pocket.text";
        WRONG_FASTENERS_TEXT = "wrong_fasteners.text";
        HYDRAULIC_INJECTION_TEXT = "hydraulic_injection.text";
        HOSE_BURST_TEXT = "hose_burst.text";
        REACTION_PINCH_TEXT = "reaction_pinch.text";
        TOOL_WALKS_OFF_TEXT = "tool_walks_off.text";
        STUD_IN_LINE_TEXT = "stud_in_line.text";
        FRAGMENTS_TEXT = "fragments.text";
        LAST_FASTENERS_TEXT = "last_fasteners.text";
        SUDDEN_SPRING_TEXT = "sudden_spring.text";
        DROPPED_OBJECT_TEXT = "dropped_object.text";
        SUSPENDED_LOAD_TEXT = "suspended_load.text";
        MANUAL_HANDLING_TEXT = "manual_handling.text";
        HOT_WORK_TEXT = "hot_work.text";
        HOT_SURFACE_TEXT = "hot_surface.text";
        VERY_HOT_SURFACE_TEXT = "very_hot_surface.text";
        COLD_SURFACE_TEXT = "cold_surface.text";
        HAZARDOUS_CONTENTS_TEXT = "hazardous_contents.text";
        TOXIC_CONTENTS_TEXT = "toxic_contents.text";
        FLAMMABLE_CONTENTS_TEXT = "flammable_contents.text";
        PYROPHORIC_SCALE_TEXT = "pyrophoric_scale.text";
        FIBRE_GASKET_TEXT = "fibre_gasket.text";
        INERT_GAS_TEXT = "inert_gas.text";
        CONFINED_SPACE_TEXT = "confined_space.text";
        MACHINE_PART_TEXT = "machine_part.text";
        ELECTRICAL_SUPPLY_TEXT = "electrical_supply.text";
        NOISE_TEXT = "noise.text";
        VIBRATION_TEXT = "vibration.text";
        CHEMICALS_TEXT = "chemicals.text";
        WEATHER_TEXT = "weather.text";
        AFTER_BREAK_TEXT = "after_break.text";
        ONE_LUBRICANT_TEXT = "one_lubricant.text";
        LEAK_TEST_TEXT = "leak_test.text";
        HOT_BOLTING_TEXT = "hot_bolting.text";
        CLOSING = "closing";
    }
}
