import * as z from 'zod';
import { once } from '../memory/once.js';
import { MAX_KNIFE_EDGE, MAX_LENGTH, MIN_LENGTH } from './limits.js';

/** A coordinate of a job: any finite number within the limits. Forms read from `unit` what to write beside it. */
export const coordinate = once(() => z.number().min(-MAX_LENGTH).max(MAX_LENGTH).meta({ unit: 'length' }));

/** A place in a job. */
export const jobPoint = once(() =>
  z
    .tuple([coordinate(), coordinate()])
    .meta({ id: 'JobPoint', description: 'A place [x, y] in the unit of the job. y points up.' }),
);

/** A size in a job: over 0. */
export const size = once(() => z.number().min(MIN_LENGTH).max(MAX_LENGTH).meta({ unit: 'length' }));

/** How far a length may be off, to either side. */
export const tolerance = once(() => z.number().min(0).max(MAX_LENGTH).meta({ unit: 'length' }));

/** The unit of every length. */
export const units = once(() => z.enum(['mm', 'inch']).meta({ description: 'The unit of every length.' }));

/** The side of the part that a cut starts from. */
export const side = once(() => z.enum(['top', 'bottom']));

/** The kinds of cut. */
export const cutKind = once(() => z.enum(['bore', 'annular', 'swept']));

/** Any finite number in a report. */
export const figure = once(() => z.number());

/** A number in a report that is never negative. */
export const amount = once(() => z.number().min(0));

/** A place in a report. */
export const place = once(() =>
  z
    .tuple([figure(), figure()])
    .meta({ id: 'Place', description: 'A place [x, y] in the unit of the report. y points up.' }),
);

/** The name of an outline edge or of a cut. */
export const source = once(() =>
  z.string().meta({
    id: 'Source',
    description: 'What an edge came from: outline:N, hole:H:N or cut:ID.',
  }),
);

/** What counts as thin, as sharp and as held. */
export const limitsSchema = once(() =>
  z.strictObject({
    web: size().optional().meta({
      description:
        'Metal thinner than this is reported. 1 mm or 0.04 inch without it (common practice, no source).',
    }),
    hold: size().optional().meta({
      description:
        'A body counts as held only by metal at least so thick where it joins. The web limit without it (common practice, no source).',
    }),
    breakThrough: size().optional().meta({
      description:
        'How much room a tool wants that comes out below the part. 1 mm or 0.04 inch without it (common practice, no source).',
    }),
    knifeEdge: z.number().gt(0).max(MAX_KNIFE_EDGE).optional().meta({
      unit: 'degree',
      description:
        'Interior angles under this many degrees are reported. 30 without it (common practice, no source).',
    }),
  }),
);
