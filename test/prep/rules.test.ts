import { describe, expect, test } from 'vitest';
import { PHASES, RULES } from '../../shared-core/prep/index.ts';
import { oneWall, prepared, taskOf } from './prepared.ts';

const DAY = 24 * 60;
/** A task on a wall of 10 m²: its rule, minutes, minutes of waiting and what it uses. */
type Expected = readonly [rule: string, minutes: number, wait: number, materials?: Readonly<Record<string, number>>];

const STRIPPED_SIZED: readonly Expected[] = [['wash-paste', 40, DAY], ['size', 30, 120, { size: 1000 }], ['loosen-plates', 10, 0]];

const CASES: readonly (readonly [what: string, surface: object, covering: string | null, expected: readonly Expected[]])[] = [
  ['strippable paper', { kind: 'paper-strippable' }, 'paper', [['strip-dry', 40, 0], ...STRIPPED_SIZED]],
  ['overpainted paper', { kind: 'paper-overpainted' }, 'paper', [['strip-overpainted', 150, 0, { stripper: 200 }], ...STRIPPED_SIZED]],
  ['vinyl paper', { kind: 'paper-vinyl' }, 'paper', [['strip-vinyl', 80, 0, { stripper: 100 }], ...STRIPPED_SIZED]],
  ['paper under a border alone', { kind: 'paper-strippable' }, 'border', []],
  ['paper to be painted', { kind: 'paper-strippable' }, 'paint', [['strip-dry', 40, 0], ['wash-paste', 40, DAY], ['mist-coat', 40, 240, { 'mist-coat': 1200 }]]],
  ['new plaster to be papered', { kind: 'new-plaster' }, 'paper', [['dry-plaster', 15, 28 * DAY], ['size', 30, 120, { size: 1000 }], ['loosen-plates', 10, 0]]],
  ['new plaster to be painted', { kind: 'new-plaster' }, 'paint', [['dry-plaster', 15, 28 * DAY], ['mist-coat', 40, 240, { 'mist-coat': 1200 }]]],
  ['sound old plaster to be lined', { kind: 'old-plaster' }, 'lining', [['size', 30, 120, { size: 1000 }], ['loosen-plates', 10, 0]]],
  ['damp, half of it', { kind: 'old-plaster', states: ['damp'], affected: 50 }, null, [['find-damp', 60, 14 * DAY]]],
  ['mould, a tenth of it', { kind: 'painted-matt', states: ['mould'], affected: 10 }, null, [['treat-mould', 15, DAY, { 'mould-treatment': 150 }]]],
  ['sound matt paint to be painted', { kind: 'painted-matt' }, 'paint', [['wash', 30, 240, { 'sugar-soap': 50 }]]],
  [
    'flaking matt paint, a fifth of it',
    { kind: 'painted-matt', states: ['flaking'], affected: 20 },
    'paint',
    [['scrape-flaking', 30, 240, { abrasive: 1 }], ['wash', 30, 240, { 'sugar-soap': 50 }], ['bind-flaking', 10, 960, { stabiliser: 240 }]],
  ],
  [
    'nicotine and grease',
    { kind: 'painted-matt', states: ['nicotine', 'grease'] },
    'paint',
    [['wash-nicotine', 60, 720, { 'sugar-soap': 100 }], ['degrease', 60, 240, { degreaser: 300 }], ['wash', 30, 240, { 'sugar-soap': 50 }], ['seal-nicotine', 50, 240, { 'stain-block': 1000 }]],
  ],
  [
    'cracks and holes in a tenth',
    { kind: 'old-plaster', states: ['cracked', 'holes'], affected: 10 },
    'paint',
    [['fill-cracks', 12, DAY, { filler: 500 }], ['fill-holes', 10, DAY, { filler: 400 }], ['sand-filled', 6, 0, { abrasive: 1 }], ['mist-coat', 40, 240, { 'mist-coat': 1200 }]],
  ],
  [
    'gloss to be papered',
    { kind: 'painted-gloss' },
    'paper',
    [['wash', 30, 240, { 'sugar-soap': 50 }], ['key-gloss', 50, 120, { abrasive: 4 }], ['prime-gloss', 40, 720, { 'adhesion-primer': 1000 }], ['loosen-plates', 10, 0]],
  ],
  ['gloss to be painted', { kind: 'painted-gloss' }, 'paint', [['wash', 30, 240, { 'sugar-soap': 50 }], ['key-gloss', 50, 120, { abrasive: 4 }]]],
  [
    'gypsum board to be papered',
    { kind: 'gypsum-board' },
    'paper',
    [['fill-joints', 60, DAY, { 'jointing-filler': 3000 }], ['sand-joints', 30, 0, { abrasive: 1 }], ['prime-board', 40, 240, { 'wallcovering-primer': 1000 }], ['loosen-plates', 10, 0]],
  ],
  ['gypsum board to be painted', { kind: 'gypsum-board' }, 'paint', [['fill-joints', 60, DAY, { 'jointing-filler': 3000 }], ['sand-joints', 30, 0, { abrasive: 1 }], ['seal-board', 40, 240, { 'board-sealer': 1000 }]]],
  [
    'tiles to be papered',
    { kind: 'tile' },
    'paper',
    [['wash', 30, 240, { 'sugar-soap': 50 }], ['skim-tile', 150, 2 * DAY, { 'bonding-coat': 1000, 'skim-filler': 15000 }], ['size', 30, 120, { size: 1000 }], ['loosen-plates', 10, 0]],
  ],
  ['tiles to be painted', { kind: 'tile' }, 'paint', [['wash', 30, 240, { 'sugar-soap': 50 }], ['prime-tile', 40, 720, { 'adhesion-primer': 1000 }]]],
  ['wood', { kind: 'wood' }, 'paint', [['sand-wood', 60, 0, { abrasive: 5 }], ['knot', 20, 60, { knotting: 100 }], ['prime-wood', 60, 960, { 'wood-primer': 900 }]]],
];

