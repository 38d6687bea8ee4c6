import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import type { Region } from '../region/region.js';
import { renamedRegion } from '../region/renamed-region.js';
import type { AimLayer, Pocket } from './aim.js';

/** What edges of the rest are named: open sides, and walls that are to be made. */
const OPEN = 'blank';
export const FINISHED = 'finished';

/** What is to go, by how deep it goes: what goes through, then each pocket without what is deeper from the same side. */
export function layersOf(blank: Region, finished: Region, pockets: readonly Pocket[]): AimLayer[] {
  const through: AimLayer = {
    from: 'top',
    depth: null,
    rest: subtract(renamedRegion(blank, OPEN), [renamedRegion(finished, FINISHED)]),
    stays: finished,
  };
  const blind = pockets.map((pocket): AimLayer => {
    const { from, depth, region } = pocket;
    const deeper = pockets.flatMap((other) =>
      other !== pocket && other.from === from && isDeeper(other, pocket, pockets) ? [other.region] : [],
    );
    const whole = intersect([renamedRegion(finished, OPEN), renamedRegion(region, FINISHED)]);
    return {
      from,
      depth,
      rest: subtract(
        whole,
        deeper.map((one) => renamedRegion(one, OPEN)),
      ),
      stays: subtract(finished, [region, ...deeper]),
    };
  });
  return [through, ...blind].filter(({ rest }) => rest.length > 0);
}

/** Of two of one depth the one that is listed first counts as deeper, so that each place belongs to one of them. */
function isDeeper(one: Pocket, other: Pocket, all: readonly Pocket[]): boolean {
  return one.depth > other.depth || (one.depth === other.depth && all.indexOf(one) < all.indexOf(other));
}
