import { type House, ownRateOf, type Room, type TaskChoice } from '../house/index.ts';
import { addAreas, type Area } from '../units/index.ts';
import { amountOver, shareOf } from './areas.ts';
import { cautionsOf, isCoatingSuspected, type RoomWork } from './caution-triggers.ts';
import { cautionId, findCautions } from './cautions.ts';
import { findMaterials } from './materials.ts';
import { type MetSurface, meetSurfaces, type RoomToPrepare } from './met-surface.ts';
import type { PrepPlan, Task } from './prep-plan.ts';
import type { Rule } from './rule.ts';
import { RULES } from './rules.ts';
import { say, sayList } from '../words/index.ts';

/**
 * What the surfaces of a house want before they are covered: tasks by the table of rules, cautions, materials.
 *
 * Shapes: rooms with their outlines as they are planned, for the areas of ceilings. Rooms in the order of the house, the
 * tasks of a room in the order of the work; each comes after the one before it on each of its surfaces. Minutes that the
 * user said stand instead of ours. What somebody else does stays a task, with its cautions, and takes no materials.
 * A wall, ceiling or woodwork of which no surface is known has no tasks.
 * Example: 10 m² of old plaster to be papered are one task, 30 minutes and 1,000 ml of size, and one for its plates.
 */
export function planPrep(house: House, rooms: readonly RoomToPrepare[]): Pick<PrepPlan, 'tasks' | 'cautions' | 'materials'> {
  const outlines = new Map(rooms.map(({ id, outline }) => [id, outline]));
  const choices = new Map(house.tasks.map((choice) => [choice.task, choice]));
  const worked = house.rooms.map((room) => ({ room, works: worksIn(house, meetSurfaces(house, room, outlines.get(room.id))) }));
  const tasks = worked.flatMap(({ room, works }) => tasksOf(house, room, works, choices));
  return { tasks, cautions: worked.flatMap(({ room, works }) => findCautions(works, house, room)), materials: findMaterials(house, tasks, rooms) };
}

function worksIn(house: House, surfaces: readonly MetSurface[]): readonly RoomWork[] {
  return RULES.map((rule) => ({ rule, parts: surfaces.filter((met) => holdsFor(rule, met, house)).map((met) => ({ met, area: areaFor(rule, met) })) })).filter(({ parts }) => parts.length > 0);
}

function holdsFor({ on, kinds, states, next, isForSuspected }: Rule, { of, surface, next: comes }: MetSurface, house: House): boolean {
  return (
    (!on || on.includes(of.kind)) &&
    (!kinds || kinds.includes(surface.kind)) &&
    (!states || states.some((state) => surface.states.includes(state))) &&
    next.some((one) => comes.includes(one)) &&
    (!isForSuspected || isCoatingSuspected(surface, house))
  );
}

function areaFor({ over }: Rule, { area, papered, surface }: MetSurface): Area {
  if (over === 'papered') return papered;
  return over === 'whole' ? area : shareOf(area, surface.affected);
}

function tasksOf(house: House, room: Room, works: readonly RoomWork[], choices: ReadonlyMap<string, TaskChoice>): readonly Task[] {
  const lastOn = new Map<MetSurface, string>();
  return works.map((work): Task => {
    const { rule, parts } = work;
    const id = taskId(room.id, rule.id);
    const after = [...new Set(parts.flatMap(({ met }) => lastOn.get(met) ?? []))];
    parts.forEach(({ met }) => lastOn.set(met, id));
    const area = addAreas(...parts.map((part) => part.area));
    const materials = rule.materials.map(({ material, amount, squareMetres }) => ({ material, amount: amountOver(area, amount, squareMetres) }));
    return {
      id,
      room: room.id,
      rule: rule.id,
      words: rule.words(sayWhere(room, parts.map(({ met }) => met))),
      surfaces: parts.map(({ met }) => met.of),
      area,
      minutes: choices.get(id)?.minutes ?? minutesOf(rule, ownRateOf(house, rule.id) ?? rule.minutes, area, parts.length),
      people: rule.people,
      waitMinutes: rule.waitMinutes,
      after,
      materials,
      checks: [
        ...rule.checks,
        ...(materials.length > 0 ? [say`The material’s own instructions come first.`] : []),
        ...(parts.some(({ met }) => !met.isMeasured) ? [say`The walls do not go all the way round, so the ceiling counts as nothing here: measure it.`] : []),
      ],
      cautions: cautionsOf(work, house, room).map((kind) => cautionId(room.id, kind)),
      source: rule.source,
    };
  });
}

/** With its colons it is unlike any id that a house has, and it stays as long as the room and the rule do. */
function taskId(room: string, rule: string): string {
  return `${room}:prepare:${rule}`;
}

function minutesOf({ per }: Rule, minutes: number, area: Area, surfaces: number): number {
  if (per === 'square-metre') return amountOver(area, minutes);
  return per === 'surface' ? minutes * surfaces : minutes;
}

function sayWhere(room: Room, surfaces: readonly MetSurface[]): string {
  const walls = surfaces.flatMap(({ of }) => (of.kind === 'wall' ? [of.wall] : []));
  const others = surfaces.flatMap(({ of }) => (of.kind === 'ceiling' ? [say`the ceiling`] : of.kind === 'woodwork' ? [say`the woodwork`] : []));
  return sayList([...(walls.length > 0 ? [sayWalls(room, walls)] : []), ...others]);
}

function sayWalls(room: Room, walls: readonly string[]): string {
  if (walls.length === 1) return say`wall ${walls[0]!}`;
  return walls.length === room.walls.length ? say`all walls` : say`walls ${sayList(walls)}`;
}
