/** What the keys of a job are called on the page, where they are not words by themselves. */
const CALLED: Readonly<Record<string, string>> = {
  edgebite: 'version of the format',
  a: 'from',
  b: 'to',
  at: 'at',
  ccw: 'counter-clockwise',
  center: 'centre',
  id: 'name',
  name: 'title',
  from: 'starts from',
  keep: 'held at',
  svgPath: 'SVG path',
  wkt: 'well-known text',
  zero: 'zero of the readout',
  on: 'on',
  bears: 'bears on a stop',
  reads: 'readout set to',
  keepOut: 'place to keep clear of',
  perTurn: 'for each turn',
  knifeEdge: 'knife edge under',
  web: 'web thinner than',
  annular: 'annular cutter',
  swept: 'swept path',
  inch: 'inch',
  gauges: 'what there is to measure with',
  feet: 'feet of a height gauge',
  drawing: 'allowed by the drawing',
  dial: 'dial of the head',
  smallest: 'smallest bore',
  largest: 'largest bore',
  bar: 'bar below the head',
  repeat: 'cuts made again',
  row: 'in a row',
  round: 'round a centre',
  mirror: 'mirrored',
  twin: 'its twin',
  batch: 'parts with lengths of their own',
  swaps: 'sides that change places',
  finished: 'what is to be left',
  arcs: 'end mills can be led along arcs',
};

/** A key of a job in words: `knifeEdge` is `knife edge`. */
export function called(key: string): string {
  return (
    CALLED[key] ?? key.replaceAll(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
  );
}

/** What one member of a list is called, where the list has a name for many. */
const ONE: Readonly<Record<string, string>> = {
  cuts: 'cut',
  edges: 'edge',
  holes: 'hole',
  setups: 'setup',
  batch: 'part',
  repeat: 'repeat',
  speeds: 'speed',
  tools: 'tool',
  drawer: 'tool to the drawer',
  stops: 'stop',
  pins: 'pin',
  bites: 'bite',
  pockets: 'pocket',
  islands: 'island',
  balls: 'ball',
  feet: 'distance',
  'feet of a height gauge': 'foot of a height gauge',
  'cuts made again': 'cut that is made again',
  'parts with lengths of their own': 'part with lengths of its own',
  // The axes of a zero are lists of what is done.
  x: 'action',
  y: 'action',
  block: 'block or measured length',
};

/** A name of a list as that of one of its members: `holes` is `hole`. */
export function oneOf(label: string): string {
  return ONE[label] ?? label;
}

/** Words with `a` or `an` before them. */
export function withArticle(words: string): string {
  return `${/^[aeiou]/i.test(words) ? 'an' : 'a'} ${words}`;
}

/** Words with a capital at their beginning. */
export function headed(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
