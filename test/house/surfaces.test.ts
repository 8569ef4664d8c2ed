import { describe, expect, test } from 'vitest';
import { applyEdit, type Edit, type House, nameEdit, writeDocument } from '../../shared-core/house/index.ts';
import { houseOf, made } from '../builders.ts';

const DOCUMENT = {
  format: 'struckline-house',
  version: 1,
  name: 'Alder',
  currency: 'EUR',
  coverings: [{ id: 'chalk', kind: 'paint', name: 'Chalk' }, { id: 'fern', kind: 'wallcovering', width: '53 cm', rollLength: '10.05 m' }],
  rooms: [{ id: 'hall', name: 'Hall', walls: ['A', 'B'].map((id) => ({ id, length: '3 m', height: '2.4 m' })), woodwork: { covering: 'chalk' } }],
};
const house = (): House => houseOf(DOCUMENT);
const refusedBy = (house: House, edit: Edit) => {
  const outcome = applyEdit(house, edit);
  return outcome.ok ? '' : outcome.faults.map(({ path, message }) => `${path} ${message}`).join(' ');
};
const GLOSS = { kind: 'painted-gloss', states: ['cracked', 'holes'], affected: 20, year: 1974 } as const;
const edit = (surfaces: Extract<Edit, { kind: 'set-surfaces' }>['surfaces']): Edit => ({ kind: 'set-surfaces', room: 'hall', surfaces });

describe('surfaces', () => {
  test('of walls, ceiling and woodwork are set in one edit, named by it, and written out and read again', () => {
    const set = edit([{ of: { wall: 'B' }, surface: { ...GLOSS, states: [...GLOSS.states] } }, { of: 'ceiling', surface: { kind: 'textured', states: [] } }, { of: 'woodwork', surface: { kind: 'wood', states: [] } }]);
    expect(nameEdit(house(), set)).toBe('change the surface of wall B, ceiling and woodwork in Hall');
    const after = made(house(), set);
    expect(after.rooms[0]!.walls.map(({ surface }) => surface)).toEqual([undefined, GLOSS]);
    expect([after.rooms[0]!.ceilingSurface?.kind, after.rooms[0]!.woodwork?.surface]).toEqual(['textured', { kind: 'wood', states: [], affected: 100 }]);
    expect(writeDocument(houseOf(JSON.parse(writeDocument(after))))).toBe(writeDocument(after));
    const none = made(after, edit([{ of: { wall: 'B' }, surface: null }, { of: 'ceiling', surface: null }, { of: 'woodwork', surface: null }]));
    expect(none).toEqual(house());
  });

  test.each<[string, Edit, string]>([
    ['a wall that is not there', edit([{ of: { wall: 'Z' }, surface: null }]), 'Z'],
    ['a kind that is none', edit([{ of: 'ceiling', surface: { kind: 'cheese' as 'wood', states: [] } }]), '"new-plaster"'],
    ['a state that is none', edit([{ of: 'ceiling', surface: { kind: 'wood', states: ['tired' as 'damp'] } }]), '"mould"'],
    ['a share of nothing', edit([{ of: 'ceiling', surface: { kind: 'wood', states: [], affected: 0 } }]), 'from 1 to 100'],
  ])('%s is refused and named', (_what, wrong, named) => {
    expect(refusedBy(house(), wrong)).toContain(named);
  });

  test('of woodwork that is not painted are refused, as is woodwork in anything but a paint', () => {
    const bare = made(house(), { kind: 'change-room', room: 'hall', facts: { woodwork: null } });
    expect(refusedBy(bare, edit([{ of: 'woodwork', surface: null }]))).toContain('not painted in Hall');
    expect(refusedBy(house(), { kind: 'change-room', room: 'hall', facts: { woodwork: { covering: 'fern' } } })).toContain('woodwork takes a paint');
    expect(refusedBy(house(), { kind: 'remove-covering', covering: 'chalk' })).toContain('Hall');
  });
});

describe('the work', () => {
  test('takes its people, hours, days and rates, and says what is wrong with them', () => {
    const work = made(house(), { kind: 'change-house', facts: { work: { people: 2, rate: '45.50', holidays: ['2026-12-25'] } } }).work;
    expect(work).toMatchObject({ people: 2, hours: 8, days: ['mon', 'tue', 'wed', 'thu', 'fri'], rate: '45.50', holidays: ['2026-12-25'] });
    for (const [wrong, named] of [[{ people: 0 }, 'from 1 to 50'], [{ hours: 25 }, 'from 1 to 16'], [{ days: [] }, 'names no day'], [{ rate: '4,555.1' }, 'rate'], [{ starts: 'soon' }, '2026-03-02']] as const) {
      expect(refusedBy(house(), { kind: 'change-house', facts: { work: wrong as never } })).toContain(named);
    }
  });

  test('says one thing of each task and of each material', () => {
    expect(refusedBy(house(), { kind: 'set-tasks', tasks: [{ task: 'hall.strip', day: '2026-03-02' }, { task: 'hall.strip', minutes: 60 }] })).toContain('once more');
    expect(refusedBy(house(), { kind: 'set-materials', materials: [{ material: 'filler', packs: [{ amount: 1, price: 'much' }] }] })).toContain('materials[0].packs[0].price');
    expect(refusedBy(house(), { kind: 'set-expenses', expenses: [{ what: 'skip', cost: 'free' }] })).toContain('expenses[0].cost');
  });
});
