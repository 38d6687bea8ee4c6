import './quiet.js';
import { render } from 'preact';
import { App } from './app.js';

const page = document.getElementById('page');
page?.replaceChildren();
if (page !== null) render(<App />, page);
