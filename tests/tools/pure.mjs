// Says of what a module works out when it is loaded that it may be left out where nobody asks for it. No module here does anything
// else when it is loaded (`sideEffects: false`), but in one file with others a bundler cannot know that of a call.
import ts from 'typescript';

/**
 * The text of a module with each constant that takes a call to make in a function of its own, marked as pure. Lines stay.
 * @param {string} text
 * @param {string} name
 */
export function marked(text, name) {
  const source = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
  /** @type {{ from: number, to: number, head: string, tail: string }[]} */
  const places = [];
  for (const statement of source.statements) {
    if (ts.isClassDeclaration(statement) && isDerived(statement)) {
      const word = statement.getChildren(source).find(({ kind }) => kind === ts.SyntaxKind.ClassKeyword);
      const from = word?.getStart(source) ?? statement.getStart(source);
      places.push({ from, to: statement.getEnd(), head: `const ${statement.name?.text} = `, tail: ';' });
    }
    if (!ts.isVariableStatement(statement)) continue;
    for (const { initializer } of statement.declarationList.declarations) {
      if (initializer !== undefined && !isMarked(initializer, text) && takesWork(initializer))
        places.push({ from: initializer.getStart(source), to: initializer.getEnd(), head: '', tail: '' });
    }
  }
  return places
    .reverse()
    .reduce(
      (whole, { from, to, head, tail }) =>
        `${whole.slice(0, from)}${head}/* @__PURE__ */ (() => (${whole.slice(from, to)}))()${tail}${whole.slice(to)}`,
      text,
    );
}

/**
 * A class that extends another: a bundler cannot know that the other one is a class.
 * @param {ts.ClassDeclaration} declaration
 */
function isDerived({ name, heritageClauses }) {
  return name !== undefined && heritageClauses?.some(({ token }) => token === ts.SyntaxKind.ExtendsKeyword);
}

/**
 * A call that is marked by hand, with arguments that take no work.
 * @param {ts.Expression} value
 * @param {string} text
 */
function isMarked(value, text) {
  const before = text.slice(value.getFullStart(), value.getStart());
  if (!before.includes('@__PURE__') || !ts.isCallExpression(value)) return false;
  return !value.arguments.some(takesWork);
}

/**
 * Whether a value takes a call, or a look at the keys of another, to make.
 * @param {ts.Node} node
 * @returns {boolean}
 */
function takesWork(node) {
  if (ts.isFunctionLike(node) || ts.isClassLike(node) || ts.isTypeNode(node)) return false;
  if (ts.isCallExpression(node) || ts.isNewExpression(node) || ts.isSpreadElement(node)) return true;
  if (ts.isSpreadAssignment(node) || ts.isTemplateExpression(node) || ts.isComputedPropertyName(node))
    return true;
  if (ts.isPropertyAccessExpression(node)) return !/^(Math|Number)\./.test(node.getText());
  return ts.forEachChild(node, takesWork) ?? false;
}
