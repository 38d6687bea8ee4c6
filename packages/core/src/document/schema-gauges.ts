import * as z from 'zod';
import { once } from '../memory/once.js';
import { MAX_GAUGES } from './limits.js';
import { size } from './schema-parts.js';

/** What there is to measure an arc with. */
export const gaugesSchema = once(() =>
  z
    .strictObject({
      pins: z.array(size()).min(1).max(MAX_GAUGES).optional().meta({
        description: 'Diameters of pins that can lie in an arc.',
      }),
      balls: z.array(size()).min(1).max(MAX_GAUGES).optional().meta({
        description: 'Diameters of balls that can lie in an arc, on what is under it.',
      }),
      feet: z.array(size()).min(1).max(MAX_GAUGES).optional().meta({
        description: 'Distances between the feet of gauges that read the height over a chord.',
      }),
    })
    .meta({ id: 'Gauges', description: 'What there is to measure with.' }),
);

/** What the drawing allows of the arc of a cut. */
export const drawingSchema = once(() =>
  z
    .strictObject({
      radius: size().optional().meta({ description: 'How far its radius may be off, to either side.' }),
      place: size().optional().meta({ description: 'How far its centre may be off, in any direction.' }),
    })
    .meta({
      id: 'Drawing',
      description: "What the drawing allows of the arc; the class of the part's tolerances without it.",
    }),
);
