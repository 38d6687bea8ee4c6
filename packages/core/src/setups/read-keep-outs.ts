import type { KeepOut } from '../datum/keep-out.js';
import { described } from '../document/described.js';
import type { JobDocument, ShapeDocument } from '../document/schema.js';
import type { Faults } from '../job/faults.js';
import { idIssues } from '../job/ids.js';
import { bad, good, type Read } from '../job/read-edges.js';
import { readShape } from '../job/read-shape.js';
import { checkOutline } from '../outline/validate.js';
import type { Region } from '../region/region.js';

/** The jaws, stops, parallels and clamps of a job; what is at fault is taken down and left out. */
export function readKeepOuts(document: JobDocument, faults: Faults): KeepOut[] {
  if (!faults.holds('/keepOut') || document.keepOut === undefined) return [];
  faults.add(idIssues(document.keepOut, '/keepOut', 'keep-out'));
  return document.keepOut.flatMap((one, i): KeepOut[] => {
    const path = `/keepOut/${i}`;
    if (!faults.holds(path)) return [];
    const region = faults.sound(`${path}/shape`) ? faults.take(readRegion(one.shape, `${path}/shape`)) : null;
    if (faults.sound(`${path}/from`) && faults.sound(`${path}/to`) && one.from >= one.to) {
      faults.add([{ path: `${path}/to`, message: `must be over from, ${one.from}; it is ${one.to}` }]);
    }
    if (faults.sound(`${path}/setup`) && one.setup !== undefined && faults.sound('/setups')) {
      if (!(document.setups ?? []).some(({ id }) => id === one.setup)) {
        faults.add([
          { path: `${path}/setup`, message: `is ${described(one.setup)}, but the job has no such setup` },
        ]);
      }
    }
    if (region === null || !faults.sound(path)) return [];
    return [{ id: one.id, kind: one.kind, setup: one.setup ?? null, region, from: one.from, to: one.to }];
  });
}

function readRegion(shape: ShapeDocument, path: string): Read<Region> {
  const drawn = readShape(shape, path, 'keep');
  if (!drawn.ok) return drawn;
  const { loops } = drawn.value;
  if (loops.length !== 1) return bad(drawn.value.path, `draws ${loops.length} closed lines; this is one`);
  const result = checkOutline(loops[0] ?? [], []);
  if (result.kind !== 'faulty') return good(result.region);
  return {
    ok: false,
    issues: result.faults.map(({ message, edge }) => ({
      path: drawn.value.listed && edge !== null ? `${drawn.value.path}/${edge}` : drawn.value.path,
      message,
    })),
  };
}
