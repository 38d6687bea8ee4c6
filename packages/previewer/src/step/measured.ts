import type { Correction, Dial, Estimate, Measured } from '@edgebite/core';
import { clean, lengthText, numberText, unitText } from '@edgebite/svg';
import { decimalsOf } from '../columns/decimals.js';

/** The unit of the job. */
export interface Units {
  readonly units: 'mm' | 'inch';
}

/** What to do before any reading. */
export const STOP =
  'Stop the spindle and let it stand still before you measure or reach in. Fresh edges and horns cut: break them, and do not feel along them. Let slug, cutter and part cool.';

/** Which readings contradict each other; no line where none do. */
export function contradictionLines(
  { contradicted }: Measured['fit'],
  taken: readonly { readonly way: number }[],
): string[] {
  if (contradicted.length === 0) return [];
  const wrong = contradicted.map((k) => (taken[k] as { way: number }).way + 1);
  return [
    `CONTRADICTION: ${wrong.length === 1 ? 'way' : 'ways'} ${wrong.join(', ')} cannot all be right, each as good as it is said to be. Measure again before you correct anything.`,
  ];
}

/** What readings say of radius and centre, one line each. */
export function arcLines({ check, fit }: Measured, { units }: Units): string[] {
  const line = (name: string, one: Estimate | null, drawn: number) =>
    one === null
      ? `${name}  not told by these readings; as drawn ${lengthText(drawn, units)}`
      : `${name}  ${lengthText(one.value, units)}, at worst ${numberText(one.worst[0], units)} to ${numberText(one.worst[1], units)}, ± ${numberText(one.rss, units)} in 95 cases of 100 by root of squares; drawn ${numberText(drawn, units)}`;
  const [x, y] = check.center;
  return [line('radius  ', fit.radius, check.radius), line('centre x', fit.x, x), line('centre y', fit.y, y)];
}

/** What to turn and where to move, one line each; that there is nothing to correct while readings contradict each other. */
export function correctionLines(answer: Measured, facts: Units): string[] {
  const { fit, correction, dial, targets } = answer;
  if (fit.contradicted.length > 0) return ['None until the readings agree.'];
  return [headText(correction, dial, facts), ...placeText(answer, facts), ...targets.map(targetText)];
}

/** The move holds wherever the spindle stood; the places hold if it stood as planned, as before the first reading. */
function targetText({ setup, units, resolution, was, readout }: Measured['targets'][number]): string {
  const decimals = decimalsOf(resolution);
  const shown = ([x, y]: readonly [number, number]) =>
    `X ${x.toFixed(decimals)} Y ${y.toFixed(decimals)} ${unitText(units)}`;
  const moves = (['X', 'Y'] as const).flatMap((axis, k) => {
    const by = (readout[k] as number) - (was[k] as number);
    const text = Math.abs(by).toFixed(decimals);
    return Number(text) === 0 ? [] : [`${axis} by ${by < 0 ? '-' : '+'}${text}`];
  });
  return moves.length === 0
    ? `Setup ${clean(setup)}: stay where it stood.`
    : `Setup ${clean(setup)}: from where it stood move ${moves.join(' and ')} ${unitText(units)}: to ${shown(readout)} if that was ${shown(was)}.`;
}

function headText(correction: Correction | null, dial: Dial | null, { units }: Units): string {
  if (correction === null || dial === null)
    return 'Head: no dial is known. Give the tool a dial in the job, or --dial and --dial-on.';
  const { state, graduations, turn, short } = correction;
  if (state === 'radius not known' || short === null)
    return 'Head: leave it. These readings do not tell the radius from the place; add one that does.';
  if (state === 'over size')
    return `Head: the bore is over size by ${lengthText(-short[1], units)} at least in radius. No turn of the head mends that.`;
  if (state === 'on size')
    return `Head: leave it. It is on size as far as readings and graduation tell: ${leftWords(short, units)}.`;
  return `Head: open by ${graduations} ${graduations === 1 ? 'graduation' : 'graduations'}, ${lengthText(turn ?? 0, units)} on the dial (${dial.on}). Then ${leftWords(short, units)}. Measure again after the cut.`;
}

function leftWords([low, high]: readonly [number, number], units: 'mm' | 'inch'): string {
  return `${numberText(low, units)} to ${lengthText(high, units)} of the radius ${low < 0 ? 'over (below 0) or short' : 'is left'}`;
}

function placeText({ fit, correction }: Measured, { units }: Units): string[] {
  const past = correction?.past ?? null;
  const gone =
    past === null
      ? []
      : [
          `The arc is already ${lengthText(past.by, units)} past the drawn one at (${numberText(past.at.x, units)}, ${numberText(past.at.y, units)}): moving does not put metal back.`,
        ];
  const unknown = [fit.x === null ? 'x' : null, fit.y === null ? 'y' : null].filter((axis) => axis !== null);
  const kept =
    unknown.length === 0
      ? []
      : [`Along ${unknown.join(' and ')} of the drawing nothing was told: the place stays as it is there.`];
  return [...gone, ...kept];
}
