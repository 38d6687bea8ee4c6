/**
 * What the command ends with: nothing grave found, something found, something wrong with what it was given, or
 * something else in the way: an output that cannot be written, a fault of its own.
 */
export const EXIT = { clean: 0, found: 1, bad: 2, unfinished: 3 } as const;

/** The output name that stands for standard output. */
export const STANDARD_OUTPUT = '-';
