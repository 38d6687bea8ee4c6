/**
 * Signs that nobody sees: format and control characters, separators of lines, and letters and fillers without a shape
 * (Unicode Standard Annex 44, `Default_Ignorable_Code_Point`; the list from memory).
 */
export const UNSEEN =
  /\p{Cc}|\p{Cf}|\p{Zl}|\p{Zp}|\p{Cs}|\u034f|\u115f|\u1160|\u17b4|\u17b5|[\u180b-\u180f]|\u2800|\u3164|[\ufe00-\ufe0f]|\uffa0|[\u{e0100}-\u{e01ef}]/u;

/**
 * By a sign: the one that it looks like in most faces. Greek and Cyrillic letters, digits and strokes; a part of the table
 * of Unicode Technical Standard 39, `confusables.txt` (from memory).
 */
const LIKE: ReadonlyMap<string, string> = new Map(
  [
    ['a', 'аα'],
    ['c', 'сϲ'],
    ['d', 'ԁ'],
    ['e', 'е'],
    ['h', 'һ'],
    ['i', 'іι'],
    ['j', 'ј'],
    ['k', 'к'],
    ['n', 'п'],
    ['o', 'оοσ'],
    ['p', 'рρ'],
    ['q', 'ԛ'],
    ['s', 'ѕ'],
    ['u', 'υ'],
    ['v', 'νѵ'],
    ['w', 'ԝ'],
    ['x', 'хχ'],
    ['y', 'уγ'],
    ['A', 'АΑ'],
    ['B', 'ВΒ'],
    ['C', 'СϹ'],
    ['E', 'ЕΕ'],
    ['H', 'НΗ'],
    ['J', 'Ј'],
    ['K', 'КΚ'],
    ['M', 'МΜ'],
    ['N', 'Ν'],
    ['P', 'РΡ'],
    ['S', 'Ѕ'],
    ['T', 'ТΤ'],
    ['X', 'ХΧ'],
    ['Y', 'УΥ'],
    ['Z', 'Ζ'],
    ['O', '0ОΟ'],
    ['l', '1I|ІΙӀ∣'],
    ['-', '‐‑‒–—−﹣'],
    ["'", '’‘ʼ′'],
    ['_', 'ˍ'],
    ['/', '⁄∕'],
    [':', '：ː'],
  ].flatMap(([sign = '', others = '']) => [...others].map((other) => [other, sign] as const)),
);

/**
 * What two names share that look the same on a sheet: compatible forms are one (NFKC, Unicode Standard Annex 15), and so
 * are signs that look alike.
 */
export function looksOf(name: string): string {
  return [...name.normalize('NFKC').replace(/\s+/g, ' ')].map((sign) => LIKE.get(sign) ?? sign).join('');
}
