import type { VNode } from 'preact';
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
    {sketch.cuts.map((cut) => toolOf(cut, about.has(`cut:${cut.id}`)))}
  </>
));

const tools = new WeakMap<SketchCut, { readonly about: boolean; readonly node: VNode }>();

// Of many cuts only the one that moves is gone through: the others are the same nodes as before.
function toolOf(cut: SketchCut, about: boolean): VNode {
  const known = tools.get(cut);
  if (known?.about === about) return known.node;
  const node = <Tool key={cut.id} cut={cut} about={about} />;
  tools.set(cut, { about, node });
  return node;
}

function Piece({ piece, about }: { piece: SketchPiece; about: boolean }) {
  const role = piece.role === 'kept' ? 'kept' : piece.role === 'held slug' ? 'held' : 'loose';
  return (
    <g class={`piece ${role}${about ? ' about' : ''}`}>
      {/* Where all of it reaches the top, nothing of the floor is to be seen. */}
      {piece.plan !== piece.top && <path class="floor" d={piece.plan} />}
      <path class="face" d={piece.top} />
    </g>
  );
}

function Tool({ cut, about }: { cut: SketchCut; about: boolean }) {
  const { center, diameter, wall, path, footprint, through } = cut;
  const shape = `tool${through ? '' : ' blind'}${about ? ' about' : ''}`;
  if (center === null) {
    return (
      <g class={shape}>
        <path d={footprint ?? ''} />
        <path class="way" d={path ?? ''} />
      </g>
    );
  }
  const [x, y] = center;
  return (
    <g class={shape}>
      <circle cx={x} cy={y} r={diameter / 2} />
      {wall !== null && <circle cx={x} cy={y} r={diameter / 2 - wall} />}
    </g>
  );
}
