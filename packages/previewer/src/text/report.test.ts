import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block } from '../../../svg/fixtures/block.js';
import { COLUMNS } from '../columns/wrap.js';
import { textReport } from './report.js';

const text = textReport(block, { all: true });
const lines = text.split('\n');

/** The block of lines under a head. */
function under(head: string, of = lines): string[] {
  const start = of.findIndex((line) => line.startsWith(head));
  const end = of.indexOf('', start);
  return of.slice(start + 1, end);
}

describe('the report as text', () => {
  it('fits 80 columns, ends lines without spaces and the text with one line end', () => {
    for (const line of lines) {
      expect(line.length).toBeLessThanOrEqual(COLUMNS);
      expect(line).toBe(line.trimEnd());
    }
    expect(text).toMatch(/[^\n]\n$/);
    expect(textReport(block, { all: true })).toBe(text);
  });

  it('has findings first, gravest first, with the marks of the drawing', () => {
    const backwards: Report = { ...block, findings: [...block.findings].reverse() };
    for (const report of [block, backwards]) {
      const found = under('FINDINGS', textReport(report, { all: true }).split('\n'));
      const levels = found.map((line) => line.split(' ')[0]).filter((word) => word !== '');
      expect(levels).toEqual(['DANGER', 'CHECK', 'NOTE']);
      expect(found.join('\n')).toMatch(/^CHECK .*\[W1\]$/m);
    }
    const heads = lines.filter((line) => /^[A-Z]{4,}/.test(line) && !/^(DANGER|CHECK|NOTE) /.test(line));
    expect(heads.map((line) => line.split(/[ ,:]/)[0])).toEqual(
      'FINDINGS PIECES CUTS STEPS BODIES WEBS KNIFE FLOORS'.split(' '),
    );
  });

  it('gives every piece, cut, web, knife edge and floor a row', () => {
    expect(under('PIECES').map((line) => line.split(/ +/)[0])).toEqual(['piece', 'kept', 'slug-1']);
    expect(under('CUTS').map((line) => line.split(/ +/)[0])).toEqual([
      'cut',
      'rough',
      'eye',
      'near',
      'groove',
    ]);
    expect(under('WEBS').map((line) => line.split(/ +/)[0])).toEqual(['web', 'W1', 'W2']);
    expect(under('KNIFE').map((line) => line.split(/ +/)[0])).toEqual(['edge', 'K1', 'K2']);
    expect(under('FLOORS').map((line) => line.split(/ +/)[0])).toEqual(['under', 'groove']);
  });

  it('aligns numbers by their ends and shows a true zero as 0', () => {
    const [, first = '', second = ''] = under('KNIFE');
    expect(first.indexOf('77.432')).toBe(second.indexOf('77.432'));
    expect(first.indexOf('0  cut')).toBe(second.indexOf('0  cut'));
    expect(first).toMatch(/77\.432 +0 {2}cut/);
  });

  it('says where there is nothing to list', () => {
    const bare = textReport(
      {
        ...block,
        name: '',
        pieces: [],
        cuts: [],
        webs: [],
        knifeEdges: [],
        floors: [],
        steps: [],
        bodies: [],
        findings: [],
      },
      { all: true },
    );
    for (const words of ['Job without a name', 'No findings.', 'Nothing is left', 'No cut in this job.']) {
      expect(bare).toContain(words);
    }
    expect(bare).toContain('WEBS under 1.500 mm: none');
    expect(bare).toContain('FLOORS: none');
  });

  it('shows four decimals in inches, the mass if there is one, and the piece where it is not the kept one', () => {
    const inches = textReport(
      {
        ...block,
        units: 'inch',
        massUnit: 'lb',
        pieces: block.pieces.map((piece) => ({ ...piece, mass: 0.25 })),
        webs: block.webs.map((web) => ({ ...web, piece: 'slug-1' })),
      },
      { all: true },
    );
    expect(inches).toMatch(/mass lb/);
    expect(inches).toMatch(/0\.2500/);
    expect(inches).toMatch(/thickness 12\.0000 in/);
    expect(inches).toMatch(/depths {2}in$/m);
  });

  it('defers to the instructions, the rules and qualified people at its end', () => {
    const closing = lines.slice(-3).join(' ');
    for (const words of ["machine's", "cutter's instructions", 'rules', 'qualified person']) {
      expect(closing).toContain(words);
    }
  });

  it('lets no name move the cursor or break a line', () => {
    const evil = '\u001b[2J\u0007one\ntwo\u202e';
    const named = (name: string): Report => ({
      ...block,
      name,
      material: name,
      pieces: block.pieces.map((piece) => ({ ...piece, id: name })),
      cuts: block.cuts.map((cut) => ({ ...cut, id: name })),
      findings: block.findings.map((finding) => ({ ...finding, message: name })),
    });
    const shown = textReport(named(evil), { all: true });
    expect([...shown].every((sign) => sign === '\n' || (sign >= ' ' && sign !== '\u202e'))).toBe(true);
    const harmless = textReport(named('-[2J-one two'), { all: true });
    expect(shown.split('\n')).toHaveLength(harmless.split('\n').length);
  });
});

describe('the report as it is printed without more ado', () => {
  const short = textReport(block);

  it('fits 80 columns and has findings first, then steps, then what is left, and says where the rest is', () => {
    for (const line of short.split('\n')) expect(line.length).toBeLessThanOrEqual(COLUMNS);
    const heads = short
      .split('\n')
      .filter((line) => /^(FINDINGS|CAUTIONS|STEPS|LEFT|WEBS|KNIFE|FLOORS|PIECES|CUTS)/.test(line));
    expect(heads.map((line) => line.split(/[ ,:]/)[0])).toEqual(
      'FINDINGS STEPS LEFT WEBS KNIFE FLOORS'.split(' '),
    );
    expect(short).toContain('--all');
  });

  it('has every danger and every check, and counts the notes that it leaves to the steps', () => {
    const note = { level: 'note', code: 'one-sided-load', at: null, about: [], message: 'Pushed.' } as const;
    const report: Report = { ...block, findings: [...block.findings, note] };
    const text = textReport(report);
    for (const { message } of block.findings) expect(text.replaceAll(/\s+/g, ' ')).toContain(message);
    expect(text).not.toContain('Pushed.');
    expect(text).toMatch(/^FINDINGS: .*\(1 told with the steps\)$/m);
  });

  it('tells a bite in a face in some 30 lines', () => {
    const bite = { id: 'seat', kind: 'bore', center: [60, 44], diameter: 36 };
    const part = { outline: { rectangle: [120, 40] }, thickness: 16, material: 'mild steel' };
    const text = textReport(examine(parseJob({ edgebite: 1, units: 'mm', part, cuts: [bite] })));
    expect(text.split('\n').length).toBeLessThanOrEqual(35);
    expect(text).toContain('No webs under 1.000 mm. No knife edges under 30.0°. No floors.');
    // By hand: 120 * 40 * 16 less the segment of a circle of 36 that reaches 14 in: 76,800 - 16 * 366.13 mm3.
    expect(text).toContain('kept: 70.9 cm³');
  });
});
