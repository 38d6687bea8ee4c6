/** Radians in a degree: jobs and reports have degrees, all else has radians. */
export const DEGREE = Math.PI / 180;
