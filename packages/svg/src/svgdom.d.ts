/** svgdom ships no types; this is all that is used of it. */
declare module 'svgdom' {
  export function createSVGWindow(): Window & typeof globalThis;
}
