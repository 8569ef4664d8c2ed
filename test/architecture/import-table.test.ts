import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { join as joinPath } from 'node:path/posix';
import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { IMPORT_TABLE, judgeImport } from './import-table.ts';
import { findCycles } from './find-cycles.ts';
import { findImports, parseSource, readImports, sourceFiles } from './read-imports.ts';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const FOLDERS = ['shared-core', 'src-main', 'src-renderer'];

const files = FOLDERS.flatMap((folder) => sourceFiles(ROOT, folder));
const imports = files.flatMap((file) => readImports(ROOT, file));

/** A relative import as the file it names, without a bundler's query; null for a package. */
function targetOf({ file, specifier }: { readonly file: string; readonly specifier: string }): string | null {
  return specifier.startsWith('.') ? joinPath(dirname(file), specifier.replace(/[?#].*$/, '')) : null;
}

describe('the source', () => {
  it('was seen whole', () => {
    expect(files.length).toBeGreaterThanOrEqual(100);
    expect(imports.length).toBeGreaterThanOrEqual(300);
    expect(files).toEqual(expect.arrayContaining(['shared-core/units/length.ts', 'shared-core/plan/plan-house.ts', 'src-main/office/office.ts', 'src-renderer/main.ts']));
    expect(files.some((file) => file.endsWith('.svelte'))).toBe(true);
  });

  it('imports only what the table allows', () => {
    const refused = imports.flatMap(({ file, line, specifier, isTypeOnly }) => {
      const why = judgeImport(file, specifier, isTypeOnly);
      return why === null ? [] : [`${file}:${line} ${why}`];
    });
    expect(refused).toEqual([]);
  });

  it('imports files that are there', () => {
    const missing = imports.filter((one) => {
      const target = targetOf(one);
      return target !== null && !existsSync(join(ROOT, target));
    });
    expect(missing.map(({ file, specifier }) => `${file}: ${specifier}`)).toEqual([]);
  });

  it('has no import that comes back to its own file', () => {
    expect(findCycles(imports.flatMap((one) => {
      const target = targetOf(one);
      return target === null ? [] : [[one.file, target] as const];
    }))).toEqual([]);
  });

  it('needs no build to run in Node: no enums, namespaces or parameter properties', () => {
    const unerasable = files.flatMap((file) => {
      const source = parseSource(file, readFileSync(join(ROOT, file), 'utf8'));
      const found: string[] = [];
      const visit = (node: ts.Node): void => {
        const isProperty = ts.isParameter(node) && ts.isParameterPropertyDeclaration(node, node.parent);
        const isNamespace = ts.isModuleDeclaration(node) && !node.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.DeclareKeyword);
        if (ts.isEnumDeclaration(node) || isNamespace || isProperty) found.push(`${file}: ${node.getText(source).slice(0, 60)}`);
        ts.forEachChild(node, visit);
      };
      visit(source);
      return found;
    });
    expect(unerasable).toEqual([]);
  });
});

describe('the top level', () => {
  const FIXED = [
    ...['package.json', 'package-lock.json', 'tsconfig.json', 'electron.vite.config.ts', 'README.md', 'DEVELOPERS.md', 'LICENSE'],
    ...['src-main', 'src-renderer', 'shared-core', 'test', 'build-resources'],
  ];
  const NEEDED = ['package.json', 'package-lock.json', 'tsconfig.json', 'src-main', 'src-renderer', 'shared-core', 'test'];

  it.skipIf(!existsSync(join(ROOT, '.git')))('is the fixed one', () => {
    const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], { cwd: ROOT, encoding: 'utf8' });
    const top = [...new Set(listed.trim().split('\n').map((path) => path.split('/')[0] ?? ''))];
    expect(top.filter((name) => !name.startsWith('.') && !FIXED.includes(name))).toEqual([]);
    expect(NEEDED.filter((name) => !top.includes(name))).toEqual([]);
  });
});

