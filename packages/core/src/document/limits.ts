/**
 * Largest coordinate or size in a job, in its unit. Ten kilometres of steel is a slip of the pen; and beyond
 * it the spacing of doubles (2e-9 here) comes near what a shop can measure.
 */
export const MAX_LENGTH = 1e7;

/** Smallest size in a job, in its unit: a nanometre. Nothing under it can be made or measured. */
export const MIN_LENGTH = 1e-6;

/** Most cuts in a job: a hundred times what the speed of the overlay is tested for. */
export const MAX_CUTS = 100_000;

/**
 * Most places in which edges of cuts cross each other, those of one swept cut included, which take some seconds: far over
 * any work on a mill. What is cut again exactly where it was does not count.
 */
export const MAX_CROSSINGS = 20_000;

/** Most pairs of edges of cuts that are looked at for that: so many only lie in one place on purpose. */
export const MAX_LOOKS = 3_000_000;

/** Most edges in one outline, hole or path; more is a flattened curve, which the exact edges make needless. */
export const MAX_EDGES = 100_000;

/** Most sizes of one kind of gauge in a job. */
export const MAX_GAUGES = 100;

/** Most holes listed with an outline. */
export const MAX_HOLES = 100_000;

/** Longest name, id or material: fits a line of a drawing's title block several times over. */
export const MAX_NAME = 200;

/** Largest job text in characters, refused before it is parsed: far over the largest job within the other limits. */
export const MAX_TEXT = 20_000_000;

/** Longest path data or well-known text in characters: room for the most edges, each with all digits of its numbers. */
export const MAX_DRAWING = 5_000_000;

/** Deepest nesting of lists and objects in a job. The format itself needs seven levels. */
export const MAX_DEPTH = 32;

/** Most values in a job handed over as an object, so that lists which share members cannot grow without end. */
export const MAX_VALUES = 10_000_000;

/** Largest limit angle of a knife edge, degrees: a square corner is no knife edge. */
export const MAX_KNIFE_EDGE = 90;

/**
 * A part may lie this many times its own extent from zero. Up to there the spacing of doubles stays under the
 * share of the extent at which points are welded.
 */
export const FARTHEST = 1e6;

/**
 * Smallest size of a cut or a hole as a share of the part's extent: a hundred times the share at which points are
 * welded, so that it keeps its shape.
 */
export const FINEST_SHARE = 1e-7;

/** Smallest size of a cut as a share of its coordinates: a circle has some millions of doubles across it then. */
export const ROUNDEST_SHARE = 1e-9;

/** Most setups in a job: far more than a part is ever clamped anew. */
export const MAX_SETUPS = 1000;

/** Most setups that one cut may be in: both sides of the part, each lying four ways. */
export const MAX_SAME_CUT = 8;

/** Most actions to find the zero of one axis, and most blocks in a stack, which has ten. */
export const MAX_LINKS = 100;

/** Most jaws, stops, parallels and clamps in a job. */
export const MAX_KEEP_OUTS = 1000;

/** Most tools in a job: more than any tool cupboard holds. */
export const MAX_TOOLS = 1000;

/** Most teeth of a tool: over those of the largest slitting saws. */
export const MAX_TEETH = 200;

/** Fastest speed of a spindle, turns per minute: over that of any that cuts metal. */
export const MAX_SPEED = 1e6;

/** Most steps of a spindle's gears and belts. */
export const MAX_SPEEDS = 100;

/** Most repeats in a job: each makes more of what those before it have made. */
export const MAX_REPEATS = 1000;

/** Most parts of one batch: what comes on a pallet. */
export const MAX_BATCH = 100;

/** Most targets of all parts of a batch: each has its own in a report. */
export const MAX_BATCH_TARGETS = 100_000;

/** Most degrees that a part may lie turned out of its setup: beyond that it is not squared up. */
export const MAX_ANGLE_TOLERANCE = 5;
