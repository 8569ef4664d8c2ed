import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { CAUTION_KINDS } from '../../shared-core/prep/index.ts';
import { jobSheets } from '../../src-main/documents/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { documentOf, houseOf, room } from '../builders.ts';

const demo = demoHouse();
const plan = planHouse(demo);
/** The sheet of each room by its name. */
const sheetsOf = (text: string) => new Map(text.split(/\n\n(?=[^\n]+, Larkfield)/).map((sheet) => [sheet.slice(0, sheet.indexOf(', Larkfield')), sheet]));
const sheets = sheetsOf(jobSheets(demo, plan));
const sheetOf = (id: string) => sheets.get(demo.rooms.find((one) => one.id === id)!.name) ?? '';

describe('job sheets', () => {
  test('carry every kind of caution there is, each in full at the head of its room with its threshold and source', () => {
    expect(new Set(plan.prep.cautions.map(({ kind }) => kind))).toEqual(new Set(CAUTION_KINDS));
    for (const { room: id, words, threshold, ask, source } of plan.prep.cautions) {
      const full = [`! ${words}`, ...[threshold, ask, source].filter((line) => line !== null).map((line) => `    ${line}`)].join('\n');
      expect(sheetOf(id).includes(full), full).toBe(true);
    }
  });

  test('have the tasks of a room in their order, each with its own cautions beside it', () => {
    for (const { id } of demo.rooms) {
      const tasks = plan.prep.tasks.filter((task) => task.room === id);
      const places = tasks.map(({ words }) => sheetOf(id).indexOf(`. ${words}\n`));
      expect(places.every((place) => place > 0)).toBe(true);
      for (const [index, task] of tasks.entries()) {
        const beside = sheetOf(id).slice(places[index], sheetOf(id).indexOf('\n[ ]', places[index]));
        for (const caution of plan.prep.cautions.filter((one) => task.cautions.includes(one.id))) expect(beside).toContain(`    ! ${caution.words}`);
      }
    }
  });

  test('keep a caution where a task is done by others', () => {
    const task = plan.prep.tasks.find(({ cautions }) => cautions.length > 0)!;
    const others = { ...demo, tasks: [{ task: task.id, isOthers: true }] };
    const sheet = sheetsOf(jobSheets(others, planHouse(others))).get(demo.rooms.find(({ id }) => id === task.room)!.name)!;
    const beside = sheet.slice(sheet.indexOf(`. ${task.words}\n`)).split('\n[ ]')[0]!;
    expect(beside).toContain('done by others');
    expect(beside).toContain(`! ${plan.prep.cautions.find(({ id }) => id === task.cautions[0])!.words}`);
  });

  test('have each piece of a room once, by its roll', () => {
    for (const { id } of demo.rooms) {
      const pieces = plan.cuts.flatMap(({ rolls }) => rolls.flatMap(({ cuts }) => cuts.filter(({ placed }) => placed.room === id)));
      expect((sheetOf(id).split('\nWhat is cut for it\n')[1] ?? '').match(/^ {4}.+: .+ from .+$/gm) ?? []).toHaveLength(pieces.length);
    }
  });

  test('say what to do where there is nothing to do', () => {
    const house = houseOf(documentOf({ rooms: [room(['100 in', '90 in'], { bands: [] })] }));
    expect(jobSheets(house, planHouse(house))).toBe('Nothing to do yet: say what is on the walls, or hang something in a room.\n');
  });
});
