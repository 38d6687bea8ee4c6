import { readdirSync, readFileSync } from 'node:fs';
import { examine, parseJob, type Report } from '@edgebite/core';

const folder = new URL('../../examples/', import.meta.url);

const LONG = `${'cut-with-a-name-that-never-ends-'.repeat(6)}end`;

/** A part ten kilometres long in inches, cut by things with names that no table has room for. */
const wide = {
  edgebite: 1,
  name: `=HYPERLINK("http://example.test","${'wide '.repeat(20)}")`,
  units: 'inch',
  part: {
    outline: { rectangle: [9_000_000, 9_000_000], at: [-9_000_000, -9_000_000] },
    thickness: 1000,
    material: 'brass',
  },
  resolution: 0.000001,
  cuts: [
    { id: LONG, kind: 'bore', center: [-4_567_890.123457, -4_567_890.123457], diameter: 1_234_567.1235 },
    {
      id: 'b',
      kind: 'annular',
      center: [-1_000_000, -9_000_000],
      diameter: 800_000,
      wall: 9000,
      depth: 500.25,
      from: 'bottom',
    },
  ],
  tools: [
    { id: LONG, kind: 'end mill', toolMaterial: 'carbide', teeth: 100, diameter: 5, cuts: [LONG] },
    { id: '+tool', kind: 'annular cutter', toolMaterial: 'HSS', teeth: 3, cuts: ['b'] },
  ],
};

/** Names that mean something to HTML, to spreadsheets, or to terminals. */
const signs = {
  edgebite: 1,
  name: '<script>alert(1)</script> & "quoted", it\'s\r\n\u001b[31m \u202egnorw 織機の部品 🧵',
  units: 'mm',
  part: { outline: { rectangle: [80, 40] }, thickness: 10, material: '<img src=x onerror=alert(1)>' },
  limits: { web: 5 },
  cuts: [
    { id: '=1+1', kind: 'bore', center: [20, 8], diameter: 8 },
    { id: '-2+3,"x"', kind: 'bore', center: [40, 38], diameter: 10 },
    { id: '@SUM(A1:A9)', kind: 'annular', center: [60, 20], diameter: 30, wall: 4, depth: 8 },
    { id: '</table><b>', kind: 'bore', center: [20, 30], diameter: 12, depth: 4 },
    { id: '＝全角', kind: 'bore', center: [4, 20], diameter: 9 },
    { id: '織機の部品を支える軸受けの穴その一その二その三', kind: 'bore', center: [32, 20], diameter: 6 },
  ],
  tools: [
    { id: "'=cmd|' /C calc'!A0", kind: 'drill', toolMaterial: 'HSS', cuts: ['=1+1', '-2+3,"x"'] },
    { id: '<b>head</b>', kind: 'boring head', toolMaterial: 'HSS', cuts: ['</table><b>'] },
  ],
};

const many = {
  edgebite: 1,
  name: 'Sixty holes',
  units: 'mm',
  part: { outline: { rectangle: [700, 70] }, thickness: 10, material: 'aluminium' },
  // 8 between neighbours: dozens of thin webs.
  limits: { web: 9 },
  cuts: Array.from({ length: 60 }, (_, k) => ({
    id: `hole-${k + 1}`,
    kind: 'bore',
    center: [10 + (k % 30) * 20, k < 30 ? 20 : 50],
    diameter: 12,
  })),
  tools: [
    {
      id: 'd12',
      kind: 'drill',
      toolMaterial: 'carbide',
      cuts: Array.from({ length: 60 }, (_, k) => `hole-${k + 1}`),
    },
  ],
};

const bare = { edgebite: 1, units: 'mm', part: { outline: { circle: 30 }, thickness: 5 }, cuts: [] };

/** Reports of all example jobs and of jobs that are hard to set on paper, by name. */
export function sheetReports(): [name: string, report: Report][] {
  const examples = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name): [string, unknown] => [name, JSON.parse(readFileSync(new URL(name, folder), 'utf8'))]);
  const hard: [string, unknown][] = [
    ['wide numbers and long names', wide],
    ['signs that mean something', signs],
    ['sixty holes', many],
    ['no cut', bare],
  ];
  return [...examples, ...hard].map(([name, json]) => [name, examine(parseJob(json))]);
}
