/** Where one goes on a small screen, where all stands below each other: by its heading. */
const PLACES = [
  { name: 'Watch', heading: '#card-findings' },
  { name: 'Figures', heading: '#card-figures' },
  { name: 'Numbers', heading: '#card-cuts' },
  { name: 'Machine', heading: '.doing h2' },
] as const;

/** Goes to what is to be read, under a thumb; on a large screen all of it is in sight anyway. */
export function Jumps() {
  return (
    <nav class="jumps" aria-label="Parts of this page">
      {PLACES.map(({ name, heading }) => (
        <button key={name} type="button" onClick={() => go(heading)}>
          {name}
        </button>
      ))}
    </nav>
  );
}

function go(heading: string): void {
  const element = document.querySelector<HTMLElement>(heading);
  if (element === null) return;
  element.scrollIntoView({ block: 'start' });
  // So that keys and screen readers go on from there.
  element.tabIndex = -1;
  element.focus({ preventScroll: true });
}
