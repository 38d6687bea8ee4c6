import type { Finding } from '../report/report-schema.js';

/** A finding as it is found; how bad it is follows from its code. */
export type Told = Omit<Finding, 'level'>;
