import { aimJsonSchema, jobJsonSchema, reportJsonSchema } from '@edgebite/core';
import { EXIT } from './exit.js';
import type { Io } from './io.js';
import { jsonText } from './json-text.js';

/** What there is a schema of. */
export type SchemaOf = 'job' | 'report' | 'aim';

const SCHEMAS = { job: jobJsonSchema, report: reportJsonSchema, aim: aimJsonSchema } as const;

/** Prints the JSON Schema of jobs, of reports or of aims; returns the exit code. */
export function schema(of: SchemaOf, io: Io): number {
  io.out(jsonText(SCHEMAS[of]()));
  return EXIT.clean;
}