describe('the compiler', () => {
  const optionsOf = (folder: string) => {
    const path = join(ROOT, folder, 'tsconfig.json');
    return ts.parseJsonConfigFileContent(ts.readConfigFile(path, ts.sys.readFile).config, ts.sys, dirname(path)).options;
  };

  it('knows neither a browser nor Node in shared-core', () => {
    const { lib, types } = optionsOf('shared-core');
    expect(lib?.map((name) => name.replace(/^lib\.|\.d\.ts$/g, ''))).toEqual(['es2024']);
    expect(types).toEqual([]);
  });

  it.each(['document.title', 'process.pid', 'setTimeout(Number, 1)', 'console.log(1)', 'new URL("a:b")', 'fetch("a")'])('refuses %s there', (expression) => {
    const planted = join(ROOT, 'shared-core', 'planted.ts');
    const options = { ...optionsOf('shared-core'), noEmit: true };
    const host = ts.createCompilerHost(options);
    const { getSourceFile, fileExists } = host;
    host.fileExists = (path) => path === planted || fileExists(path);
    host.getSourceFile = (path, ...rest) => (path === planted ? ts.createSourceFile(path, `export const value: unknown = ${expression};`, ts.ScriptTarget.ESNext) : getSourceFile(path, ...rest));
    const program = ts.createProgram([planted], options, host);
    const faults = program.getSemanticDiagnostics(program.getSourceFile(planted)).map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
    expect(faults.join(' ')).toMatch(/Cannot find name/);
  });

  it.each(['shared-core', 'src-main'])('holds %s to what Node can run without a build', (folder) => {
    expect(optionsOf(folder)).toMatchObject({ erasableSyntaxOnly: true, verbatimModuleSyntax: true, allowImportingTsExtensions: true });
  });
});

/** One import planted in each row that the table refuses, and one that it allows. */
const PLANTED: readonly (readonly [place: string, file: string, refused: string, allowed: string | null])[] = [
  ['shared-core/base', 'shared-core/base/outcome.ts', '../units/index.ts', './brand.ts'],
  ['shared-core/words', 'shared-core/words/say.ts', '../base/index.ts', './languages.ts'],
  ['shared-core/units', 'shared-core/units/area.ts', 'zod', '../words/index.ts'],
  ['shared-core/house', 'shared-core/house/room.ts', '../plan/index.ts', 'zod'],
  ['shared-core/survey', 'shared-core/survey/outline.ts', 'zod', '../house/index.ts'],
  ['shared-core/cutting', 'shared-core/cutting/tape.ts', '../house/index.ts', '../units/index.ts'],
  ['shared-core/setting-out', 'shared-core/setting-out/axis.ts', '../ordering/index.ts', '../survey/index.ts'],
  ['shared-core/ordering', 'shared-core/ordering/order.ts', '../prep/index.ts', '../setting-out/index.ts'],
  ['shared-core/prep', 'shared-core/prep/tasks.ts', '../cutting/index.ts', '../survey/index.ts'],
  ['shared-core/calendar', 'shared-core/calendar/days.ts', '../costing/index.ts', '../prep/index.ts'],
  ['shared-core/costing', 'shared-core/costing/money.ts', '../plan/index.ts', '../calendar/index.ts'],
  ['shared-core/plan', 'shared-core/plan/plan-house.ts', '../contract/index.ts', '../costing/index.ts'],
  ['shared-core/contract', 'shared-core/contract/methods.ts', '../plan/index.ts', 'zod'],
  ['shared-core/drawing', 'shared-core/drawing/elevation.ts', '../plan/index.ts', '../house/index.ts'],
  ['src-main/store', 'src-main/store/rows.ts', '../office/index.ts', 'kysely'],
  ['src-main/documents', 'src-main/documents/order-csv.ts', 'better-sqlite3', '../../shared-core/plan/index.ts'],
  ['src-main/office', 'src-main/office/office.ts', 'electron', '../store/index.ts'],
  ['src-main/desktop', 'src-main/desktop/main.ts', '../store/index.ts', 'electron'],
  ['src-main/loopback', 'src-main/loopback/main.ts', 'electron', 'fastify'],
  ['src-main/command-line', 'src-main/command-line/run.ts', '../../shared-core/house/index.ts', '../office/index.ts'],
  ['src-main/start.ts', 'src-main/start.ts', './office/index.ts', 'node:child_process'],
  ['src-renderer/host', 'src-renderer/host/connect.ts', '../../shared-core/plan/index.ts', '../../shared-core/contract/index.ts'],
  ['src-renderer/state', 'src-renderer/state/app.svelte.ts', '../parts/Button.svelte', './plan-worker.ts?worker'],
  ['src-renderer/parts', 'src-renderer/parts/LengthField.svelte', '../state/app.svelte.ts', 'bits-ui'],
  ['src-renderer/parts/pdf-pages.ts', 'src-renderer/parts/pdf-pages.ts', 'svelte', 'pdfjs-dist/legacy/build/pdf.worker.mjs?worker'],
  ['src-renderer/drawing', 'src-renderer/drawing/Elevation.svelte', '../state/app.svelte.ts', '../parts/Button.svelte'],
  ['src-renderer/places/*', 'src-renderer/places/order/Order.svelte', '../survey/Survey.svelte', '../../drawing/Elevation.svelte'],
  ['src-renderer', 'src-renderer/main.ts', '../src-main/office/index.ts', './places/order/Order.svelte'],
  ['src-renderer/svelte.config.js', 'src-renderer/svelte.config.js', 'svelte', '@sveltejs/vite-plugin-svelte'],
  ['electron.vite.config.ts', 'electron.vite.config.ts', './src-main/office/index.ts', 'electron-vite'],
  ['build-resources/electron-builder.ts', 'build-resources/electron-builder.ts', '../src-main/office/index.ts', 'electron-builder'],
];

