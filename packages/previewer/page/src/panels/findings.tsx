import type { Finding } from '@edgebite/core';
import { countText } from '@edgebite/svg';
import { useSignal } from '@preact/signals';
import { isMarked } from '../state/marked.js';
import { panelFindings, panelResult } from '../state/panels.js';
import { chosenCut, chosenFinding, dragging } from '../state/store.js';

const LEVELS = ['danger', 'check', 'note'] as const;

/** Findings shown before one asks for more, the gravest first. */
const SHOWN = 60;

/** What to watch, before anything else: how grave it is in one line, then each finding as a sentence. */
export function Findings() {
  if (panelResult.value === null) return null;
  return (
    <section class={`card findings${isMarked.value ? ' outdated' : ''}`} aria-labelledby="card-findings">
      <h2 id="card-findings">
        What to watch{isMarked.value && !dragging.value && ' (from before the change)'}
      </h2>
      <List />
    </section>
  );
}

// By itself, so that it is not gone through for a sign on its card alone.
function List() {
  const most = useSignal(SHOWN);
  const findings = panelFindings.value;
  return (
    <>
      <Verdict findings={findings} />
      <ol>
        {findings.slice(0, most.value).map((finding, index) => (
          <FindingRow
            key={index}
            index={index}
            level={finding.level}
            message={finding.message}
            isPlaced={finding.at !== null}
          />
        ))}
      </ol>
      {findings.length > most.value && (
        <button
          type="button"
          class="quiet"
          onClick={() => {
            most.value += SHOWN;
          }}
        >
          Show more of the {findings.length - most.value} others
        </button>
      )}
    </>
  );
}

function Verdict({ findings }: { findings: readonly Finding[] }) {
  if (findings.length === 0) {
    return (
      <p class="verdict clean">
        <b>Nothing found.</b> No loose piece, thin web or knife edge within the limits of this job.
      </p>
    );
  }
  return (
    <p class="verdict">
      {LEVELS.map((level) => {
        const count = findings.filter((finding) => finding.level === level).length;
        return count === 0 ? null : (
          <span key={level} class={`tally ${level}`}>
            <b>{count}</b> {count === 1 ? level : `${level}s`}
          </span>
        );
      })}
      <span class="sr-only">{countText(findings.length, 'finding')} in all</span>
    </p>
  );
}

interface RowProps extends Pick<Finding, 'level' | 'message'> {
  readonly index: number;
  readonly isPlaced: boolean;
}

// All of it is plain values, so that a row is gone through only where it says something else.
function FindingRow({ index, level, message, isPlaced }: RowProps) {
  const chosen = chosenFinding.value === index;
  const choose = (): void => {
    chosenFinding.value = chosen ? null : index;
    chosenCut.value = null;
    if (!chosen) document.getElementById('board')?.scrollIntoView({ block: 'nearest' });
  };
  return (
    <li id={`finding-${index}`} class={`finding ${level}${chosen ? ' chosen' : ''}`}>
      <button type="button" aria-pressed={chosen} onClick={choose}>
        <span class="mark">
          <span>{index + 1}</span>
        </span>
        <span class="sentence">
          <b class="level">{level}</b> {message}
          {!isPlaced && <span class="optional"> (the whole part)</span>}
        </span>
      </button>
    </li>
  );
}
