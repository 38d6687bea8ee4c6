import * as z from 'zod';
import { MAX_NAME } from './limits.js';

/** The mirrored part that is made as well. */
export const twinSchema = z
  .strictObject({
    swaps: z.enum(['left and right', 'front and back']).meta({
      description:
        'Which sides change places, on the part as drawn and in every setup: what bears with its left on a stop there bears with its right.',
    }),
    name: z.string().min(1).max(MAX_NAME).optional().meta({
      description: 'What the twin is called; the name of the job and "mirrored" without it.',
    }),
  })
  .meta({ id: 'Twin', description: 'The other one of a left and a right part: the whole job, mirrored.' });
