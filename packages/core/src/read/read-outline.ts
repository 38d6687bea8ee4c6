import type { JobIssue } from '../document/errors.js';
import { FARTHEST, FINEST_SHARE, MAX_LENGTH, MIN_LENGTH } from '../document/limits.js';
import type { JobDocument } from '../document/schema.js';
import { extentOf } from '../geometry/bounds.js';
import type { Faults } from '../job/faults.js';
import { bad, good, type Read } from '../job/read-edges.js';
import { type DrawnShape, readShape } from '../job/read-shape.js';
import type { OutlineFault } from '../outline/fault.js';
import { checkOutline } from '../outline/validate.js';
import { boundsOf, loopBounds } from '../region/measure.js';
import type { Region } from '../region/region.js';

const PATH = '/part/outline';

/**
 * The region of the outline of a job's part with its holes; null if it has faults, which are taken down. What is
 * sound is checked even where other shapes are at fault already.
 */
export function readOutline(document: JobDocument, faults: Faults): Region | null {
  if (!faults.holds(PATH)) return null;
  const { outline } = document.part;
  const drawable = Object.keys(outline).every((key) => key === 'holes' || faults.sound(`${PATH}/${key}`));
  const outer = drawable ? faults.take(readShape(outline, PATH, 'outline')) : null;
  const inner = outer === null ? 0 : outer.loops.length - 1;
  const holes = faults.holds(`${PATH}/holes`) ? (outline.holes ?? []) : [];
  const cutOut = holes.map((hole, i) => {
    const path = `${PATH}/holes/${i}`;
    return faults.sound(path) ? faults.take(single(readShape(hole, path, `hole:${inner + i}`))) : null;
  });
  if (outer === null) return null;
  const shapes = cutOut.filter((shape) => shape !== null);
  // Holes go by their numbers; without some of them only the outline itself can be spoken of.
  const region = faults.take(checked(shapes.length < holes.length ? [outer] : [outer, ...shapes]));
  return faults.sound(PATH) ? region : null;
}

/** A hole is one loop. */
function single(read: Read<DrawnShape>): Read<DrawnShape> {
  if (!read.ok || read.value.loops.length === 1) return read;
  return bad(read.value.path, `draws ${read.value.loops.length} closed lines; a hole is one`);
}

function checked(shapes: readonly DrawnShape[]): Read<Region> {
  const drawn = shapes.flatMap((shape) => shape.loops.map((loop) => ({ shape, loop })));
  const [outer, ...holes] = drawn.map(({ loop }) => loop);
  const result = checkOutline(outer ?? [], holes);
  if (result.kind === 'faulty') {
    return {
      ok: false,
      issues: result.faults.map((fault) =>
        issueOf(
          fault,
          drawn.map(({ shape }) => shape),
        ),
      ),
    };
  }
  const fault = sizeFault(result.region);
  if (fault !== null) return bad(PATH, fault);
  const issues = smallHoles(
    result.region,
    drawn.slice(1).map(({ shape }) => shape.path),
  );
  return issues.length > 0 ? { ok: false, issues } : good(result.region);
}

function smallHoles([part]: Region, paths: readonly string[]): JobIssue[] {
  if (part === undefined) return [];
  const finest = FINEST_SHARE * extentOf(loopBounds(part.outer));
  return part.holes.flatMap((hole, i): JobIssue[] => {
    const extent = extentOf(loopBounds(hole));
    const message = `is ${extent} across, too small to keep its shape in this part; from ${finest} on it does`;
    return extent < finest ? [{ path: paths[i] as string, message }] : [];
  });
}

function issueOf(fault: OutlineFault, shapes: readonly DrawnShape[]): JobIssue {
  const { path, listed } = shapes[fault.hole === null ? 0 : fault.hole + 1] as DrawnShape;
  return { path: listed && fault.edge !== null ? `${path}/${fault.edge}` : path, message: fault.message };
}

function sizeFault(region: Region): string | null {
  const box = boundsOf(region);
  if (box === null) return 'encloses nothing';
  const extent = extentOf(box);
  const farthest = Math.max(-box.minX, -box.minY, box.maxX, box.maxY);
  if (extent < MIN_LENGTH) return `is only ${extent} across; a part is ${MIN_LENGTH} at least`;
  if (farthest > MAX_LENGTH) return `goes out to ${farthest} from zero; coordinates go up to ${MAX_LENGTH}`;
  if (farthest > FARTHEST * extent) {
    return `is ${extent} across but lies ${farthest} from zero, where its numbers run out of digits; move zero nearer`;
  }
  return null;
}
