import './quiet.js';
import { render } from 'preact';
import { App } from './app.js';
import { openLink } from './files/open.js';
import { keepWork } from './state/keep.js';

// What was kept comes first, so that nothing else flashes up before it.
async function begin(): Promise<void> {
  await keepWork();
  const page = document.getElementById('page');
  page?.replaceChildren();
  if (page !== null) render(<App />, page);
  await openLink();
}

void begin();
