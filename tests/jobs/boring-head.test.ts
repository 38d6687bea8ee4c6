import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

type Plain = Record<string, unknown>;

const BORE = { id: 'eye', kind: 'bore', center: [30, 20], diameter: 12 };
const HEAD = { id: 'h', kind: 'boring head', toolMaterial: 'carbide', maxSpeed: 500, cuts: ['eye'] };

function reportOn(tools: unknown, cuts: unknown = [BORE]): Report {
  const part = { outline: { rectangle: [80, 40] }, thickness: 10, material: 'mild steel' };
  return examine(parseJob({ edgebite: 1, units: 'mm', part, cuts, tools }));
}

const row = (report: Report, id: string) => report.cuts.find((cut) => cut.id === id);
const codes = (report: Report) => report.findings.map(({ code }) => code);

describe('a boring head', () => {
  const head = (over: Plain) => reportOn([{ ...HEAD, ...over }]);
  const told = (report: Report, code: string) => report.findings.find((one) => one.code === code);

  // The cut is 12 across and 10 deep.
  it.each([
    [{ smallest: 12, largest: 12, bar: 10.1 }, []],
    [{ smallest: 12.5 }, ['head-does-not-reach-size']],
    [{ largest: 11.9 }, ['head-does-not-reach-size']],
    [{ bar: 10 }, ['bar-too-short']],
    [{ largest: 8, bar: 6 }, ['bar-too-short', 'head-does-not-reach-size']],
  ])('with %o is told of as %o', (over, wanted) => {
    expect(codes(head(over)).filter((code) => /head-does|bar-too/.test(code))).toEqual(wanted);
  });

  it('that is too small or too short is told with what it can do', () => {
    expect(told(head({ smallest: 12.5 }), 'head-does-not-reach-size')?.message).toBe(
      'Boring head h can be set to no smaller bore than 12.500 mm; cut eye is 12.000 mm. Use another head or bar.',
    );
    expect(told(head({ bar: 6 }), 'bar-too-short')).toMatchObject({
      level: 'danger',
      message:
        'The bar of boring head h stands out 6.000 mm, but cut eye goes 10.000 mm deep: the turning head would strike the part. Use a longer bar, or bore from both sides.',
    });
  });

  it('makes passes on its marks, none smaller than it can be set to', () => {
    const passes = { kind: 'open out', bite: 0.9, finish: 0.25 };
    const made = (tool: Plain) =>
      row(reportOn([{ ...HEAD, ...tool }], [ROUGH, { ...BORE, passes }]), 'eye')?.passes?.list.map(
        ({ diameter }) => Number(diameter.toFixed(9)),
      );
    // A rough hole of 8 is opened out to 12: 2 in radius, less 0.25, in two even steps.
    const ROUGH = { ...BORE, id: 'rough', diameter: 8 };
    expect(made({})).toEqual([9.75, 11.5, 12]);
    // On marks of 0.2 in radius: the allowance is 0.4, and 0.9 at most are 4 graduations.
    expect(made({ dial: { step: 0.4, on: 'diameter' } })).toEqual([9.6, 11.2, 12]);
    // On marks of 0.5: one to a bite, and the allowance is one.
    expect(made({ dial: { step: 0.5, on: 'radius' } })).toEqual([9, 10, 11, 12]);
    expect(made({ smallest: 9.8 })).toEqual([9.8, 11.5, 12]);
  });
});
