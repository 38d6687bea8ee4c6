import type { JobDocument, Report } from '@edgebite/core';
import type { Draw, XY } from '../datum/drawn-errors.js';

/*
 * A rectangular part on a machine where nothing is quite what it is taken for, placed as shapes: the part has true sizes, lies truly
 * turned, a tip of true diameter touches its turned face at a place, the operator goes to the printed numbers, and a cutter that
 * runs out cuts a true circle there to a true height. Rotations are exact, and nothing of the library's own sums is used.
 */

type SetupDocument = NonNullable<JobDocument['setups']>[number];
type ActionDocument = SetupDocument['zero']['x'][number];
type Matrix = readonly [XY, XY];

/** A cut as it comes out, in the true coordinates of the part: its left front corner at (0, 0), heights over its bottom. */
export interface TrueCut {
  readonly center: XY;
  readonly radius: number;
  /** Height of its end; null where its setup has no zero in Z. */
  readonly end: number | null;
}

export interface TruePart {
  readonly width: number;
  readonly height: number;
  readonly thickness: number;
}

const times = ([p, q]: Matrix, [x, y]: XY): XY => [p[0] * x + p[1] * y, q[0] * x + q[1] * y];
const back = ([p, q]: Matrix, [x, y]: XY): XY => [p[0] * x + q[0] * y, p[1] * x + q[1] * y];
const turning = (angle: number): Matrix => [
  [Math.cos(angle), -Math.sin(angle)],
  [Math.sin(angle), Math.cos(angle)],
];

