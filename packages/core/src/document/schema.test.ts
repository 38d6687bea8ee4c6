import { describe, expect, it, vi } from 'vitest';
import * as z from 'zod';
import { reportJsonSchema, reportSchema } from '../report/report-schema.js';
import { jobJsonSchema, jobSchema } from './schema.js';

type Node = { readonly [key: string]: unknown };

/** All objects and lists inside a JSON Schema. */
function nodes(schema: unknown): Node[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return [schema as Node, ...Object.values(schema).flatMap(nodes)];
}

const keysOf = (schema: Node): string[] => Object.keys(schema.properties as Node).sort();

describe.each([
  ['job', jobJsonSchema],
  ['report', reportJsonSchema],
])('the JSON Schema of a %s', (_, make) => {
  const schema = make();

  it('is of draft 2020-12, and plain data', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  it('has its points two numbers long', () => {
    const lists = nodes(schema).filter((node) => Array.isArray(node.prefixItems));
    expect(lists.length).toBeGreaterThan(0);
    for (const node of lists)
      expect([node.minItems, node.maxItems]).toEqual(Array(2).fill((node.prefixItems as []).length));
  });

  it('resolves all its references', () => {
    const defs = Object.keys((schema.$defs ?? {}) as Node);
    const references = nodes(schema).flatMap((node) => (typeof node.$ref === 'string' ? [node.$ref] : []));
    expect(references.length).toBeGreaterThan(0);
    for (const reference of references) expect(defs.map((def) => `#/$defs/${def}`)).toContain(reference);
  });

  it('can be read back as a schema', () => {
    expect(() => z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0])).not.toThrow();
  });
});

it('allows no unknown keys in a job, and any in a report, which may grow', () => {
  const objects = (schema: unknown) => nodes(schema).filter((node) => node.type === 'object');
  expect(objects(jobJsonSchema()).length).toBeGreaterThan(5);
  for (const node of objects(jobJsonSchema())) expect(node.additionalProperties).toBe(false);
  expect(objects(reportJsonSchema()).length).toBeGreaterThan(5);
  for (const node of objects(reportJsonSchema())) expect(node).not.toHaveProperty('additionalProperties');
});

describe('the job format', () => {
  it('has these keys', () => {
    expect(keysOf(jobJsonSchema())).toEqual(
      [
        ...['edgebite', 'name', 'units', 'part', 'keep', 'limits', 'resolution', 'cuts'],
        ...[
          'readout',
          'setups',
          'keepOut',
          'tools',
          'drawer',
          'machine',
          'gauges',
          'repeat',
          'twin',
          'batch',
        ],
      ].sort(),
    );
    expect(jobJsonSchema().required).toEqual(['edgebite', 'units', 'part', 'cuts']);
  });

  it('is the same read back from its JSON Schema', () => {
    const again = z.fromJSONSchema(jobJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);
    const job = {
      edgebite: 1,
      units: 'mm',
      part: { outline: { circle: 10 }, thickness: 2 },
      cuts: [{ id: 'a', kind: 'bore', center: [1, 2], diameter: 3, depth: 'through' }],
    };
    for (const schema of [jobSchema, again]) {
      expect(schema.safeParse(job).success).toBe(true);
      expect(schema.safeParse({ ...job, units: 'cm' }).success).toBe(false);
      expect(schema.safeParse({ ...job, extra: 1 }).success).toBe(false);
      expect(schema.safeParse({ ...job, part: { outline: { circle: 0 }, thickness: 2 } }).success).toBe(
        false,
      );
      expect(schema.safeParse({ ...job, cuts: [{ ...job.cuts[0], center: [1, 2, 3] }] }).success).toBe(false);
      expect(schema.safeParse({ ...job, cuts: [{ ...job.cuts[0], depth: 'thru' }] }).success).toBe(false);
    }
  });
});

describe('the schema that a job is read by', () => {
  const bore = { id: 'a', kind: 'bore', center: [1, 2], diameter: 3 };
  const job = {
    edgebite: 1,
    units: 'mm',
    part: { outline: { circle: 10 }, thickness: 2 },
    cuts: [bore],
  };
  const keys = Object.keys(jobSchema.shape);

  it.each<unknown>([
    job,
    { ...job, limits: { web: 1 } },
    {},
    null,
    'a job',
    [job],
    { ...job, extra: 1 },
    { ...job, tools: undefined },
    Object.create({ ...job, setups: 0 }),
    ...keys.map((key) => ({ ...job, [key]: { wrong: 1 } })),
    Object.fromEntries(keys.map((key) => [key, 0])),
  ])('finds of %j what the whole schema finds, as that of the first job and after', async (value) => {
    vi.resetModules();
    const { jobSchema: whole, jobSchemaFor } = await import('./schema.js');
    const found = whole.safeParse(value);
    const own = jobSchemaFor(value);
    expect(own).not.toBe(whole);
    expect(jobSchemaFor(value)).toBe(own);
    expect(own.safeParse(value)).toEqual(found);
    const other = { ...job, twin: { swaps: 'left and right' }, batch: [] };
    expect(jobSchemaFor(other)).toBe(whole);
  });
});

describe('the report format', () => {
  const REPORT = {
    edgebite: 1,
    name: '',
    units: 'mm',
    massUnit: null,
    material: null,
    thickness: 2,
    outline: [],
    keep: null,
    limits: { web: 1, hold: 1, breakThrough: 1, knifeEdge: 30 },
    resolution: 0.005,
    removedArea: 0,
    removedVolume: 0,
    slabs: [{ from: 0, to: 2, area: 5 }],
    pieces: [],
    webs: [],
    knifeEdges: [],
    floors: [],
    steps: [],
    seams: [],
    checks: [],
    bodies: [],
    merges: [],
    cuts: [],
    names: [],
    setups: [],
    batch: [],
    keepOut: [],
    cautions: [{ code: 'instructions-first', message: 'Read the instructions.', about: [] }],
    findings: [{ level: 'note', code: 'cut-in-air', message: 'Nothing is cut.', at: null, about: [] }],
  };

  it('takes a report, and nothing that is not finite; what it does not know it leaves out', () => {
    expect(reportSchema.safeParse(REPORT).success).toBe(true);
    expect(reportSchema.safeParse({ ...REPORT, removedArea: Number.NaN }).success).toBe(false);
    expect(reportSchema.safeParse({ ...REPORT, removedArea: Number.POSITIVE_INFINITY }).success).toBe(false);
    const grown = { ...REPORT, other: 0, limits: { ...REPORT.limits, other: [] } };
    expect(reportSchema.parse(grown)).toEqual(REPORT);
    const { webs: _, ...without } = REPORT;
    expect(reportSchema.safeParse(without).success).toBe(false);
  });

  it('has codes of its own, in kebab case', () => {
    const [finding] = REPORT.findings;
    for (const code of ['Nothing', 'nothing_cut', 'nothing-', '', 'no-such-code']) {
      expect(reportSchema.safeParse({ ...REPORT, findings: [{ ...finding, code }] }).success).toBe(false);
    }
  });
});
