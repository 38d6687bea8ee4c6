import type { CutDocument } from '../document/schema.js';
import type { PartName } from '../job/job.js';

/** The keys of a centre or a path that name edges and holes of the part. */
const NAMING = ['on', 'edge', 'along', 'corner', 'loop', 'tangent'];

/** A cut with edges and holes by their numbers, where the job calls them by names. */
export function byNumbers(cut: CutDocument, names: readonly PartName[]): CutDocument {
  if (names.length === 0) return cut;
  const known = new Map(names.map(({ name, of }) => [name, of]));
  const numbered = (value: unknown, key: string | null): unknown => {
    if (typeof value === 'string')
      return key !== null && NAMING.includes(key) ? (known.get(value) ?? value) : value;
    if (Array.isArray(value)) return value.map((one) => numbered(one, key));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([own, held]) => [own, numbered(held, own)]));
  };
  const { center, path } = cut as { readonly center?: unknown; readonly path?: unknown };
  return {
    ...cut,
    ...(center === undefined ? {} : { center: numbered(center, null) }),
    ...(path === undefined ? {} : { path: numbered(path, null) }),
  } as CutDocument;
}
