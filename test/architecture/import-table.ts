import { isBuiltin } from 'node:module';
import { dirname, join, normalize } from 'node:path/posix';

/** What the files of one place may import; everything that is not named is refused. */
export interface TableRow {
  /** A folder or a single file; `*` stands for exactly one name. The longest place that holds a file is its row. */
  readonly place: string;
  /** Folders and files of the repository; a folder stands for all that is in it. */
  readonly imports: readonly string[];
  /** Folders of which only types may be imported, with `import type`. */
  readonly typesOf?: readonly string[];
  /** npm packages, by the name under which they are installed. */
  readonly packages?: readonly string[];
  readonly nodeBuiltins?: true;
}

const CORE = 'shared-core';
/** Every room may say something; words are named nowhere else. */
const core = (...folders: readonly string[]) => ['words', ...folders].map((folder) => `${CORE}/${folder}`);
const UP_TO_ORDERING = core('base', 'units', 'house', 'survey', 'cutting', 'setting-out', 'ordering');
const SVELTE = ['svelte', 'bits-ui', '@lucide/svelte'];

/** The rooms of the house. A folder imports freely within itself; `test/` alone stands outside of the table. */
export const IMPORT_TABLE: readonly TableRow[] = [
  { place: 'shared-core/base', imports: [] },
  { place: 'shared-core/words', imports: [] },
  { place: 'shared-core/units', imports: core('base') },
  { place: 'shared-core/house', imports: core('base', 'units'), packages: ['zod'] },
  { place: 'shared-core/survey', imports: core('base', 'units', 'house') },
  { place: 'shared-core/cutting', imports: core('base', 'units') },
  { place: 'shared-core/setting-out', imports: core('base', 'units', 'house', 'survey', 'cutting') },
  { place: 'shared-core/ordering', imports: core('base', 'units', 'house', 'survey', 'cutting', 'setting-out') },
  { place: 'shared-core/prep', imports: core('base', 'units', 'house', 'survey') },
  { place: 'shared-core/calendar', imports: core('base', 'units', 'house', 'prep', 'setting-out', 'ordering') },
  { place: 'shared-core/costing', imports: [...UP_TO_ORDERING, ...core('prep', 'calendar')] },
  { place: 'shared-core/plan', imports: [...UP_TO_ORDERING, ...core('prep', 'calendar', 'costing')] },
  { place: 'shared-core/contract', imports: core('base', 'units', 'house'), typesOf: core('plan'), packages: ['zod'] },
  // The plan's types are made of those of setting out and survey.
  { place: 'shared-core/drawing', imports: core('base', 'units', 'house'), typesOf: core('plan', 'setting-out', 'survey') },

  { place: 'src-main/store', imports: [CORE], packages: ['better-sqlite3', 'kysely'], nodeBuiltins: true },
  // Which letters a font has, the library that sets the pages keeps to itself.
  { place: 'src-main/documents', imports: [CORE], packages: ['pdfmake', 'fontkit', 'ical-generator'], nodeBuiltins: true },
  // The manifest tells the program its own version.
  { place: 'src-main/office', imports: ['src-main/store', 'src-main/documents', CORE, 'package.json'], nodeBuiltins: true },
  { place: 'src-main/desktop', imports: ['src-main/office', ...core('contract')], packages: ['electron'], nodeBuiltins: true },
  { place: 'src-main/loopback', imports: ['src-main/office', ...core('contract')], packages: ['fastify', '@fastify/cookie'], nodeBuiltins: true },
  { place: 'src-main/command-line', imports: ['src-main/office', ...core()], typesOf: [CORE], nodeBuiltins: true },
  { place: 'src-main/start.ts', imports: [], nodeBuiltins: true },

  { place: 'src-renderer/host', imports: core('contract') },
  { place: 'src-renderer/state', imports: [CORE, 'src-renderer/host'], packages: ['svelte'] },
  // What cannot be read as a length comes back as faults, whose type is base's.
  { place: 'src-renderer/parts', imports: core('units'), typesOf: core('base'), packages: SVELTE },
  // The one file that shows a PDF; it is loaded only where one is looked at.
  { place: 'src-renderer/parts/pdf-pages.ts', imports: [], packages: ['pdfjs-dist'] },
  { place: 'src-renderer/drawing', imports: [CORE, 'src-renderer/parts'], packages: SVELTE },
  {
    place: 'src-renderer/places/*',
    imports: [CORE, 'src-renderer/host', 'src-renderer/state', 'src-renderer/parts', 'src-renderer/drawing'],
    packages: SVELTE,
  },
  // What stands beside the folders: the window's first page, its style and its first component.
  { place: 'src-renderer', imports: ['src-renderer', ...core()], packages: [...SVELTE, '@fontsource/atkinson-hyperlegible-next'] },
  { place: 'src-renderer/svelte.config.js', imports: [], packages: ['@sveltejs/vite-plugin-svelte'] },

  { place: 'electron.vite.config.ts', imports: ['src-main/documents/pdf/fonts.ts'], packages: ['electron-vite', 'vite', '@sveltejs/vite-plugin-svelte'], nodeBuiltins: true },
  { place: 'build-resources/electron-builder.ts', imports: [], packages: ['electron-builder'] },
];

