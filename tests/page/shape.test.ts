import { readdirSync, readFileSync } from 'node:fs';
import { jobJsonSchema, jobSchema } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import {
  isList,
  isObject,
  type Json,
  type JsonObject,
} from '../../packages/previewer/page/src/document/json.js';
import { blankOf, resolved, shapeOf, variantOf } from '../../packages/previewer/page/src/form/shape.js';

const root = jobJsonSchema() as JsonObject;

/** A part of the schema, and the way to it. */
interface Part {
  readonly at: string;
  readonly schema: JsonObject;
}

/** Every part of the job's schema that a form can come to. The format does not repeat itself inside itself. */
function parts(schema: JsonObject, at = ''): Part[] {
  const shape = shapeOf(schema, root);
  const inner: Part[] =
    shape.kind === 'object'
      ? shape.fields.map((field) => ({ at: `${at}/${field.key}`, schema: field.schema }))
      : shape.kind === 'row'
        ? shape.members.map((member, k) => ({ at: `${at}/${k}`, schema: member }))
        : shape.kind === 'list'
          ? [{ at: `${at}/-`, schema: shape.member }]
          : shape.kind === 'variants'
            ? shape.variants.map((variant) => ({ at: `${at}(${variant.name})`, schema: variant.schema }))
            : [];
  return [{ at, schema }, ...inner.flatMap((part) => parts(part.schema, part.at))];
}

const all = parts(root);

describe('forms from the schema of jobs', () => {
  it('come to every key', () => {
    const keys = new Set(all.map(({ at }) => at.slice(at.lastIndexOf('/') + 1).replace(/\(.*/, '')));
    for (const key of [
      'thickness',
      'corner',
      'knifeEdge',
      'wall',
      'reach',
      'svgPath',
      'ccw',
      'holes',
      'id',
    ]) {
      expect(keys).toContain(key);
    }
  });

  it('have the unit beside each number', () => {
    const bare = all.filter(({ schema }) => {
      const whole = resolved(schema, root);
      // A count has none.
      return whole.type === 'number' && whole.$comment === undefined;
    });
    expect(bare.map(({ at }) => at).filter((at) => at !== '/edgebite')).toEqual([]);
  });

  it('call the ways to give a value by names that differ', () => {
    for (const { at, schema } of all) {
      const shape = shapeOf(schema, root);
      if (shape.kind !== 'variants') continue;
      const names = shape.variants.map(({ name }) => name);
      expect(new Set(names).size, `${at}: ${names}`).toBe(names.length);
    }
  });

  it('know a blank of each way again', () => {
    for (const { at, schema } of all) {
      const shape = shapeOf(schema, root);
      if (shape.kind !== 'variants') continue;
      for (const [k, variant] of shape.variants.entries()) {
        expect(variantOf(blankOf(variant.schema, root), shape.variants, root), `${at} ${variant.name}`).toBe(
          k,
        );
      }
    }
  });
});

// Each value of a job is shown by the way that the schema itself takes for it.
function checkWays(value: Json, schema: JsonObject): void {
  const shape = shapeOf(schema, root);
  if (shape.kind === 'variants') {
    const variant = shape.variants[variantOf(value, shape.variants, root)];
    expect(variant).toBeDefined();
    checkWays(value, variant?.schema ?? {});
  } else if (shape.kind === 'object') {
    expect(isObject(value)).toBe(true);
    const known = new Map(shape.fields.map((field) => [field.key, field.schema]));
    for (const [key, held] of Object.entries(value as JsonObject)) {
      expect([...known.keys()]).toContain(key);
      checkWays(held, known.get(key) ?? {});
    }
  } else if (shape.kind === 'list' && isList(value)) {
    for (const member of value) checkWays(member, shape.member);
  } else if (shape.kind === 'row' && isList(value)) {
    for (const [k, member] of value.entries()) checkWays(member, shape.members[k] ?? {});
  }
}

describe('forms of the examples', () => {
  const folder = new URL('../../examples/', import.meta.url);
  const files = readdirSync(folder).filter((file) => file.endsWith('.json'));

  it.each(files)('%s has a field for each of its values', (file) => {
    const job = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Json;
    expect(jobSchema.safeParse(job).success).toBe(true);
    checkWays(job, root);
  });
});
