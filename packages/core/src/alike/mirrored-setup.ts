import type { ActionDocument, SetupDocument } from '../document/schema.js';
import { type Mirror, mirroredPoint } from './mirrored-shape.js';

/** What a mirrored setup needs to know of the part. */
export interface MirroredNames {
  readonly mirror: Mirror;
  /** The name of an edge by its number in the mirrored part. */
  readonly edge: (name: string) => string;
}

/** The sides that change places, by the axis of the machine that they lie along. */
const SWAPPED = {
  x: { left: 'right', right: 'left' },
  y: { front: 'back', back: 'front' },
} as const;

/**
 * A setup of the mirrored part, so that what a person sees from above is mirrored too: the part is turned the other way, the
 * other side bears, and what is done to the other side is the same. The readout still grows to the right and to the back, so
 * what it is set to or moved by along the swapped axis has the other sign.
 */
export function mirroredSetup(setup: SetupDocument, names: MirroredNames): SetupDocument {
  const { turn, stops, zero } = setup;
  const ids = new Set(stops?.map(({ id }) => id));
  const faceOf = (name: string) => (ids.has(name) ? name : mirroredFace(name, names));
  const actions = (axis: 'x' | 'y') =>
    zero[axis].map((action) => mirroredAction(action, axis, faceOf, names.mirror));
  return {
    ...setup,
    ...(turn === undefined ? {} : { turn: 0 - turn }),
    ...(stops === undefined
      ? {}
      : {
          stops: stops.map((stop) => ({ ...stop, face: mirroredFace(stop.face, names) as typeof stop.face })),
        }),
    zero: { ...zero, x: actions('x'), y: actions('y') },
  };
}

/** The name of a side or an edge in the mirrored part; one that the outline gives stays. */
export function mirroredFace(name: string, { mirror, edge }: MirroredNames): string {
  const swapped: Readonly<Record<string, string>> = SWAPPED[mirror.axis];
  return swapped[name] ?? edge(name);
}

function mirroredAction(
  action: ActionDocument,
  axis: 'x' | 'y',
  faceOf: (name: string) => string,
  mirror: Mirror,
): ActionDocument {
  const signed = (value: number) => (axis === mirror.axis ? 0 - value : value);
  const reads = 'reads' in action && action.reads !== undefined ? { reads: signed(action.reads) } : {};
  if ('touch' in action) return { ...action, ...reads, touch: faceOf(action.touch) };
  if ('bears' in action) return { ...action, bears: faceOf(action.bears) };
  if ('measured' in action) return { ...action, from: faceOf(action.from), to: faceOf(action.to) };
  if ('move' in action) return { ...action, move: signed(action.move) };
  if ('set' in action) return { ...action, set: signed(action.set) };
  const middle = action['dial in'];
  return {
    ...action,
    ...reads,
    'dial in': typeof middle === 'string' ? middle : mirroredPoint(middle, mirror),
  };
}
