import { useSignal } from '@preact/signals';
import type { Json } from '../document/json.js';
import { fragmentOf, LONGEST_LINK } from '../files/link.js';
import { job } from '../state/store.js';

/** A link that was made, and of which job; its text is null where the job is too large for one. */
interface Made {
  readonly of: Json;
  readonly link: string | null;
  readonly copied: boolean;
}

/** A link that holds the whole job, to be passed on to someone who has this page. */
export function LinkBox() {
  const made = useSignal<Made | null>(null);
  const make = async (): Promise<void> => {
    const present = job.value;
    if (present === null) return;
    const fragment = await fragmentOf(present);
    const link = fragment === null ? null : location.href.split('#')[0] + fragment;
    made.value = { of: present, link, copied: link !== null && (await copied(link)) };
  };
  const own = made.value !== null && made.value.of === job.value ? made.value : null;
  return (
    <>
      <h3>Pass on as a link</h3>
      <div class="buttons">
        <button type="button" onClick={() => void make()}>
          Copy a link
        </button>
      </div>
      <div role="status">
        {own !== null && <p class="hint">{wordsOf(own)}</p>}
        {own !== null && own.link !== null && (
          <input
            class="link-text"
            aria-label="Link with the job"
            readOnly
            value={own.link}
            onFocus={({ currentTarget }) => currentTarget.select()}
          />
        )}
      </div>
      <p class="hint">
        The job itself is in the link, in the part that browsers send to no server. Whoever has the link has
        the job.
      </p>
    </>
  );
}

function wordsOf({ link, copied }: Made): string {
  if (link === null)
    return `This job is too large for a link of ${LONGEST_LINK} characters: pass it on as a file.`;
  return copied ? 'Copied.' : 'Copy it from here:';
}

async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
