import { describe, expect, it } from 'vitest';
import { issuesOf } from './issues-of.js';

type Plain = Record<string, unknown>;

const PART = { outline: { rectangle: [80, 30] }, thickness: 12 };
const BORE = { id: 'a', kind: 'bore', center: [10, 10], diameter: 5 };
const RING = { id: 'a', kind: 'annular', center: [10, 10], diameter: 20, wall: 3 };
const GROOVE = { id: 'a', kind: 'swept', diameter: 5, path: { svgPath: 'M0 0H10' } };
const JOB = { edgebite: 1, units: 'mm', part: PART, cuts: [BORE] };

const job = (over: Plain): Plain => ({ ...JOB, ...over });
const part = (over: Plain): Plain => job({ part: { ...PART, ...over } });
const outline = (shape: unknown): Plain => part({ outline: shape });
const holes = (...list: unknown[]): Plain => outline({ rectangle: [80, 30], holes: list });
const cuts = (...list: unknown[]): Plain => job({ cuts: list });
const without = (object: Plain, key: string): Plain =>
  Object.fromEntries(Object.entries(object).filter(([name]) => name !== key));
const line = (ax: number, ay: number, bx: number, by: number) => ({ kind: 'line', a: [ax, ay], b: [bx, by] });
const arc = (a: number[], b: number[], center: number[], ccw = true) => ({ kind: 'arc', a, b, center, ccw });
const text = JSON.stringify;
const put = (path: string, json: string): string => text(part({})).replace(path, json);

/** Name of the case; the job; the paths that must be reported, all of them and no others; words of a message. */
type Case = readonly [name: string, job: unknown, paths: readonly string[], words?: string];

const WHOLE: readonly Case[] = [
  ['no text', '', [''], 'there is nothing in it'],
  ['blank text', ' \n ', [''], 'there is nothing in it'],
  [
    'half a long text',
    `{"name": "${'x'.repeat(15_000_000)}", "units": }`,
    [''],
    '"}" is out of place at line 1, column 15000023',
  ],
  ['half a text', '{"edgebite": 1,', [''], 'cut short'],
  ['a stray comma', '{"edgebite": 1,}', [''], '"}" is out of place at line 1, column 16'],
  [
    'a stray word, with its place',
    '{\n  "edgebite": 1,\n  units: "mm"\n}',
    [''],
    '"u" is out of place at line 3, column 3',
  ],
  ['comments', '// job\n{}', [''], '"/" is out of place at line 1, column 1'],
  ['a number that JSON does not have', '{"edgebite": NaN}', [''], 'is not JSON'],
  ['a number', '5', [''], 'must be an object; it is 5'],
  ['null', null, [''], 'must be an object; it is null'],
  ['nothing', undefined, [''], 'is missing; an object is needed'],
  ['a list', [], [''], 'must be an object; it is a list'],
  ['true', true, ['']],
  ['a function', () => JOB, ['']],
  ['a text in a text', text(text(JOB)), ['']],
  ['an empty object', {}, ['/edgebite', '/units', '/part', '/cuts'], 'is missing'],
  ['another version', job({ edgebite: 2 }), ['/edgebite'], 'must be 1; it is 2'],
  ['a version in quotes', job({ edgebite: '1' }), ['/edgebite']],
  ['other units', job({ units: 'cm' }), ['/units'], 'must be "mm" or "inch"; it is "cm"'],
  ['units in upper case', job({ units: 'MM' }), ['/units']],
  ['a name that is a number', job({ name: 5 }), ['/name'], 'must be a text; it is 5'],
  ['a name without end', job({ name: 'x'.repeat(201) }), ['/name'], 'at most 200 characters; it has 201'],
  ['an unknown key', job({ unit: 'mm' }), ['/unit'], 'not a key that belongs here'],
  ['unknown keys everywhere', { ...part({ depth: 1 }), cut: [] }, ['/part/depth', '/cut']],
  ['a key with a slash and a tilde', job({ 'a/b~c': 1 }), ['/a~1b~0c']],
  ['cuts that are no list', job({ cuts: {} }), ['/cuts'], 'must be a list; it is an object'],
  ['a part that is a list', job({ part: [] }), ['/part']],
  [
    'a part that is null, and a bad cut',
    { ...cuts({ ...BORE, diameter: -1 }), part: null },
    ['/part', '/cuts/0/diameter'],
  ],
];