/** The lie of a setup as a matrix: mirrored, then turned by quarters. */
function lieOf({ flip, turn = 0 }: SetupDocument): Matrix {
  const quarter = (((turn / 90) % 4) + 4) % 4;
  const [cos, sin] = (
    [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const
  )[quarter] as XY;
  const [mx, my] = [flip === 'y' ? -1 : 1, flip === 'x' ? -1 : 1];
  return [
    [cos * mx, -sin * my],
    [sin * mx, cos * my],
  ];
}

/** The part as one draw has it. */
export function truePart({ part }: JobDocument, draw: Draw): TruePart {
  if (!('rectangle' in part.outline)) throw new Error('these parts are rectangles');
  const [width, height] = part.outline.rectangle;
  const size = part.sizeTolerance ?? 0;
  return {
    width: width + size * draw('size x'),
    height: height + size * draw('size y'),
    thickness: part.thickness + (part.thicknessTolerance ?? 0) * draw('thickness'),
  };
}

/** Cuts of a job as one draw makes them, in the setup in which each is made. */
export function cutterOf(job: JobDocument, report: Report) {
  const { resolution } = report;
  const rowOf = new Map(report.setups.map((row) => [row.id, row]));

  return (id: string, draw: Draw): TrueCut => {
    const setup = job.setups?.find(({ cuts }) => cuts.includes(id)) as SetupDocument;
    const row = rowOf.get(setup.id) as Report['setups'][number];
    const target = row.targets.find(({ cut }) => cut === id) as Report['setups'][number]['targets'][number];
    const part = truePart(job, draw);
    const lie = lieOf(setup);
    const turn = turning((((setup.angleTolerance ?? 0) * Math.PI) / 180) * draw(`turn ${setup.id}`));
    const corners = [
      [0, 0],
      [part.width, 0],
      [part.width, part.height],
      [0, part.height],
    ].map((p) => times(lie, p as unknown as XY));
    const spindle = ([0, 1] as const).map((k) => {
      const shown = target.readout[k] + (resolution / 2) * draw(`read ${id} ${k}`);
      return shown + zeroOf(setup, k, corners, lie, turn, draw);
    }) as unknown as XY;
    return {
      // From the machine to the part as it really lies, and on to its drawing.
      center: back(lie, back(turn, spindle)),
      radius: radiusOf(job, id, setup, draw),
      end: endOf(job, id, setup, target.depth?.readout ?? null, row, part, draw),
    };
  };
}

/** Where the machine stands along an axis when the readout shows 0, the turned part fixed to the machine at its corner. */
function zeroOf(
  setup: SetupDocument,
  k: 0 | 1,
  corners: readonly XY[],
  lie: Matrix,
  turn: Matrix,
  draw: Draw,
): number {
  const axis = k === 0 ? 'x' : 'y';
  const [first, second] = setup.zero[axis] as readonly [ActionDocument, ActionDocument?];
  if (!('touch' in first)) throw new Error('these zeros start with a touch');
  const along = corners.map((p) => p[k]);
  const across = corners.map((p) => p[1 - k] as number);
  const [low, high] = [Math.min(...across), Math.max(...across)];
  const faceOf = (name: string) => {
    const isLow = name === 'left' || name === 'front';
    return { at: isLow ? Math.min(...along) : Math.max(...along), out: isLow ? -1 : 1 };
  };
  /** The place of a face that is touched, turned with the part. */
  const placeOn = (name: string, given: readonly [number, number] | undefined): XY => {
    const there =
      given === undefined
        ? (low + high) / 2 + ((high - low) / 2) * draw(`place ${setup.id} ${axis}`)
        : (times(lie, given as XY)[1 - k] as number);
    const { at } = faceOf(name);
    return k === 0 ? [at, there] : [there, at];
  };
  const half =
    (first.tip ?? 0) / 2 +
    (first.tolerance ?? 0) * draw(first.name ?? `touch ${setup.id} ${axis} ${first.touch}`);
  if (second !== undefined && 'bears' in second) {
    // The stop looks the other way than the face that bears on it; the tip touches it from there.
    const { out } = faceOf(second.bears);
    const block =
      (typeof second.block === 'number' ? second.block : 0) +
      (second.tolerance ?? 0) * draw(`bears ${setup.id} ${axis}`);
    const place = times(turn, placeOn(second.bears, second.at))[k];
    // From the stop a block leads to the face, and the tip stands half its width on the same side of the stop.
    const stop = place + out * block;
    return stop - out * half - (first.reads ?? 0);
  }
  const { out } = faceOf(first.touch);
  const touched = placeOn(first.touch, first.at);
  const normal: XY = k === 0 ? [out * half, 0] : [0, out * half];
  const center = times(turn, [touched[0] + normal[0], touched[1] + normal[1]]);
  return center[k] - (first.reads ?? 0);
}

function radiusOf(job: JobDocument, id: string, setup: SetupDocument, draw: Draw): number {
  const cut = job.cuts.find((one) => one.id === id);
  const tool = job.tools?.find(({ cuts }) => cuts.includes(id));
  const drawn = (cut?.diameter ?? 0) / 2;
  if (tool === undefined) return drawn;
  if (tool.kind === 'boring head')
    return drawn + ((tool.settingTolerance ?? 0) / 2) * draw(`setting ${setup.id} ${id}`);
  // The tooth that stands out furthest turns that much further out than the tool's own axis would have it.
  const eccentric = ((tool.runOut ?? 0) / 2) * ((draw(`run-out ${tool.id} ${setup.id}`) + 1) / 2);
  return drawn + ((tool.diameterTolerance ?? 0) / 2) * draw(`size ${tool.id}`) + eccentric;
}

function endOf(
  job: JobDocument,
  id: string,
  setup: SetupDocument,
  shown: number | null,
  row: Report['setups'][number],
  part: TruePart,
  draw: Draw,
): number | null {
  const [touch] = setup.zero.z ?? [];
  if (touch === undefined || shown === null || !('touch' in touch)) return null;
  const tool = job.tools?.find(({ cuts }) => cuts.includes(id))?.id ?? id;
  const face = touch.touch === 'top' ? part.thickness : 0;
  const feeler = (touch.feeler ?? 0) + (touch.tolerance ?? 0) * draw(`feeler ${setup.id} ${tool}`);
  const isQuill = setup.quill !== undefined;
  const read = shown + (row.heights.resolution / 2) * draw(`depth ${id}`);
  const moved = (read - (touch.reads ?? 0)) * (isQuill ? -1 : 1);
  const overTable = face + feeler + moved;
  return setup.flip === undefined ? overTable : part.thickness - overTable;
}
