import * as z from 'zod';
import { DOINGS } from '../cutting/doing.js';
import { amount, figure, place, side } from '../document/schema-parts.js';
import { once } from '../memory/once.js';
import { regionSchema } from './report-shapes.js';

const index = once(() => z.int().min(0));

const pair = (description: string) => z.tuple([figure(), figure()]).meta({ description });

/** A direction as a person at the machine sees it. */
const directionSchema = once(() =>
  z
    .object({
      words: z.string().meta({ description: 'The nearest of eight: to the left, away from you, ...' }),
      degrees: figure().meta({
        description: 'Counter-clockwise from X+, seen from above; from 0 up to 360.',
      }),
    })
    .meta({ id: 'Direction', description: 'On the table: X+ to the right, Y+ away from the person.' }),
);

const drawnAngle = once(() =>
  figure().nullable().meta({ description: 'Degrees counter-clockwise from the x axis of the drawing.' }),
);

const layerSchema = once(() => z.object({ from: amount(), to: amount(), region: regionSchema() }));

const layers = (what: string) =>
  z
    .array(layerSchema())
    .nullable()
    .meta({
      description: `Section of the metal ${what}, slab by slab, loose bodies included; null in a job of very many steps and edges.`,
    });

const range = once(() => z.tuple([amount(), amount()]).nullable());

const freesSchema = once(() =>
  z.object({
    body: z.string().meta({ description: 'id of a body.' }),
    volume: amount().meta({ description: 'When it let go.' }),
    mass: amount().nullable().meta({ description: 'In massUnit; null if the material is not known.' }),
    atDepth: amount().meta({
      description: 'How deep the tool was below the face that lies up when no joint was left.',
    }),
    at: place().meta({ description: 'Middle of the box round it.' }),
    view: regionSchema().meta({ description: 'Its plan view then.' }),
  }),
);

const hangsSchema = once(() =>
  z.object({
    body: z.string(),
    volume: amount(),
    mass: amount().nullable(),
    at: place().meta({ description: 'Middle of the box round it.' }),
    thickness: amount().meta({ description: 'Of the thickest metal that joins it.' }),
    force: range().meta({
      description: 'Force to shear through what joins it: an estimate; null where the strength is not known.',
    }),
    forceUnit: z.enum(['N', 'lbf']).nullable(),
    atDepth: amount().meta({
      description: 'How deep the tool was when the metal that joins it became so thin.',
    }),
    view: regionSchema().meta({ description: 'Its plan view then.' }),
  }),
);

const loadAtSchema = once(() =>
  z
    .object({
      from: amount().meta({ description: 'Depth of the tool below where it starts.' }),
      to: amount(),
      share: amount().max(1).meta({ description: 'Of a turn that a tooth is in metal.' }),
      strikes: index().meta({
        description: 'How often a tooth strikes metal in a turn; 0 if it never leaves it or never meets any.',
      }),
      sideLoad: amount().max(1).meta({
        description:
          'Length of the mean of the directions in which teeth cut: 0 where they balance, 1 where all are the same.',
      }),
      push: directionSchema().nullable().meta({
        description: 'The way in which the part is pushed; null where the side load is 0.',
      }),
      pushDrawn: drawnAngle(),
    })
    .meta({
      id: 'LoadAt',
      description:
        'Load of a tool between two depths. Of an annular cutter, a tooth is in metal where its ring is, over the whole width.',
    }),
);

const stepLoadSchema = once(() =>
  z.object({
    heights: z.array(loadAtSchema()).meta({ description: 'Every height that it passes, from its start on.' }),
    entry: loadAtSchema().nullable().meta({ description: 'The first with metal; null if there is none.' }),
    worst: loadAtSchema().nullable().meta({ description: 'The one with the largest side load.' }),
    breakThrough: loadAtSchema().nullable().meta({
      description: 'The last with metal, where the tool comes out below it; null if it stops in metal.',
    }),
  }),
);

const stepBackOff = once(() =>
  z.object({
    by: amount().nullable().meta({ description: '0: lift the tool as it stands. null: there is no way.' }),
    machine: directionSchema().nullable(),
    drawn: drawnAngle(),
    to: place().nullable().meta({ description: 'Where its centre is then, on the part as drawn.' }),
    readout: pair('The same in readout numbers.').nullable(),
    gap: amount().nullable().meta({ description: 'To the nearest metal then; null where none is near.' }),
    why: z.string().nullable().meta({ description: 'Why there is no way; null where there is one.' }),
  }),
);

