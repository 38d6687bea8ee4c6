import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ran } from '../../fixtures/ran.js';

const example = fileURLToPath(new URL('../../../../examples/saddle-block.json', import.meta.url));

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edgebite-'));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const command = (args: readonly string[], input = '') => ran(args, folder, input);

describe('edgebite sheet', () => {
  it('prints text, CSV or HTML', async () => {
    const text = await command(['sheet', example]);
    expect([text.code, text.err]).toEqual([0, '']);
    expect(text.out).toMatch(/^Saddle block/);
    expect(text.out).toContain('Setup 1 of 2');
    const csv = await command(['sheet', example, '--format', 'csv']);
    expect(csv.out).toMatch(/^row,block,setup,/);
    const html = await command(['sheet', example, '--format', 'html']);
    expect(html.out).toMatch(/^<!DOCTYPE html>/);
  });

  it('reads standard input, and writes to a file whole', async () => {
    const job = readFileSync(example, 'utf8');
    const { code, out } = await command(['sheet', '-', '--format', 'html', '-o', 'sheet.html'], job);
    expect([code, out]).toEqual([0, 'Sheet written to sheet.html\n']);
    expect(readFileSync(join(folder, 'sheet.html'), 'utf8')).toMatch(/<\/html>\n$/);
  });

  it('never writes over the job', async () => {
    writeFileSync(join(folder, 'job.json'), readFileSync(example));
    const { code, err } = await command(['sheet', 'job.json', '-o', 'job.json']);
    expect(code).toBe(2);
    expect(err).toContain('is the job itself');
    expect(readFileSync(join(folder, 'job.json'), 'utf8')).toBe(readFileSync(example, 'utf8'));
  });

  it('ends with 2 and writes nothing for a bad job or another format', async () => {
    const bad = await command(['sheet', '-', '-o', 'sheet.txt'], '{"edgebite": 1}');
    expect(bad.code).toBe(2);
    expect(bad.err).toContain('/units');
    expect(existsSync(join(folder, 'sheet.txt'))).toBe(false);
    expect((await command(['sheet', example, '--format', 'pdf'])).code).toBe(2);
  });
});