const HOSTILE: readonly Case[] = [
  ['text over the limit', ' '.repeat(20_000_001), [''], 'is 20000001 characters long'],
  ['lists in lists in text', `${'['.repeat(100_000)}${']'.repeat(100_000)}`, [''], 'over 32 deep'],
  ['lists in lists in text without end', '['.repeat(1_000_000), [''], 'over 32 deep'],
  ['objects in objects in text', `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`, [''], 'over 32 deep'],
  ['lists in lists', job({ keep: nested(100_000) }), [`/keep${'/0'.repeat(31)}`], 'over 32 deep'],
  ['an object that holds itself', itself(), [`${'/self'.repeat(32)}`], 'over 32 deep'],
  ['lists that share their members', job({ keep: doubled(30) }), [''], 'over 10000000 values'],
  ['a list with no end', job({ cuts: new Array(4_000_000_000) }), [''], 'over 10000000 values'],
  [
    '__proto__ in text',
    put('"thickness"', '"__proto__":{"thickness":5},"thickness"'),
    ['/part/__proto__'],
    'no job may have',
  ],
  [
    '__proto__ at the top in text',
    '{"__proto__":{"edgebite":1}}',
    ['/__proto__', '/edgebite', '/units', '/part', '/cuts'],
  ],
  ['constructor', job({ constructor: { prototype: {} } }), ['/constructor']],
  ['prototype deep inside', cuts({ ...BORE, prototype: 1 }), ['/cuts/0/prototype']],
  ['a prototype in place of keys', Object.create(JOB), [''], 'plain data'],
  ['a date', job({ keep: new Date(0) }), ['/keep'], 'plain data'],
  ['a map of cuts', job({ cuts: new Map() }), ['/cuts'], 'plain data'],
  ['numbers that are objects', part({ thickness: Object(12) }), ['/part/thickness'], 'plain data'],
  ['a big integer', part({ thickness: 12n }), ['/part/thickness'], 'must be a number; it is 12'],
  ['a symbol', job({ name: Symbol('x') }), ['/name']],
  [
    'too many cuts',
    job({ cuts: new Array(100_001).fill(BORE) }),
    ['/cuts'],
    'at most 100000 entries; it has 100001',
  ],
  [
    'too many edges',
    outline({ edges: new Array(100_001).fill(line(0, 0, 1, 1)) }),
    ['/part/outline/edges'],
    'at most 100000',
  ],
  [
    'too many edges in path data',
    outline({ svgPath: `M0 0${'h1v1'.repeat(50_001)}z` }),
    ['/part/outline/svgPath'],
    'at most 100000',
  ],
];

