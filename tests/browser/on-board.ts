import type { Page } from 'playwright-core';

/** A place of the part on the screen, from where the board has its corners. */
export async function placeOf(
  page: Page,
  [x, y]: readonly [number, number],
): Promise<{ x: number; y: number }> {
  await page.waitForSelector('.board.full');
  await page.locator('#board').scrollIntoViewIfNeeded();
  return page.evaluate(
    ([px, py]) => {
      const metal = document.getElementById('metal') as unknown as SVGGElement;
      const matrix = metal.transform.baseVal.consolidate()?.matrix as DOMMatrix;
      const board = document.getElementById('board')?.getBoundingClientRect() as DOMRect;
      return {
        x: board.left + matrix.a * (px as number) + matrix.e,
        y: board.top + matrix.d * (py as number) + matrix.f,
      };
    },
    [x, y],
  );
}
