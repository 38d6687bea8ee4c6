import * as z from 'zod';
import { amount, figure, place, source } from '../document/schema-parts.js';
import { once } from '../memory/once.js';
import { edgeSchema, regionSchema } from './report-shapes.js';

const count = once(() => z.int().min(0));

/** A direction: degrees counter-clockwise from the x axis. */
const heading = once(() => figure().meta({ description: 'Degrees counter-clockwise from the x axis.' }));

const arcEnd = once(() =>
  z
    .object({
      at: place(),
      angle: amount().max(180).meta({
        description: 'Degrees between the arc and the face, through the metal that is left there.',
      }),
      source: source().nullable().meta({ description: 'The edge that the metal ends with there.' }),
    })
    .meta({
      id: 'ArcEnd',
      description:
        'One end of an arc in metal. A tooth comes in at the entry and leaves at the exit where the spindle turns clockwise, seen from the side that the cut starts from.',
    }),
);

/** How the centre of a cut was given, and the arc that follows. */
export const placementSchema = once(() =>
  z.object({
    form: z.enum(['depth', 'opening', 'through', 'tangent', 'distances']),
    about: z.array(source()).meta({ description: 'The edges that the centre is given by.' }),
    pick: z.string().nullable().meta({
      description: 'The name of this answer, where others are possible; null where there is one only.',
    }),
    bites: count().meta({
      description:
        'How many arcs of its circle run through the part before any cut. The arc told here is the longest; `bites` of the cut have what each face loses.',
    }),
    includedAngle: amount().meta({ description: 'Degrees of its arc as seen from its centre.' }),
    arcLength: amount(),
    entry: arcEnd().nullable().meta({ description: 'null for a full hole or none.' }),
    exit: arcEnd().nullable().meta({ description: 'null for a full hole or none.' }),
  }),
);

/** How much of the circle of a pass is in metal when it starts. */
export const loadSchema = once(() =>
  z
    .object({
      arcs: z
        .array(
          z.object({
            start: heading().meta({ description: 'Of its clockwise end: degrees from the x axis.' }),
            sweep: amount().meta({ description: 'Degrees counter-clockwise from there.' }),
            length: amount(),
            entry: arcEnd().nullable().meta({ description: 'null for the whole circle.' }),
            exit: arcEnd().nullable().meta({ description: 'null for the whole circle.' }),
          }),
        )
        .meta({ description: 'The arcs of its circle that run through metal, counter-clockwise.' }),
      angle: amount().meta({ description: 'Degrees of all arcs together.' }),
      share: amount().max(1).meta({ description: 'Of the whole circle.' }),
      entries: count().meta({ description: 'How often a tooth strikes metal in a turn.' }),
      interrupted: z.boolean().meta({ description: 'Whether a tooth is in metal for part of a turn only.' }),
      sideLoad: z.object({
        size: amount().meta({
          description:
            'Length of the mean of the directions in which teeth cut: 0 where they balance, 1 where all are the same. Of half a circle it is 2/pi.',
        }),
        direction: heading().nullable().meta({
          description:
            'The way in which the part is pushed, for a spindle that turns clockwise seen from the side that the cut starts from; null where the size is 0.',
        }),
      }),
    })
    .meta({
      id: 'Load',
      description: "Engagement of a tool's circle: an annular cutter's outer one.",
    }),
);

const passRow = once(() =>
  z.object({
    role: z.enum(['rough', 'finish', 'spring']),
    center: place(),
    diameter: amount(),
    step: amount().meta({
      description: 'How far the centre has moved, or the radius grown, since the pass before.',
    }),
    area: amount(),
    volume: amount(),
    bite: z
      .object({
        size: amount().meta({ description: 'The longest stretch of metal along a radius.' }),
        angle: heading(),
        at: place().meta({ description: 'Where that radius ends.' }),
      })
      .nullable()
      .meta({ description: 'null where it removes nothing.' }),
    load: loadSchema(),
    longestCut: z
      .object({ angle: amount(), length: amount() })
      .meta({ description: 'The longest arc that a tooth cuts without a break; degrees.' }),
    minutes: amount().nullable().meta({ description: 'null without a feed.' }),
  }),
);

/** The passes in which a bore is cut. */
export const passesSchema = once(() =>
  z.object({
    kind: z.enum(['step in', 'open out']),
    approach: heading().nullable().meta({
      description: 'Degrees: the way in which the centre moves; null where it stands still.',
    }),
    travel: amount().meta({ description: 'From first touch to the last pass, in centre or radius.' }),
    minutes: amount().nullable().meta({ description: 'null without a feed.' }),
    unevenness: amount().meta({ description: 'Largest over mean area that a pass takes; 1 is even.' }),
    list: z.array(passRow()).meta({ description: 'In order; empty where there is nothing to cut.' }),
  }),
);

/** The path of a swept cut that follows the outline. */
export const toolPathSchema = once(() =>
  z.object({
    side: z.enum(['outside', 'inside']),
    milling: z.enum(['climb', 'conventional']),
    allowance: amount(),
    passes: z.array(
      z.object({
        leadIn: z.array(edgeSchema()),
        cut: z.array(edgeSchema()).meta({ description: 'Named by the outline edges that they run beside.' }),
        leadOut: z.array(edgeSchema()),
        closed: z.boolean(),
        outer: z.boolean().meta({ description: 'Whether it runs along the outer loop; else along a hole.' }),
        ccw: z.boolean().meta({ description: 'Whether it goes round its loop counter-clockwise.' }),
      }),
    ),
    unreached: z
      .array(
        z.object({
          region: regionSchema(),
          area: amount(),
          largestTool: amount().meta({
            description:
              'Diameter of the largest tool that would reach all of it; 0 where no round tool does.',
          }),
          by: z.enum(['corner', 'arc', 'gap', 'tips']).meta({ description: 'What sets that limit.' }),
          at: place().meta({ description: 'Where that limit is set.' }),
        }),
      )
      .meta({
        description: 'What the tool leaves along the stretch because it does not fit; largest first.',
      }),
    missed: z.array(z.string()).meta({
      description: 'Loops that it should follow and does not touch at all: outline or hole:H.',
    }),
  }),
);
