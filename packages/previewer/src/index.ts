export { EXIT } from './commands.js';
export type { Io } from './io.js';
export { run } from './run.js';
export { textReport } from './text/report.js';
