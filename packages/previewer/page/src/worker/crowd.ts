/**
 * With more cuts than this each of them is no longer an element of its own, nor is the full drawing made unasked: so
 * many would hold the page up for seconds.
 */
export const CROWD = 300;
