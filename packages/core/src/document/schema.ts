/*
 * Room: a job as it is written, and the faults of its text.
 * In: JSON text or a value.
 * Out: a checked document, or faults with JSON Pointers; the published JSON Schema.
 */

import * as z from 'zod';
import { later, once } from '../memory/once.js';
import type { Frozen } from './frozen.js';
import { jsonSchemaOf } from './json-schema.js';
import { MAX_CUTS, MAX_DRAWING, MAX_EDGES, MAX_HOLES, MAX_NAME } from './limits.js';
import { batchSchema, repeatsSchema, twinSchema } from './schema-alike.js';
import { alongSchema, centerSchema, clearanceSchema, passesJobSchema, staysSchema } from './schema-center.js';
import { drawerSchema } from './schema-drawer.js';
import { drawingSchema, gaugesSchema } from './schema-gauges.js';
import { jobPoint, limitsSchema, side, size, tolerance, units } from './schema-parts.js';
import { keepOutSchema, readoutSchema, setupsSchema } from './schema-setups.js';
import { machineSchema, toolsSchema } from './schema-tools.js';

const name = once(() => z.string().max(MAX_NAME));

const partName = once(() =>
  name().min(1).optional().meta({
    description:
      'What it is called, in this job and in what is said of it; unlike any other name of the part.',
  }),
);

const lineSchema = once(() =>
  z.strictObject({ kind: z.literal('line'), a: jobPoint(), b: jobPoint(), name: partName() }),
);

const arcSchema = once(() =>
  z.strictObject({
    kind: z.literal('arc'),
    a: jobPoint(),
    b: jobPoint(),
    center: jobPoint(),
    ccw: z.boolean().meta({ description: 'true: counter-clockwise from a to b.' }),
    name: partName(),
  }),
);

const edgeSchema = once(() =>
  z.discriminatedUnion('kind', [lineSchema(), arcSchema()]).meta({
    id: 'JobEdge',
    description: 'A straight edge, or an arc of less than a full turn.',
  }),
);

const edgeList = once(() => z.array(edgeSchema()).min(1).max(MAX_EDGES));

const svgPath = once(() =>
  z.string().max(MAX_DRAWING).meta({
    description:
      "W3C SVG 2 path data of lines and circular arcs (M L H V A Z). The numbers are the part's own coordinates with y up, so sweep flag 1 runs counter-clockwise.",
  }),
);

const wkt = once(() =>
  z.string().max(MAX_DRAWING).meta({
    description: 'Well-known text with curves (ISO/IEC 13249-3, OGC).',
  }),
);

const rectangle = once(() => ({
  rectangle: z.tuple([size(), size()]).meta({ description: '[width, height]' }),
  corner: size().optional().meta({ description: 'Radius of all four corners; sharp without it.' }),
  at: jobPoint().optional().meta({ description: 'Lower left corner; [0, 0] without it.' }),
}));

const circle = once(() => ({
  circle: size().meta({ description: 'Diameter.' }),
  at: jobPoint().optional().meta({ description: 'Centre; [0, 0] without it.' }),
}));

const slot = once(() => ({
  slot: z.tuple([size(), size()]).meta({ description: '[overall length, width], with half-round ends.' }),
  at: jobPoint().optional().meta({ description: 'Centre; [0, 0] without it.' }),
  angle: z.number().min(-360).max(360).optional().meta({
    unit: 'degree',
    description: 'Degrees counter-clockwise from the x axis; 0 without it.',
  }),
}));

/** The keys of which a shape has exactly one, in the order of the branches of the schema. */
export const SHAPE_KEYS = ['rectangle', 'circle', 'slot', 'svgPath', 'wkt', 'edges'] as const;

/** The keys of which what is to be left by an aim has exactly one, in the order of the branches of the schema. */
export const FINISHED_KEYS = [...SHAPE_KEYS, 'bites'] as const;

/** The keys of which the path of a swept cut has exactly one, in the order of the branches of the schema. */
export const PATH_KEYS = ['svgPath', 'wkt', 'edges', 'along'] as const;

/** A closed shape by one of six keys, with what else it has. */
export const shapeWith = <Extra extends z.ZodRawShape>(extra: Extra) =>
  z.union([
    z.strictObject({ ...rectangle(), ...extra }),
    z.strictObject({ ...circle(), ...extra }),
    z.strictObject({ ...slot(), ...extra }),
    z.strictObject({ svgPath: svgPath(), ...extra }),
    z.strictObject({ wkt: wkt(), ...extra }),
    z.strictObject({ edges: edgeList(), ...extra }),
  ]);

const shapeSchema = once(() =>
  shapeWith({}).meta({ id: 'Shape', description: 'A closed shape, by one of six keys.' }),
);

