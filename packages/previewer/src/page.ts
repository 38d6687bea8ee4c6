import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { EXIT } from './exit.js';
import { Unfinished } from './failure.js';
import type { Io } from './io.js';

/**
 * Prints the address of the page that comes with the command, to open in a browser; returns the exit code.
 * @throws Unfinished if this copy has none: it is built when the package is packed.
 */
export function page(io: Io): number {
  // Beside src as well as beside dist.
  const address = new URL('../web/index.html', import.meta.url);
  if (!existsSync(fileURLToPath(address))) {
    throw new Unfinished([
      'the page is not built in this copy; in a checkout npm run page builds and serves it',
    ]);
  }
  io.out(`${address.href}\n`);
  return EXIT.clean;
}
