import type { JobIssue } from '../document/errors.js';
import type { Read } from './read-edges.js';

/** The faults of a job found so far; tells what may still be looked at, so that all are found in one go. */
export class Faults {
  private found: JobIssue[] = [];
  private exact = new Set<string>();
  private above = new Set<string>();
  /** Where in the job as it is written a place is that is asked for. */
  private place: (issue: JobIssue) => JobIssue = (issue) => issue;
  private isHidden: (path: string) => boolean = () => false;

  /** All of them, in the order found. */
  get issues(): readonly JobIssue[] {
    return this.found;
  }

  /** Takes down more faults. */
  add(issues: readonly JobIssue[]): void {
    for (const given of issues) {
      const issue = this.place(given);
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
    return !this.isHidden(path) && !this.above.has(this.written(path)) && this.holds(path);
  }

  /** Whether the value at a JSON Pointer is of the right kind, though there may be faults in it. */
  holds(path: string): boolean {
    return lineage(this.written(path)).every((holder) => !this.exact.has(holder));
  }

  /** The same faults for those who read a job made of the written one: its places are told by those that they come from. */
  through(place: (issue: JobIssue) => JobIssue): Faults {
    const view = new Faults();
    view.found = this.found;
    view.exact = this.exact;
    view.above = this.above;
    view.place = (issue) => this.place(place(issue));
    return view;
  }

  /** The same faults for those who must not look at some values, sound as they may be. */
  hiding(isHidden: (path: string) => boolean): Faults {
    const view = this.through((issue) => issue);
    view.isHidden = isHidden;
    return view;
  }

  private written(path: string): string {
    return this.place({ path, message: '' }).path;
  }
}

/** A JSON Pointer and those of all that hold its value. */
function lineage(path: string): string[] {
  const steps = path.split('/');
  return steps.map((_, i) => steps.slice(0, i + 1).join('/'));
}
