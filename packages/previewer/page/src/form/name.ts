import { useRef } from 'preact/hooks';
import { type Json, type Path, pointerOf, valueAt } from '../document/json.js';
import { namesOf, renamed } from '../document/references.js';
import { change, written } from '../state/written.js';

interface Naming {
  readonly pointer: string;
  readonly written: Json | undefined;
  readonly names: readonly Path[];
}

/**
 * Writes a name and, with it, every place that names it. Which places those are is settled at the first key: on its
 * way a name may be that of another for a moment, and must not take along what belongs to that one.
 */
export function usePutName(): (path: Path, value: Json | undefined) => void {
  const last = useRef<Naming | null>(null);
  return (path, value) => {
    const present = written.value;
    const index = path.at(-2);
    if (present === null || typeof index !== 'number') return;
    const pointer = pointerOf(path);
    const names =
      last.current !== null && last.current.pointer === pointer && stands(present, path, last.current)
        ? last.current.names
        : namesOf(present, path.slice(0, -2), index);
    change(renamed(present, path, names, value), `put ${pointer}`);
    last.current = { pointer, written: value, names };
  };
}

function stands(job: Json, path: Path, { written, names }: Naming): boolean {
  return [path, ...names].every((place) => valueAt(job, place) === written);
}
