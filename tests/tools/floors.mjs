// Checks who imports whom: `node tests/tools/floors.mjs` prints each fault and exits 1 if there is any.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import ts from 'typescript';

/** The rooms of each package's src by storey, lowest first. A room imports only from itself and from rooms before it. */
export const STOREYS = {
  core: {
    plane: ['memory', 'geometry', 'region', 'noding', 'overlay', 'clear', 'combine'],
    cuts: ['cut', 'datum', 'left', 'cutting'],
    shapes: ['outline', 'format', 'figure'],
    tools: ['load', 'passes', 'placing', 'path', 'measure'],
    job: ['document', 'job', 'setups', 'alike', 'read'],
    result: ['state', 'report', 'result', 'step', 'find', 'write', 'live'],
    searches: ['range', 'aim', 'feature', 'propose'],
    entries: ['kinds', 'door', 'testing'],
  },
  svg: {
    paper: ['view', 'pen'],
    pictures: ['plan', 'sheet', 'section', 'steps', 'zero', 'checks', 'range'],
    entries: ['draw', 'door'],
  },
};

/** The same without the storeys. */
export const FLOORS = {
  core: Object.values(STOREYS.core).flat(),
  svg: Object.values(STOREYS.svg).flat(),
};

/** What each package may import besides its own files. `core` stays free of Node and of the DOM. */
const ALLOWED = {
  core: ['@flatten-js/core', 'flatbush', 'zod'],
  svg: ['@edgebite/core', '@svgdotjs/svg.js', 'svgdom'],
  previewer: ['@edgebite/core', '@edgebite/svg', 'commander', 'node:'],
};

/** Only this floor may use it, so that the library itself does not need it. */
const TESTING_ONLY = 'fast-check';

/**
 * The faults in one source file, as sentences; none if it keeps to the rules.
 * @param {string} file path from the repository root with forward slashes, such as `packages/core/src/cut/bore.ts`
 * @param {string} text what the file holds
 * @returns {string[]}
 */
export function faultsOf(file, text) {
  const [, pack = '', , ...inside] = file.split('/');
  const floors = floorsOf(pack);
  const floor = floors.length > 0 && inside.length > 1 ? (inside[0] ?? '') : null;
  if (floor !== null && !floors.includes(floor)) {
    return [`${file}: ${pack}/src/${floor} is not a floor; the floors are ${floors.join(', ')}`];
  }
  return ts
    .preProcessFile(text, true, true)
    .importedFiles.map((found) => faultOf(file, pack, floor, found.fileName))
    .filter((fault) => fault !== null);
}

/**
 * @param {string} pack
 * @returns {readonly string[]} none for a package whose src has no rooms
 */
function floorsOf(pack) {
  return FLOORS[/** @type {keyof typeof FLOORS} */ (pack)] ?? [];
}

/**
 * @param {string} file
 * @param {string} pack
 * @param {string | null} floor
 * @param {string} wanted the import as written
 */
function faultOf(file, pack, floor, wanted) {
  return wanted.startsWith('.')
    ? relativeFault(file, pack, floor, wanted)
    : packageFault(file, pack, floor, wanted);
}

/**
 * @param {string} file
 * @param {string} pack
 * @param {string | null} floor
 * @param {string} wanted
 */
function relativeFault(file, pack, floor, wanted) {
  const home = `packages/${pack}/src/`;
  const target = posix.join(posix.dirname(file), wanted);
  if (!target.startsWith(home)) return `${file}: imports ${wanted}, which lies outside ${home}`;
  if (floor === null) return null;
  const other = target.slice(home.length).split('/')[0] ?? '';
  const floors = floorsOf(pack);
  if (!floors.includes(other)) return `${file}: imports ${wanted}, which lies on no floor`;
  if (floors.indexOf(other) <= floors.indexOf(floor)) return null;
  return `${file}: ${floor} imports ${wanted}, but ${other} stands on a higher floor`;
}

/**
 * @param {string} file
 * @param {string} pack
 * @param {string | null} floor
 * @param {string} wanted
 */
function packageFault(file, pack, floor, wanted) {
  if (wanted === TESTING_ONLY && floor === 'testing') return null;
  const allowed = ALLOWED[/** @type {keyof typeof ALLOWED} */ (pack)];
  if (!allowed) return `${file}: packages/${pack} has no list of what it may import`;
  const fits = allowed.some((name) =>
    name.endsWith(':') ? wanted.startsWith(name) : inPackage(wanted, name),
  );
  return fits ? null : `${file}: imports ${wanted}; packages/${pack} may import ${allowed.join(', ')}`;
}

/**
 * @param {string} wanted
 * @param {string} name
 */
function inPackage(wanted, name) {
  return wanted === name || wanted.startsWith(`${name}/`);
}

/**
 * The source files that the rules apply to; tests beside the sources may import what they like.
 * @param {string} root the repository's folder
 * @returns {string[]} paths from the root, with forward slashes
 */
export function sourceFiles(root) {
  return Object.keys(ALLOWED).flatMap((pack) => filesUnder(root, `packages/${pack}/src`));
}

/**
 * The source files of the page, which a bundler puts together.
 * @param {string} root the repository's folder
 * @returns {string[]} paths from the root, with forward slashes
 */
export function pageFiles(root) {
  return filesUnder(root, 'packages/previewer/page/src');
}

/**
 * @param {string} root
 * @param {string} folder
 */
function filesUnder(root, folder) {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.[cm]?tsx?$/.test(entry.name) && !entry.name.includes('.test.'))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/** So many files a folder may hold: more than can be kept in the head want a room of their own. */
const MOST_FILES = 20;

/**
 * The folders that hold too many files, as sentences.
 * @param {readonly string[]} files paths with forward slashes
 * @returns {string[]}
 */
export function crowdedFolders(files) {
  /** @type {Map<string, number>} */
  const counts = new Map();
  for (const file of files) counts.set(posix.dirname(file), (counts.get(posix.dirname(file)) ?? 0) + 1);
  return [...counts]
    .filter(([, count]) => count > MOST_FILES)
    .map(([folder, count]) => `${folder} holds ${count} files; part it: ${MOST_FILES} at most`);
}

function main() {
  const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
  const files = sourceFiles(root);
  const faults = [
    ...crowdedFolders([...files, ...pageFiles(root)]),
    ...files.flatMap((file) => faultsOf(file, readFileSync(join(root, file), 'utf8'))),
  ];
  for (const fault of faults) console.error(fault);
  console.log(`floors: ${files.length} files, ${faults.length} faults`);
  if (faults.length > 0) process.exitCode = 1;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) main();
