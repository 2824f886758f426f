//! Keys of the sentences that say where a formula holds. The sentences stand in the wording.

/// Threads with flanks of 60° between them (metric, UN).
pub const SIXTY_DEGREES: &str = "sixty_degree_thread";
/// Metric threads to ISO 68-1.
pub const METRIC: &str = "metric_thread";
/// Unified inch threads.
pub const INCH: &str = "inch_thread";
/// Friction coefficients that hold for the lubricant, the faces and the speed at hand; no galling.
pub const FRICTION_KNOWN: &str = "friction_known";
/// A nut factor measured with this size, lubricant and face.
pub const NUT_FACTOR_MEASURED: &str = "nut_factor_measured";
/// A flat bearing face square to the stud, with the same pressure all round.
pub const FLAT_FACE: &str = "flat_bearing_face";
/// A stud that stays elastic.
pub const ELASTIC: &str = "elastic_stud";
/// A round stud of ductile steel with tension and torsion; the threaded part governs.
pub const DUCTILE: &str = "ductile_stud";
/// Bolts, studs and screws of carbon and alloy steel up to M39.
pub const CLASSES_TO_M39: &str = "property_classes_to_m39";
/// Heavy hexagon nuts except 5/16, 7/16 and 9/16 in.
pub const HEAVY_HEX: &str = "heavy_hexagon";
/// Steel parts wide enough for the cone of one stud; edges and neighbours are not seen.
pub const ISOLATED_STUD: &str = "isolated_stud";
/// Geometry alone.
pub const GEOMETRY: &str = "geometry";
/// Equal load in all studs.
pub const EQUAL_LOADS: &str = "equal_loads";
/// Between two neighbouring points of the calibration.
pub const BETWEEN_POINTS: &str = "between_calibration_points";
/// Independent limits on friction alone; the setting itself is exact.
pub const SCATTER_LIMIT: &str = "scatter_as_limit";
/// Common practice, the peak on the last studs is not predicted.
pub const PRACTICE_NO_PEAK: &str = "common_practice_no_peak";
/// The same friction in both directions: fresh and clean threads.
pub const SAME_FRICTION: &str = "same_friction_both_ways";
/// An adapter in line with the wrench, the hand on its mark.
pub const ADAPTER_IN_LINE: &str = "adapter_in_line";
/// All of the torque is taken to twist the stud, as when the nut has seized on the thread.
pub const SEIZED: &str = "all_torque_in_thread";
/// Equal elastic jackbolts on one stud, friction left out: predicted, not measured.
pub const PREDICTED: &str = "springs_predicted";
/// The same while every jackbolt stays in contact.
pub const PREDICTED_IN_CONTACT: &str = "springs_predicted_in_contact";
/// A flat round tip on a hard flat washer.
pub const FLAT_TIP: &str = "flat_tip";
/// Friction of this lubricant in the thread of a jackbolt; no galling.
pub const JACKBOLT_FRICTION: &str = "jackbolt_thread_friction";
/// A nut factor measured on a jackbolt of this size, with this lubricant and tip.
pub const JACKBOLT_NUT_FACTOR: &str = "jackbolt_nut_factor_measured";
/// A nut factor does not tell which part of the torque twists: all of it is counted.
pub const TORSION_NOT_TOLD: &str = "torsion_not_told";
/// Basic sizes of a 60° thread, all of the engaged turns bearing; tolerances and the widening of the body are left out.
pub const BASIC_THREAD: &str = "basic_thread_sheared";
/// A jackbolt in its body, loaded along its axis.
pub const JACKBOLT_AXIAL: &str = "jackbolt_axial";

/// Every key of this file.
pub const ALL: &[&str] = &[
    SIXTY_DEGREES,
    METRIC,
    INCH,
    FRICTION_KNOWN,
    NUT_FACTOR_MEASURED,
    FLAT_FACE,
    ELASTIC,
    DUCTILE,
    CLASSES_TO_M39,
    HEAVY_HEX,
    ISOLATED_STUD,
    GEOMETRY,
    EQUAL_LOADS,
    BETWEEN_POINTS,
    SCATTER_LIMIT,
    PRACTICE_NO_PEAK,
    SAME_FRICTION,
    ADAPTER_IN_LINE,
    SEIZED,
    PREDICTED,
    PREDICTED_IN_CONTACT,
    FLAT_TIP,
    JACKBOLT_FRICTION,
    JACKBOLT_NUT_FACTOR,
    TORSION_NOT_TOLD,
    BASIC_THREAD,
    JACKBOLT_AXIAL,
];
