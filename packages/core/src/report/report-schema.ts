/*
 * Room: the shape of a report: its schema, types and reader.
 * In: a report as JSON.
 * Out: a typed `Report`; marks that page, drawing and range share.
 */

import * as z from 'zod';
import type { Frozen } from '../document/frozen.js';
import { jsonSchemaOf } from '../document/json-schema.js';
import { amount, cutKind, figure, place, side, source, units } from '../document/schema-parts.js';
import { later, once } from '../memory/once.js';
import { FINDING_CODES } from './finding-codes.js';
import { batchRow } from './report-batch.js';
import { passesSchema, placementSchema, toolPathSchema } from './report-center.js';
import { checkSchema } from './report-checks.js';
import { floorSchema, knifeEdgeSchema, pieceSchema, slabSchema, webSchema } from './report-left.js';
import { cautionSchema, runningSchema } from './report-running.js';
import { biteSchema, setupRow } from './report-setups.js';
import { edgeSchema, regionSchema } from './report-shapes.js';
import { bodySchema, mergeSchema, stepSchema } from './report-steps.js';

const cutSchema = once(() =>
  z.object({
    id: z.string(),
    source: source(),
    kind: cutKind(),
    center: place().nullable().meta({ description: 'null for a swept cut.' }),
    diameter: amount(),
    wall: amount().nullable().meta({ description: 'Of an annular cut; null for others.' }),
    path: z.array(edgeSchema()).nullable().meta({
      description: "Path of a swept cut's tool centre; null for others.",
    }),
    from: side(),
    depth: amount().meta({ description: 'How deep it really goes: the thickness if through.' }),
    through: z.boolean(),
    footprint: regionSchema().meta({ description: 'What it would cut in a plate without edges.' }),
    relation: z.enum(['clear', 'grazes', 'breaks out', 'inside', 'swallows']),
    bites: z.array(biteSchema()).meta({
      description:
        'Of a bore or annular cut that breaks out: each face of the outline that its circle opens; over a corner, each of the two.',
    }),
    removedArea: amount().meta({ description: 'Plan area that it takes in its turn.' }),
    removedVolume: amount().meta({ description: 'Volume that it takes in its turn.' }),
    placement: placementSchema().nullable().meta({
      description: 'How its centre was given, and what follows; null where it was given as a point.',
    }),
    passes: passesSchema().nullable().meta({
      description: 'null where none were asked for, or where they cannot be made.',
    }),
    toolPath: toolPathSchema().nullable().meta({
      description: 'Of a swept cut that follows the outline; null for others.',
    }),
    running: runningSchema().nullable().meta({
      description: 'Speed, feed and time with its tool; null without a tool.',
    }),
  }),
);

const seamSchema = once(() =>
  z.object({
    cuts: z
      .tuple([z.string(), z.string()])
      .meta({ description: 'ids of the two cuts, from the top and the bottom.' }),
    center: place().meta({ description: 'Of a slot a place at its path.' }),
    diameter: amount(),
    from: figure().meta({
      description: 'Height over the bottom of the part down to which the cut from the top goes.',
    }),
    overlap: amount().meta({ description: 'How far the two go past each other.' }),
    step: z
      .object({
        worst: amount().meta({ description: 'With every error at its worst.' }),
        rss: amount().meta({
          description: 'With errors added as the root of their squares, where round the bore it is most.',
        }),
      })
      .nullable()
      .meta({
        description:
          'How far the two walls can stand apart, round the bore or along the slot; null where one is in no setup.',
      }),
  }),
);

const keepOutRow = once(() =>
  z.object({
    id: z.string(),
    kind: z.enum(['jaw', 'stop', 'parallel', 'clamp']),
    setup: z.string().nullable().meta({ description: 'id of the setup that it is in; null for all.' }),
    from: figure().meta({ description: 'Height of its lower face over the face that the part lies on.' }),
    to: figure(),
    region: regionSchema().meta({ description: 'Seen from above, in the coordinates of the part as drawn.' }),
  }),
);

const findingSchema = once(() =>
  z.object({
    level: z.enum(['danger', 'check', 'note']),
    code: z.enum(FINDING_CODES),
    message: z.string().min(1),
    at: place().nullable(),
    about: z.array(z.string()).meta({
      description:
        'Names: outline:N, hole:H:N, cut:ID, piece:ID, body:ID, step:N, web:N, knifeEdge:N, floor:N, setup:ID, keepOut:ID, tool:ID.',
    }),
  }),
);

