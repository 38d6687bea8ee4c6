import * as z from 'zod';
import { once } from '../memory/once.js';
import { MAX_BATCH, MAX_CUTS, MAX_LINKS, MAX_NAME, MAX_REPEATS } from './limits.js';
import { coordinate, jobPoint, size } from './schema-parts.js';

const name = once(() => z.string().min(1).max(MAX_NAME));

const count = once(() =>
  z.int().min(2).max(MAX_CUTS).meta({
    description: 'How many there are in all, the written one included.',
  }),
);

/** The keys of which a repeat has exactly one, in the order of the branches of the schema. */
export const REPEAT_KEYS = ['row', 'round', 'mirror'] as const;

/** The keys of which a row has exactly one, in the order of the branches of the schema. */
export const ROW_KEYS = ['step', 'along'] as const;

/** The keys of which a mirror has exactly one, in the order of the branches of the schema. */
export const MIRROR_KEYS = ['x', 'y', 'middle', 'through'] as const;

const rowSchema = once(() =>
  z
    .union([
      z.strictObject({
        step: jobPoint().meta({ description: '[x, y] from one to the next.' }),
        count: count(),
      }),
      z.strictObject({
        along: name().meta({
          description:
            'A straight edge: "left", "right", "front" or "back" of the part as drawn, or an edge by its name or number. Edges run counter-clockwise outside and clockwise round holes.',
        }),
        pitch: coordinate().meta({
          description: 'From one to the next, the way the edge runs; under 0 against it.',
        }),
        count: count(),
      }),
    ])
    .meta({ id: 'Row', description: 'In a row, by one of two keys.' }),
);

const roundSchema = once(() =>
  z
    .strictObject({
      center: jobPoint().meta({ description: 'What they lie round.' }),
      turn: z.number().min(-360).max(360).optional().meta({
        unit: 'degree',
        description:
          'Degrees counter-clockwise from one to the next; without it they are spread evenly over a full turn.',
      }),
      count: count(),
    })
    .meta({ id: 'Round', description: 'Round a centre.' }),
);

const mirrorSchema = once(() =>
  z
    .union([
      z.strictObject({ x: coordinate().meta({ description: 'About the upright line at this x.' }) }),
      z.strictObject({ y: coordinate().meta({ description: 'About the level line at this y.' }) }),
      z.strictObject({
        middle: z.enum(['x', 'y']).meta({
          description:
            'About the middle of the part as drawn: "x" half way between left and right, "y" half way between front and back.',
        }),
      }),
      z.strictObject({
        through: z
          .tuple([jobPoint(), jobPoint()])
          .meta({ description: 'About the line through two places.' }),
      }),
    ])
    .meta({ id: 'Mirror', description: 'Once more, mirrored about a line, by one of four keys.' }),
);

const repeated = once(() => ({
  cuts: z.array(name()).min(1).max(MAX_CUTS).meta({
    description: 'ids of the cuts that are repeated together, as written.',
  }),
  order: z.enum(['cut by cut', 'place by place']).optional().meta({
    description:
      'Of a group: each cut at all its places before the next cut, or all cuts at one place before the next place; "cut by cut" without it.',
  }),
}));

const repeatSchema = once(() =>
  z
    .union([
      z.strictObject({ ...repeated(), row: rowSchema() }),
      z.strictObject({ ...repeated(), round: roundSchema() }),
      z.strictObject({ ...repeated(), mirror: mirrorSchema() }),
    ])
    .meta({
      id: 'Repeat',
      description:
        'Cuts made again elsewhere, by one of three keys. The copies of a cut "seat" are "seat 1", "seat 2" and so on, the written one first; "seat" means all of them.',
    }),
);

/** The repeats of a job. */
export const repeatsSchema = once(() => z.array(repeatSchema()).min(1).max(MAX_REPEATS));

/** The mirrored part that is made as well. */
export const twinSchema = once(() =>
  z
    .strictObject({
      swaps: z.enum(['left and right', 'front and back']).meta({
        description:
          'Which sides change places, on the part as drawn and in every setup: what bears with its left on a stop there bears with its right.',
      }),
      name: name().optional().meta({
        description: 'What the twin is called; the name of the job and "mirrored" without it.',
      }),
    })
    .meta({ id: 'Twin', description: 'The other one of a left and a right part: the whole job, mirrored.' }),
);

const lengthSchema = once(() =>
  z
    .strictObject({
      name: name().meta({
        description: 'The "name" of a measured length in the zero of a setup, in whose place it comes.',
      }),
      measured: size().meta({ description: 'What it is on this part, in the unit of that length.' }),
    })
    .meta({ id: 'MeasuredLength', description: 'A length as it was measured on one part.' }),
);

/** The parts of a batch whose measured lengths differ. */
export const batchSchema = once(() =>
  z
    .array(
      z.strictObject({
        name: name().meta({ description: "The part's own name or number, unlike any other part's." }),
        measured: z.array(lengthSchema()).min(1).max(MAX_LINKS).meta({
          description: 'Its measured lengths; the same names in every part.',
        }),
      }),
    )
    .min(1)
    .max(MAX_BATCH),
);
