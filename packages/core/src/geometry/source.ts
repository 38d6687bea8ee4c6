/**
 * Names of what edges come from: `outline:2` and `hole:0:1` of the outline, `cut:seat` of a cut. One builder and one
 * reader, so that nothing else takes such a name apart.
 */
import type { Source } from './edge.js';

/** A name, taken apart. */
export type Origin =
  | { readonly kind: 'cut'; readonly id: string }
  | { readonly kind: 'outline'; readonly edge: string }
  | { readonly kind: 'hole'; readonly hole: string; readonly edge: string }
  | { readonly kind: 'other'; readonly name: string };

/** What the edges of a cut are named. */
export function cutSource(id: string): Source {
  return `cut:${id}`;
}

/** Takes a name apart; one that is none of ours stays whole. */
export function originOf(source: Source): Origin {
  const at = source.indexOf(':');
  const [kind, rest] = [source.slice(0, at), source.slice(at + 1)];
  if (kind === 'cut') return { kind, id: rest };
  if (kind === 'outline') return { kind, edge: rest };
  const [hole, edge] = rest.split(':');
  if (kind === 'hole' && hole !== undefined && edge !== undefined) return { kind, hole, edge };
  return { kind: 'other', name: source };
}

/** The id of the cut that an edge comes from; null where it comes from none. */
export function cutOfSource(source: Source): string | null {
  const origin = originOf(source);
  return origin.kind === 'cut' ? origin.id : null;
}
