import type { Json } from '../document/json.js';

/** Characters of a link at most: longer ones are cut short by many programs that pass them on. */
export const LONGEST_LINK = 16_000;

/** Bytes of a job in a link at most, so that a small link cannot unfold without end. */
const LARGEST = 2_000_000;

const KEY = '#job=';

/** What comes after an address to hold a whole job; null where it would be too long. The part after `#` is never sent. */
export async function fragmentOf(job: Json): Promise<string | null> {
  const packed = await bytesOf(
    new Blob([JSON.stringify(job)]).stream().pipeThrough(new CompressionStream('deflate-raw')),
    LARGEST,
  );
  if (packed === null) return null;
  const fragment = KEY + base64url(packed);
  return fragment.length > LONGEST_LINK ? null : fragment;
}

/** The text of the job in a fragment; undefined where there is none, null where it cannot be read. */
export async function textIn(fragment: string): Promise<string | null | undefined> {
  if (!fragment.startsWith(KEY)) return undefined;
  if (fragment.length > LONGEST_LINK) return null;
  try {
    const packed = fromBase64url(fragment.slice(KEY.length));
    const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
    const bytes = await bytesOf(stream, LARGEST);
    return bytes === null ? null : new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

async function bytesOf(stream: ReadableStream<BufferSource>, most: number): Promise<Uint8Array | null> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  const reader = (stream as ReadableStream<Uint8Array>).getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) {
      await reader.cancel();
      return null;
    }
    chunks.push(value);
  }
  const all = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

// RFC 4648, section 5, without padding.
function base64url(bytes: Uint8Array): string {
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromBase64url(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (one) => one.charCodeAt(0));
}
