import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import ts from 'typescript';

/** An import as it is written in a file. */
export interface WrittenImport {
  readonly file: string;
  readonly line: number;
  readonly specifier: string;
  readonly isTypeOnly: boolean;
}

const SCRIPT_BLOCK = /<script\b[^>]*>([\s\S]*?)<\/script\s*>/gi;
const FOLDERS_NOT_WRITTEN_BY_HAND = ['node_modules', 'out', '.git'];

/** All files below a folder that may import: paths from the root, with slashes, in order. */
export function sourceFiles(root: string, folder: string): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|js|mjs|svelte)$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((file) => !file.split('/').some((part) => FOLDERS_NOT_WRITTEN_BY_HAND.includes(part)))
    .sort();
}

/** A file's TypeScript; a component's is that of its script blocks, each on its own lines. */
export function parseSource(file: string, text: string): ts.SourceFile {
  return ts.createSourceFile(file, file.endsWith('.svelte') ? scriptsAlone(text) : text, ts.ScriptTarget.ESNext, true, ts.ScriptKind.TS);
}

function scriptsAlone(text: string): string {
  let scripts = '';
  for (const block of text.matchAll(SCRIPT_BLOCK)) {
    const from = block.index + block[0].indexOf('>') + 1;
    scripts += text.slice(scripts.length, from).replace(/[^\n]/g, ' ') + block[1];
  }
  return scripts;
}

/** Every import of a file, in whichever of the language's forms it is written. */
export function readImports(root: string, file: string): readonly WrittenImport[] {
  return findImports(file, readFileSync(join(root, file), 'utf8'));
}

export function findImports(file: string, text: string): readonly WrittenImport[] {
  const source = parseSource(file, text);
  const found: WrittenImport[] = [];
  const add = (node: ts.Node | undefined, isTypeOnly: boolean) => {
    if (!node || !ts.isStringLiteralLike(node)) return;
    const line = source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
    found.push({ file, line, specifier: node.text, isTypeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword);
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node.argument.literal, true);
    else if (ts.isExternalModuleReference(node)) add(node.expression, false);
    else if (ts.isCallExpression(node) && isLoading(node.expression)) add(node.arguments[0], false);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function isLoading(called: ts.Expression): boolean {
  return called.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(called) && called.text === 'require');
}
