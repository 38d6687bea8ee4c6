import type { Report } from '@edgebite/core';
import { drawStep, drawZero, lostZeros } from '@edgebite/svg';
import type { Sheet, SheetBlock } from './sheet.js';

/** Pictures of a block as the text of SVG, each with ids of its own. */
export interface BlockPictures {
  /** The part as it lies before the first step of the block, with what holds it, and the first tool; null where it is not drawn. */
  readonly lies: string | null;
  /** How the zero of the setup is found; null where there is none, or where it cannot be found as it is written. */
  readonly zero: string | null;
}

/** Width of the pictures of a zero, mm: that of an A4 sheet between its margins. */
const WIDTH = 180;

/** The pictures of all blocks of a sheet, in their order. */
export function picturesOf(report: Report, { blocks }: Sheet): BlockPictures[] {
  return blocks.map((block, k) => ({ lies: liesOf(report, block, k), zero: zeroOf(report, blocks, k) }));
}

function liesOf({ steps, ...rest }: Report, block: SheetBlock, k: number): string | null {
  const index = (block.steps[0]?.number ?? 0) - 1;
  const step = steps[index];
  if (step === undefined || step.before === null || step.after === null) return null;
  return drawStep({ ...rest, steps }, index, { theme: 'mono', idPrefix: `lies-${k}-`, size: [90, 60] });
}

/** Once for a setup: where it goes on after another one, its zero is found as it was. */
function zeroOf(report: Report, blocks: readonly SheetBlock[], k: number): string | null {
  const { setup } = blocks[k] as SheetBlock;
  const own = report.setups.find(({ id }) => id === setup);
  const isAgain = blocks.findIndex((block) => block.setup === setup) < k;
  const links = [own?.zero.x, own?.zero.y].flatMap((axis) => axis?.links ?? []);
  if (own === undefined || isAgain || links.length === 0 || lostZeros(report).has(setup)) return null;
  return drawZero(report, { setup, width: WIDTH, theme: 'mono', idPrefix: `zero-${k}-` });
}
