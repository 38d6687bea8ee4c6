import type { Finding } from '@edgebite/core';
import { untracked } from '@preact/signals';
import type { Grip } from '../move/grips.js';
import { panelFindings } from '../state/panels.js';
import { chosenCut, chosenFinding, dragging } from '../state/store.js';
import type { Place } from '../worker/sketch.js';
import { drawn } from './drawn.js';
import { gripsNow } from './handles.js';
import { pinsFor } from './pins.js';
import { onScreen, type Size, type View } from './view.js';

/** More marks than this hide the drawing that they stand on; the gravest are marked. */
const MOST = 60;

interface Pin {
  readonly index: number;
  readonly finding: Finding;
  readonly place: Place;
  readonly at: Place;
}

/** A numbered mark for each finding that has a place; the numbers are those of the list. One stop for the tab key. */
export function FindingPins({ view, size }: { view: View; size: Size }) {
  const findings = panelFindings.value;
  const chosen = chosenFinding.value;
  const pins = pinned(findings, view, size);
  const stop = pins.some(({ index }) => index === chosen) ? chosen : pins[0]?.index;
  return (
    // biome-ignore lint/a11y/useSemanticElements: HTML has no group for places in a drawing
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of shapes takes no input of its own
    <g class="pins" role="group" aria-label="Places of the findings">
      {pins.map((pin) => (
        <PinMark
          key={pin.index}
          pin={pin}
          chosen={pin.index === chosen}
          stop={pin.index === stop}
          pins={pins}
        />
      ))}
    </g>
  );
}

function pinned(findings: readonly Finding[], view: View, size: Size): readonly Pin[] {
  const placed = findings.flatMap((finding, index) =>
    finding.at === null ? [] : [{ index, finding, place: onScreen(view, finding.at) }],
  );
  const few = placed.slice(0, MOST);
  // Beside a moving centre numbers would hop about; they keep off the centres when it is let go.
  const free = dragging.value ? [] : gripsBeside().map(({ x, y }) => onScreen(view, [x, y]));
  const numbers = drawn.value?.numbers ?? null;
  if (numbers !== null) return few.map((pin) => ({ ...pin, at: numbers.get(pin.index) ?? pin.place }));
  const spots = pinsFor(
    few.map(({ place }) => place),
    free,
    size,
  );
  return few.map((pin, k) => ({ ...pin, at: spots[k] ?? pin.place }));
}

// As they are when the findings are listed, not at every move.
function gripsBeside(): readonly Grip[] {
  void chosenCut.value;
  return untracked(gripsNow);
}

function PinMark({
  pin,
  chosen,
  stop,
  pins,
}: {
  pin: Pin;
  chosen: boolean;
  stop: boolean;
  pins: readonly Pin[];
}) {
  const { index, finding, place, at } = pin;
  const choose = (): void => {
    chosenFinding.value = chosen ? null : index;
    if (!chosen) document.getElementById(`finding-${index}`)?.scrollIntoView({ block: 'nearest' });
  };
  const keyed = (event: KeyboardEvent): void => {
    const way = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (event.key === 'Enter' || event.key === ' ') choose();
    else if (way !== undefined) {
      const next = pins[(pins.indexOf(pin) + way + pins.length) % pins.length];
      if (next !== undefined) document.getElementById(`pin-${next.index}`)?.focus();
    } else return;
    event.preventDefault();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: HTML has no button for a place in a drawing
    <g
      id={`pin-${index}`}
      class={`pin ${finding.level}${chosen ? ' chosen' : ''}`}
      role="button"
      tabindex={stop ? 0 : -1}
      aria-pressed={chosen}
      aria-label={`Finding ${index + 1}, ${finding.level}: ${finding.message}`}
      onClick={choose}
      onKeyDown={keyed}
    >
      <line x1={place[0]} y1={place[1]} x2={at[0]} y2={at[1]} />
      {chosen && <circle class="ring" cx={place[0]} cy={place[1]} r={11} />}
      <LevelShape level={finding.level} at={at} />
      <text x={at[0]} y={at[1] + 4.5}>
        {index + 1}
      </text>
    </g>
  );
}

/** The shape that stands for a level, so that no colour is needed to tell it: corners for danger, none for a note. */
function LevelShape({ level, at: [x, y] }: { level: Finding['level']; at: Place }) {
  if (level === 'danger')
    return <path class="shape" d={`M${x - 14} ${y}L${x} ${y - 14}L${x + 14} ${y}L${x} ${y + 14}Z`} />;
  if (level === 'check') return <rect class="shape" x={x - 11} y={y - 11} width={22} height={22} />;
  return <circle class="shape" cx={x} cy={y} r={12} />;
}
