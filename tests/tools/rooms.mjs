// The pictures and tables of docs/architecture.md, read from the sources: the imports between rooms, and the head comment
// of the first file of each room.
//   node tests/tools/rooms.mjs            compares, and ends with 1 where the page is out of date
//   node tests/tools/rooms.mjs --update   writes them anew
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, posix, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import ts from 'typescript';
import { FLOORS, STOREYS } from './floors.mjs';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const PAGE = join(ROOT, 'docs', 'architecture.md');

/** Where rooms lie. Files beside the folders of `packages/previewer/src` make a room of their own, the command. */
const HOMES = [
  'packages/core/src',
  'packages/svg/src',
  'packages/previewer/src',
  'packages/previewer/page/src',
];
const COMMAND = 'packages/previewer/src';

/** A package is imported by its name, which leads to its door. */
const DOORS = new Map([
  ['@edgebite/core', 'packages/core/src/door'],
  ['@edgebite/svg', 'packages/svg/src/door'],
]);

/** The rooms that one cut passes through, from the text of a job to what a person reads. */
const WAY = [
  ...['document', 'job', 'read', 'cut', 'overlay', 'left', 'state', 'step', 'find', 'write', 'door'].map(
    (room) => `packages/core/src/${room}`,
  ),
  ...['plan', 'draw', 'door'].map((room) => `packages/svg/src/${room}`),
  ...['text', 'sheet'].map((room) => `packages/previewer/src/${room}`),
  ...['worker', 'board'].map((room) => `packages/previewer/page/src/${room}`),
];

/** @typedef {{ folder: string, first: string, purpose: string, takes: string, gives: string, needs: Set<string> }} Room */

const HEAD = /^\/\*\n \* Room: ([\s\S]*?)\.\n \* In: ([\s\S]*?)\.\n \* Out: ([\s\S]*?)\.\n \*\/\n/;

/**
 * The room that a source file belongs to, as its folder; null for a file that is in none, such as an entry.
 * @param {string} file
 */
function roomOf(file) {
  const home = HOMES.find((folder) => file.startsWith(`${folder}/`));
  if (home === undefined) return null;
  const [room = '', ...rest] = file.slice(home.length + 1).split('/');
  if (rest.length > 0) return `${home}/${room}`;
  return home === COMMAND ? home : null;
}

/** @returns {string[]} the source files of all rooms, as paths from the root with forward slashes */
function files() {
  return HOMES.flatMap((home) =>
    readdirSync(join(ROOT, home), { recursive: true, withFileTypes: true })
      .filter(({ name }) => /\.tsx?$/.test(name) && !/\.(test|d)\.ts$/.test(name))
      .filter((entry) => entry.isFile())
      .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)).split(sep).join('/'))
      .sort(),
  );
}

/**
 * The rooms that a file imports from.
 * @param {string} file
 * @param {string} text
 */
function needsOf(file, text) {
  return ts.preProcessFile(text, true, true).importedFiles.flatMap(({ fileName }) => {
    const inside = fileName.startsWith('.') ? roomOf(posix.join(posix.dirname(file), fileName)) : undefined;
    const found = inside === undefined ? DOORS.get(fileName.split('/').slice(0, 2).join('/')) : inside;
    return found === undefined || found === null || found === roomOf(file) ? [] : [found];
  });
}

/** @returns {Map<string, Room>} by folder */
function rooms() {
  /** @type {Map<string, Room>} */
  const found = new Map();
  for (const file of files()) {
    const folder = roomOf(file);
    if (folder === null) continue;
    const text = readFileSync(join(ROOT, file), 'utf8');
    const room = found.get(folder) ?? {
      folder,
      first: '',
      purpose: '',
      takes: '',
      gives: '',
      needs: new Set(),
    };
    found.set(folder, room);
    for (const need of needsOf(file, text)) room.needs.add(need);
    const head = HEAD.exec(text);
    if (head === null) continue;
    if (room.first !== '')
      throw new Error(`rooms.mjs: ${room.first} and ${file} both begin with what the room is for`);
    const [purpose = '', takes = '', gives = ''] = head.slice(1).map((part) => part.replaceAll('\n * ', ' '));
    Object.assign(room, { first: file, purpose, takes, gives });
  }
  for (const { folder, first } of found.values()) {
    if (first === '')
      throw new Error(`rooms.mjs: no file of ${folder} begins with /* Room: ... In: ... Out: ... */`);
  }
  return found;
}