const standSchema = once(() =>
  z.object({
    what: z.enum(['center', 'start', 'lead in', 'path', 'lead out', 'back off']),
    at: place().meta({ description: 'On the part as drawn.' }),
    readout: pair('The nearest step of the readout.'),
    rounding: pair('That less the exact place.'),
    arc: z
      .object({
        center: pair('In readout numbers, the nearest step.'),
        radius: amount(),
        sense: z.enum(['clockwise', 'counter-clockwise']).meta({
          description: 'Seen from above, as the part lies.',
        }),
      })
      .nullable()
      .meta({ description: 'The arc along which it comes from the stand before; null for a straight way.' }),
    lifted: z.boolean().meta({ description: 'Whether the tool is lifted before it goes there.' }),
  }),
);

/** Where the readout is to stand, and how far that may be off. */
export const stepTarget = once(() =>
  z.object({
    exact: pair('What the readout should show there, in its unit.'),
    readout: pair('The nearest step of the readout: the target.'),
    roundingError: pair('Target less exact.'),
    worst: pair('How far the spindle may be from the target at worst, to either side.'),
    rss: pair('The same as root of the sum of the squares.'),
  }),
);

/** One approach of one tool: a cut, or one pass of it, as the part lies and stands then. */
export const stepSchema = once(() =>
  z.object({
    setup: z.string().meta({
      description:
        'id of the setup; "as drawn" for what is in none ("as drawn, turned over" from the bottom).',
    }),
    cut: z.string().meta({ description: 'id of the cut.' }),
    pass: z.int().min(1).nullable().meta({ description: 'From 1; null where the cut has one pass only.' }),
    passes: z.int().min(1),
    tool: z.string().nullable().meta({ description: 'id of the tool; null if the job names none.' }),
    up: side().meta({ description: 'The face of the drawn part that lies up.' }),
    center: place().nullable().meta({ description: 'On the part as drawn; null for a path.' }),
    diameter: amount(),
    wall: amount().nullable(),
    reaches: amount().meta({ description: 'How deep it cuts, below the face that it starts from.' }),
    area: amount().meta({ description: 'Plan area in which it takes metal.' }),
    volume: amount().meta({ description: 'Volume of the metal that it takes, loose metal included.' }),
    before: layers('before it'),
    after: layers('after it'),
    volumes: z
      .object({ kept: amount(), loose: amount(), removed: amount() })
      .meta({ description: 'After it; together the part. What is held or hangs counts as kept.' }),
    frees: z.array(freesSchema()).meta({ description: 'Bodies that come loose in it.' }),
    hangs: z.array(hangsSchema()).meta({ description: 'Bodies that only thin metal holds from here on.' }),
    meets: z
      .array(z.object({ body: z.string(), volume: amount() }))
      .meta({ description: 'Loose bodies that lie in its way, and how much it takes of each.' }),
    starts: z.enum(['metal', 'air']).nullable().meta({
      description: 'What is under the tool where it starts; null for a path.',
    }),
    load: stepLoadSchema().nullable().meta({ description: 'null for a path.' }),
    burrs: z
      .object({
        leaves: z
          .array(
            z.object({
              at: place().meta({ description: 'On the part as drawn.' }),
              readout: pair('In readout numbers, the nearest step.'),
              from: amount().meta({ description: 'Depth of the tool below where it starts.' }),
              to: amount(),
            }),
          )
          .meta({ description: 'Where teeth come out of the metal sideways.' }),
        under: amount().meta({
          description:
            'How long the rim is along which it breaks through what lies below; 0 where it does not.',
        }),
      })
      .nullable()
      .meta({ description: 'Where burrs are to be looked for; null for a path.' }),
    clear: z
      .object({
        at: place()
          .nullable()
          .meta({ description: 'On the part as drawn; null with the rest where there is none.' }),
        readout: pair('The same in readout numbers.').nullable(),
        diameter: amount().nullable().meta({ description: 'What the tool is set to there.' }),
        gap: amount()
          .nullable()
          .meta({ description: 'To the nearest metal there; null where none is near.' }),
        why: z.string().nullable().meta({ description: 'Why there is none; null where there is one.' }),
      })
      .nullable()
      .meta({
        description:
          'Where to lower the tool before the first pass of a cut that is stepped in or opened out, so that it touches nothing; null for all other steps.',
      }),
    backOff: stepBackOff(),
    milling: z.enum(['climb', 'conventional']).nullable().meta({
      description:
        'Of a path along the outline: how it mills at the machine, as the part lies; null for others.',
    }),
    under: z
      .object({
        below: amount().meta({
          description: 'How far the tool comes out below the face that the part lies on.',
        }),
        over: z
          .string()
          .nullable()
          .meta({ description: 'id of the keep-out under it; null if there is none.' }),
        margin: figure().nullable().meta({ description: 'Room between the two; below 0 it cuts into that.' }),
      })
      .meta({ description: 'What lies under the tool.' }),
    doing: z
      .enum(DOINGS)
      .nullable()
      .meta({ description: 'What the tool does; null where the job names none.' }),
    travel: amount().nullable().meta({ description: 'How far it goes at its feed in this pass.' }),
    feedPerTurn: range().meta({ description: 'null where it is not known.' }),
    minutes: range().meta({ description: 'Time of that travel alone; null without a feed.' }),
    stands: z
      .array(standSchema())
      .meta({ description: 'Every place where the tool is while it is down, in order.' }),
    targets: z.array(stepTarget()).meta({ description: 'Of its centre, or of each point of its path.' }),
    findings: z
      .array(index())
      .meta({ description: 'Indices into findings: those that are about this step.' }),
  }),
);