const NUMBERS: readonly Case[] = [
  [
    'no thickness',
    job({ part: without(PART, 'thickness') }),
    ['/part/thickness'],
    'is missing; a number is needed',
  ],
  ['a thickness of 0', part({ thickness: 0 }), ['/part/thickness'], 'must be over 0; it is 0'],
  ['a thickness of -0', part({ thickness: -0 }), ['/part/thickness'], 'must be over 0; it is 0'],
  ['a thickness under 0', part({ thickness: -3 }), ['/part/thickness'], 'must be over 0; it is -3'],
  [
    'a thickness of NaN',
    part({ thickness: Number.NaN }),
    ['/part/thickness'],
    'must be a finite number; it is NaN',
  ],
  [
    'an infinite thickness',
    part({ thickness: Number.POSITIVE_INFINITY }),
    ['/part/thickness'],
    'it is Infinity',
  ],
  ['a thickness of 1e400 in text', put('12', '1e400'), ['/part/thickness'], 'it is Infinity'],
  [
    'a thickness of 1e308',
    part({ thickness: 1e308 }),
    ['/part/thickness'],
    'must be at most 10000000; it is 1e+308',
  ],
  [
    'the smallest double',
    part({ thickness: 5e-324 }),
    ['/part/thickness'],
    'must be at least 0.000001; it is 5e-324',
  ],
  ['a thickness in quotes', part({ thickness: '12' }), ['/part/thickness'], 'must be a number; it is "12"'],
  ['a thickness that is true', part({ thickness: true }), ['/part/thickness']],
  ['a web limit of 0', job({ limits: { web: 0 } }), ['/limits/web'], 'must be over 0'],
  [
    'a knife edge limit over a right angle',
    job({ limits: { knifeEdge: 90.5 } }),
    ['/limits/knifeEdge'],
    'at most 90',
  ],
  ['a knife edge limit of 0', job({ limits: { knifeEdge: 0 } }), ['/limits/knifeEdge'], 'must be over 0'],
  ['limits in a list', job({ limits: [1, 30] }), ['/limits']],
  ['a resolution under 0', job({ resolution: -0.01 }), ['/resolution']],
  [
    'a keep point of three numbers',
    job({ keep: [1, 2, 3] }),
    ['/keep'],
    'must have at most 2 entries; it has 3',
  ],
  ['a keep point of one number', job({ keep: [1] }), ['/keep'], 'must have at least 2 entries; it has 1'],
  ['a keep point with keys', job({ keep: { x: 1, y: 2 } }), ['/keep'], 'must be a list; it is an object'],
  ['a keep point with null', job({ keep: [1, null] }), ['/keep/1']],
  ['a keep point far out', job({ keep: [1, 1e308] }), ['/keep/1']],
  ['a keep point off the part', job({ keep: [81, 15] }), ['/keep'], '(81, 15) is not on the part'],
  [
    'a keep point in a hole',
    { ...holes({ circle: 10, at: [20, 15] }), keep: [20, 15] },
    ['/keep'],
    'none of its holes',
  ],
];