/**
 * Arrows between some of the rooms, from the one that is imported to the one that imports; those that follow from others
 * are left out, and so are those between rooms that need each other.
 * @param {Map<string, Room>} all
 * @param {readonly string[]} shown
 */
function arrows(all, shown) {
  const under = new Map(shown.map((one) => [one, below(all, one, shown)]));
  return shown.flatMap((one) => {
    const needs = [...(under.get(one) ?? [])].filter((need) => !under.get(need)?.has(one));
    return needs
      .filter((need) => !needs.some((other) => other !== need && under.get(other)?.has(need)))
      .map((need) => `  ${idOf(need)} --> ${idOf(one)}`);
  });
}

/**
 * What a room stands on, directly or through others that are shown.
 * @param {Map<string, Room>} all
 * @param {string} folder
 * @param {readonly string[]} shown
 * @param {Set<string>} seen
 */
function below(all, folder, shown, seen = new Set()) {
  for (const need of all.get(folder)?.needs ?? []) {
    if (seen.has(need) || !shown.includes(need)) continue;
    seen.add(need);
    below(all, need, shown, seen);
  }
  return seen;
}

/** @param {string} folder */
function idOf(folder) {
  return folder.replace('packages/', '').replace('/src', '').replaceAll('/', '_');
}

/** @param {string} folder */
function nameOf(folder) {
  return folder === COMMAND ? 'command' : (folder.split('/').at(-1) ?? '');
}

/** @param {Map<string, Room>} all */
function wayPicture(all) {
  const packs = [...new Set(WAY.map((folder) => folder.split('/')[1] ?? ''))];
  const boxes = packs.map((pack) =>
    storey(
      pack,
      WAY.filter((folder) => folder.startsWith(`packages/${pack}/`)),
    ),
  );
  return mermaid([...boxes, ...arrows(all, WAY)]);
}

/** @param {Map<string, Room>} all */
function corePicture(all) {
  const folders = FLOORS.core.map((room) => `packages/core/src/${room}`);
  const boxes = Object.entries(STOREYS.core).map(([name, list]) =>
    storey(
      name,
      list.map((room) => `packages/core/src/${room}`),
    ),
  );
  return mermaid([...boxes, ...arrows(all, folders)]);
}

/**
 * @param {string} name
 * @param {readonly string[]} folders
 */
function storey(name, folders) {
  const nodes = folders.map((folder) => `    ${idOf(folder)}["${nameOf(folder)}"]`);
  return [`  subgraph ${name}_storey["${name}"]`, ...nodes, '  end'].join('\n');
}

/** @param {readonly string[]} lines */
function mermaid(lines) {
  return ['```mermaid', 'flowchart TD', ...lines, '```'].join('\n');
}

/**
 * @param {Map<string, Room>} all
 * @param {string} home
 */
function table(all, home) {
  const order = FLOORS[/** @type {keyof typeof FLOORS} */ (home.split('/')[1])] ?? [];
  const own = [...all.values()]
    .filter(({ folder }) => folder === home || posix.dirname(folder) === home)
    .sort((a, b) => order.indexOf(nameOf(a.folder)) - order.indexOf(nameOf(b.folder)));
  const rows = own.map(
    ({ folder, first, purpose, takes, gives }) =>
      `| [${nameOf(folder)}](../${first}) | ${purpose} | ${takes} | ${gives} |`,
  );
  return ['| room | for | in | out |', '|--|--|--|--|', ...rows].join('\n');
}

/**
 * The page with its generated parts as the sources have them now.
 * @param {string} page
 */
export function withRooms(page) {
  const all = rooms();
  /** @type {Record<string, string>} */
  const parts = { way: wayPicture(all), rooms: corePicture(all) };
  for (const home of HOMES) parts[idOf(home)] = table(all, home);
  return Object.entries(parts).reduce((text, [name, part]) => {
    const [before, rest] = text.split(`<!-- ${name} -->\n`);
    const after = rest?.slice(rest.indexOf('<!-- end -->'));
    if (before === undefined || after === undefined)
      throw new Error(`rooms.mjs: the page has no <!-- ${name} -->`);
    return `${before}<!-- ${name} -->\n${part}\n${after}`;
  }, page);
}

function main() {
  const page = readFileSync(PAGE, 'utf8');
  const now = withRooms(page);
  if (process.argv.includes('--update')) writeFileSync(PAGE, now);
  else if (now !== page) {
    console.error(
      'docs/architecture.md is out of date: read what changed, then run npm run rooms -- --update',
    );
    process.exitCode = 1;
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) main();
