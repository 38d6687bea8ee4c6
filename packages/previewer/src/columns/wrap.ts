import { clean } from '@edgebite/svg';

/** Width of a page of text. Terminals and printers have had 80 columns since there were any. */
export const COLUMNS = 80;

/** Breaks a sentence into lines, the first after `lead`, the others indented as far. A longer word is not broken. */
export function hanging(lead: string, sentence: string): string {
  const indent = ' '.repeat(lead.length);
  const lines: string[] = [];
  let line = lead;
  let empty = true;
  for (const word of clean(sentence).split(/ +/)) {
    if (!empty && line.length + 1 + word.length > COLUMNS) {
      lines.push(line);
      line = indent + word;
    } else line = empty ? line + word : `${line} ${word}`;
    empty = false;
  }
  return [...lines, line].join('\n');
}