const OUTLINES: readonly Case[] = [
  ['no outline', job({ part: { thickness: 12 } }), ['/part/outline'], 'is missing'],
  [
    'an outline that is a text',
    outline('M0 0H80V30Z'),
    ['/part/outline'],
    'must be an object with exactly one of the keys',
  ],
  ['an outline without a shape', outline({ at: [0, 0] }), ['/part/outline'], 'it has none'],
  [
    'an outline of two shapes',
    outline({ circle: 5, rectangle: [8, 3] }),
    ['/part/outline'],
    '"rectangle" and "circle"',
  ],
  ['a rectangle of one number', outline({ rectangle: [80] }), ['/part/outline/rectangle']],
  [
    'a rectangle of no height',
    outline({ rectangle: [80, 0] }),
    ['/part/outline/rectangle/1'],
    'must be over 0; it is 0',
  ],
  [
    'a rectangle with both sides wrong',
    outline({ rectangle: [-1, Number.NaN] }),
    ['/part/outline/rectangle/0', '/part/outline/rectangle/1'],
  ],
  [
    'a corner over half the side',
    outline({ rectangle: [80, 30], corner: 15.1 }),
    ['/part/outline/corner'],
    'half the shorter side, 15; it is 15.1',
  ],
  ['a corner under 0', outline({ rectangle: [80, 30], corner: -1 }), ['/part/outline/corner']],
  [
    'a circle with a corner',
    outline({ circle: 5, corner: 1 }),
    ['/part/outline/corner'],
    'not a key that belongs here',
  ],
  ['a circle under 0', outline({ circle: -5 }), ['/part/outline/circle']],
  ['a slot wider than long', outline({ slot: [10, 12] }), ['/part/outline/slot'], 'it is [10, 12]'],
  [
    'a slot turned by more than a turn',
    outline({ slot: [12, 10], angle: 400 }),
    ['/part/outline/angle'],
    'at most 360',
  ],
  [
    'a part a micrometre wide a kilometre from zero',
    outline({ circle: 0.001, at: [1e6, 0] }),
    ['/part/outline'],
    'move zero nearer',
  ],
  [
    'a part too small for where it is',
    outline({ slot: [2e-6, 1e-6], at: [0, 2 ** 23] }),
    ['/part/outline'],
    'too small',
  ],
  [
    'a part that goes too far out',
    outline({ rectangle: [9e6, 1], at: [9e6, 0] }),
    ['/part/outline'],
    'coordinates go up to',
  ],
  ['path data that is empty', outline({ svgPath: '' }), ['/part/outline/svgPath'], 'draws nothing'],
  [
    'path data with a curve',
    outline({ svgPath: 'M0 0C1 1 2 2 3 3Z' }),
    ['/part/outline/svgPath'],
    'at position 4',
  ],
  [
    'path data with an ellipse',
    outline({ svgPath: 'M0 0A5 6 0 0 1 3 3Z' }),
    ['/part/outline/svgPath'],
    'two radii',
  ],
  [
    'path data that is open',
    outline({ svgPath: 'M0 0H10V10' }),
    ['/part/outline/svgPath'],
    'a gap of 14.14213562',
  ],
  [
    'path data that crosses itself',
    outline({ svgPath: 'M0 0L10 10V0L0 10Z' }),
    ['/part/outline/svgPath'],
    'at (5, 5)',
  ],
  [
    'path data of two parts',
    outline({ svgPath: 'M0 0h5v5z M10 10h1v1z' }),
    ['/part/outline/svgPath'],
    'hole 0 lies outside',
  ],
  [
    'path data far out',
    outline({ svgPath: 'M0 0h2e7v1z' }),
    ['/part/outline/svgPath'],
    'goes out to (20000000, 0)',
  ],
  ['path data that is a list', outline({ svgPath: ['M0 0'] }), ['/part/outline/svgPath'], 'must be a text'],
  ['a text that is no shape', outline({ wkt: 'POINT(1 1)' }), ['/part/outline/wkt'], 'at position 0'],
  [
    'a ring that is open',
    outline({ wkt: 'POLYGON((0 0,1 0,1 1))' }),
    ['/part/outline/wkt'],
    'does not close',
  ],
  [
    'a line string that is open',
    outline({ wkt: 'LINESTRING(0 0,1 0,1 1)' }),
    ['/part/outline/wkt'],
    'is open',
  ],
  [
    'rings that cross',
    outline({ wkt: 'POLYGON((0 0,9 0,9 9,0 9,0 0),(5 5,12 5,5 6,5 5))' }),
    ['/part/outline/wkt', '/part/outline/wkt'],
    'keep apart',
  ],
  ['no edges', outline({ edges: [] }), ['/part/outline/edges'], 'at least 1 entry; it has 0'],
  ['one edge', outline({ edges: [line(0, 0, 1, 0)] }), ['/part/outline/edges'], 'two or more'],
  [
    'edges with a gap',
    outline({ edges: [line(0, 0, 9, 0), line(9, 1, 9, 9), line(9, 9, 0, 0)] }),
    ['/part/outline/edges/0'],
    'a gap of 1',
  ],
  [
    'edges that do not close',
    outline({ edges: [line(0, 0, 9, 0), line(9, 0, 9, 9), line(9, 9, 0, 1)] }),
    ['/part/outline/edges/2'],
    'edge 2 ends at (0, 1), edge 0 starts at (0, 0)',
  ],
  [
    'edges that cross',
    outline({ edges: [line(0, 0, 9, 9), line(9, 9, 9, 0), line(9, 0, 0, 9), line(0, 9, 0, 0)] }),
    ['/part/outline/edges/2'],
    'edge 0 of the outline crosses edge 2 of the outline at (4.5, 4.5)',
  ],
  [
    'an edge without length',
    outline({ edges: [line(0, 0, 9, 0), line(9, 0, 9, 0), line(9, 0, 9, 9), line(9, 9, 0, 0)] }),
    ['/part/outline/edges/1'],
    'both ends are at (9, 0)',
  ],
  [
    'an arc that closes on itself',
    outline({ edges: [arc([5, 0], [5, 0], [0, 0])] }),
    ['/part/outline/edges/0'],
    'two arcs',
  ],
  [
    'an arc off its centre',
    outline({ edges: [arc([5, 0], [-4, 0], [0, 0]), line(-4, 0, 5, 0)] }),
    ['/part/outline/edges/0'],
    'equally far',
  ],
  [
    'an arc whose ends are too close to tell its centre',
    outline({ edges: [arc([5, 0], [5.001, 0.002], [0, 0], false), line(5.001, 0.002, 5, 0)] }),
    ['/part/outline/edges/0'],
    'so close together that the arc is not determined',
  ],
  [
    'an arc without a direction',
    outline({ edges: [without(arc([5, 0], [-5, 0], [0, 0]), 'ccw'), line(-5, 0, 5, 0)] }),
    ['/part/outline/edges/0/ccw'],
    'true or false is needed',
  ],
  [
    'an edge of another kind',
    outline({ edges: [{ ...line(0, 0, 1, 0), kind: 'curve' }, line(1, 0, 0, 0)] }),
    ['/part/outline/edges/0/kind'],
    'must be "line" or "arc"',
  ],
  [
    'an edge without a kind',
    outline({ edges: [without(line(0, 0, 1, 0), 'kind'), line(1, 0, 0, 0)] }),
    ['/part/outline/edges/0/kind'],
    'is missing',
  ],
  [
    'a line with a centre',
    outline({ edges: [{ ...line(0, 0, 1, 0), center: [0, 0] }, line(1, 0, 0, 0)] }),
    ['/part/outline/edges/0/center'],
  ],
  ['edges that are numbers', outline({ edges: [1, 2] }), ['/part/outline/edges/0', '/part/outline/edges/1']],
  [
    'a line run back along itself',
    outline({ edges: [line(0, 0, 9, 0), line(9, 0, 0, 0)] }),
    ['/part/outline/edges/1'],
    'runs along',
  ],
  [
    'an arc as flat as a line',
    outline({ edges: [line(0, 0, 0, -9), line(0, -9, 9, 0), arc([9, 0], [0, 0], [4.5, -9999999])] }),
    ['/part/outline/edges/2'],
    'draw a line',
  ],
];

