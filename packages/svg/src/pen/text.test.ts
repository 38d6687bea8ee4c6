import { describe, expect, it } from 'vitest';
import { clean, fitted, textWidth, wrapped } from './text.js';

describe('text', () => {
  // XML 1.0, production 2 (Char): no control character but tab and line ends, no half of a surrogate pair.
  it('holds nothing that XML forbids', () => {
    expect(clean('a\u0000b\u001bc\ud800d\uffffe')).toBe('a\ufffdb\ufffdc\ufffdd\ufffde');
    expect(clean('one\n two\tthree')).toBe('one  two three');
    expect(clean('a😀b')).toBe('a😀b');
  });

  it('cannot turn the direction of writing', () => {
    expect(clean('10\u202e52\u2066')).toBe('1052');
  });

  it('is cut short to fit, with a mark', () => {
    const short = fitted('a rather long name of a cut', 20, 2.8);
    expect(short).toMatch(/^a rather.*…$/);
    expect(textWidth(short, 2.8)).toBeLessThanOrEqual(20);
    expect(fitted('short', 20, 2.8)).toBe('short');
  });

  it('is broken into lines without losing a word', () => {
    const text = 'The slug of cut rough comes loose and is not held by anything.';
    const lines = wrapped(text, 40, 2.8);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join(' ')).toBe(text);
    for (const line of lines) expect(textWidth(line, 2.8)).toBeLessThanOrEqual(40);
  });
});