/** The report on a job, version 1: what is left, and what to watch. Complete: a drawing needs nothing else. */
export const reportSchema = z
  .object(
    later({
      edgebite: () => z.literal(1),
      name: () => z.string(),
      units,
      massUnit: () =>
        z.enum(['g', 'lb']).nullable().meta({
          description: '"g" for mm and "lb" for inch; null where no mass is given.',
        }),
      material: () => z.string().nullable(),
      thickness: amount,
      outline: () => regionSchema().meta({ description: 'The part before any cut.' }),
      keep: () =>
        place().nullable().meta({ description: 'Where the part is held; null if the job does not say.' }),
      limits: () => z.object({ web: amount(), knifeEdge: amount(), hold: amount(), breakThrough: amount() }),
      resolution: amount,
      removedArea: () => amount().meta({ description: 'Area of the outline where nothing is left.' }),
      removedVolume: () => amount().meta({ description: 'What the cuts took in all.' }),
      slabs: () => z.array(slabSchema()).meta({ description: 'Going up from the bottom.' }),
      pieces: () =>
        z.array(pieceSchema()).meta({ description: 'Kept first, then by volume, largest first.' }),
      webs: () => z.array(webSchema()).meta({ description: 'Thinnest first.' }),
      knifeEdges: () => z.array(knifeEdgeSchema()).meta({ description: 'Sharpest first.' }),
      floors: () => z.array(floorSchema()),
      steps: () =>
        z.array(stepSchema()).meta({
          description: 'In the order in which they are made: by setup, then by cut, then by pass.',
        }),
      bodies: () =>
        z.array(bodySchema()).meta({
          description:
            'Each body that comes loose, or that a floor or thin metal holds, once; in the order in which that begins.',
        }),
      merges: () =>
        z.array(mergeSchema()).meta({ description: 'Cuts that open into each other side by side.' }),
      cuts: () => z.array(cutSchema()).meta({ description: 'In the order of the job.' }),
      seams: () =>
        z.array(seamSchema()).meta({
          description:
            'Where two halves of one bore meet that are cut from both sides, with the step that may stay.',
        }),
      checks: () =>
        z.array(checkSchema()).meta({
          description:
            'How to measure each hollow arc that a cut leaves in the kept piece; none of whole circles.',
        }),
      names: () =>
        z
          .array(
            z.object({
              of: z.string().meta({ description: 'outline:N, hole:H or hole:H:N.' }),
              name: z.string(),
            }),
          )
          .meta({
            description:
              'What edges and holes of the part are called: as the job names them, else the left and right end, the front and the back as the part lies.',
          }),
      setups: () =>
        z.array(setupRow()).meta({ description: 'In the order of the job; none if it has none.' }),
      batch: () =>
        z
          .array(batchRow())
          .meta({ description: 'Parts with measured lengths of their own, in the order of the job.' }),
      keepOut: () =>
        z.array(keepOutRow()).meta({ description: 'Jaws, stops, parallels and clamps of the job.' }),
      findings: () => z.array(findingSchema()),
      cautions: () =>
        z.array(cautionSchema()).min(1).meta({
          description: 'In the order of danger; the standing one, which holds for all work, comes last.',
        }),
    }),
  )
  .meta({ title: 'edgebite report, version 1' });

/** The report on a job. */
export type Report = Frozen<z.infer<typeof reportSchema>>;

/** A report's line or arc. */
export type ReportEdge = Frozen<z.infer<ReturnType<typeof edgeSchema>>>;

/** A report's region. */
export type ReportRegion = Frozen<z.infer<ReturnType<typeof regionSchema>>>;

/** A piece of metal that is left. */
export type ReportPiece = Report['pieces'][number];

/** A neck of metal under the limit. */
export type ReportWeb = Report['webs'][number];

/** A sharp corner of metal under the limit. */
export type ReportKnifeEdge = Report['knifeEdges'][number];

/** Metal left where a cut stops short. */
export type ReportFloor = Report['floors'][number];

/** One approach of one tool. */
export type ReportStep = Report['steps'][number];

/** All rows of a report: what its findings are made from. */
export type ReportRows = Omit<Report, 'findings' | 'cautions' | 'steps'> & {
  readonly steps: readonly Omit<ReportStep, 'findings'>[];
};

/** The load of a tool between two depths. */
export type ReportLoadAt = NonNullable<ReportStep['load']>['heights'][number];

/** How to come off the wall before the tool is lifted. */
export type StepBackOff = ReportStep['backOff'];

/** A way to free a body. */
export type ReportWayOut = Report['bodies'][number]['waysOut'][number];

/** A body that comes loose, or that a floor or thin metal holds. */
export type ReportBody = Report['bodies'][number];

/** What one cut did. */
export type ReportCut = Report['cuts'][number];

/** Where two halves of one bore meet. */
export type ReportSeam = Report['seams'][number];

/** How to measure an arc that a cut leaves. */
export type ReportCheck = Report['checks'][number];

/** One way to measure it. */
export type ReportWay = ReportCheck['ways'][number];

/** How the part lies in a setup, its zero and its readout targets. */
export type ReportSetup = Report['setups'][number];

/** Where the readout is to stand for a cut or one of its passes. */
export type ReportTarget = ReportSetup['targets'][number];

/** A jaw, stop, parallel or clamp. */
export type ReportKeepOut = Report['keepOut'][number];

/** How a cut is to be run with its tool. */
export type Running = NonNullable<ReportCut['running']>;

/** About what it takes to break thin metal. */
export type BreakOff = NonNullable<ReportFloor['breakOff']>;

/** A caution, and what it comes from. */
export type Caution = Report['cautions'][number];

/** How the centre of a cut was given, and the arc that follows. */
export type ReportPlacement = NonNullable<ReportCut['placement']>;

/** How much of a tool's circle is in metal in a pass. */
export type ReportLoad = NonNullable<ReportCut['passes']>['list'][number]['load'];

/** The passes in which a bore is cut. */
export type ReportPasses = NonNullable<ReportCut['passes']>;

/** The path of a swept cut that follows the outline. */
export type ReportToolPath = NonNullable<ReportCut['toolPath']>;

/** Something to know before cutting. */
export type Finding = Report['findings'][number];

/** The JSON Schema (draft 2020-12) of a report, made from the schema that its types come from. */
export function reportJsonSchema(): Record<string, unknown> {
  return jsonSchemaOf(reportSchema, 'urn:edgebite:report:1', 'input');
}