/** The same in a house in which asbestos has to be expected. */
const SUSPECTED: typeof CASES = [
  [
    'textured coating to be papered',
    { kind: 'textured' },
    'paper',
    [['test-texture', 30, 7 * DAY], ['wipe-texture', 30, 240], ['skim-texture', 200, 3 * DAY, { 'bonding-coat': 1000, 'skim-filler': 30000 }], ['size', 30, 120, { size: 1000 }], ['loosen-plates', 10, 0]],
  ],
  [
    'damaged textured coating to be painted',
    { kind: 'textured', states: ['flaking', 'holes'], affected: 10 },
    'paint',
    [['test-texture', 30, 7 * DAY], ['wipe-texture', 30, 240], ['bind-texture', 6, 960, { stabiliser: 150 }], ['fill-texture', 12, DAY, { filler: 400 }]],
  ],
  ['textured coating on which nothing comes', { kind: 'textured' }, null, [['leave-texture', 0, 0]]],
];

const shown = (house: Parameters<typeof prepared>[0]) =>
  prepared(house).tasks.map(({ rule, minutes, waitMinutes, materials }) => [rule, minutes, waitMinutes, Object.fromEntries(materials.map(({ material, amount }) => [material, amount]))]);
const full = (expected: readonly Expected[]) => expected.map(([rule, minutes, wait, materials = {}]) => [rule, minutes, wait, materials]);

describe('what a wall of 10 m² wants', () => {
  test.each(CASES)('%s', (_, surface, covering, expected) => {
    expect(shown(oneWall(surface, covering))).toEqual(full(expected));
  });

  test.each(SUSPECTED)('%s', (_, surface, covering, expected) => {
    expect(shown(oneWall(surface, covering, { house: { built: 1960 } }))).toEqual(full(expected));
  });

  test('is nothing where no surface is known, or where it is sound and nothing comes on it', () => {
    expect(shown(oneWall(undefined, 'paper'))).toEqual([]);
    expect(shown(oneWall({ kind: 'paper-strippable' }, null))).toEqual([]);
    expect(shown(oneWall({ kind: 'textured', year: 2005 }, null, { house: { built: 1960 } }))).toEqual([]);
  });

  test('is worked out here for every rule of the table', () => {
    const seen = new Set([...CASES, ...SUSPECTED].flatMap(([, , , expected]) => expected.map(([rule]) => rule)));
    expect(RULES.map(({ id }) => id).filter((id) => !seen.has(id))).toEqual([]);
    expect(new Set(RULES.map(({ id }) => id)).size).toBe(RULES.length);
  });
});