const HOLES: readonly Case[] = [
  ['holes that are no list', outline({ circle: 9, holes: { circle: 1 } }), ['/part/outline/holes']],
  [
    'a hole in a hole',
    holes({ circle: 5, at: [20, 15], holes: [{ circle: 1, at: [20, 15] }] }),
    ['/part/outline/holes/0/holes'],
  ],
  ['a hole of no shape', holes({}), ['/part/outline/holes/0'], 'it has none'],
  [
    'a hole outside',
    holes({ circle: 5, at: [100, 15] }),
    ['/part/outline/holes/0'],
    'hole 0 lies outside the outline',
  ],
  [
    'a hole over the edge',
    holes({ circle: 5, at: [40, 0] }),
    ['/part/outline/holes/0', '/part/outline/holes/0'],
    'the two must keep apart',
  ],
  ['a hole that touches the edge', holes({ circle: 6, at: [40, 3] }), ['/part/outline/holes/0'], 'touches'],
  ['a hole round the outline', holes({ circle: 500 }), ['/part/outline/holes/0'], 'lies outside'],
  [
    'holes in each other',
    holes({ circle: 8, at: [40, 15] }, { circle: 5, at: [40, 15] }),
    ['/part/outline/holes/1'],
    'hole 1 lies inside hole 0',
  ],
  [
    'two holes in one place',
    holes({ circle: 8, at: [40, 15] }, { circle: 8, at: [40, 15] }),
    ['/part/outline/holes/1', '/part/outline/holes/1'],
    'runs along',
  ],
  [
    'holes that cross',
    holes({ circle: 8, at: [40, 15] }, { circle: 8, at: [45, 15] }),
    ['/part/outline/holes/1'],
    'edge 0 of hole 0 crosses edge 1 of hole 1 at (42.5, ',
  ],
  [
    'a hole that crosses itself',
    holes({ edges: [line(1, 1, 9, 9), line(9, 9, 9, 1), line(9, 1, 1, 9), line(1, 9, 1, 1)] }),
    ['/part/outline/holes/0/edges/2'],
    'hole 0 crosses edge 2 of hole 0 at (5, 5)',
  ],
  [
    'a hole of two loops',
    holes({ svgPath: 'M1 1h1v1z M5 5h1v1z' }),
    ['/part/outline/holes/0/svgPath'],
    'a hole is one',
  ],
  [
    'a hole too small for the part',
    outline({ rectangle: [100, 100], at: [9e6, 0], holes: [{ circle: 1e-6, at: [9e6 + 50, 50] }] }),
    ['/part/outline/holes/0'],
    'too small',
  ],
  [
    'faults in several holes',
    holes({ circle: 0 }, { circle: 5, at: [40, 15] }, { svgPath: 'M' }),
    ['/part/outline/holes/0/circle', '/part/outline/holes/2/svgPath'],
  ],
  [
    'a fault in a hole, and a crossing outline',
    outline({ svgPath: 'M0 0L10 10V0L0 10Z', holes: [{ circle: -1 }] }),
    ['/part/outline/holes/0/circle', '/part/outline/svgPath'],
  ],
];

