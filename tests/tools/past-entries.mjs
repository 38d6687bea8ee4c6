// Leads imports past the entries of packages, to the files that hold the names. A bundler that parts a program into files takes
// whatever an entry leads to for needed together: every command would load all of core, for one name of it.
import { join } from 'node:path';
import ts from 'typescript';

/**
 * A function that rewrites the imports of a module from entries such as `@edgebite/core`. Lines stay.
 * @param {string} packages the folder of the packages
 * @param {(name: string) => string} sourceOf the source file of an entry
 */
export function pastEntries(packages, sourceOf) {
  /** @type {Map<string, Map<string, { file: string, name: string }>>} */
  const homes = new Map();
  const options = {
    allowImportingTsExtensions: true,
    noEmit: true,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    target: ts.ScriptTarget.Latest,
    paths: { '@edgebite/*': [join(packages, '*', 'src', 'index.ts')] },
  };

  /** @param {string} entry */
  function homesOf(entry) {
    const known = homes.get(entry);
    if (known !== undefined) return known;
    const program = ts.createProgram([sourceOf(entry)], options);
    const checker = program.getTypeChecker();
    const source = program.getSourceFile(sourceOf(entry));
    const whole = source && checker.getSymbolAtLocation(source);
    if (!whole) throw new Error(`past-entries.mjs: ${entry} is no module`);
    /** @type {Map<string, { file: string, name: string }>} */
    const found = new Map();
    for (const symbol of checker.getExportsOfModule(whole)) {
      const own = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
      const file = own.declarations?.[0]?.getSourceFile().fileName;
      if (file !== undefined) found.set(symbol.name, { file, name: own.name });
    }
    homes.set(entry, found);
    return found;
  }

  /** @param {string} text */
  return (text) => {
    const source = ts.createSourceFile('module.ts', text, ts.ScriptTarget.Latest, true);
    let whole = text;
    for (const statement of source.statements.toReversed()) {
      if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier)) continue;
      const entry = statement.moduleSpecifier.text;
      const names = statement.importClause?.namedBindings;
      if (!entry.startsWith('@edgebite/') || !names || !ts.isNamedImports(names)) continue;
      const past = names.elements
        .filter(({ isTypeOnly }) => !isTypeOnly && !statement.importClause?.isTypeOnly)
        .map(({ name, propertyName }) => {
          const home = homesOf(entry).get((propertyName ?? name).text);
          if (home === undefined) throw new Error(`past-entries.mjs: ${entry} has no ${name.text}`);
          return `import { ${home.name} as ${name.text} } from ${JSON.stringify(home.file)};`;
        });
      const lines = statement.getText().replace(/[^\n]/g, '');
      whole = whole.slice(0, statement.getStart()) + past.join(' ') + lines + whole.slice(statement.getEnd());
    }
    return whole;
  };
}
