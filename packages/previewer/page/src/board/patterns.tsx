/** Pixels between the lines of a hatch, as ISO 128 leaves it to the size of the area. */
const PITCH = { kept: 9, held: 6, loose: 5 };

/**
 * Hatches at 45 degrees, one way for what is kept and the other for what comes loose; what is held by a floor has
 * both. They keep their pitch on the screen at every scale.
 */
export function Patterns({ scale }: { scale: number }) {
  return (
    <defs>
      <Hatch id="hatch-kept" pitch={PITCH.kept / scale} turns={[45]} />
      <Hatch id="hatch-held" pitch={PITCH.held / scale} turns={[45, 135]} />
      <Hatch id="hatch-loose" pitch={PITCH.loose / scale} turns={[135]} />
    </defs>
  );
}

function Hatch({ id, pitch, turns }: { id: string; pitch: number; turns: readonly number[] }) {
  const [turn = 45] = turns;
  return (
    <pattern
      id={id}
      width={pitch}
      height={pitch}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turn})`}
    >
      <rect class="ground" width={pitch} height={pitch} />
      <path class="hatch" d={`M0 0H${pitch}`} stroke-width={pitch / 8} />
      {turns.length > 1 && <path class="hatch" d={`M0 0V${pitch}`} stroke-width={pitch / 8} />}
    </pattern>
  );
}