const CUTS: readonly Case[] = [
  ['a cut that is null', cuts(null), ['/cuts/0']],
  [
    'a cut without a kind',
    cuts(without(BORE, 'kind')),
    ['/cuts/0/kind'],
    'is missing; it must be "bore", "annular" or "swept"',
  ],
  ['a cut of another kind', cuts({ ...BORE, kind: 'drill' }), ['/cuts/0/kind'], 'it is "drill"'],
  ['a cut without an id', cuts(without(BORE, 'id')), ['/cuts/0/id'], 'is missing; a text is needed'],
  ['an empty id', cuts({ ...BORE, id: '' }), ['/cuts/0/id'], 'must not be empty'],
  ['a blank id', cuts({ ...BORE, id: ' ' }), ['/cuts/0/id'], 'must not start or end with a space'],
  ['an id with a line break', cuts({ ...BORE, id: 'a\nb' }), ['/cuts/0/id'], 'signs that nobody sees'],
  ['an id that is a number', cuts({ ...BORE, id: 7 }), ['/cuts/0/id']],
  [
    'three cuts of one id',
    cuts(BORE, BORE, { ...RING, id: 'b' }, BORE),
    ['/cuts/1/id', '/cuts/3/id'],
    'is "a" like that of cut 0',
  ],
  ['a bore without a centre', cuts(without(BORE, 'center')), ['/cuts/0/center']],
  ['a centre with NaN', cuts({ ...BORE, center: [Number.NaN, 0] }), ['/cuts/0/center/0'], 'it is NaN'],
  ['a centre of texts', cuts({ ...BORE, center: ['1', '2'] }), ['/cuts/0/center/0', '/cuts/0/center/1']],
  [
    'a diameter under 0',
    cuts(BORE, { ...RING, id: 'b' }, { ...BORE, id: 'c', diameter: -3 }),
    ['/cuts/2/diameter'],
    'must be over 0; it is -3',
  ],
  ['an infinite diameter', cuts({ ...BORE, diameter: Number.POSITIVE_INFINITY }), ['/cuts/0/diameter']],
  [
    'a radius in place of a diameter',
    cuts({ ...without(BORE, 'diameter'), radius: 5 }),
    ['/cuts/0/diameter', '/cuts/0/radius'],
  ],
  ['a bore with a wall', cuts({ ...BORE, wall: 1 }), ['/cuts/0/wall']],
  ['a diameter too small for the part', cuts({ ...BORE, diameter: 2e-6 }), ['/cuts/0/diameter'], 'too small'],
  [
    'a diameter too small so far out',
    cuts({ ...BORE, diameter: 1e-3, center: [5e6, 0] }),
    ['/cuts/0/diameter'],
    'so far out',
  ],
  ['a ring without a wall', cuts(without(RING, 'wall')), ['/cuts/0/wall']],
  [
    'a wall of the radius',
    cuts({ ...RING, wall: 10 }),
    ['/cuts/0/wall'],
    'must be under half the diameter, 10; it is 10',
  ],
  ['a wall over the radius', cuts({ ...RING, wall: 25 }), ['/cuts/0/wall']],
  [
    'a wall that leaves next to nothing',
    cuts({ ...RING, wall: 10 - 1e-9 }),
    ['/cuts/0/wall'],
    'leaves a core',
  ],
  ['a reach of 0', cuts({ ...RING, reach: 0 }), ['/cuts/0/reach']],
  ['a depth of 0', cuts({ ...BORE, depth: 0 }), ['/cuts/0/depth'], 'must be over 0'],
  [
    'a depth in another word',
    cuts({ ...BORE, depth: 'thru' }),
    ['/cuts/0/depth'],
    'must be a length or "through"; it is "thru"',
  ],
  ['a depth that is null', cuts({ ...BORE, depth: null }), ['/cuts/0/depth']],
  ['a depth of NaN', cuts({ ...BORE, depth: Number.NaN }), ['/cuts/0/depth'], 'it is NaN'],
  [
    'another side',
    cuts({ ...BORE, from: 'left' }),
    ['/cuts/0/from'],
    'must be "top" or "bottom"; it is "left"',
  ],
  ['a swept cut without a path', cuts(without(GROOVE, 'path')), ['/cuts/0/path'], 'is missing'],
  ['a path that is a text', cuts({ ...GROOVE, path: 'M0 0H10' }), ['/cuts/0/path']],
  [
    'a path of two kinds',
    cuts({ ...GROOVE, path: { svgPath: 'M0 0H1', wkt: 'LINESTRING(0 0,1 0)' } }),
    ['/cuts/0/path'],
    '"svgPath" and "wkt"',
  ],
  ['a path that is a circle', cuts({ ...GROOVE, path: { circle: 5 } }), ['/cuts/0/path'], 'it has none'],
  [
    'a path that goes nowhere',
    cuts({ ...GROOVE, path: { svgPath: 'M5 5' } }),
    ['/cuts/0/path/svgPath'],
    'draws nothing',
  ],
  [
    'a path in two parts',
    cuts({ ...GROOVE, path: { svgPath: 'M0 0H1M2 2H3' } }),
    ['/cuts/0/path/svgPath'],
    'a cut of its own',
  ],
  [
    'a path with a curve',
    cuts({ ...GROOVE, path: { svgPath: 'M0 0Q1 1 2 2' } }),
    ['/cuts/0/path/svgPath'],
    'Bézier',
  ],
  [
    'a path that is a polygon',
    cuts({ ...GROOVE, path: { wkt: 'POLYGON((0 0,1 0,1 1,0 0))' } }),
    ['/cuts/0/path/wkt'],
    'a polygon is no path',
  ],
  [
    'a path with a gap',
    cuts({ ...GROOVE, path: { edges: [line(0, 0, 9, 0), line(9, 2, 9, 9)] } }),
    ['/cuts/0/path/edges/0'],
    'edge 0 ends 2 from where edge 1 starts',
  ],
  [
    'a path with a bad arc',
    cuts({ ...GROOVE, path: { edges: [arc([5, 0], [-4, 0], [0, 0])] } }),
    ['/cuts/0/path/edges/0'],
  ],
  ['a path with a hole', cuts({ ...GROOVE, path: { svgPath: 'M0 0H1', holes: [] } }), ['/cuts/0/path/holes']],
];

