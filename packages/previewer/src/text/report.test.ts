import type { Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block } from '../../../svg/fixtures/block.js';
import { textReport } from './report.js';
import { COLUMNS } from './wrap.js';

const text = textReport(block);
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
    expect(textReport(block)).toBe(text);
  });

  it('has findings first, gravest first, with the marks of the drawing', () => {
    const backwards: Report = { ...block, findings: [...block.findings].reverse() };
    for (const report of [block, backwards]) {
      const found = under('FINDINGS', textReport(report).split('\n'));
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
    const bare = textReport({
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
    });
    for (const words of ['Job without a name', 'No findings.', 'Nothing is left', 'No cut in this job.']) {
      expect(bare).toContain(words);
    }
    expect(bare).toContain('WEBS under 1.500 mm: none');
    expect(bare).toContain('FLOORS: none');
  });

  it('shows four decimals in inches, the mass if there is one, and the piece where it is not the kept one', () => {
    const inches = textReport({
      ...block,
      units: 'inch',
      massUnit: 'lb',
      pieces: block.pieces.map((piece) => ({ ...piece, mass: 0.25 })),
      webs: block.webs.map((web) => ({ ...web, piece: 'slug-1' })),
    });
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
    const report: Report = {
      ...block,
      name: evil,
      material: evil,
      pieces: block.pieces.map((piece) => ({ ...piece, id: evil })),
      cuts: block.cuts.map((cut) => ({ ...cut, id: evil })),
      findings: block.findings.map((finding) => ({ ...finding, message: evil })),
    };
    const shown = textReport(report);
    expect([...shown].every((sign) => sign === '\n' || (sign >= ' ' && sign !== '\u202e'))).toBe(true);
    expect(shown.split('\n')).toHaveLength(lines.length - 1);
  });
});
