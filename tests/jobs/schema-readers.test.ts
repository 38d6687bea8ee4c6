// Outside source: ajv, a general-purpose validator of JSON Schema, under its strict defaults.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  aimJsonSchema,
  drawerJsonSchema,
  examine,
  fromReport,
  jobJsonSchema,
  jobSchema,
  parseJob,
  type Report,
  reportJsonSchema,
} from '@edgebite/core';
import { draw } from '@edgebite/svg';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { textReport } from '../../packages/previewer/src/text/report.js';
import { dice, mutated } from '../fuzz/mutate.js';
import { runs } from '../tools/runs.js';

const EXAMPLES = join(import.meta.dirname, '..', '..', 'examples');
const JOBS = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(join(EXAMPLES, name), 'utf8')));

const SCHEMAS = {
  job: jobJsonSchema(),
  report: reportJsonSchema(),
  aim: aimJsonSchema(),
  drawer: drawerJsonSchema(),
};

/** A validator that keeps what it would print: strict mode warns of much that it does not refuse. */
function strict(): { readonly ajv: Ajv2020; readonly said: string[] } {
  const said: string[] = [];
  const keep = (...words: unknown[]): void => void said.push(words.join(' '));
  return { ajv: new Ajv2020({ logger: { log: keep, warn: keep, error: keep } }), said };
}

describe('the JSON Schemas, for strict readers', () => {
  it.each(Object.entries(SCHEMAS))('of a %s compiles without a word, under its own $id', (name, schema) => {
    const { ajv, said } = strict();
    expect(typeof ajv.compile(schema)).toBe('function');
    expect(said).toEqual([]);
    expect(ajv.getSchema(`urn:edgebite:${name}:1`)).toBeDefined();
  });

  it('of all stand side by side in one validator', () => {
    const { ajv } = strict();
    for (const schema of Object.values(SCHEMAS)) ajv.addSchema(schema);
    expect(ajv.validate('urn:edgebite:job:1', JOBS[0])).toBe(true);
  });

  it('take and refuse what the reader of jobs does', () => {
    const validate = strict().ajv.compile(SCHEMAS.job);
    const roll = dice(20_260_102);
    const wrong: unknown[] = [];
    let refused = 0;
    for (let k = 0; k < runs(2000); k++) {
      // What JSON can hold, since that is what a schema speaks of.
      const text = textOf(k < JOBS.length ? JOBS[k] : mutated(JOBS[roll(JOBS.length)], roll));
      if (text === undefined) continue;
      const job: unknown = JSON.parse(text);
      const own = jobSchema.safeParse(job).success;
      if (validate(job) !== own) wrong.push({ text, own });
      if (!own) refused++;
    }
    expect(wrong).toEqual([]);
    expect(refused).toBeGreaterThan(runs(500));
  });

  it.each(JOBS.map((job) => [job.name, job]))(
    'take the report on %s, and with keys that are new',
    (_, job) => {
      const validate = strict().ajv.compile(SCHEMAS.report);
      const report = JSON.parse(JSON.stringify(examine(parseJob(job))));
      expect(validate(report)).toBe(true);
      expect(validate(grown(report))).toBe(true);
      expect(validate({ ...report, thickness: 'thick' })).toBe(false);
    },
  );
});

it('has readers that go on with a report that has grown', () => {
  for (const job of JOBS.slice(0, 3)) {
    const report: Report = JSON.parse(JSON.stringify(examine(parseJob(job))));
    const more = grown(report) as Report;
    expect(draw(more)).toBe(draw(report));
    expect(textReport(more, { all: true })).toBe(textReport(report, { all: true }));
    expect(fromReport(more)).toEqual(fromReport(report));
  }
});

/** A report with a new key in each of its objects. */
function grown(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(grown);
  if (typeof value !== 'object' || value === null) return value;
  const inner = Object.entries(value).map(([key, one]) => [key, grown(one)]);
  return { ...Object.fromEntries(inner), sinceLater: { text: 'new' } };
}

function textOf(value: unknown): string | undefined {
  try {
    return JSON.stringify(value);
  } catch {
    // A circle, or a number that JSON has no word for.
    return undefined;
  }
}
