import * as z from 'zod';
import { MAX_CUTS, MAX_KEEP_OUTS, MAX_LENGTH, MAX_LINKS, MAX_NAME, MAX_SETUPS } from './limits.js';
import { coordinate, jobPoint, size, units } from './schema-parts.js';

const name = z.string().max(MAX_NAME);

const linkUnits = units.optional().meta({
  description:
    'Unit of the lengths of this link. To be said in every link that has one as soon as job, readout and links are not all in one unit.',
});

const place = z.union([name.min(1), jobPoint]).meta({
  id: 'ChainPlace',
  description:
    'Where a link starts or ends. "zero" is where the readout shows 0. "left", "right" (in x), "front" and "back" (in y) are the outermost places of the part as it lies; outline:N and hole:H:N a straight edge square to the axis; [x, y] a place on the part as drawn. Any other words name a place beside the part, such as "stop face".',
});

const everyLink = {
  from: place.optional().meta({
    description: 'Where it starts; where the link before it ends without it. The first link needs it.',
  }),
  to: place.optional().meta({
    description: 'Where it ends; where the next one starts without it. The last link needs it.',
  }),
  tolerance: z.number().min(0).max(MAX_LENGTH).optional().meta({
    unit: 'length',
    description: 'How far its length may be off to either side.',
  }),
  name: name.min(1).optional().meta({
    description:
      'Links of one name are one and the same thing, in all setups: it is off by the same in each.',
  }),
  units: linkUnits,
};

const way = z.enum(['+', '-']).meta({
  description: 'Whether the axis grows or falls on the way from where the link starts to where it ends.',
});

const span = <Kind extends string>(kind: Kind, description: string) =>
  z.strictObject({ ...everyLink, kind: z.literal(kind), length: size, way }).meta({ description });

const touch = <Kind extends string>(kind: Kind, description: string) =>
  z
    .strictObject({
      ...everyLink,
      kind: z.literal(kind),
      diameter: size.optional().meta({ description: 'Half of it lies between spindle and what is touched.' }),
      way,
    })
    .meta({ description });

const linkSchema = z
  .discriminatedUnion('kind', [
    z
      .strictObject({ ...everyLink, kind: z.literal('stop') })
      .meta({ description: 'Two faces that bear on each other: the part or a block on a stop. No length.' }),
    span('block', 'A gauge block or spacer.'),
    span('measured', 'A length measured, or taken from the drawing.'),
    touch('edge finder', 'From the middle of the spindle to a face that the tip of an edge finder touches.'),
    touch('tool', 'From the middle of the spindle to a face that the tool itself touches.'),
    span('offset', 'A length that the readout is moved by, or set to.'),
  ])
  .meta({
    id: 'Link',
    description: 'One link of the chain between the zero of the readout and the part, along one axis.',
  });

const chain = z.array(linkSchema).min(1).max(MAX_LINKS);

/** The readout of a job or a setup. */
export const readoutSchema = z.strictObject({
  units: units.optional().meta({ description: "Unit in which it shows lengths; the job's without it." }),
  resolution: size.optional().meta({
    description: "Its smallest step, in its own unit; the job's resolution without it.",
  }),
});

/** How the part lies, where the readout's zero is, and what is cut so. */
export const setupSchema = z.strictObject({
  id: name.min(1).meta({ description: "The setup's own name, unlike any other setup's." }),
  name: name.optional().meta({ description: 'What it is called.' }),
  flip: z.enum(['x', 'y']).optional().meta({
    description: 'Axis of the drawing about which the part is turned over, bottom up, before it is turned.',
  }),
  turn: z.number().min(-360).max(360).optional().meta({
    unit: 'degree',
    description: 'By how many degrees it is then turned counter-clockwise seen from above; 0 without it.',
  }),
  readout: readoutSchema.optional(),
  zero: z.strictObject({ x: chain, y: chain }).meta({
    description:
      "How the zero of each axis is found: a chain of links between the readout's zero and a place on the part, begun at either end. x grows to the right of the machine and y to the back.",
  }),
  cuts: z.array(name.min(1)).min(1).max(MAX_CUTS).meta({ description: 'ids of the cuts made in it.' }),
});

/** The setups of a job. */
export const setupsSchema = z.array(setupSchema).min(1).max(MAX_SETUPS);

/** Where the cutter must not go. `shape` is that of a hole of an outline. */
export const keepOutSchema = <Shape extends z.ZodType>(shape: Shape) =>
  z
    .array(
      z.strictObject({
        id: name.min(1).meta({ description: "Its own name, unlike any other's." }),
        kind: z.enum(['jaw', 'stop', 'parallel', 'clamp']),
        shape: shape.meta({ description: 'Seen from above, in the coordinates of the part as drawn.' }),
        from: coordinate.meta({
          description: 'Height of its lower face over the face that the part lies on; below 0 under it.',
        }),
        to: coordinate.meta({ description: 'Height of its upper face.' }),
        setup: name.min(1).optional().meta({ description: 'id of the setup that it is in; all without it.' }),
      }),
    )
    .min(1)
    .max(MAX_KEEP_OUTS);
