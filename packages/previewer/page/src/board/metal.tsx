import type { Sketch, SketchCut, SketchPiece } from '../worker/sketch.js';

/** What is left, what is gone, and where the tools stand, in the part's own coordinates. */
export function Metal({ sketch, about }: { sketch: Sketch; about: ReadonlySet<string> }) {
  return (
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
        <Tool key={cut.id} cut={cut} about={about.has(`cut:${cut.id}`)} />
      ))}
    </>
  );
}

function Piece({ piece, about }: { piece: SketchPiece; about: boolean }) {
  const role = piece.role === 'kept' ? 'kept' : piece.role === 'held slug' ? 'held' : 'loose';
  return (
    <g class={`piece ${role}${about ? ' about' : ''}`}>
      <path class="floor" d={piece.plan} />
      <path class="face" d={piece.top} />
    </g>
  );
}

function Tool({ cut, about }: { cut: SketchCut; about: boolean }) {
  const shape = `tool${cut.through ? '' : ' blind'}${about ? ' about' : ''}`;
  if (cut.center === null) {
    return (
      <g class={shape}>
        <path d={cut.footprint ?? ''} />
        <path class="way" d={cut.path ?? ''} />
      </g>
    );
  }
  const [cx, cy] = cut.center;
  return (
    <g class={shape}>
      <circle cx={cx} cy={cy} r={cut.diameter / 2} />
      {cut.wall !== null && <circle cx={cx} cy={cy} r={cut.diameter / 2 - cut.wall} />}
    </g>
  );
}
