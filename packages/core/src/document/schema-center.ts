import * as z from 'zod';
import { once } from '../memory/once.js';
import { MAX_LENGTH, MAX_NAME } from './limits.js';
import { coordinate, jobPoint, size } from './schema-parts.js';

const edgeName = once(() =>
  z.string().min(1).max(MAX_NAME).meta({
    description:
      'An edge of the part: the name that the outline gives it, or outline:N or hole:H:N as reports have it.',
  }),
);

const end = once(() => z.enum(['start', 'end']));

const choice = once(() => ({
  pick: z.string().min(1).max(MAX_NAME).optional().meta({
    description:
      'Which of several answers is meant, by its name. Left out where there are several, the job is refused with the names of all.',
  }),
  near: jobPoint().optional().meta({
    description:
      'In place of "pick": the answer whose centre is nearest to this place is meant. It lies no further off than the cut is wide.',
  }),
}));

const onFace = once(() => ({
  on: edgeName().meta({ description: 'A straight edge: the face that the hole opens.' }),
  along: coordinate().meta({ description: 'Along that edge, from its start, to the middle of the opening.' }),
  from: end().optional().meta({
    description:
      'Which end of the edge "along" is measured from; its start without it. Outer edges run counter-clockwise, those of holes clockwise.',
  }),
}));

const distance = once(() => z.number().min(0).max(MAX_LENGTH).meta({ unit: 'length' }));

const faceSide = once(() => z.enum(['inside', 'outside']));

const dimension = once(() =>
  z
    .union([
      z.strictObject({
        edge: edgeName(),
        distance: distance().meta({ description: 'Square to the edge, or along the radius of an arc.' }),
        side: faceSide().optional().meta({
          description: 'On which side of the edge; "inside", where the metal lies, without it.',
        }),
      }),
      z.strictObject({
        along: edgeName().meta({ description: 'A straight edge.' }),
        end: end().meta({ description: 'The end that the distance is measured from.' }),
        distance: coordinate().meta({ description: 'Along the edge; over 0 towards its other end.' }),
      }),
      z.strictObject({
        corner: edgeName(),
        end: end().meta({ description: 'The end of that edge that the distance is measured from.' }),
        distance: distance().meta({ description: 'Straight from that end.' }),
      }),
      z.strictObject({
        from: edgeName().meta({
          description:
            'A straight face: "left", "right", "front" or "back" of the part as drawn, or an edge by its name or number.',
        }),
        off: coordinate().meta({
          description: 'Square to that face: over 0 beyond it, in the air; under 0 within the part.',
        }),
      }),
    ])
    .meta({ id: 'CenterDimension', description: 'A dimension of a centre, by one of four keys.' }),
);

/** The keys of which a dimension of a centre has exactly one, in the order of the branches of the schema. */
export const DIMENSION_KEYS = ['edge', 'along', 'corner', 'from'] as const;

/** The keys of which a placement has exactly one, in the order of its branches of the schema. */
export const PLACEMENT_KEYS = ['depth', 'opening', 'through', 'tangent', 'distances'] as const;

/** Where the centre of a cut is: a point, or what a drawing gives in its place. */
export const centerSchema = once(() =>
  z
    .union([
      jobPoint(),
      z.strictObject({
        ...onFace(),
        depth: size().meta({ description: 'From the face to the deepest place.' }),
      }),
      z.strictObject({
        ...onFace(),
        opening: size().meta({ description: 'Width of the opening in the face.' }),
        ...choice(),
      }),
      z.strictObject({
        through: z
          .tuple([jobPoint(), jobPoint(), jobPoint()])
          .meta({ description: 'Three places on its circle.' }),
      }),
      z.strictObject({
        tangent: z
          .tuple([edgeName(), edgeName()])
          .meta({ description: 'Two edges that its circle touches.' }),
        ...choice(),
      }),
      z.strictObject({
        distances: z
          .tuple([dimension(), dimension()])
          .meta({ description: 'Two dimensions across each other.' }),
        ...choice(),
      }),
    ])
    .meta({
      id: 'Center',
      description: 'A place, or a placement on the part: by one of five keys.',
    }),
);

