import { kept } from '../form/kept.js';

/** Pixels from sign to sign, and the size of one. */
const PITCH = 14;
const SIZE = 5;

/**
 * Signs on metal that does not stay with the part, as drawings strew them: crosses on what comes loose, rings on what a floor
 * holds. They keep their size on the screen at every scale. What is kept is plain.
 */
export const Patterns = kept(({ scale }: { scale: number }) => {
  const [pitch, size] = [PITCH / scale, SIZE / scale];
  const [middle, arm] = [pitch / 2, size / 2];
  const cross = `M${middle - arm} ${middle}h${size}M${middle} ${middle - arm}v${size}`;
  const frame = { width: pitch, height: pitch, patternUnits: 'userSpaceOnUse' } as const;
  return (
    <defs>
      <pattern id="face-held" {...frame}>
        <rect class="ground" width={pitch} height={pitch} />
        <circle class="sign" cx={middle} cy={middle} r={arm} stroke-width={size / 5} />
      </pattern>
      <pattern id="face-loose" {...frame} patternTransform="rotate(45)">
        <rect class="ground" width={pitch} height={pitch} />
        <path class="sign" d={cross} stroke-width={size / 5} />
      </pattern>
    </defs>
  );
});
