import type { JobIssue } from '../document/errors.js';
import type { Read } from './read-edges.js';

/** The faults of a job found so far; tells what may still be looked at, so that all are found in one go. */
export class Faults {
  private readonly found: JobIssue[] = [];
  private readonly exact = new Set<string>();
  private readonly above = new Set<string>();

  /** All of them, in the order found. */
  get issues(): readonly JobIssue[] {
    return this.found;
  }

  /** Takes down more faults. */
  add(issues: readonly JobIssue[]): void {
    for (const issue of issues) {
      this.found.push(issue);
      this.exact.add(issue.path);
      for (const path of lineage(issue.path)) this.above.add(path);
    }
  }

  /** What was read, or null with its faults taken down. */
  take<T>(read: Read<T>): T | null {
    if (read.ok) return read.value;
    this.add(read.issues);
    return null;
  }

  /** Whether nothing is wrong with the value at a JSON Pointer, in it, or with what holds it. */
  sound(path: string): boolean {
    return !this.above.has(path) && this.holds(path);
  }

  /** Whether the value at a JSON Pointer is of the right kind, though there may be faults in it. */
  holds(path: string): boolean {
    return lineage(path).every((holder) => !this.exact.has(holder));
  }
}

/** A JSON Pointer and those of all that hold its value. */
function lineage(path: string): string[] {
  const steps = path.split('/');
  return steps.map((_, i) => steps.slice(0, i + 1).join('/'));
}