describe('the judge', () => {
  it('is tried on every row of the table', () => {
    expect(PLANTED.map(([place]) => place)).toEqual(IMPORT_TABLE.map(({ place }) => place));
  });

  it.each(PLANTED)('%s: %s may not import %s, and may %s', (place, file, refused, allowed) => {
    const name = place.includes('*') ? 'src-renderer/places/order' : place;
    expect(judgeImport(file, refused)).toMatch(new RegExp(`^${name.replaceAll('.', '\\.')} may (not import|import only types of) `));
    if (allowed !== null) expect(judgeImport(file, allowed)).toBeNull();
  });

  it.each([
    ['shared-core/units/area.ts', 'zod', 'shared-core/units may not import the package zod.'],
    ['shared-core/units/area.ts', 'node:fs', "shared-core/units may not import node:fs, which is Node's."],
    ['src-main/store/rows.ts', 'fs', 'fs is written node:fs.'],
    ['src-renderer/parts/a.ts', 'node:path', "src-renderer/parts may not import node:path, which is Node's."],
    ['src-renderer/state/a.ts', '@fontsource/atkinson-hyperlegible-next/400.css', 'src-renderer/state may not import the package @fontsource/atkinson-hyperlegible-next.'],
    ['shared-core/units/area.ts', './length', 'shared-core/units/length does not name a file with its ending, such as .ts.'],
    ['shared-core/extra/area.ts', '../base/index.ts', 'shared-core/extra/area.ts is in no folder of the import table.'],
    ['shared-core/area.ts', './base/index.ts', 'shared-core/area.ts is in no folder of the import table.'],
    ['src-renderer/places/Order.svelte', '../state/a.ts', 'src-renderer/places/Order.svelte is in no folder of the import table.'],
    ['shared-core/base/a.ts', '../../../elsewhere/a.ts', 'shared-core/base may not import ../elsewhere.'],
    ['shared-core/base/a.ts', '/etc/a.ts', '/etc/a.ts is neither a relative path nor a package.'],
    ['shared-core/base/a.ts', 'https://example.org/a.ts', 'https://example.org/a.ts is neither a relative path nor a package.'],
  ])('of %s and %s says why', (file, specifier, why) => {
    expect(judgeImport(file, specifier)).toBe(why);
  });

  it('lets types through where only types are allowed, and only as "import type"', () => {
    expect(judgeImport('shared-core/drawing/elevation.ts', '../plan/index.ts', true)).toBeNull();
    expect(judgeImport('shared-core/drawing/elevation.ts', '../plan/index.ts', false)).toBe('shared-core/drawing may import only types of shared-core/plan, with "import type".');
    expect(judgeImport('shared-core/drawing/elevation.ts', '../ordering/index.ts', true)).toBe('shared-core/drawing may not import shared-core/ordering.');
  });

  it('lets tests import anything', () => {
    expect(judgeImport('test/store/house-store.test.ts', 'better-sqlite3')).toBeNull();
  });
});

