// The public names of each package with their declarations, as text that is checked in:
//   node tests/tools/api.mjs            compares, and ends with 1 where packages/*/api.txt is out of date
//   node tests/tools/api.mjs --update   writes them anew
// Reads the declarations in dist/types, so build first.
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import ts from 'typescript';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** @type {Readonly<Record<string, readonly string[]>>} */
const ENTRIES = {
  core: ['index', 'flatten', 'door', 'testing/index', 'geometry', 'machining'],
  svg: ['index', 'tree'],
  previewer: ['index'],
};

/** Entries of which each name is one of the root, perhaps under another one. */
const TOPICS = ['geometry', 'machining'];

const printer = ts.createPrinter({ removeComments: true });

/**
 * The names that an entry exports, sorted, each with its declarations without their comments.
 * @param {string} pack
 * @param {string} entry
 */
function reportOf(pack, entry) {
  const file = join(ROOT, 'packages', pack, 'dist', 'types', `${entry}.d.ts`);
  const program = ts.createProgram([file], {
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    target: ts.ScriptTarget.ES2023,
    skipLibCheck: true,
  });
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(file);
  const module = source && checker.getSymbolAtLocation(source);
  if (module === undefined) throw new Error(`api.mjs: ${file} is missing; run npm run build`);
  const names = checker.getExportsOfModule(module).sort((a, b) => (a.name < b.name ? -1 : 1));
  const blocks = names.map((symbol) => {
    const real = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
    if (TOPICS.includes(entry))
      return symbol.name === real.name ? real.name : `${symbol.name} = ${real.name}`;
    return (real.declarations ?? []).map((node) => shown(symbol.name, meant(node, checker))).join('\n');
  });
  const head = `# ${entry}: ${names.length} names`;
  return TOPICS.includes(entry) ? `${head}\n\n${blocks.join('\n')}\n` : `${[head, ...blocks].join('\n\n')}\n`;
}

/**
 * The function itself, where a constant is declared to be as that function is.
 * @param {ts.Declaration} node
 * @param {ts.TypeChecker} checker
 * @returns {ts.Declaration}
 */
function meant(node, checker) {
  if (!ts.isVariableDeclaration(node) || !node.type || !ts.isTypeQueryNode(node.type)) return node;
  return checker.getSymbolAtLocation(node.type.exprName)?.declarations?.[0] ?? node;
}

/**
 * @param {string} name
 * @param {ts.Declaration} node
 */
function shown(name, node) {
  const whole = ts.isVariableDeclaration(node) ? node.parent.parent : node;
  const text = printer.printNode(ts.EmitHint.Unspecified, whole, whole.getSourceFile());
  const settled = inOrder(text);
  return settled.includes(name) ? settled : `${name} = ${settled}`;
}

/** A line such as `outside: "outside";`: one of the values of an enumeration. */
const VALUE = /^\s*"?[^":]+"?: "[^"]*";$/;

/**
 * The compiler writes the values of an enumeration in the order in which it has met them, which hangs on what else it
 * compiled: here they are sorted.
 * @param {string} text
 */
function inOrder(text) {
  const lines = text.split('\n');
  for (let from = 0; from < lines.length; from++) {
    let to = from;
    while (VALUE.test(lines[to] ?? '')) to++;
    lines.splice(from, to - from, ...lines.slice(from, to).sort());
    from = Math.max(from, to);
  }
  return lines.join('\n');
}

/**
 * Compares, or writes, the report of each package; returns what is out of date, as sentences.
 * @param {boolean} update
 */
export function checkApi(update) {
  return Object.entries(ENTRIES).flatMap(([pack, entries]) => {
    const report = entries.map((entry) => reportOf(pack, entry)).join('\n');
    const file = join(ROOT, 'packages', pack, 'api.txt');
    if (update) writeFileSync(file, report);
    return update || current(file) === report
      ? []
      : [`packages/${pack}/api.txt is out of date: look at what changed, then run npm run api -- --update`];
  });
}

/** @param {string} file */
function current(file) {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null;
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const faults = checkApi(process.argv.includes('--update'));
  for (const fault of faults) console.error(fault);
  if (faults.length > 0) process.exitCode = 1;
}
