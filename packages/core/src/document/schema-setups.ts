import * as z from 'zod';
import { once } from '../memory/once.js';
import { MAX_ANGLE_TOLERANCE, MAX_CUTS, MAX_KEEP_OUTS, MAX_LINKS, MAX_NAME, MAX_SETUPS } from './limits.js';
import { coordinate, jobPoint, size, tolerance as toleranceSize, units } from './schema-parts.js';

const name = once(() => z.string().max(MAX_NAME));

/** The words for half a tip. */
export const HALF_TIP = 'move half the tip and set 0';

/** The sides of a part as it lies. */
export const SIDES = ['left', 'right', 'front', 'back'] as const;

const actionUnits = once(() =>
  units().optional().meta({
    description:
      'Unit of the lengths of this action. To be said in every one that has a length as soon as job, readout and actions are not all in one unit.',
  }),
);

const faceName = once(() =>
  name().min(1).meta({
    id: 'FaceName',
    description:
      'A face of the part: "left", "right" (in x), "front", "back" (in y), the outermost as the part lies; the name that the outline gives an edge; or outline:N, hole:H:N. It stands square to the axis.',
  }),
);

const tolerance = once(() =>
  toleranceSize().optional().meta({ description: 'How far that may be off to either side.' }),
);

const contact = once(() =>
  jobPoint().optional().meta({
    description:
      'A place on the part as drawn, near which the face is touched or bears: it counts where the part may lie turned, see "angleTolerance". Anywhere along the face without it.',
  }),
);

const thing = once(() =>
  name().min(1).optional().meta({
    description:
      'Things of one name are one and the same, in all setups: off by the same in each. A stop goes by its id without it.',
  }),
);

const reads = once(() =>
  coordinate().optional().meta({
    description: "What the readout is set to at that moment, in the readout's unit; 0 without it.",
  }),
);

const length = once(() => ({ tolerance: tolerance(), name: thing(), units: actionUnits() }));

const between = once(() =>
  z.union([
    size(),
    z.strictObject({ block: size().meta({ description: 'A gauge block or spacer.' }), ...length() }),
    z.strictObject({ measured: size().meta({ description: 'A measured length.' }), ...length() }),
  ]),
);

const touchSchema = once(() =>
  z
    .strictObject({
      touch: faceName().meta({
        description: 'The face of the part, or the id of the stop, that is touched.',
      }),
      tip: size().optional().meta({ description: 'Diameter of the tip of the edge finder.' }),
      tool: size().optional().meta({ description: 'In place of "tip": diameter of the tool that touches.' }),
      at: contact(),
      reads: reads(),
      then: z.literal(HALF_TIP).optional().meta({
        description: 'Half the diameter further, so that the spindle stands over the face, and 0 set there.',
      }),
      ...length(),
    })
    .meta({ description: 'A tip or tool touches a face of the part or a stop, from outside.' }),
);

const bearsSchema = once(() =>
  z
    .strictObject({
      bears: faceName().meta({ description: 'The face of the part that bears.' }),
      on: name().min(1).meta({ description: 'id of the stop.' }),
      at: contact(),
      block: z
        .union([size(), z.array(between()).min(1).max(MAX_LINKS)])
        .optional()
        .meta({ description: 'What lies between them: a length, or a list of blocks and measured lengths.' }),
      ...length(),
    })
    .meta({ description: 'The part is put against a stop, with or without blocks between.' }),
);

const measuredSchema = once(() =>
  z
    .strictObject({
      measured: size().meta({ description: 'The length from face to face.' }),
      from: faceName().meta({ description: 'The face that the actions before have come to.' }),
      to: faceName(),
      ...length(),
    })
    .meta({ description: 'A length measured on the part, from the face come to so far to another.' }),
);

const dialSchema = once(() =>
  z
    .strictObject({
      'dial in': z.union([name().min(1), jobPoint()]).meta({
        description:
          'hole:H or its name, a round hole or a slot; "outline" of a round or slot-shaped part; or [x, y], a mark on the part as drawn.',
      }),
      reads: reads(),
      ...length(),
    })
    .meta({
      description:
        'The spindle is brought over the middle of a hole, a boss or a slot of the part, or over a mark.',
    }),
);

const moveSchema = once(() =>
  z
    .strictObject({
      move: coordinate().meta({
        description:
          "By how much the spindle is moved, in the readout's unit; over 0 to the right or the back.",
      }),
      tolerance: tolerance(),
      name: thing(),
    })
    .meta({ description: 'The spindle is moved, and the readout set after it.' }),
);

const setSchema = once(() =>
  z
    .strictObject({
      set: coordinate().meta({ description: "What the readout is set to, in the readout's unit." }),
    })
    .meta({ description: 'The readout is set where the spindle stands.' }),
);

/** The keys of which an action has exactly one, in the order of the branches of the schema. */
export const ACTION_KEYS = ['touch', 'bears', 'measured', 'dial in', 'move', 'set'] as const;

/** The keys of which a thing between part and stop has exactly one, after the plain length. */
export const BETWEEN_KEYS = ['block', 'measured'] as const;