const holeSchema = once(() =>
  shapeWith({ name: partName() }).meta({
    id: 'Hole',
    description: 'A closed shape, by one of six keys; with a name, if it has one.',
  }),
);

const holes = once(() =>
  z.array(holeSchema()).max(MAX_HOLES).optional().meta({
    description: 'Holes, each wholly inside the outline.',
  }),
);

const outlineSchema = once(() =>
  shapeWith({ holes: holes() }).meta({
    id: 'Outline',
    description: 'A closed shape, by one of six keys, with its holes. Its direction does not matter.',
  }),
);

const pathSchema = once(() =>
  z
    .union([
      z.strictObject({ svgPath: svgPath() }),
      z.strictObject({ wkt: wkt() }),
      z.strictObject({ edges: edgeList() }),
      z.strictObject({ along: alongSchema() }),
    ])
    .meta({
      id: 'Path',
      description: "The path of the tool's centre: one chain of lines and arcs, or along the outline.",
    }),
);

const everyCut = once(() => ({
  id: name().min(1).meta({ description: "The cut's own name, used in the report; unlike any other cut's." }),
  tool: name().min(1).optional().meta({
    description:
      'id of the tool of the drawer that makes it. What the tool has, the cut takes from it: diameter, wall, reach, the smallest bore of passes; leave that out here.',
  }),
  from: side().optional().meta({ description: 'The side that the cut starts from; "top" without it.' }),
  depth: z
    .union([size(), z.literal('through')])
    .optional()
    .meta({ description: 'How deep, or "through", which it is without it.' }),
  breakThrough: size().optional().meta({
    description:
      'Of a cut through the part: how far its full size is to go below it, past the point of a drill. 0 without it; of an annular cutter what its reach leaves.',
  }),
  drawing: drawingSchema().optional(),
}));

const boreSchema = once(() =>
  z.strictObject({
    ...everyCut(),
    kind: z.literal('bore'),
    center: centerSchema(),
    diameter: size().optional().meta({
      description:
        'May be left out only where the centre is given by three places on the circle, or by a drill or end mill of the drawer that the cut names.',
    }),
    passes: passesJobSchema().optional(),
    clearance: clearanceSchema(),
  }),
);

const annularSchema = once(() =>
  z.strictObject({
    ...everyCut(),
    kind: z.literal('annular'),
    center: centerSchema(),
    diameter: size().optional().meta({
      description: 'Outside diameter of the cutter. Needed, but where the cut names a tool of the drawer.',
    }),
    wall: size().optional().meta({
      description:
        'Width of the ring that the teeth cut; under half the diameter. Needed, but where the cut names a tool of the drawer.',
    }),
    reach: size().optional().meta({ description: 'How deep the cutter can go; any depth without it.' }),
    clearance: clearanceSchema(),
  }),
);

const sweptSchema = once(() =>
  z.strictObject({
    ...everyCut(),
    kind: z.literal('swept'),
    diameter: size().optional().meta({
      description: 'Diameter of the tool. Needed, but where the cut names a tool of the drawer.',
    }),
    path: pathSchema(),
    stays: staysSchema(),
  }),
);

/** The keys of a job, and how the schema of each is made. */
const job = {
  edgebite: () => z.literal(1).meta({ description: 'Version of the format.' }),
  name: () => name().optional().meta({ description: 'What the job is called.' }),
  units,
  part: () =>
    z.strictObject({
      outline: outlineSchema(),
      thickness: size(),
      sizeTolerance: tolerance().optional().meta({
        description:
          "How far the part's own sizes in x and y may be off to either side, between the place that a zero is taken from and another; the general tolerance of its class without it, if it names one.",
      }),
      thicknessTolerance: tolerance().optional().meta({
        description:
          'How far the thickness may be off to either side; the general tolerance of its class without it, if it names one.',
      }),
      material: name().optional(),
      tolerances: z.enum(['f', 'm', 'c', 'v']).optional().meta({
        description:
          "Class of ISO 2768-1 for the part's sizes and for measured lengths without a tolerance of their own.",
      }),
    }),
  keep: () =>
    jobPoint().optional().meta({
      description: 'A place on the part that is held. The piece there is kept; the largest one without it.',
    }),
  limits: () => limitsSchema().optional(),
  resolution: () =>
    size().optional().meta({
      description:
        'The smallest step that the shop can set or read. 0.005 mm or 0.0002 inch without it (common practice, no source).',
    }),
  readout: () => readoutSchema().optional(),
  setups: () => setupsSchema().optional(),
  keepOut: () => keepOutSchema(shapeSchema()).optional(),
  tools: () => toolsSchema().optional(),
  drawer: () =>
    drawerSchema().optional().meta({
      description: 'The tools that there are, in place of "tools": each cut names the one that makes it.',
    }),
  machine: () => machineSchema().optional(),
  gauges: () => gaugesSchema().optional(),
  cuts: () =>
    z.array(z.discriminatedUnion('kind', [boreSchema(), annularSchema(), sweptSchema()])).max(MAX_CUTS),
  repeat: () =>
    repeatsSchema().optional().meta({
      description:
        'Cuts that are written once and made several times. Each entry repeats what those before it have made.',
    }),
  twin: () => twinSchema().optional(),
  batch: () =>
    batchSchema().optional().meta({
      description: 'Parts of one drawing whose measured lengths differ: each has its own targets.',
    }),
};

