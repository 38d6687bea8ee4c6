import * as z from 'zod';
import { figure, units } from '../document/schema-parts.js';
import { once } from '../memory/once.js';
import { depthSchema } from './report-setups.js';
import { stepTarget } from './report-steps.js';

/** A part of a batch, and where the readout is to stand for it. */
export const batchRow = once(() =>
  z.object({
    name: z.string(),
    measured: z
      .array(z.object({ name: z.string(), measured: figure(), units: units() }))
      .meta({ description: 'The lengths that are its own, by their names in the zeros, as written.' }),
    steps: z
      .array(
        z.object({
          step: z.int().min(0).meta({ description: 'Index into steps.' }),
          setup: z.string().meta({ description: 'id of the setup.' }),
          cut: z.string().meta({ description: 'id of the cut.' }),
          targets: z.array(stepTarget()).meta({ description: 'One for each of the stands of the step.' }),
          depth: depthSchema(),
        }),
      )
      .meta({ description: 'Every step that is made in a setup.' }),
  }),
);
