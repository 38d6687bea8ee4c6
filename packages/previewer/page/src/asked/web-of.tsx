import { sourceText } from '@edgebite/core';
import { lengthText, numberText } from '@edgebite/svg';
import { useSignal } from '@preact/signals';
import { numberOf } from '../form/entry.js';
import { setWeb } from '../state/live.js';
import { panelLive, panelResult } from '../state/panels.js';
import { chosenCut, seal } from '../state/store.js';
import { LengthInput, units } from './length-input.js';

/** What a draft was typed for. */
interface Draft {
  readonly cut: string | null;
  readonly text: string;
}

/** The metal between the chosen cut and what is next to it, how far that is from its limit, and a field to set it. */
export function WebOf({ fixed }: { fixed: boolean }) {
  const draft = useSignal<Draft | null>(null);
  const summary = panelResult.value?.summary;
  const web = panelLive.value?.web ?? null;
  if (summary === undefined || web === null) return null;
  const limit = summary.limits.web;
  const far = `${lengthText(Math.abs(web.size - limit), units())} ${web.size < limit ? 'under' : 'over'} its limit`;
  const own = draft.value?.cut === chosenCut.value ? draft.value.text : null;
  const set = (): void => {
    const size = own === null ? null : numberOf(own, units());
    draft.value = null;
    if (size === null || size < 0) return;
    seal();
    setWeb(size);
    seal();
  };
  return (
    <form
      class={`web-of${web.size < limit ? ' thin' : ''}`}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        set();
      }}
      onFocusOut={set}
    >
      <label for="web-size">web to {sourceText(web.source, summary.names)}</label>
      {fixed ? (
        <b id="web-size">{lengthText(web.size, units())}</b>
      ) : (
        <LengthInput
          id="web-size"
          text={own ?? numberText(web.size, units())}
          optional={false}
          onTyped={(text) => {
            draft.value = { cut: chosenCut.value, text };
          }}
        />
      )}
      <span class="hint">{far}</span>
    </form>
  );
}
