export { EXIT } from './exit.js';
export type { Io } from './io.js';
export { run } from './run.js';
export { textReport } from './text/report.js';
