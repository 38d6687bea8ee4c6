import { effect } from '@preact/signals';
import { sheetBody } from '../../../src/sheet/html.js';
import { sheetOf } from '../../../src/sheet/model.js';
import { picturesOf } from '../../../src/sheet/pictures.js';
import { STYLE } from '../../../src/sheet/style.js';
import { job, solver } from '../state/store.js';

/** The page's own rules print a drawing that fills its paper; readouts go on whatever paper there is. */
const PAPER = '@page { size: auto; margin: 12mm }';

/** On the root while the readouts stand ready to be printed in place of the drawing. */
const READY = 'readouts-ready';

let away: (() => void) | null = null;

// What is laid out to be printed is that of one job only.
effect(() => {
  job.value;
  clear();
});

/** Prints the readout sheet of the job as it stands; nothing where the job has faults. */
export async function printReadouts(): Promise<void> {
  const present = job.value;
  const report = present === null ? null : await solver.report(present);
  if (report === null || job.value !== present) return;
  const sheet = sheetOf(report);
  layOut(sheetBody(sheet, picturesOf(report, sheet)));
  window.addEventListener('afterprint', clear, { once: true });
  window.print();
}

function clear(): void {
  away?.();
  away = null;
}

// Styles that a script makes need no place in the markup, so that the page's policy can stay as it is; and in a root
// of its own the sheet's style reaches nothing else.
function layOut(body: string): void {
  clear();
  const paper = new CSSStyleSheet();
  paper.replaceSync(PAPER);
  const style = new CSSStyleSheet();
  style.replaceSync(STYLE);
  const holder = document.createElement('div');
  holder.className = 'readouts';
  const root = holder.attachShadow({ mode: 'open' });
  root.adoptedStyleSheets = [style];
  root.append(document.importNode(new DOMParser().parseFromString(body, 'text/html').body, true));
  document.body.append(holder);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, paper];
  document.documentElement.classList.add(READY);
  away = () => {
    holder.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== paper);
    document.documentElement.classList.remove(READY);
  };
}