/**
 * A job as written in JSON, version 1: a part, and the cuts made in it one after another. Says what is
 * written down right; `parseJob` checks besides that the shapes close and do not cross themselves.
 */
export const jobSchema = z.strictObject(later(job)).meta({ title: 'edgebite job, version 1' });

/** The keys that no job goes without. */
const NEEDED: readonly string[] = ['edgebite', 'units', 'part', 'cuts'];

/** The schema of the first job that was read, with no more keys than it has or needs. */
let first: { readonly keys: string; readonly schema: typeof jobSchema } | null = null;

/**
 * The schema to read a job by: of the first, and of those with the same keys, one that makes no schema for keys that are not
 * there, which for most jobs is half of all; of others the whole. Both find the same.
 */
export function jobSchemaFor(value: unknown): typeof jobSchema {
  const isThere = (key: string) => typeof value === 'object' && value !== null && key in value;
  const makers = Object.entries(job).filter(([key]) => NEEDED.includes(key) || isThere(key));
  const keys = makers.map(([key]) => key).join();
  first ??= { keys, schema: z.strictObject(later(Object.fromEntries(makers) as typeof job)) };
  return first.keys === keys ? first.schema : jobSchema;
}

/** A job as written in JSON. */
export type JobDocument = Frozen<z.infer<typeof jobSchema>>;

/** A cut with all its sizes: what it takes from a tool of the drawer, and the tool, are written out. */
export type PlainCut =
  | Extract<CutDocument, { readonly kind: 'bore' }>
  | (Extract<CutDocument, { readonly kind: 'annular' }> & {
      readonly diameter: number;
      readonly wall: number;
    })
  | (Extract<CutDocument, { readonly kind: 'swept' }> & { readonly diameter: number });

/** A job without a drawer, whose cuts have all their sizes. */
export type PlainDocument = Omit<JobDocument, 'cuts' | 'drawer'> & { readonly cuts: readonly PlainCut[] };

/** The outline of a part as written in a job. */
export type OutlineDocument = JobDocument['part']['outline'];

/** A shape as written in a job: that of a hole, or of what must be kept clear of. */
export type ShapeDocument =
  | Frozen<z.infer<ReturnType<typeof shapeSchema>>>
  | Frozen<z.infer<ReturnType<typeof holeSchema>>>;

/** A setup as written in a job. */
export type SetupDocument = NonNullable<JobDocument['setups']>[number];

/** One thing done to find the zero in Z, as written in a job. */
export type HeightActionDocument = NonNullable<SetupDocument['zero']['z']>[number];

/** One thing done to find a zero, as written in a job. */
export type ActionDocument = SetupDocument['zero']['x'][number];

/** What the machine can do, as written in a job. */
export type MachineDocument = NonNullable<JobDocument['machine']>;

/** A tool as written in a job. */
export type ToolDocument = NonNullable<JobDocument['tools']>[number];

/** A cut as written in a job. */
export type CutDocument = JobDocument['cuts'][number];

/** Cuts that are made several times, as written in a job. */
export type RepeatDocument = NonNullable<JobDocument['repeat']>[number];

/** A part of a batch as written in a job. */
export type BatchPartDocument = NonNullable<JobDocument['batch']>[number];

/** The path of a swept cut as written in a job. */
export type PathDocument = Frozen<z.infer<ReturnType<typeof pathSchema>>>;

/** The centre of a cut as written in a job. */
export type CenterDocument = Frozen<z.infer<ReturnType<typeof centerSchema>>>;

/** A centre that is not given as a point. */
export type PlacementDocument = Exclude<CenterDocument, readonly [number, number]>;

/** The passes of a bore as written in a job. */
export type PassesDocument = Frozen<z.infer<ReturnType<typeof passesJobSchema>>>;

/** How a swept cut follows the outline, as written in a job. */
export type AlongDocument = Frozen<z.infer<ReturnType<typeof alongSchema>>>;

/** An edge as written in a job. */
export type EdgeDocument = Frozen<z.infer<ReturnType<typeof edgeSchema>>>;

/** The JSON Schema (draft 2020-12) of a job, made from the schema that `parseJob` uses. */
export function jobJsonSchema(): Record<string, unknown> {
  return jsonSchemaOf(jobSchema, 'urn:edgebite:job:1');
}
