import * as z from 'zod';
import { amount, source } from '../document/schema-parts.js';
import { once } from '../memory/once.js';

const pair = (description: string) => z.tuple([amount(), amount()]).meta({ description });

/** How to break a knife edge. */
export const edgeBreakSchema = once(() =>
  z.object({
    chamfer: z
      .object({
        flat: amount().meta({ description: 'Width of the flat: the web limit.' }),
        leg: amount().meta({ description: 'What it takes of each edge, straight from the tip.' }),
        angles: pair('Of the two corners that it leaves, degrees through metal, in the order of `between`.'),
      })
      .nullable()
      .meta({ description: 'null where the metal is not that thick as far as the two edges go.' }),
    radius: z
      .object({
        radius: amount().meta({ description: 'Half the web limit.' }),
        back: amount().meta({ description: 'How far back from the tip the metal then begins.' }),
        legs: pair('What it takes of each edge, straight from the tip, in the order of `between`.'),
      })
      .nullable()
      .meta({ description: 'null where no such round touches both edges.' }),
    opens: z
      .object({
        cut: z.string().meta({ description: 'id of the cut.' }),
        face: source(),
        chamfer: amount().nullable().meta({ description: 'By the chamfer; null without one.' }),
        radius: amount().nullable().meta({ description: 'By the radius; null without one.' }),
      })
      .nullable()
      .meta({
        description:
          'By how much the opening of a cut in a straight face grows at this end; null where the edge is not the horn of one.',
      }),
  }),
);
