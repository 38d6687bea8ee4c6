import { buildPage, PACKED } from './site.mjs';

// Before npm packs the package: the page goes with it, built.
await buildPage(PACKED);
