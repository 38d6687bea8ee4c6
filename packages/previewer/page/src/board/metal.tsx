import { kept } from '../form/kept.js';
import type { Sketch, SketchCut, SketchPiece } from '../worker/sketch.js';

/** What is left, what is gone, and where the tools stand, in the part's own coordinates. */
export const Metal = kept(({ sketch, about }: { sketch: Sketch; about: ReadonlySet<string> }) => (
  <>
    <path class="gone" d={sketch.outline} />
    {sketch.pieces.map((piece) => (
      <Piece key={piece.id} piece={piece} about={about.has(`piece:${piece.id}`)} />
    ))}
    {sketch.rims !== null && (
      <g class="tool">
        <path d={sketch.rims} />
      </g>
    )}
    {sketch.cuts.map((cut) => (
      <Tool key={cut.id} {...toolProps(cut)} about={about.has(`cut:${cut.id}`)} />
    ))}
  </>
));

function Piece({ piece, about }: { piece: SketchPiece; about: boolean }) {
  const role = piece.role === 'kept' ? 'kept' : piece.role === 'held slug' ? 'held' : 'loose';
  return (
    <g class={`piece ${role}${about ? ' about' : ''}`}>
      <path class="floor" d={piece.plan} />
      <path class="face" d={piece.top} />
    </g>
  );
}

interface ToolProps {
  readonly about: boolean;
  readonly through: boolean;
  /** Of the circle; null for a path. */
  readonly x: number | null;
  readonly y: number | null;
  readonly radius: number;
  readonly inner: number | null;
  readonly path: string | null;
  readonly footprint: string | null;
}

// All of it is plain values: of many cuts only the one that moves is drawn anew.
const Tool = kept(({ about, through, x, y, radius, inner, path, footprint }: ToolProps) => {
  const shape = `tool${through ? '' : ' blind'}${about ? ' about' : ''}`;
  if (x === null || y === null) {
    return (
      <g class={shape}>
        <path d={footprint ?? ''} />
        <path class="way" d={path ?? ''} />
      </g>
    );
  }
  return (
    <g class={shape}>
      <circle cx={x} cy={y} r={radius} />
      {inner !== null && <circle cx={x} cy={y} r={inner} />}
    </g>
  );
});

function toolProps({
  center,
  diameter,
  wall,
  path,
  footprint,
  through,
}: SketchCut): Omit<ToolProps, 'about'> {
  const radius = diameter / 2;
  const [x, y] = center ?? [null, null];
  return { x, y, radius, inner: wall === null ? null : radius - wall, path, footprint, through };
}
