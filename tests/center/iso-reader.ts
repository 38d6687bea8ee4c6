/* A reader of words of ISO 6983-1 that knows nothing of the writer: state, words, and what the standard says of them. */

/** A motion as a control would run it. */
export interface Motion {
  readonly kind: 'rapid' | 'line' | 'arc';
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
  /** Of an arc, in the plane X Y. */
  readonly center?: readonly [number, number];
  readonly ccw?: boolean;
  readonly feed: number | null;
}

/** All motions of some blocks, and what they set. */
export interface Read {
  readonly motions: readonly Motion[];
  readonly units: 'inch' | 'mm' | null;
  readonly plane: number | null;
}

/** @throws Error on anything that ISO 6983 words of plane paths do not have. */
export function readIso(blocks: readonly string[]): Read {
  let [x, y, z] = [0, 0, 0];
  let motion: number | null = null;
  let incremental: boolean | null = null;
  let units: Read['units'] = null;
  let plane: number | null = null;
  let feed: number | null = null;
  const motions: Motion[] = [];
  for (const block of blocks) {
    const words = new Map<string, number>();
    for (const word of block.split(' ')) {
      const match = /^([GXYZIJF])(-?\d+\.?\d*)$/.exec(word);
      if (match === null) throw new Error(`"${word}" in "${block}" is no word`);
      const [, letter = '', value = ''] = match;
      if (letter === 'G') {
        const code = Number(value);
        if (code <= 3) motion = code;
        else if (code === 17) plane = 17;
        else if (code === 20 || code === 70) units = 'inch';
        else if (code === 21 || code === 71) units = 'mm';
        else if (code === 90 || code === 91) incremental = code === 91;
        else throw new Error(`G${value} in "${block}" is not known`);
      } else if (words.has(letter)) throw new Error(`${letter} twice in "${block}"`);
      else words.set(letter, Number(value));
    }
    feed = words.get('F') ?? feed;
    if (!['X', 'Y', 'Z', 'I', 'J'].some((letter) => words.has(letter))) continue;
    if (motion === null || incremental === null) throw new Error(`"${block}" moves before it is said how`);
    const base = incremental ? [x, y, z] : null;
    const to = (letter: string, axis: number, now: number) => {
      const value = words.get(letter);
      return value === undefined ? now : (base?.[axis] ?? 0) + value;
    };
    const next = [to('X', 0, x), to('Y', 1, y), to('Z', 2, z)] as const;
    const shared = { from: [x, y, z] as const, to: next, feed };
    if (motion < 2) motions.push({ kind: motion === 0 ? 'rapid' : 'line', ...shared });
    else {
      if (next[2] !== z) throw new Error(`"${block}" is a helix`);
      const center = [x + (words.get('I') ?? 0), y + (words.get('J') ?? 0)] as const;
      motions.push({ kind: 'arc', ...shared, center, ccw: motion === 3 });
    }
    [x, y, z] = next;
  }
  return { motions, units, plane };
}