const actionSchema = once(() =>
  z.union([touchSchema(), bearsSchema(), measuredSchema(), dialSchema(), moveSchema(), setSchema()]).meta({
    id: 'Action',
    description: 'One thing that is done to find the zero of an axis, by one of six keys.',
  }),
);

const levelName = once(() =>
  name().min(1).meta({
    description: '"top" or "bottom" of the part as it lies, or the id of a parallel under "keepOut".',
  }),
);

const heightTouchSchema = once(() =>
  z
    .strictObject({
      touch: levelName(),
      feeler: size().optional().meta({
        description: 'Thickness of the feeler between the end of the tool and that face; none without it.',
      }),
      reads: reads(),
      ...length(),
    })
    .meta({ description: 'The end of the tool comes down on a face, or on a feeler that lies on it.' }),
);

const heightMeasuredSchema = once(() =>
  z
    .strictObject({
      measured: size().meta({ description: 'The height between the two.' }),
      from: levelName(),
      to: levelName(),
      ...length(),
    })
    .meta({ description: 'A measured height, such as the thickness of the part.' }),
);

/** The keys of which an action in Z has exactly one, in the order of the branches of the schema. */
export const HEIGHT_KEYS = ['touch', 'measured', 'move', 'set'] as const;

const heightActionSchema = once(() =>
  z.union([heightTouchSchema(), heightMeasuredSchema(), moveSchema(), setSchema()]).meta({
    id: 'HeightAction',
    description: 'One thing that is done to find the zero in Z, by one of four keys.',
  }),
);

const heights = once(() => z.array(heightActionSchema()).min(1).max(MAX_LINKS));

const actions = once(() => z.array(actionSchema()).min(1).max(MAX_LINKS));

const stopSchema = once(() =>
  z.strictObject({
    id: name().min(1).meta({ description: 'Its own name; the same stop has it in other setups too.' }),
    face: z.enum(SIDES).meta({
      description: 'The side of the part, as it lies, that bears on it: the stop looks the other way.',
    }),
  }),
);

/** The readout of a job or a setup. */
export const readoutSchema = once(() =>
  z.strictObject({
    units: units().optional().meta({ description: "Unit in which it shows lengths; the job's without it." }),
    resolution: size().optional().meta({
      description: "Its smallest step, in its own unit; the job's resolution without it.",
    }),
  }),
);

/** The scale of a quill. */
const quillSchema = once(() =>
  z.strictObject({
    units: units().optional().meta({ description: "Unit of its numbers; the readout's without it." }),
    graduation: size().meta({ description: 'Its smallest graduation, in its own unit.' }),
  }),
);

/** How the part lies, where the readout's zero is, and what is cut so. */
export const setupSchema = once(() =>
  z.strictObject({
    id: name().min(1).meta({ description: "The setup's own name, unlike any other setup's." }),
    name: name().optional().meta({ description: 'What it is called.' }),
    flip: z.enum(['x', 'y']).optional().meta({
      description: 'Axis of the drawing about which the part is turned over, bottom up, before it is turned.',
    }),
    turn: z.number().min(-360).max(360).optional().meta({
      unit: 'degree',
      description: 'By how many degrees it is then turned counter-clockwise seen from above; 0 without it.',
    }),
    angleTolerance: z.number().min(0).max(MAX_ANGLE_TOLERANCE).optional().meta({
      unit: 'degree',
      description:
        'By how many degrees it may lie turned out of that to either side, as it was squared up by hand or a vice stands; 0 without it.',
    }),
    readout: readoutSchema().optional(),
    quill: quillSchema().optional().meta({
      description:
        'Heights are read on the scale of the quill, which grows downwards, and not on the readout: "reads", "move" and "set" of "z" are its numbers, a move over 0 goes down, and depth targets are told in them.',
    }),
    stops: z.array(stopSchema()).min(1).max(MAX_KEEP_OUTS).optional().meta({
      description: 'The stops that the part is put against.',
    }),
    zero: z.strictObject({ x: actions(), y: actions(), z: heights().optional() }).meta({
      description:
        'What is done to find the zero of each axis, in order. x grows to the right of the machine, y to the back and z upwards; signs follow from which way faces look.',
    }),
    cuts: z.array(name().min(1)).min(1).max(MAX_CUTS).meta({ description: 'ids of the cuts made in it.' }),
  }),
);

/** The setups of a job. */
export const setupsSchema = once(() => z.array(setupSchema()).min(1).max(MAX_SETUPS));

/** Where the cutter must not go. `shape` is that of a hole of an outline. */
export const keepOutSchema = <Shape extends z.ZodType>(shape: Shape) =>
  z
    .array(
      z.strictObject({
        id: name().min(1).meta({ description: "Its own name, unlike any other's." }),
        kind: z.enum(['jaw', 'stop', 'parallel', 'clamp']),
        shape: shape.meta({ description: 'Seen from above, in the coordinates of the part as drawn.' }),
        from: coordinate().meta({
          description: 'Height of its lower face over the face that the part lies on; below 0 under it.',
        }),
        to: coordinate().meta({ description: 'Height of its upper face.' }),
        setup: name()
          .min(1)
          .optional()
          .meta({ description: 'id of the setup that it is in; all without it.' }),
      }),
    )
    .min(1)
    .max(MAX_KEEP_OUTS);
