import * as z from 'zod';
import { TOOL_KINDS, TOOL_MATERIALS } from '../cutting/tool.js';
import { amount } from '../document/schema-parts.js';
import { once } from '../memory/once.js';
import { CAUTION_CODES } from './finding-codes.js';

const range = once(() => z.tuple([amount(), amount()]).meta({ id: 'Range', description: '[least, most]' }));

/** How a cut is to be run with its tool. */
export const runningSchema = once(() =>
  z.object({
    tool: z.string().meta({ description: 'id of the tool.' }),
    kind: z.enum(TOOL_KINDS),
    toolMaterial: z.enum(TOOL_MATERIALS),
    diameter: amount().meta({
      description: 'At which the edges run: of the tool, or of the cut where it has none.',
    }),
    teeth: z.int().min(1).nullable(),
    surfaceSpeed: range().nullable().meta({
      description:
        'Speed of the edges through the metal, in surfaceSpeedUnit; null where the material is not known.',
    }),
    surfaceSpeedUnit: z.enum(['m/min', 'ft/min']),
    spindle: range().nullable().meta({ description: 'Turns per minute which that makes, before any limit.' }),
    set: range().nullable().meta({
      description:
        'Turns per minute within the limits of tool and machine; null where none fit, where a boring head has no limit given, or where the material is not known.',
    }),
    limitedBy: z.enum(['tool', 'machine']).nullable().meta({
      description: 'Which limit cuts the range short; null if none does.',
    }),
    feedPerTooth: range().nullable().meta({ description: 'null for a drill and a boring head.' }),
    feedPerTurn: range().nullable().meta({ description: 'null where it is not known.' }),
    feed: range()
      .nullable()
      .meta({ description: 'In feedUnit, at the speeds of `set`; null where not known.' }),
    feedUnit: z.enum(['mm/min', 'in/min']),
    travel: amount().meta({
      description:
        'How far the tool goes at that feed: the depth, or along its path at one depth; once for each pass.',
    }),
    minutes: range().nullable().meta({ description: 'Time of that travel alone; null without a feed.' }),
    source: z.string().nullable().meta({
      description: 'Where the surface speed is from, or that it is from memory; null without one.',
    }),
    feedSource: z.string().nullable().meta({ description: 'The same of the feed.' }),
  }),
);

/** About what it takes to break thin metal: an estimate, not to be relied on. */
export const breakOffSchema = once(() =>
  z.object({
    thickness: amount().meta({ description: 'Of the metal that breaks.' }),
    width: amount().meta({ description: 'How long the line is along which it breaks.' }),
    area: amount().meta({ description: 'Of the broken face: thickness times width.' }),
    force: range().meta({ description: 'Force to shear through it, in forceUnit.' }),
    forceUnit: z.enum(['N', 'lbf']),
    moment: range().meta({
      description: 'Moment to bend it over along a straight line of that width, in momentUnit.',
    }),
    momentUnit: z.enum(['N m', 'lbf in']),
    sawLength: amount().meta({ description: 'How long a saw cut would be that goes through it instead.' }),
    source: z.string().meta({ description: 'Where the strengths are from, or that they are from memory.' }),
  }),
);

/** A caution, and what it comes from. */
export const cautionSchema = once(() =>
  z.object({
    code: z.enum(CAUTION_CODES),
    message: z.string().min(1),
    about: z.array(z.string()).meta({
      description: 'Names of what caused it, as in findings; none of the standing caution, which comes last.',
    }),
  }),
);