describe('imports are read', () => {
  it('in every form', () => {
    const text = `import a from 'a';
import type { b } from 'b';
import { type c } from 'c';
export * from 'd';
export type { e } from 'e';
const f = await import('f');
type G = import('g').G;
import 'h';
const i = require('i');
// import 'not me';
const j = "import 'nor me'";`;
    expect(findImports('a.ts', text).map(({ specifier, isTypeOnly, line }) => [specifier, isTypeOnly, line])).toEqual([
      ['a', false, 1], ['b', true, 2], ['c', false, 3], ['d', false, 4], ['e', true, 5], ['f', false, 6], ['g', true, 7], ['h', false, 8], ['i', false, 9],
    ]);
  });

  it('in both script blocks of a component, on their own lines', () => {
    const text = '<script module lang="ts">\n  import a from "a";\n</script>\n<p>import "not me"</p>\n<script lang="ts">\n  import B from "./B.svelte";\n</script>\n';
    expect(findImports('A.svelte', text).map(({ specifier, line }) => [specifier, line])).toEqual([['a', 2], ['./B.svelte', 6]]);
  });

  it('round in circles', () => {
    expect(findCycles([['a', 'b'], ['b', 'c'], ['c', 'a'], ['c', 'd']])).toEqual(['a -> b -> c -> a']);
    expect(findCycles([['a', 'a']])).toEqual(['a -> a']);
    expect(findCycles([['a', 'b'], ['a', 'c'], ['b', 'd'], ['c', 'd']])).toEqual([]);
  });
});

describe('the lint rule', () => {
  const eslint = new ESLint({ cwd: ROOT, overrideConfigFile: 'test/architecture/eslint.config.js' });
  const complaints = async (filePath: string, text: string) => {
    const [result] = await eslint.lintText(text, { filePath: join(ROOT, filePath) });
    return result?.messages.map(({ ruleId, severity, message }) => [ruleId, severity, message]);
  };
  const refused = (why: string) => [['struckline/import-table', 2, `${why} See test/architecture/import-table.ts.`]];

  it.each([
    ['shared-core/units/planted.ts', "export * from 'zod';\n", 'shared-core/units may not import the package zod.'],
    ['shared-core/units/planted.ts', "export const value = import('zod');\n", 'shared-core/units may not import the package zod.'],
    ['shared-core/drawing/planted.ts', "export { planHouse } from '../plan/index.ts';\n", 'shared-core/drawing may import only types of shared-core/plan, with "import type".'],
    ['src-main/loopback/planted.ts', "import 'electron';\n", 'src-main/loopback may not import the package electron.'],
    ['src-renderer/places/order/Planted.svelte', '<script lang="ts">\n  import \'../survey/survey.svelte.ts\';\n</script>\n', 'src-renderer/places/order may not import src-renderer/places/survey.'],
    ['src-renderer/state/planted.svelte.ts', "import 'electron';\n", 'src-renderer/state may not import the package electron.'],
  ])('refuses in %s what the table refuses', async (file, text, why) => {
    expect(await complaints(file, text)).toEqual(refused(why));
  });

  it('refuses what is not the same every time in shared-core, there alone', async () => {
    const text = 'export const value = [Date.now(), Math.random(), "a".localeCompare("b"), new Intl.Collator()];\n';
    expect((await complaints('shared-core/base/planted.ts', text))?.map(([rule]) => rule)).toEqual([
      'no-restricted-globals', 'no-restricted-properties', 'no-restricted-properties', 'no-restricted-globals',
    ]);
    expect(await complaints('src-main/office/planted.ts', text)).toEqual([]);
  });

  it('refuses a file that has grown too long', async () => {
    const lines = (count: number) => Array.from({ length: count }, (_, index) => `export const v${index} = ${index};\n`).join('');
    expect((await complaints('shared-core/base/planted.ts', lines(451)))?.map(([rule]) => rule)).toEqual(['max-lines']);
    expect(await complaints('shared-core/base/planted.ts', lines(450))).toEqual([]);
  });
});
