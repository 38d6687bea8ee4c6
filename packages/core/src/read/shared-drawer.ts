import { described } from '../document/described.js';
import { JobError } from '../document/errors.js';
import { plainFaults } from '../document/plain.js';
import { type DrawerDocument, drawerFileSchema } from '../document/schema-drawer.js';
import { INTERPRETED, schemaIssues } from '../document/schema-issues.js';
import { valueOfText } from '../document/text.js';
import { tidied } from '../document/tidy.js';
import { idIssues } from '../job/ids.js';
import { drawerIssues } from './read-drawer.js';

/**
 * The drawer in a file of its own that JSON describes, given as text or as the value of it.
 * @throws JobError with all faults at once, each with a JSON Pointer to its place.
 */
export function parseDrawer(json: unknown): DrawerDocument {
  const value = typeof json === 'string' ? valueOfText(json) : json;
  const faults = plainFaults(value);
  if (faults.length > 0) throw new JobError(faults);
  const checked = drawerFileSchema().safeParse(value, INTERPRETED);
  if (!checked.success) throw new JobError(schemaIssues(value, checked.error.issues));
  const document = tidied(checked.data) as DrawerDocument;
  const issues = [...idIssues(document.drawer, '/drawer', 'tool'), ...drawerIssues(document.drawer)];
  if (issues.length > 0) throw new JobError(issues);
  return document;
}

/**
 * A job or an aim with a shared drawer in place of its own.
 * @throws JobError if it has one of its own, or is in another unit.
 */
export function withDrawer(value: unknown, { units, drawer }: DrawerDocument): unknown {
  const faults = plainFaults(value);
  if (faults.length > 0) throw new JobError(faults);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const say = (path: string, message: string) => new JobError([{ path, message }]);
  if ('drawer' in value) throw say('/drawer', 'stands beside a shared drawer; leave one of them out');
  if ('units' in value && value.units !== units) {
    throw say(
      '/units',
      `is ${described(value.units)}, but the shared drawer is in ${units}; write both in one unit`,
    );
  }
  return { ...value, drawer };
}
