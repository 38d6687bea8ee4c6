export { gather } from '../../packages/core/src/noding/gather.js';
export { arrange } from '../../packages/core/src/overlay/arrange.js';
export { certify } from '../../packages/core/src/overlay/certify.js';
export { regionFault } from '../../packages/core/src/overlay/certify-region.js';
export { borderOf } from '../../packages/core/src/overlay/keep.js';
export { collect } from '../../packages/core/src/overlay/stitch.js';
export { windings } from '../../packages/core/src/overlay/windings.js';
export { loopsOf } from '../../packages/core/src/region/measure.js';
