let pressed = false;

for (const kind of ['pointerdown', 'pointerup', 'pointercancel'] as const) {
  addEventListener(
    kind,
    () => {
      pressed = kind === 'pointerdown';
    },
    { capture: true },
  );
}

/**
 * Does something once no button is held down. What appears or goes in between would move what is pressed from under
 * the pointer, and the press would be lost.
 */
export function afterPress(act: () => void): void {
  if (!pressed) {
    act();
    return;
  }
  const done = new AbortController();
  for (const kind of ['pointerup', 'pointercancel'] as const) {
    addEventListener(
      kind,
      () => {
        done.abort();
        setTimeout(act);
      },
      { capture: true, signal: done.signal },
    );
  }
}
