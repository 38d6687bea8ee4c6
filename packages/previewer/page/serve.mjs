import { buildPage, FOLDER, servePage } from './site.mjs';

await buildPage();
const { address } = await servePage();
console.log(`edgebite is at ${address}  (files in ${FOLDER}; end with Ctrl-C)`);
