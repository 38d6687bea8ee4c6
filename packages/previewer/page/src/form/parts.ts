import { isObject, type Json } from '../document/json.js';
import type { PartProps } from './part-field.js';
import { shapeOf } from './shape.js';
import { called } from './words.js';

/** One of the first keys of what is written, and what its field needs. */
export type Part = PartProps & { readonly key: string };

/** The fields of a whole job or aim, in the order of its schema. */
export function partsOf(root: PartProps['root'], value: Json): readonly Part[] {
  const shape = shapeOf(root, root);
  const held = isObject(value) ? value : {};
  return shape.kind !== 'object'
    ? []
    : shape.fields.map(({ key, schema, optional }) => ({
        key,
        schema,
        root,
        pointer: `/${key}`,
        path: () => [key],
        label: called(key),
        value: held[key],
        optional,
      }));
}
