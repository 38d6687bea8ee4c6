import * as z from 'zod';
import { amount, place, source } from '../document/schema-parts.js';
import { once } from '../memory/once.js';

/** A report's line or arc. */
export const edgeSchema = once(() =>
  z
    .discriminatedUnion('kind', [
      z.object({ kind: z.literal('line'), a: place(), b: place(), source: source().optional() }),
      z.object({
        kind: z.literal('arc'),
        a: place(),
        b: place(),
        center: place(),
        radius: amount(),
        ccw: z.boolean(),
        source: source().optional(),
      }),
    ])
    .meta({ id: 'Edge', description: 'A straight edge, or an arc of less than a full turn.' }),
);

/** Edges in order, closed. */
export const loopSchema = once(() => z.array(edgeSchema()));

/** A report's region. */
export const regionSchema = once(() =>
  z.array(z.object({ outer: loopSchema(), holes: z.array(loopSchema()) })).meta({
    id: 'Region',
    description: 'Parts that overlap nowhere: each an outer loop, counter-clockwise, and holes, clockwise.',
  }),
);
