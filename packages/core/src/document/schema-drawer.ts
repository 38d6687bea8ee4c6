import * as z from 'zod';
import { TOOL_MATERIALS } from '../cutting/tool.js';
import { once } from '../memory/once.js';
import type { Frozen } from './frozen.js';
import { jsonSchemaOf } from './json-schema.js';
import { MAX_LENGTH, MAX_NAME, MAX_SPEED, MAX_TEETH, MAX_TOOLS } from './limits.js';
import { size, tolerance, units } from './schema-parts.js';
import { dialSchema } from './schema-tools.js';

const everyTool = once(() => ({
  id: z
    .string()
    .min(1)
    .max(MAX_NAME)
    .meta({ description: "The tool's own name, unlike any other's in the drawer." }),
  toolMaterial: z.enum(TOOL_MATERIALS).meta({ description: 'What its cutting edges are made of.' }),
  tolerance: z.number().min(0).max(MAX_LENGTH).optional().meta({
    unit: 'length',
    description: 'How far the diameter that it cuts may be off, to either side; 0 without it.',
  }),
  maxSpeed: z.number().gt(0).max(MAX_SPEED).optional().meta({
    unit: 'rpm',
    description: 'The fastest that it may turn. Of a boring head no time is known without it.',
  }),
}));

const runOut = once(() =>
  tolerance().optional().meta({
    unit: 'length',
    description:
      'What an indicator on its teeth shows in a turn of the spindle, at most: it cuts up to so much over its diameter. 0 without it.',
  }),
);

const reach = once(() => size().meta({ description: 'How deep it can cut.' }));
const diameter = once(() => size().meta({ description: 'That it cuts.' }));
const teeth = once(() =>
  z.int().min(1).max(MAX_TEETH).optional().meta({
    description: 'No feed is worked out without it.',
  }),
);

const ringCutter = once(() =>
  z.strictObject({
    kind: z.literal('annular cutter'),
    ...everyTool(),
    diameter: diameter(),
    wall: size().meta({ description: 'Width of the ring that its teeth cut; under half the diameter.' }),
    reach: reach(),
    teeth: teeth(),
    runOut: runOut(),
    pilot: z.boolean().optional().meta({
      description: 'Whether a pin in its middle leads it, which has to stand on metal. None without it.',
    }),
  }),
);

const drill = once(() =>
  z.strictObject({
    kind: z.literal('drill'),
    ...everyTool(),
    diameter: diameter(),
    reach: reach(),
    runOut: runOut(),
  }),
);

const boringHead = once(() =>
  z.strictObject({
    kind: z.literal('boring head'),
    ...everyTool(),
    smallest: size().meta({ description: 'The smallest bore that it can be set to.' }),
    largest: size().meta({ description: 'The largest bore that it can be set to.' }),
    bar: size().meta({
      description: 'How far its bar stands out below the head: bores are less deep than that.',
    }),
    dial: dialSchema().optional().meta({ description: 'Its dial: passes fall on its marks.' }),
  }),
);

const endMill = once(() =>
  z.strictObject({
    kind: z.literal('end mill'),
    ...everyTool(),
    diameter: diameter(),
    reach: reach().meta({ description: 'Length of its flutes.' }),
    teeth: teeth(),
    runOut: runOut(),
    centerCutting: z.boolean().optional().meta({
      description: 'Whether it cuts to its centre, so that it can go straight down. It does not without it.',
    }),
  }),
);

/** The tools that there are to choose from. */
export const drawerSchema = once(() =>
  z
    .array(z.discriminatedUnion('kind', [ringCutter(), drill(), boringHead(), endMill()]))
    .min(1)
    .max(MAX_TOOLS)
    .meta({ id: 'Drawer', description: 'The tools that there are to choose from.' }),
);

/** A drawer in a file of its own, shared by aims. */
export const drawerFileSchema = once(() =>
  z
    .strictObject({
      edgebite: z.literal(1).meta({ description: 'Version of the format.' }),
      units: units(),
      drawer: drawerSchema(),
    })
    .meta({ title: 'edgebite drawer, version 1' }),
);

/** A drawer in a file of its own, as written. */
export type DrawerDocument = Frozen<z.infer<ReturnType<typeof drawerFileSchema>>>;

/** A tool of a drawer as written. */
export type DrawerTool = Frozen<z.infer<ReturnType<typeof drawerSchema>>>[number];

/** A hollow cutter of a drawer. */
export type RingTool = DrawerTool & { readonly kind: 'annular cutter' };

/** A boring head of a drawer. */
export type HeadTool = DrawerTool & { readonly kind: 'boring head' };

/** A tool of a drawer that has one diameter. */
export type RoundDrawerTool = Exclude<DrawerTool, HeadTool>;

/** The JSON Schema (draft 2020-12) of a drawer in a file of its own. */
export function drawerJsonSchema(): Record<string, unknown> {
  return jsonSchemaOf(drawerFileSchema(), 'urn:edgebite:drawer:1');
}