/** A way to free a body, and what it leaves to clean. */
const wayOutSchema = once(() =>
  z.object({
    kind: z.enum(['saw', 'other side', 'longer reach', 'end mill']),
    words: z.string().min(1).meta({ description: 'What to do, for people.' }),
    line: z
      .object({
        ends: z.tuple([place(), place()]).meta({ description: 'On the part as drawn.' }),
        readout: z.tuple([pair('The one end in readout numbers.'), pair('The other.')]),
        machine: directionSchema().meta({ description: 'From the one end to the other.' }),
      })
      .nullable()
      .meta({ description: 'A straight line to saw or mill along; null where there is none.' }),
    length: amount().nullable().meta({ description: 'How long the saw cut or the way of the mill is.' }),
    through: amount().meta({ description: 'How far it goes through metal: its height, or in from a face.' }),
    size: amount().nullable().meta({
      description: 'Of an end mill its diameter, of a cutter the reach that it needs; null for others.',
    }),
    tool: z
      .string()
      .nullable()
      .meta({ description: 'id of an end mill of the job that fits; null without.' }),
    leaves: z.string().min(1).meta({ description: 'What is left to clean, for people.' }),
    clean: z
      .object({ width: amount(), height: amount(), length: amount() })
      .nullable()
      .meta({ description: 'How much that is at most; null for a burr, and where it is not known.' }),
  }),
);

/** A body that came off the part, or that thin metal or a floor holds. */
export const bodySchema = once(() =>
  z.object({
    id: z.string(),
    role: z.enum(['slug', 'offcut', 'held slug', 'hanging']),
    step: index().meta({ description: 'Index into steps: where it came loose, or was first held so.' }),
    atDepth: amount().meta({ description: 'How deep the tool was then, below the face that lies up.' }),
    volume: amount().meta({ description: 'Then.' }),
    mass: amount().nullable().meta({ description: 'In massUnit; null if the material is not known.' }),
    held: z
      .object({ thickness: amount(), force: range(), forceUnit: z.enum(['N', 'lbf']).nullable() })
      .nullable()
      .meta({
        description: 'The floor that holds it, and the force to shear through that; null where none does.',
      }),
    end: z.enum(['left', 'lifted out', 'cut into']).meta({
      description: 'What becomes of it: it is held to the end, lifted out, or a later step cuts into it.',
    }),
    endStep: index().nullable().meta({ description: 'The step that cuts into it first; null if none does.' }),
    pieces: z.array(z.string()).meta({ description: 'ids of the pieces that are left of it.' }),
    waysOut: z.array(wayOutSchema()).meta({
      description: 'How to free it, of a body that is held or hangs in the end; none of others.',
    }),
  }),
);

/** Two cuts that have taken the land between them. */
export const mergeSchema = once(() =>
  z.object({
    step: index().meta({ description: 'The step that takes the last of it.' }),
    cuts: z
      .tuple([z.string(), z.string()])
      .meta({ description: 'ids of the cuts, in the order of the job.' }),
    at: place().meta({ description: 'The middle of what both cover.' }),
  }),
);
