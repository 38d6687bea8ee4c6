let pressed = false;

/** Whether a key is held down. */
export function isPressed(): boolean {
  return pressed;
}

/** Follows the keys of a window, until it is called off. */
export function followKeys(window: EventTarget, signal: AbortSignal): void {
  const set = (held: boolean) => (): void => {
    pressed = held;
  };
  window.addEventListener('keydown', set(true), { signal });
  // A key that is let go elsewhere is not heard of here.
  for (const end of ['keyup', 'blur']) window.addEventListener(end, set(false), { signal });
}
