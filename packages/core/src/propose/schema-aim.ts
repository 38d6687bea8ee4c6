import * as z from 'zod';
import type { Frozen } from '../document/frozen.js';
import { jobSchema } from '../document/schema.js';
import { size } from '../document/schema-parts.js';
import { drawerSchema } from './schema-drawer.js';

const job = jobSchema.shape;
const outline = job.part.shape.outline;

const minutes = z.number().min(0).max(1e4);

/** An aim as written in JSON, version 1: what is to come out of which blank, and with which tools. */
export const aimSchema = z
  .strictObject({
    edgebite: job.edgebite,
    name: job.name,
    units: job.units,
    blank: outline.meta({ description: 'What there is: a plate of this outline.' }),
    finished: outline.meta({ description: 'What is to be left of it.' }),
    thickness: size,
    material: job.part.shape.material,
    keep: job.keep,
    limits: job.limits,
    resolution: job.resolution,
    machine: job.machine,
    drawer: drawerSchema,
    allowance: size.optional().meta({
      description:
        'What roughing leaves on the radius for the tool that finishes. 0.5 mm or 0.02 inch without it (common practice, no source).',
    }),
    bite: size.optional().meta({
      description:
        'The deepest bite of a boring head along a radius. 0.5 mm or 0.02 inch without it (common practice, no source).',
    }),
    minutes: z
      .strictObject({
        toolChange: minutes.optional().meta({ description: 'For one change of tool; 3 without it.' }),
        turning: minutes.optional().meta({
          description: 'To turn the part over and find its zero again; 10 without it.',
        }),
      })
      .optional()
      .meta({ description: 'What a change costs at your machine (common practice, no source).' }),
    ways: z.int().min(1).max(12).optional().meta({ description: 'How many ways at most; 4 without it.' }),
  })
  .meta({ title: 'edgebite aim, version 1' });

/** An aim as written in JSON. */
export type AimDocument = Frozen<z.infer<typeof aimSchema>>;

/** The JSON Schema (draft 2020-12) of an aim, made from the schema that `parseAim` uses. */
export function aimJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(aimSchema, { target: 'draft-2020-12' });
}