describe('the table', () => {
  test('goes phase by phase', () => {
    const places = RULES.map(({ phase }) => PHASES.indexOf(phase));
    expect(places).toEqual(places.toSorted((one, other) => one - other));
  });

  test('never sands, scrapes or rakes out a textured coating', () => {
    const onTexture = RULES.filter(({ kinds }) => !kinds || kinds.includes('textured')).map(({ id }) => id);
    expect(onTexture.filter((id) => /sand|scrape|strip|key|cracks/.test(id))).toEqual([]);
  });

  test('has moisture read before new plaster is papered', () => {
    const { checks } = taskOf(prepared(oneWall({ kind: 'new-plaster' }, 'paper')).tasks, 'dry-plaster');
    expect(checks[0]).toBe('Take a moisture reading; how dry it has to be, the instructions of what comes next say.');
  });

  test('gives way to the instructions of whatever it uses', () => {
    const { tasks } = prepared(oneWall({ kind: 'painted-gloss' }, 'paper'));
    expect(tasks.map(({ materials, checks }) => [materials.length > 0, checks.includes('The material’s own instructions come first.')])).toEqual(tasks.map(({ materials }) => [materials.length > 0, materials.length > 0]));
  });
});

describe('the tasks of a room', () => {
  const filled = { kind: 'old-plaster', states: ['holes'], affected: 10 };
  const walls = [
    { id: 'A', length: '4 m', height: '2.5 m', surface: filled },
    { id: 'B', length: '3 m', height: '2.5 m', surface: { kind: 'paper-strippable' } },
    { id: 'C', length: '4 m', height: '2.5 m', surface: filled },
    { id: 'D', length: '3 m', height: '2.5 m' },
  ];
  const bands = [{ id: 'band', covering: 'paper', walls: ['A', 'B', 'C', 'D'] }];
  const room = { walls, bands, ceiling: { covering: 'paint' }, ceilingSurface: { kind: 'painted-matt', states: ['nicotine'], affected: 50 } };
  const house = oneWall(undefined, null, { room });

  test('by one rule are one over several surfaces, after what is before them on each', () => {
    const { tasks } = prepared(house);
    expect(tasks.map(({ rule, words, area, minutes, after }) => [rule, words, area / 320_000 ** 2, minutes, after.map((id) => id.replace('room:prepare:', ''))])).toEqual([
      ['strip-dry', 'Strip the paper off dry: wall B', 7.5, 30, []],
      ['wash-paste', 'Wash the old paste off: wall B', 7.5, 30, ['strip-dry']],
      ['wash-nicotine', 'Wash the nicotine off with sugar soap and rinse: the ceiling', 6, 36, []],
      ['wash', 'Wash down with sugar soap and rinse: the ceiling', 12, 36, ['wash-nicotine']],
      ['fill-holes', 'Fill the holes: walls A and C', 2, 20, []],
      ['sand-filled', 'Sand what was filled: walls A and C', 2, 12, ['fill-holes']],
      ['seal-nicotine', 'Seal the stains with stain block: the ceiling', 6, 30, ['wash']],
      ['size', 'Size for the paper: walls A, B and C', 27.5, 83, ['sand-filled', 'wash-paste']],
      ['loosen-plates', 'Isolate the circuit and loosen the plates of sockets and switches: walls A, B and C', 27.5, 30, ['size']],
    ]);
  });

  test('keep their ids and order, and take the minutes that the user said', () => {
    const id = 'room:prepare:size';
    const plan = prepared(house);
    expect(prepared(house)).toEqual(plan);
    const { tasks } = prepared({ ...house, tasks: [{ task: id, minutes: 5 }] });
    expect(tasks).toEqual(plan.tasks.map((task) => (task.id === id ? { ...task, minutes: 5 } : task)));
  });

  test('count a ceiling as nothing where the walls do not go round, and say so', () => {
    const { tasks } = prepared(oneWall(undefined, null, { room: { ceiling: { covering: 'paint' }, ceilingSurface: { kind: 'painted-matt' } } }));
    expect(tasks.map(({ rule, area, minutes, checks }) => [rule, area, minutes, checks.at(-1)])).toEqual([['wash', 0, 0, 'The walls do not go all the way round, so the ceiling counts as nothing here: measure it.']]);
  });

  test('are those of its woodwork too', () => {
    const { tasks } = prepared(oneWall(undefined, null, { room: { woodwork: { covering: 'paint', skirting: '100 mm', surface: { kind: 'painted-gloss' } } } }));
    expect(tasks.map(({ words, minutes }) => [words, minutes])).toEqual([['Wash down with sugar soap and rinse: the woodwork', 2], ['Key the gloss with wet abrasive until it is dull: the woodwork', 2]]);
  });
});
