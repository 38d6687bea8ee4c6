/* Checks the types of every ts block in the guides: the second half of npm run docs. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { blocksOf, pages, ROOT } from '../docs/pages.js';

const folder = `${ROOT}out/docs-types`;
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

const blocks = pages().flatMap((page) => blocksOf(page).filter(({ language }) => language === 'ts'));
for (const { page, line, rest, text } of blocks) {
  // A page and a worker have another global scope; DOM has names for both.
  const name = `${page.replaceAll('/', '-')}-${line}${rest === 'browser' ? '-browser' : ''}.ts`;
  writeFileSync(`${folder}/${name}`, text);
}
writeFileSync(
  `${folder}/tsconfig.json`,
  JSON.stringify({
    extends: '../../tests/tsconfig.json',
    // Examples may leave a name unused that the prose speaks of.
    compilerOptions: { rootDir: '../..', noUnusedLocals: false },
    include: ['*.ts', '../../packages/*/src/**/*.d.ts'],
  }),
);
execFileSync(process.execPath, [`${ROOT}node_modules/typescript/bin/tsc`, '-p', folder], {
  stdio: 'inherit',
});
console.log(`${blocks.length} blocks of TypeScript in the guides have sound types`);
