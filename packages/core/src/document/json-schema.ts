import * as z from 'zod';

/**
 * The JSON Schema (draft 2020-12) of a schema, under an id of its own. JSON Schema has no word for a unit, and strict readers
 * take no words of others: it stands in a comment, `unit: length`.
 * @param io `input` for what is read, and for what may gain keys: it forbids none that it does not name
 * @param id of the whole, a URI
 */
export function jsonSchemaOf(
  schema: z.ZodType,
  id: string,
  io: 'input' | 'output' = 'output',
): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(schema, {
    target: 'draft-2020-12',
    io,
    override: ({ jsonSchema }) => {
      const { unit } = jsonSchema as { unit?: unknown };
      if (unit === undefined) return;
      delete (jsonSchema as { unit?: unknown }).unit;
      jsonSchema.$comment = `unit: ${unit}`;
    },
  }) as Record<string, unknown>;
  return { $schema, $id: id, ...rest };
}
