import { printReadouts } from '../files/print.js';
import { TAKEAWAYS, takeAway } from '../files/save.js';
import { isCrowd, rested } from '../state/rested.js';
import { issues } from '../state/store.js';
import { Awake } from './awake.js';
import { LinkBox } from './link-box.js';

/** What to take away from the page: files, and the printed sheet. */
export function Takeaways() {
  const faulty = issues.value.length > 0;
  return (
    <section class="card takeaways" aria-labelledby="card-takeaways">
      <h2 id="card-takeaways">Take it to the machine</h2>
      <Awake />
      <h3>Print</h3>
      <div class="buttons">
        <button
          type="button"
          disabled={faulty || (isCrowd.value && rested.value === null)}
          onClick={() => window.print()}
        >
          Print the drawing
        </button>
        <button type="button" disabled={faulty} onClick={() => void printReadouts()}>
          Print the readouts
        </button>
      </div>
      <p class="hint">
        The drawing comes at the scale that it names, if the printer does not fit it to the page.
      </p>
      <h3>Save as a file</h3>
      <div class="buttons">
        {TAKEAWAYS.map((takeaway) => (
          <button
            key={takeaway.name}
            type="button"
            disabled={faulty && !takeaway.faulty}
            onClick={() => void takeAway(takeaway)}
          >
            {takeaway.name}
          </button>
        ))}
      </div>
      <p class="hint">Files are made here and stay here. The job is what this page opens again.</p>
      <LinkBox />
    </section>
  );
}
