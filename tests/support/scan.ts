import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

export interface SourceFile {
  /** Path from the top of the project, with forward slashes. */
  path: string;
  text: string;
}

/** All TypeScript files below the folders (paths from the top of the project); a missing folder is empty. */
export function sources(...folders: string[]): SourceFile[] {
  return folders.flatMap((folder) => {
    let names: string[];
    try {
      names = readdirSync(join(ROOT, folder), {
        recursive: true,
        encoding: 'utf8',
      });
    } catch {
      return [];
    }
    return names
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => join(ROOT, folder, name))
      .map((file) => ({
        path: relative(ROOT, file).replaceAll('\\', '/'),
        text: readFileSync(file, 'utf8'),
      }));
  });
}

function parse({ path, text }: SourceFile): ts.SourceFile {
  const kind = path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  return ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind);
}

function walk(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  ts.forEachChild(node, (child) => walk(child, visit));
}

const place = (file: ts.SourceFile, node: ts.Node): string =>
  `${file.fileName}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${node.getText().trim()}`;

const SPOKEN =
  /^(title|placeholder|alt|label|aria-(label|description|valuetext|roledescription|placeholder))$/;
const HAS_LETTER = /\p{L}/u;

/** The literal texts an expression may turn into: through `?:`, `??`, `&&`, `||` and brackets, not into calls. */
function literals(node: ts.Node): ts.Node[] {
  if (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)) return [node];
  if (ts.isConditionalExpression(node)) return [...literals(node.whenTrue), ...literals(node.whenFalse)];
  if (ts.isParenthesizedExpression(node)) return literals(node.expression);
  if (ts.isBinaryExpression(node)) {
    const joins = [
      ts.SyntaxKind.PlusToken,
      ts.SyntaxKind.BarBarToken,
      ts.SyntaxKind.AmpersandAmpersandToken,
      ts.SyntaxKind.QuestionQuestionToken,
    ];
    return joins.includes(node.operatorToken.kind) ? [...literals(node.left), ...literals(node.right)] : [];
  }
  return [];
}

const plainText = (node: ts.Node): string =>
  ts.isTemplateExpression(node)
    ? node.head.text + node.templateSpans.map((span) => span.literal.text).join('')
    : (node as ts.StringLiteralLike).text;

/** Texts written straight into JSX, where a user would see or hear them; each as `path:line text`. */
export function literalWords(source: SourceFile): string[] {
  const file = parse(source);
  const found: string[] = [];
  const check = (expression: ts.Node) => {
    for (const node of literals(expression)) {
      if (HAS_LETTER.test(plainText(node))) found.push(place(file, node));
    }
  };
  walk(file, (node) => {
    if (ts.isJsxText(node) && HAS_LETTER.test(node.text)) found.push(place(file, node));
    if (ts.isJsxExpression(node) && node.expression && !ts.isJsxAttribute(node.parent))
      check(node.expression);
    if (ts.isJsxAttribute(node) && node.initializer && SPOKEN.test(node.name.getText())) {
      const value = node.initializer;
      if (ts.isStringLiteral(value)) check(value);
      else if (ts.isJsxExpression(value) && value.expression) check(value.expression);
    }
  });
  return found;
}

/** Uses of the named properties or globals (`toFixed`, `Math.random`, `Date`), each as `path:line text`. */
export function uses(source: SourceFile, names: readonly string[]): string[] {
  const file = parse(source);
  const found: string[] = [];
  walk(file, (node) => {
    if (ts.isPropertyAccessExpression(node)) {
      if (names.includes(node.name.text) || names.includes(node.getText())) found.push(place(file, node));
    } else if (ts.isIdentifier(node) && names.includes(node.text) && isFree(node)) {
      found.push(place(file, node));
    }
  });
  return found;
}

const EFFECT = /^use(Layout|Insertion)?Effect$/;

/**
 * Effects that hand React what an element's method gives back, each as `path:line text`. The types call it nothing, but
 * newer browsers give a promise for `scrollIntoView` and its like, and React would call that when it clears up.
 */
export function effectsGivingBack(source: SourceFile): string[] {
  const file = parse(source);
  const found: string[] = [];
  walk(file, (node) => {
    if (!ts.isCallExpression(node) || !EFFECT.test(node.expression.getText())) return;
    const [effect] = node.arguments;
    if (!ts.isArrowFunction(effect) || !ts.isCallExpression(effect.body)) return;
    const asked = effect.body.expression.getText();
    if (/\.current\b|^(document|window)\b/.test(asked)) found.push(place(file, effect.body));
  });
  return found;
}

/** An identifier that stands for a global, not for a property or for the name of something declared here. */
function isFree(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  return !('name' in parent && parent.name === node);
}
