/// <reference path="../../packages/previewer/page/src/vite.d.ts" />
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { openFile } from '../../packages/previewer/page/src/files/open.js';

/* Several files opened one after the other, of which the first take longer to read: the last one is meant. */

const { store } = vi.hoisted(() => ({
  store: {
    opened: [] as unknown[],
    refusal: { value: null as { file: string } | null },
    openJob: (job: unknown) => store.opened.push(job),
    solver: { open: async (text: string) => ({ job: JSON.parse(text), issues: [] }) },
  },
}));

vi.mock('../../packages/previewer/page/src/state/store.js', () => store);

/** A file that is read when it is let go. */
function slow(name: string, bytes: string | Uint8Array<ArrayBuffer>) {
  let release = () => {};
  const held = new Promise<void>((done) => {
    release = done;
  });
  const file = new File([bytes], name);
  const read = file.arrayBuffer.bind(file);
  file.arrayBuffer = async () => {
    await held;
    return read();
  };
  return { file, release: () => release() };
}

const NOT_TEXT = new Uint8Array([0x7b, 0xff, 0x7d]);

beforeEach(() => {
  store.opened.length = 0;
  store.refusal.value = null;
});

describe('a file that is opened while another is read', () => {
  it('wins, though the first is there later', async () => {
    const first = slow('first.json', '{"name":"first"}');
    const opening = openFile(first.file);
    await openFile(new File(['{"name":"second"}'], 'second.json'));
    first.release();
    await opening;
    expect(store.opened).toEqual([{ name: 'second' }]);
  });

  it('is not covered by what is wrong with the first', async () => {
    const first = slow('first.json', NOT_TEXT);
    const opening = openFile(first.file);
    await openFile(new File(['{"name":"second"}'], 'second.json'));
    first.release();
    await opening;
    expect(store.refusal.value).toBeNull();
    expect(store.opened).toEqual([{ name: 'second' }]);
  });

  it('is refused itself where it is at fault, whatever the first is', async () => {
    const first = slow('first.json', '{"name":"first"}');
    const opening = openFile(first.file);
    await openFile(new File([NOT_TEXT], 'second.json'));
    first.release();
    await opening;
    expect(store.refusal.value?.file).toBe('second.json');
    expect(store.opened).toEqual([]);
  });
});
