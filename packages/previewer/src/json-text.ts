/**
 * What a terminal would do instead of showing it, though JSON may hold it as it is: DEL and the second set of control
 * characters (ISO 6429), and marks that turn the direction of writing.
 */
const HIDDEN = /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;

/** A value as JSON with its lines set out; a reader gets every text back, and a terminal shows all of it. */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(value, null, 2);
  return `${text.replace(HIDDEN, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`)}\n`;
}