const TOGETHER: readonly Case[] = [
  [
    'faults of every sort at once',
    {
      edgebite: 1,
      units: 'yard',
      part: {
        outline: { edges: [line(0, 0, 9, 9), line(9, 9, 9, 0), line(9, 0, 0, 9), line(0, 9, 0, 0)] },
        thickness: -1,
      },
      keep: [0, Number.NaN],
      limits: { web: -1, knifeEdge: 200 },
      cuts: [
        { ...RING, depth: 'thru', wall: 10 },
        { ...RING, reach: 3, depth: -4 },
        { ...GROOVE, id: 'b', diameter: 0, path: { svgPath: 'M0 0X' } },
        { id: 'c', kind: 'saw' },
      ],
    },
    [
      '/units',
      '/part/thickness',
      '/keep/1',
      '/limits/web',
      '/limits/knifeEdge',
      '/part/outline/edges/2',
      '/cuts/0/depth',
      '/cuts/0/wall',
      '/cuts/1/depth',
      '/cuts/1/id',
      '/cuts/2/diameter',
      '/cuts/2/path/svgPath',
      '/cuts/3/kind',
    ],
  ],
  [
    'a bad outline does not hide a bad wall',
    { ...cuts({ ...RING, wall: 25 }), part: { ...PART, outline: {} } },
    ['/part/outline', '/cuts/0/wall'],
  ],
  [
    'a bad thickness does not hide a bad keep point',
    { ...part({ thickness: 0 }), keep: [99, 99] },
    ['/part/thickness', '/keep'],
  ],
];

