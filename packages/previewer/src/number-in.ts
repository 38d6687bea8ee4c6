import { Failure } from './failure.js';

/** As long as a person waits for an answer without wondering what went wrong; common practice, no source. */
export const PATIENCE = 2;

/** Numbers as JSON and drawings have them, with a sign if need be. */
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * The number that an argument is.
 * @throws Failure if it is none.
 */
export function numberIn(option: string, text: string): number {
  if (NUMBER.test(text)) return Number(text);
  throw new Failure([`${option}: is ${JSON.stringify(text)}; give a number, such as 12.5 or -3`]);
}