const everyPlan = once(() => ({
  bite: size().meta({ description: 'The deepest that a pass may bite along a radius.' }),
  finish: distance().optional().meta({
    description: 'What the pass before the last leaves; at most the bite. None without it.',
  }),
  spring: z.boolean().optional().meta({
    description: 'Whether the last pass is made once more, to take what the tool sprang away from.',
  }),
  feed: z
    .strictObject({
      perTurn: size(),
      rpm: z.number().gt(0).max(1e6).meta({ unit: 'rpm', description: 'Turns per minute.' }),
    })
    .optional()
    .meta({ description: 'For the time of each pass.' }),
}));

/** The passes in which a bore is cut. */
export const passesJobSchema = once(() =>
  z
    .discriminatedUnion('kind', [
      z
        .strictObject({
          kind: z.literal('step in'),
          ...everyPlan(),
          approach: z
            .union([z.number().min(-360).max(360).meta({ unit: 'degree' }), z.literal('smoothest')])
            .optional()
            .meta({
              description:
                'The way in which the centre moves, degrees counter-clockwise from the x axis, or "smoothest", which it is without it.',
            }),
        })
        .meta({ description: 'The cutter stays as large; its centre moves in.' }),
      z
        .strictObject({
          kind: z.literal('open out'),
          ...everyPlan(),
          smallest: size().optional().meta({
            description: 'The smallest diameter that the tool can be set to; any without it.',
          }),
        })
        .meta({ description: 'The centre stays where it is; the tool is set larger.' }),
    ])
    .meta({ id: 'Passes', description: 'The passes in which a bore is cut; one without it.' }),
);

/** What passes and placed centres share: how far to come off the wall before lifting. */
export const clearanceSchema = once(() =>
  size().optional().meta({
    description:
      'The gap to the wall that the tool is moved off it by before it is lifted. 0.2 mm or 0.01 inch without it (common practice, no source).',
  }),
);

const outlinePlace = once(() =>
  z
    .union([
      jobPoint(),
      z.strictObject({
        edge: edgeName(),
        end: end().optional().meta({ description: 'An end of the edge; its start without it.' }),
        distance: distance().optional().meta({ description: 'From that end, along the edge; 0 without it.' }),
      }),
    ])
    .meta({
      id: 'OutlinePlace',
      description: 'A place on the outline: the one nearest to a point, or one on a named edge.',
    }),
);

/** How a swept cut follows the outline. */
export const alongSchema = once(() =>
  z.strictObject({
    loop: z.string().min(1).max(MAX_NAME).optional().meta({
      description:
        'What is followed all the way round: outline, hole:H or all; outline without it. Not beside "from" and "to".',
    }),
    from: outlinePlace().optional().meta({
      description:
        'Where a stretch of one loop begins. Stretches run as the loop does: counter-clockwise outside, clockwise round holes.',
    }),
    to: outlinePlace().optional().meta({ description: 'Where that stretch ends.' }),
    side: faceSide().meta({
      description: 'On which side of the outline the tool runs: "inside" is in the metal.',
    }),
    allowance: distance().optional().meta({
      description: 'What is left between tool and outline; none without it.',
    }),
    milling: z.enum(['conventional', 'climb']).optional().meta({
      description:
        'Which way round, for a spindle that turns clockwise seen from the side that the cut starts from; "conventional" without it.',
    }),
    lead: z
      .union([size(), z.enum(['largest', 'none'])])
      .optional()
      .meta({
        description:
          'Radius of the tangent arcs on which the tool comes and goes, or the largest that fit, or none. Without it "largest" outside and "none" inside, where they would cut into the part.',
      }),
    start: jobPoint().optional().meta({
      description: 'A whole loop is begun at its place nearest to this one. Not beside "from" and "to".',
    }),
  }),
);

/** On which side of the outline a drawn path is meant to stay. */
export const staysSchema = once(() =>
  faceSide().optional().meta({
    description:
      'On which side of the outline the whole tool is meant to stay; where it does not, a finding says so. Not said without it.',
  }),
);
