/**
 * A constant that is made when it is first asked for: loading the library makes nothing, and who never reads a job or a report
 * never pays for its schema.
 */
export function once<T extends object>(make: () => T): () => T {
  let made: T | null = null;
  return () => {
    made ??= make();
    return made;
  };
}

/**
 * The keys of an object, each made when it is first asked for. zod looks at the getters of a shape at its first parse, and
 * keeps what they give.
 */
export function later<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): T {
  const shape = {} as T;
  for (const key of Object.keys(makers) as (keyof T)[]) {
    Object.defineProperty(shape, key, { enumerable: true, get: makers[key] });
  }
  return shape;
}
