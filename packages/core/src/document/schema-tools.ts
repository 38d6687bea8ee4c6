import * as z from 'zod';
import { TOOL_KINDS, TOOL_MATERIALS } from '../cutting/tool.js';
import { once } from '../memory/once.js';
import { MAX_CUTS, MAX_NAME, MAX_SPEED, MAX_SPEEDS, MAX_TEETH, MAX_TOOLS } from './limits.js';
import { size, tolerance } from './schema-parts.js';

const name = once(() => z.string().min(1).max(MAX_NAME));

const turnsPerMinute = once(() => z.number().gt(0).max(MAX_SPEED).meta({ unit: 'rpm' }));

/** The dial of a boring head. */
export const dialSchema = once(() =>
  z.strictObject({
    step: size().meta({ description: 'One graduation.' }),
    on: z.enum(['diameter', 'radius']).meta({ description: 'What a graduation changes of the bore.' }),
  }),
);

const toolSchema = once(() =>
  z
    .strictObject({
      id: name().meta({ description: "The tool's own name, unlike any other tool's." }),
      kind: z.enum(TOOL_KINDS),
      toolMaterial: z.enum(TOOL_MATERIALS).meta({ description: 'What its cutting edges are made of.' }),
      diameter: size().optional().meta({
        description: "That of its cuts without it. A boring head has none: it is set to each cut's.",
      }),
      diameterTolerance: tolerance().optional().meta({
        description:
          'How far its diameter may be off to either side, the same in all cuts; 0 without it. Not of a boring head.',
      }),
      runOut: tolerance().optional().meta({
        description:
          'What an indicator on its teeth shows in a turn of the spindle, at most: it cuts up to so much over its diameter. 0 without it. Not of a boring head, where it is in the setting.',
      }),
      settingTolerance: tolerance().optional().meta({
        description:
          'Of a boring head: how far the diameter that it is set to may be off to either side, each time that it is set; 0 without it.',
      }),
      reach: size().optional().meta({
        description: 'Of a drill or end mill: how deep it can cut; any depth without it.',
      }),
      pilot: z.boolean().optional().meta({
        description:
          'Of an annular cutter: whether a pin in its middle leads it, which has to stand on metal. None without it.',
      }),
      teeth: z.int().min(1).max(MAX_TEETH).optional().meta({
        description: 'Of an annular cutter or end mill: no feed is worked out for them without it.',
      }),
      centerCutting: z.boolean().optional().meta({
        description:
          'Of an end mill: whether it cuts to its centre, so that it can go straight down. It does not without it.',
      }),
      maxSpeed: turnsPerMinute().optional().meta({
        description:
          'The fastest that it may turn, as its maker or its user says. A boring head needs it: how far out of balance it is, only they know.',
      }),
      dial: dialSchema().optional().meta({
        description:
          "Of a boring head: its dial, for corrections in the head's own graduations. Passes that open out fall on its marks.",
      }),
      smallest: size()
        .optional()
        .meta({ description: 'Of a boring head: the smallest bore that it can be set to.' }),
      largest: size()
        .optional()
        .meta({ description: 'Of a boring head: the largest bore that it can be set to.' }),
      bar: size().optional().meta({
        description:
          'Of a boring head: how far its bar stands out below the head, which is as deep as it can go.',
      }),
      cuts: z.array(name()).min(1).max(MAX_CUTS).meta({ description: 'ids of the cuts made with it.' }),
    })
    .meta({ id: 'Tool', description: 'A cutting tool, and the cuts made with it.' }),
);

/** The tools of a job. */
export const toolsSchema = once(() => z.array(toolSchema()).min(1).max(MAX_TOOLS));

/** What the machine can do: a stretch of speeds, or the speeds that its belts and gears give. */
export const machineSchema = once(() =>
  z.strictObject({
    slowest: turnsPerMinute().optional().meta({ description: 'Slowest speed of the spindle.' }),
    fastest: turnsPerMinute().optional().meta({ description: 'Fastest speed of the spindle.' }),
    speeds: z.array(turnsPerMinute()).min(1).max(MAX_SPEEDS).optional().meta({
      description: 'All speeds that it has, where they go in steps; in place of slowest and fastest.',
    }),
  }),
);
