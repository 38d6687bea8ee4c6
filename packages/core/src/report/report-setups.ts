import * as z from 'zod';
import { amount, figure, place, side, units } from '../document/schema-parts.js';
import { SIDES } from '../document/schema-setups.js';
import { once } from '../memory/once.js';

const pair = (description: string) => z.tuple([figure(), figure()]).meta({ description });

const ends = once(() => z.tuple([figure(), figure()]).meta({ id: 'Interval', description: '[least, most]' }));

/** Between what a figure can lie, given how far the setups may be off; null where that is not known. */
export const intervalSchema = once(() =>
  z
    .object({
      worst: ends().meta({ description: 'With every error at its worst.' }),
      rss: ends().meta({ description: 'With errors added as the root of the sum of their squares.' }),
    })
    .nullable(),
);

const linkSchema = once(() =>
  z.object({
    kind: z.enum(['touch', 'dial in', 'set', 'move', 'block', 'measured', 'bears']),
    action: z.int().min(0).meta({ description: 'Which action of the job it belongs to, from 0.' }),
    name: z.string().nullable().meta({ description: 'Links of one name are one thing, in all setups.' }),
    of: z.string().nullable().meta({
      description: 'What it comes to: a face of the part, stop:ID or a middle; null of blocks and moves.',
    }),
    side: z.enum(SIDES).nullable().meta({
      description: 'Of a touch the side of the face on which the tip stands; else null.',
    }),
    length: figure().nullable().meta({
      description:
        'As written, in units: of a touch the diameter, of a set what is set, of a move with its sign. null if none.',
    }),
    units: units(),
    offset: figure().meta({
      description: 'By how much the reading over what is come to grows by it, in readout units.',
    }),
    at: figure().nullable().meta({
      description:
        'What the readout shows over what has been come to, once this is done; null where none is set yet.',
    }),
    tolerance: amount().meta({ description: 'To either side, in readout units.' }),
    basis: z.enum(['given', 'general', 'none']).meta({
      description: "Where the tolerance is from: the job, the part's class of ISO 2768-1, or nowhere.",
    }),
  }),
);

const axisSchema = once(() =>
  z.object({
    place: z.string().meta({ description: 'The place on the part that the chain ends at.' }),
    at: figure().meta({ description: 'What the readout shows when the spindle stands over that place.' }),
    links: z.array(linkSchema()).meta({ description: 'In the order in which they are done.' }),
    worst: amount().meta({ description: 'How far the chain may be off at worst, to either side.' }),
    rss: amount().meta({ description: 'The same as root of the sum of the squares.' }),
  }),
);

/** Where the readout is to stand in Z. */
export const depthSchema = once(() =>
  z
    .object({
      exact: figure().meta({
        description: 'What the readout should show in Z when the tool is as deep as it goes.',
      }),
      readout: figure().meta({ description: 'The nearest step of the readout: the target.' }),
      roundingError: figure().meta({ description: 'Target less exact.' }),
      worst: amount().meta({
        description:
          'How far the end of the tool may be off at worst, from the face that lies up, or the lower one of a cut through the part.',
      }),
      rss: amount().meta({ description: 'The same as root of the sum of the squares.' }),
      below: amount().meta({
        description: 'How far the end of the tool is then below the part, in the unit of the report.',
      }),
    })
    .nullable()
    .meta({
      description: 'In Z, in the unit of what heights are read on; null where the setup has no zero there.',
    }),
);

