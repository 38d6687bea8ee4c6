import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';

/** A switch that keeps the screen on while the page is in sight; nothing where the browser cannot. */
export function Awake() {
  const on = useSignal(false);
  useEffect(() => {
    if (!on.value) return;
    let lock: WakeLockSentinel | null = null;
    let wanted = true;
    // The browser lets go of the screen whenever the page is out of sight.
    const hold = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return;
      try {
        const held = await navigator.wakeLock.request('screen');
        if (wanted) lock = held;
        else await held.release();
      } catch {
        on.value = false;
      }
    };
    const seen = (): void => void hold();
    document.addEventListener('visibilitychange', seen);
    void hold();
    return () => {
      wanted = false;
      document.removeEventListener('visibilitychange', seen);
      void lock?.release();
    };
  }, [on.value]);
  if (!('wakeLock' in navigator)) return null;
  return (
    <label class="tick awake">
      <input
        id="awake"
        type="checkbox"
        checked={on.value}
        onChange={({ currentTarget }) => {
          on.value = currentTarget.checked;
        }}
      />
      Keep the screen on
    </label>
  );
}
