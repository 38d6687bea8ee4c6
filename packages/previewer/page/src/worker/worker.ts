/*
 * Room: the worker that examines, so that the page never waits.
 * In: a job as JSON.
 * Out: a report, or its faults, and a sketch while a cut is dragged.
 */

import '../quiet.js';
import {
  aimJsonSchema,
  examine,
  FitError,
  JobError,
  type JobIssue,
  jobJsonSchema,
  type Measuring,
  measured,
  parseAim,
  parseJob,
  propose,
  type RangeQuery,
  RangeQueryError,
  type Report,
  rangeOf,
} from '@edgebite/core';
import { isObject, type Json, type JsonObject } from '../document/json.js';
import type {
  Answer,
  MeasureAnswer,
  Outcome,
  Question,
  RangeAnswer,
  Summary,
  WaysAnswer,
} from './messages.js';
import { outlineOf } from './outline.js';
import { type Patch, patched, patchOf } from './patch.js';
import { sketchOf, type Written } from './sketch.js';
import { Standing } from './standing.js';
import { workedOf } from './worked.js';

const standing = new Standing();
const written: Written = new WeakMap();

const answer = (message: Answer): void => self.postMessage(message);

self.addEventListener('message', ({ data }: MessageEvent<Question>) => {
  const { number } = data;
  switch (data.kind) {
    case 'examine':
      return answer({ kind: 'examined', number, change: examined(data.change) });
    case 'report': {
      const result = attempt(() => examine(parseJob(data.job)));
      return answer({ kind: 'report', number, report: 'report' in result ? result.report : null });
    }
    case 'outline':
      return answer({ kind: 'outline', number, outline: outlineOf(data.found) });
    case 'range':
      return answer({ kind: 'range', number, range: rangeAnswer(data.job, data.query) });
    case 'measure':
      return answer({ kind: 'measure', number, measure: measureAnswer(data.job, data.asked) });
    case 'propose':
      return answer({ kind: 'ways', number, ways: waysOf(data.aim) });
    case 'check':
      return answer({ kind: 'checked', number, issues: issuesIn(data.aim) });
    case 'open':
      return answer({ kind: 'opened', number, ...opened(data.text) });
  }
});

answer({
  kind: 'schema',
  schema: jobJsonSchema() as JsonObject,
  aimSchema: aimJsonSchema() as JsonObject,
});

/** The job that was asked for last, and the outcome that was given last. */
let asked: unknown = null;
let given: Outcome | null = null;

function examined(change: Patch | null): Patch | null {
  const before = given;
  asked = patched(asked, change);
  given = outcomeOf(asked as Json);
  return patchOf(before, given);
}

function rangeAnswer(job: Json, query: RangeQuery): RangeAnswer {
  try {
    return { report: rangeOf(parseJob(job), query), fault: null };
  } catch (error) {
    if (error instanceof RangeQueryError) return { report: null, fault: error.message };
    const [issue] = issuesOf(error);
    return { report: null, fault: `the job ${issue?.message ?? 'is at fault'}` };
  }
}

function measureAnswer(written: Json, asked: Measuring): MeasureAnswer {
  let checks: MeasureAnswer['checks'] = [];
  try {
    const job = parseJob(written);
    checks = examine(job).checks.filter(({ cut }) => cut === asked.cut);
    if (checks.length > 0 && asked.readings.length === 0) return { checks, measured: null, fault: null };
    return { checks, measured: measured(job, asked), fault: null };
  } catch (error) {
    if (error instanceof FitError || error instanceof RangeError)
      return { checks, measured: null, fault: error.message };
    const [issue] = issuesOf(error);
    return { checks, measured: null, fault: `the job ${issue?.message ?? 'is at fault'}` };
  }
}

function outcomeOf(job: Json): Outcome {
  const result = attempt(() => standing.report(job));
  if ('issues' in result) return { summary: null, sketch: null, issues: result.issues };
  return { summary: summaryOf(result.report), sketch: sketchOf(result.report, written), issues: null };
}

type Attempt = { readonly report: Report } | { readonly issues: readonly JobIssue[] };

function attempt(examined: () => Report): Attempt {
  try {
    return { report: examined() };
  } catch (error) {
    return { issues: issuesOf(error) };
  }
}

// A fault of ours must not look like an answer, and must not leave the page waiting for one.
function issuesOf(error: unknown): readonly JobIssue[] {
  if (error instanceof JobError) return error.issues;
  const words = error instanceof Error ? error.message : String(error);
  return [{ path: '', message: `could not be worked out; this is a fault in edgebite: ${words}` }];
}

function summaryOf(report: Report): Summary {
  const { units, resolution, limits, names, massUnit, removedVolume } = report;
  const { webs, knifeEdges, floors, findings } = report;
  const pieces = report.pieces.map(({ id, label, role, area, volume, mass }) => ({
    id,
    label,
    role,
    area,
    volume,
    mass,
  }));
  const cuts = report.cuts.map((cut) => {
    const { id, relation, depth, through, from, removedVolume: taken } = cut;
    return { id, relation, depth, through, from, removedVolume: taken, worked: workedOf(report, cut) };
  });
  return {
    units,
    resolution,
    limits,
    names,
    massUnit,
    removedVolume,
    webs,
    knifeEdges,
    floors,
    findings,
    pieces,
    cuts,
  };
}

function issuesIn(written: Json): readonly JobIssue[] {
  try {
    parseAim(written);
    return [];
  } catch (error) {
    return issuesOf(error);
  }
}

function waysOf(written: Json): WaysAnswer {
  try {
    const aim = parseAim(written);
    const { ways, refusals } = propose(aim);
    return {
      units: aim.job.units,
      ways: ways.map(({ job, report, row }) => ({
        job: job as unknown as JsonObject,
        sketch: sketchOf(report),
        row,
      })),
      refusals: refusals.map(({ message }) => message),
      issues: [],
    };
  } catch (error) {
    return { units: 'mm', ways: [], refusals: [], issues: issuesOf(error) };
  }
}

/** The aim that a text holds: it says what is to be left, and not what is cut. Null where it is none. */
function aimIn(text: string): JsonObject | null {
  try {
    const value: Json = JSON.parse(text.replace(/^\ufeff/, ''));
    return isObject(value) && 'finished' in value && !('cuts' in value) ? value : null;
  } catch {
    return null;
  }
}

function opened(text: string): Pick<Extract<Answer, { kind: 'opened' }>, 'job' | 'isAim' | 'issues'> {
  const aim = aimIn(text);
  if (aim !== null) return { job: aim, isAim: true, issues: [] };
  let issues: readonly JobIssue[] = [];
  try {
    parseJob(text);
  } catch (error) {
    issues = issuesOf(error);
  }
  // What is wrong with the whole text cannot be mended in a field.
  if (issues.some(({ path }) => path === '')) return { job: null, isAim: false, issues };
  const value = JSON.parse(text.replace(/^\ufeff/, '')) as Json;
  return { job: isObject(value) ? value : null, isAim: false, issues };
}