const UNJUDGED = ['test'];
/** Folders whose own files stand beside their folders, as in `src-renderer/main.ts`; elsewhere a file has a folder. */
const WITH_FILES_BESIDE_FOLDERS = ['src-renderer'];
const FILE_ENDINGS = /\.(ts|js|mjs|svelte|json|css|svg|woff2)$/;

/**
 * Judges one import by the table: null where it is allowed, else one sentence that says why not.
 *
 * Shapes: `file` is the importing file's path from the root of the repository, with slashes; `specifier` stands as
 * written; `isTypeOnly` is true for `import type` and `export type`, whose module is gone at run time.
 * Example: `judgeImport('shared-core/units/area.ts', 'zod')` is "shared-core/units may not import the package zod."
 */
export function judgeImport(file: string, specifier: string, isTypeOnly = false): string | null {
  if (UNJUDGED.some((folder) => isWithin(file, folder))) return null;
  const row = rowOf(file);
  if (!row) return `${file} is in no folder of the import table.`;
  const place = placeOf(file);
  const bare = specifier.replace(/[?#].*$/, '');
  if (bare.startsWith('.')) return judgeFile(row, place, normalize(join(dirname(file), bare)), isTypeOnly);
  if (isBuiltin(bare)) {
    if (!row.nodeBuiltins) return `${place} may not import ${bare}, which is Node's.`;
    return bare.startsWith('node:') ? null : `${bare} is written node:${bare}.`;
  }
  if (!/^[@a-z]/.test(bare) || bare.includes(':')) return `${specifier} is neither a relative path nor a package.`;
  const packageName = bare.split('/', bare.startsWith('@') ? 2 : 1).join('/');
  return row.packages?.includes(packageName) ? null : `${place} may not import the package ${packageName}.`;
}

function judgeFile(row: TableRow, place: string, target: string, isTypeOnly: boolean): string | null {
  if (!FILE_ENDINGS.test(target)) return `${target} does not name a file with its ending, such as .ts.`;
  const targetPlace = placeOf(target);
  if (targetPlace === place || row.imports.some((allowed) => isWithin(target, allowed))) return null;
  if (!row.typesOf?.some((allowed) => isWithin(target, allowed))) return `${place} may not import ${targetPlace}.`;
  return isTypeOnly ? null : `${place} may import only types of ${targetPlace}, with "import type".`;
}

/** The row of a file, or undefined where the table has no place for it. */
function rowOf(file: string): TableRow | undefined {
  return IMPORT_TABLE.filter(({ place }) => patternOf(place).test(file)).sort((one, other) => other.place.length - one.place.length)[0];
}

function patternOf(place: string): RegExp {
  const path = place.replaceAll('.', '\\.').replaceAll('*', '[^/]+');
  if (FILE_ENDINGS.test(place)) return new RegExp(`^${path}$`);
  return new RegExp(WITH_FILES_BESIDE_FOLDERS.includes(place) ? `^${path}/[^/]+$` : `^${path}/`);
}

/** The place that holds a file, by its own name: the row's place with names for its stars, else the folder it lies in. */
function placeOf(file: string): string {
  const row = rowOf(file);
  if (row) return file.split('/').slice(0, row.place.split('/').length).join('/');
  return file.includes('/') ? dirname(file) : file;
}

function isWithin(file: string, place: string): boolean {
  return file === place || file.startsWith(`${place}/`);
}