describe.each([
  ['as a whole', WHOLE],
  ['that means harm', HOSTILE],
  ['with a bad number', NUMBERS],
  ['with a bad outline', OUTLINES],
  ['with a bad hole', HOLES],
  ['with a bad cut', CUTS],
  ['with several faults', TOGETHER],
])('a bad job %s', (_, list: readonly Case[]) => {
  it.each(list.map((one) => [one[0], one] as const))('%s', (_name, [, input, paths, words]) => {
    const issues = issuesOf(input);
    expect(issues.map(({ path }) => path).sort()).toEqual([...paths].sort());
    if (words !== undefined) expect(issues.map(({ message }) => message).join('\n')).toContain(words);
  });
});

describe('every message', () => {
  it('is a sentence of its own, without what only a program understands', () => {
    const cases: readonly Case[] = [...WHOLE, ...NUMBERS, ...OUTLINES, ...HOLES, ...CUTS];
    const messages = cases.flatMap(([, input]) => issuesOf(input));
    for (const { message } of messages) {
      expect(message.length).toBeGreaterThan(10);
      expect(message).not.toMatch(/undefined|\[object|Invalid|expected|zod/i);
    }
  });

  it('leaves the base of these cases alone', () => {
    expect(issuesOf(JOB)).toEqual([]);
    expect(issuesOf(cuts(BORE, { ...RING, id: 'b' }, { ...GROOVE, id: 'c' }))).toEqual([]);
  });
});

function nested(depth: number): unknown {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = [value];
  return value;
}

function doubled(depth: number): unknown {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = [value, value];
  return value;
}

function itself(): Plain {
  const value: Plain = {};
  value.self = value;
  return value;
}
