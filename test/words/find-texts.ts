import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'svelte/compiler';
import { textKey } from '../../shared-core/words/index.ts';
import { sourceFiles } from '../architecture/read-imports.ts';

/** The texts of a file: those that are said, by their keys, and those that stand there without being said. */
export interface Texts {
  readonly said: readonly string[];
  readonly unsaid: readonly string[];
}

interface Node {
  readonly type: string;
  readonly name?: unknown;
  readonly data?: string;
  readonly value?: unknown;
  readonly [key: string]: unknown;
}

/** Attributes whose text somebody reads or hears, of elements and of our own parts. */
const READ_ATTRIBUTES = ['label', 'title', 'aria-label', 'placeholder', 'alt', 'hint', 'caption', 'empty'];
/** Calls whose texts are read by machines. */
const MACHINE_CALLS = ['querySelector', 'querySelectorAll', 'closest', 'matches', 'matchMedia', 'assert', 'execFile', 'prepare', 'raw', 'pragma', 'header'];
/** Folders within one another, as in `Chromium.app/Contents/MacOS`. */
const PATH = /\w\/[\w ]+\//;
const WORDS = /\p{L}\S*\s+\S*\p{L}/u;
/** A word that stands apart from what is put in, as in `…, 3 rolls`. */
const WORD_AND_GAP = /\p{L}{2}.*\s|\s.*\p{L}{2}/su;

/** Of all files in a folder and its folders; `src-renderer/*` is the files beside its folders alone, `src-main/**` those in its folders alone. */
export function textsOfFolder(root: string, folder: string): Texts {
  const [plain, which] = folder.split(/(?=\/\*)/) as [string, string?];
  const isMeant = (file: string) => which === undefined || file.slice(plain.length + 1).includes('/') === (which === '/**');
  const texts = sourceFiles(root, plain)
    .filter((file) => /\.(ts|svelte)$/.test(file) && isMeant(file))
    .map((file) => textsOf(file, readFileSync(join(root, file), 'utf8')));
  return { said: texts.flatMap(({ said }) => said), unsaid: texts.flatMap(({ unsaid }) => unsaid) };
}

/**
 * Of the markup every letter must be said; of the code every text of two words or more that is not thrown at a developer.
 *
 * Example: `<p>Two walls {name}</p>` has the unsaid text 'Two walls'.
 */
export function textsOf(file: string, text: string): Texts {
  const isMarkup = file.endsWith('.svelte');
  const tree = parse(isMarkup ? text : `<script lang="ts">${text}</script>`, { modern: true });
  const said: string[] = [];
  const unsaid: string[] = [];
  const walkAll = (values: Iterable<unknown>) => {
    for (const value of values) walk(value);
  };
  const walk = (node: unknown): void => {
    if (Array.isArray(node)) walkAll(node);
    if (!isNode(node)) return;
    switch (node.type) {
      case 'ImportDeclaration':
        return;
      case 'ExportNamedDeclaration':
        return walk(node['declaration']);
      case 'TaggedTemplateExpression': {
        const quasi = node['quasi'] as Node;
        if ((node['tag'] as Node).name === 'say') said.push(textKey((quasi['quasis'] as readonly Node[]).map(({ value }) => (value as { cooked: string }).cooked)));
        return walk(quasi['expressions']);
      }
      case 'Text':
        if (/\p{L}/u.test(node.data ?? '')) unsaid.push(`${file}: ${node.data?.trim()}`);
        return;
      case 'Attribute': {
        const parts = Array.isArray(node.value) ? (node.value as readonly Node[]) : [];
        if (READ_ATTRIBUTES.includes(String(node.name)) && parts.some(({ type, data }) => type === 'Text' && /\p{L}/u.test(data ?? ''))) unsaid.push(`${file}: ${node.name}`);
        if (node.name === 'class' || node.name === 'style') return;
        return walk(parts.length > 0 ? parts.filter(({ type }) => type !== 'Text') : node.value);
      }
      case 'Literal':
        if (typeof node.value === 'string' && WORDS.test(node.value) && !PATH.test(node.value)) unsaid.push(`${file}: ${node.value}`);
        return;
      case 'TemplateLiteral': {
        const written = (node['quasis'] as readonly Node[]).map(({ value }) => (value as { cooked: string }).cooked).join('…');
        if (WORD_AND_GAP.test(written)) unsaid.push(`${file}: ${written}`);
        return walk(node['expressions']);
      }
      case 'ThrowStatement':
        return;
      case 'CallExpression': {
        const called = node['callee'] as Node;
        const name = called.type === 'MemberExpression' ? (called['property'] as Node).name : called.name;
        return walkAll([called, ...(MACHINE_CALLS.includes(String(name)) ? [] : (node['arguments'] as readonly Node[]))]);
      }
      default:
        if (!node.type.startsWith('TS') || ['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression'].includes(node.type)) walkAll(Object.values(node));
    }
  };
  if (isMarkup) walk(tree.fragment);
  walkAll([tree.instance?.content, tree.module?.content]);
  return { said, unsaid };
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';
}