const targetSchema = once(() =>
  z.object({
    cut: z.string().meta({ description: 'id of the cut.' }),
    pass: z
      .int()
      .min(1)
      .nullable()
      .meta({ description: 'Which of its passes, from 1; null if it has none.' }),
    point: z.int().min(0).nullable().meta({
      description: "Which point of a swept cut's path, from 0 at its start; null for others.",
    }),
    path: z
      .object({
        run: z.int().min(1).meta({
          description:
            'Which run, from 1: the tool goes down where a run starts and is lifted where it ends.',
        }),
        move: z.enum(['down', 'line', 'arc']).meta({
          description: 'How the tool comes there: lifted and then straight down, or at depth.',
        }),
        arc: z
          .object({
            exact: pair('What the readout would show at its centre, in its unit.'),
            radius: amount().meta({
              description: 'Of the way of the middle of the tool, in the unit of the report.',
            }),
            ccw: z.boolean().meta({ description: 'Counter-clockwise, seen from above as the part lies.' }),
          })
          .nullable()
          .meta({ description: 'Of a move along an arc; else null.' }),
        lift: z.boolean().meta({ description: 'Whether the tool is lifted there before it goes on.' }),
      })
      .nullable()
      .meta({ description: 'Of a point of a path; null for others.' }),
    center: place().meta({ description: 'On the part as drawn, in the unit of the report.' }),
    exact: pair('What the readout should show there, in its unit.'),
    readout: pair('The nearest step of the readout: the target.'),
    roundingError: pair('Target less exact.'),
    worst: pair('How far the spindle may be from the target at worst, to either side.'),
    rss: pair('The same as root of the sum of the squares.'),
    depth: depthSchema(),
  }),
);

/** How the part lies in a setup, where its zero is, and where the readout is to stand for each cut. */
export const setupRow = once(() =>
  z.object({
    id: z.string(),
    name: z.string().nullable(),
    turn: figure().meta({ description: 'Degrees counter-clockwise, after it was turned over.' }),
    flip: z.enum(['x', 'y']).nullable().meta({ description: 'Axis about which it is turned over.' }),
    angleTolerance: amount().meta({
      description: 'By how many degrees it may lie turned out of that, to either side.',
    }),
    up: side().meta({ description: 'The face of the drawn part that lies up.' }),
    readout: z.object({ units: units(), resolution: amount().meta({ description: 'In its unit.' }) }),
    heights: z
      .object({
        on: z.enum(['readout', 'quill']),
        units: units(),
        resolution: amount().meta({ description: 'Smallest step or graduation, in its unit.' }),
      })
      .meta({
        description: 'What heights are read on: numbers of a quill grow downwards. Targets in Z are of it.',
      }),
    stops: z
      .array(z.object({ id: z.string(), face: z.enum(SIDES) }))
      .meta({ description: 'Stops, each with the side of the part, as it lies, that bears on it.' }),
    zero: z
      .object({
        at: place().meta({ description: "Where the readout's zero is on the part as drawn." }),
        x: axisSchema(),
        y: axisSchema(),
        z: axisSchema().nullable().meta({ description: 'null where the job does not say.' }),
      })
      .meta({ description: "Lengths in the readout's unit, but for `at`." }),
    cuts: z.array(z.string()).meta({ description: 'ids of the cuts made in it, in the order of the job.' }),
    targets: z.array(targetSchema()),
  }),
);

/** What a partial hole does to a face that it opens, however its centre was given, and how sure that is. */
export const biteSchema = once(() =>
  z.object({
    face: z.string().meta({ description: 'Name of the outline edge.' }),
    depth: amount().meta({
      description:
        'How deep it goes in, square to that face, to the deepest place of the metal that it takes there.',
    }),
    opening: amount().meta({ description: 'What it takes of that face, straight across.' }),
    whole: z.boolean().meta({ description: 'Whether it takes all of that face.' }),
    left: amount().nullable().meta({
      description:
        'What the part as drawn has left from the deepest place straight on to its far face; 0 where the circle comes out there.',
    }),
    far: z
      .string()
      .nullable()
      .meta({ description: 'Name of the edge where that ends; null where nothing is left.' }),
    arcLength: amount().meta({ description: 'Length of the arc, or arcs, that it cuts there.' }),
    includedAngle: amount().meta({ description: 'Degrees of that as seen from its centre.' }),
    deepest: place(),
    depthInterval: intervalSchema().meta({
      description: 'Null without setups of its cut, and where it hangs on a round edge.',
    }),
    openingInterval: intervalSchema(),
    leftInterval: intervalSchema(),
  }),
);
