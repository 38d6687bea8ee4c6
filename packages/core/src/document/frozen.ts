/** The same plain data, readonly all the way down. */
export type Frozen<T> = T extends readonly unknown[]
  ? { readonly [K in keyof T]: Frozen<T[K]> }
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;
