import * as z from 'zod';
import type { Frozen } from '../document/frozen.js';
import { jsonSchemaOf } from '../document/json-schema.js';
import { MAX_HOLES } from '../document/limits.js';
import { jobSchema, shapeWith } from '../document/schema.js';
import { drawerSchema } from '../document/schema-drawer.js';
import { side, size } from '../document/schema-parts.js';
import { SIDES } from '../document/schema-setups.js';
import { later, once } from '../memory/once.js';

// Each in a call that a bundler may leave out: who only examines jobs carries no aims.
const job = once(() => jobSchema.shape);
const outline = once(() => job().part.shape.outline);

const islands = once(() =>
  z
    .array(shapeWith({}).meta({ id: 'Island', description: 'A closed shape, by one of six keys.' }))
    .max(MAX_HOLES)
    .optional()
    .meta({ description: 'What stays up in it, each wholly inside its shape.' }),
);

const pocketSchema = once(() =>
  shapeWith({
    islands: islands(),
    depth: size().meta({ description: 'How deep; less than the thickness.' }),
    from: side().optional().meta({ description: 'The side that it lies open to; "top" without it.' }),
  }).meta({
    id: 'Pocket',
    description:
      'A place that does not go through: a closed shape by one of six keys, and its depth. It may go beyond the part.',
  }),
);

const bites = once(() =>
  z
    .array(
      shapeWith({}).meta({
        id: 'Bite',
        description: 'A closed shape by one of six keys. It may go beyond the blank.',
      }),
    )
    .min(1)
    .max(MAX_HOLES)
    .meta({ description: 'What is taken out of the blank, all through: holes, arcs, slots, corners.' }),
);

const finishedSchema = once(() =>
  z.union([...outline().options, z.strictObject({ bites: bites() })]).meta({
    description:
      'What is to be left of it, seen from above: its outline, with the holes that go through, or the blank without its bites.',
  }),
);

const minutes = once(() => z.number().min(0).max(1e4));

/** An aim as written in JSON, version 1: what is to come out of which blank, and with which tools. */
export const aimSchema = z
  .strictObject(
    later({
      edgebite: () => job().edgebite,
      name: () => job().name,
      units: () => job().units,
      blank: () => outline().meta({ description: 'What there is: a plate of this outline.' }),
      finished: finishedSchema,
      pockets: () =>
        z.array(pocketSchema()).max(MAX_HOLES).optional().meta({
          description: 'What is cut into it without going through.',
        }),
      thickness: size,
      material: () => job().part.shape.material,
      keep: () => job().keep,
      limits: () => job().limits,
      resolution: () => job().resolution,
      machine: () => job().machine,
      stops: () =>
        z.array(z.enum(SIDES)).max(SIDES.length).optional().meta({
          description:
            'Sides that stops bear on, as the part lies. Of equally safe ways and orders those are taken that push the part off its stops the least. None without it.',
        }),
      tip: () =>
        size().optional().meta({
          description:
            'Diameter of the tip of the edge finder. With it the jobs have setups: their zero is found at the stops and, where there is none, at the left and the front; what would push the part off a stop, or come out at one, is cut with the part turned by a half or a quarter.',
        }),
      drawer: drawerSchema,
      arcs: () =>
        z.boolean().optional().meta({
          description:
            'Whether an end mill can be led along arcs, by a rotary table or a control: hand wheels cannot. It cannot without it.',
        }),
      allowance: () =>
        size().optional().meta({
          description:
            'What roughing leaves on the radius for the tool that finishes. 0.5 mm or 0.02 inch without it (common practice, no source).',
        }),
      bite: () =>
        size().optional().meta({
          description:
            'The deepest bite of a boring head along a radius. 0.5 mm or 0.02 inch without it (common practice, no source).',
        }),
      minutes: () =>
        z
          .strictObject({
            toolChange: minutes().optional().meta({ description: 'For one change of tool; 3 without it.' }),
            turning: minutes().optional().meta({
              description: 'To turn the part over and find its zero again; 10 without it.',
            }),
          })
          .optional()
          .meta({ description: 'What a change costs at your machine (common practice, no source).' }),
      ways: () =>
        z.int().min(1).max(12).optional().meta({ description: 'How many ways at most; 4 without it.' }),
    }),
  )
  .meta({ title: 'edgebite aim, version 1' });

/** An aim as written in JSON. */
export type AimDocument = Frozen<z.infer<typeof aimSchema>>;

/** A place that does not go through, as written in an aim. */
export type PocketDocument = NonNullable<AimDocument['pockets']>[number];

/** The JSON Schema (draft 2020-12) of an aim, made from the schema that `parseAim` uses. */
export function aimJsonSchema(): Record<string, unknown> {
  return jsonSchemaOf(aimSchema, 'urn:edgebite:aim:1');
}
