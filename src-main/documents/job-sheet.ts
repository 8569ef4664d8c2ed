import { isForTwo, sayPeople, sayWhen } from '../../shared-core/calendar/index.ts';
import type { House } from '../../shared-core/house/index.ts';
import { type BandPlan, type HousePlan, nameRoom, type PaperSize, toolsFor } from '../../shared-core/plan/index.ts';
import { sayAmount, type Task } from '../../shared-core/prep/index.ts';
import { showArea, showLength, sayTime, sayWait } from '../../shared-core/units/index.ts';
import { say, sayList } from '../../shared-core/words/index.ts';
import { LABELS_READ, nameInFull, pasteFacts, rollsBlock } from './cut-list.ts';
import { plannedRuns } from './orders.ts';
import type { PaperFacts } from './paper-facts.ts';
import { spell } from './pdf/fonts.ts';
import { paintDrawing } from './pdf/paint-drawing.ts';
import { type Block, type Sheet, textArea } from './pdf/sheet.ts';
import { drawingsOfRoom } from './room-drawings.ts';

/** In points: a figure written with a carpenter's pencil. */
const ROOM_TO_WRITE = 22;
/** In points: of words and figures in drawings, to be read at arm's length. */
const DRAWN_TEXT = 9.5;

/**
 * What somebody needs on the wall of one room: what to heed, what to do in order, where to begin, what is cut from what.
 *
 * Every caution of the room stands in full at its head, and its words again beside each task that calls for it, also where
 * a task is done by others: nothing that can hurt somebody is left out for being said already.
 */
export function jobSheet(facts: PaperFacts, room: string, size: PaperSize): Sheet {
  const { house, plan } = facts;
  return {
    title: say`Job sheet`,
    about: nameRoom(house, room),
    blocks: [
      ...inShort(house, plan, room),
      ...worthALook(plan, room),
      ...cautions(plan, room),
      ...tasks(house, plan, room),
      ...tools(house, plan, room),
      ...drawings(house, plan, room, size),
      ...corners(house, room),
      ...hangings(facts, room),
      ...cuts(facts, room),
    ],
  };
}

function inShort(house: House, plan: HousePlan, room: string): readonly Block[] {
  const facts = house.rooms.find(({ id }) => id === room)!;
  const own = plan.jobs.filter((job) => job.room === room);
  const booked = plan.calendar?.bookings.filter(({ job }) => own.some(({ id }) => id === job)) ?? [];
  const [first, last] = [booked[0], booked.toSorted((one, other) => (one.to.day < other.to.day ? -1 : 1)).at(-1)];
  const hung = house.coverings.filter(({ id }) => facts.bands.some(({ covering }) => covering === id) || facts.ceiling?.covering === id);
  const of = [
    ...(facts.storey === undefined ? [] : [{ head: say`Storey`, text: facts.storey }]),
    ...(first && last ? [{ head: say`Worked in`, text: sayWhen({ ...first, to: last.to }) }] : []),
    ...hung.map(({ id, kind }) => ({ head: kind === 'paint' ? say`Painted` : say`Hung`, text: `${nameInFull(house, id)}${runOf(plan, room, id)}` })),
    ...(facts.note === undefined ? [] : [{ head: say`Note`, text: facts.note }]),
  ];
  return of.length > 0 ? [{ kind: 'facts', of }] : [];
}

/** What can't be met in the room, and what is worth a look there. */
function worthALook({ problems, warnings }: HousePlan, room: string): readonly Block[] {
  const own = (remarks: HousePlan['warnings']) => remarks.filter((remark) => remark.room === room).map(({ message }) => message);
  return [...own(problems).map((message): Block => ({ kind: 'caution', text: say`Can't be met: ${message}`, notes: [] })), ...own(warnings).map((message): Block => ({ kind: 'text', text: say`Look: ${message}` }))];
}

function runOf(plan: HousePlan, room: string, covering: string): string {
  const runs = plannedRuns(plan, room, covering);
  return runs.length === 0 ? '' : say`, run ${sayList(runs)}`;
}

function cautions({ prep }: HousePlan, room: string): readonly Block[] {
  const own = prep.cautions.filter((caution) => caution.room === room);
  if (own.length === 0) return [];
  return [
    { kind: 'heading', text: say`Before anybody begins` },
    ...own.map(({ words, threshold, ask, source }): Block => ({ kind: 'caution', text: words, notes: [...(threshold === null ? [] : [threshold]), ask, source] })),
    { kind: 'text', as: 'strong', text: say`The usual cautions, not advice for this house: local codes and licensed practice come first.` },
  ];
}

function tasks(house: House, plan: HousePlan, room: string): readonly Block[] {
  const own = plan.jobs.filter((job) => job.room === room);
  if (own.length === 0) return [];
  const of = own.map((job, index) => {
    const task = plan.prep.tasks.find(({ id }) => id === job.id);
    const said = [
      ...(task && task.area > 0 ? [showArea(task.area, house.lengths)] : []),
      ...(task ? materialsOf(plan, task) : []),
      ...(job.isOthers ? [sayPeople({ ...job, people: 0 })] : job.minutes > 0 ? [sayTime(job.minutes), sayPeople(job)] : []),
      ...(job.waitMinutes > 0 ? [say`then ${sayWait(job.waitMinutes)} before what follows`] : []),
    ];
    const heeded = plan.prep.cautions.filter(({ id }) => task?.cautions.includes(id)).map(({ words }) => `! ${words}`);
    return { text: `${index + 1}. ${job.words}`, notes: [...(task?.checks ?? []), ...heeded, said.join(' · '), ...(task ? [task.source] : [])].filter((note) => note !== '') };
  });
  return [{ kind: 'heading', text: say`What is to be done, in order` }, { kind: 'ticks', of }];
}

function materialsOf({ prep }: HousePlan, { materials }: Task): readonly string[] {
  return materials.map(({ material, amount }) => {
    const need = prep.materials.find((one) => one.material === material);
    return `${need?.words ?? material} ${sayAmount(amount, need?.unit ?? 'pieces')}`;
  });
}

function tools(house: House, plan: HousePlan, room: string): readonly Block[] {
  const all = toolsFor(house, plan, room);
  return all.length === 0 ? [] : [{ kind: 'heading', text: say`At hand` }, { kind: 'text', text: all.join('; ') }, { kind: 'text', as: 'soft', text: say`common practice, no source` }];
}

function drawings(house: House, plan: HousePlan, room: string, size: PaperSize): readonly Block[] {
  const all = drawingsOfRoom(house, plan, room, textArea(size), DRAWN_TEXT);
  return all.length === 0 ? [] : [{ kind: 'heading', text: say`Drawings to scale` }, ...all.map(({ title, scale, drawing, view }): Block => ({ kind: 'drawing', title, scale, ...paintDrawing(drawing, view, spell) }))];
}

/** Blanks for what is measured on site: every inside corner that is papered round, at the top, the middle and the bottom. */
function corners(house: House, id: string): readonly Block[] {
  const room = house.rooms.find((one) => one.id === id)!;
  const papered = new Set(room.bands.flatMap(({ walls }) => walls));
  const inside = room.walls.flatMap((wall, index) => {
    const next = room.walls[(index + 1) % room.walls.length]!;
    return wall.turn === 'inside' && wall !== next && (papered.has(wall.id) || papered.has(next.id)) ? [{ wall, next }] : [];
  });
  if (inside.length === 0) return [];
  const isStripped = room.bands.some(({ covering }) => house.coverings.some((one) => one.id === covering && one.kind !== 'border' && one.kind !== 'paint'));
  if (!isStripped) return [];
  return [
    {
      kind: 'table',
      heading: say`Corners: from the last strip’s edge to the corner, measured on site`,
      columns: [{ head: say`Corner`, width: 70 }, { head: say`Top`, isWide: true }, { head: say`Middle`, isWide: true }, { head: say`Bottom`, isWide: true }, { head: say`Widest, and the wrap`, isWide: true }],
      rows: inside.map(({ wall, next }) => [`${wall.id} – ${next.id}`, '', '', '', '']),
      rowHeight: ROOM_TO_WRITE,
    },
    { kind: 'text', as: 'soft', text: say`The strip into the corner is cut to the widest of the three and ${showLength(house.rules.insideWrap.length, house.lengths)} more; the next begins plumb. Measure a wall again after lining or filling.` },
  ];
}

/** Each covering of the room: how it is pasted, what takes two people, where marks stand. */
function hangings({ house, plan }: PaperFacts, room: string): readonly Block[] {
  const planned = plan.rooms.find(({ id }) => id === room);
  if (!planned) return [];
  const bands = planned.bands.flatMap((band): readonly Block[] => [{ kind: 'heading', text: nameInFull(house, band.covering) }, ...pasteFacts(house, band.covering), ...adviceOn(plan, band.covering), ...forTwo(house, band), ...pencilMarks(house, band)]);
  const { ceiling } = planned;
  const overhead: readonly Block[] = ceiling ? [{ kind: 'heading', text: say`Ceiling: ${nameInFull(house, ceiling.covering)}` }, ...pasteFacts(house, ceiling.covering), ...adviceOn(plan, ceiling.covering), { kind: 'text', as: 'strong', text: say`Two people for every strip; along wall ${ceiling.along}.` }] : [];
  return [...bands, ...overhead];
}

function adviceOn({ warnings }: HousePlan, covering: string): readonly Block[] {
  return warnings.filter((remark) => remark.covering === covering).map(({ message }): Block => ({ kind: 'text', text: message }));
}

function forTwo({ rules }: House, band: BandPlan): readonly Block[] {
  const labels = band.kind === 'strips' ? band.stretches.flatMap(({ strips }) => strips.flatMap(({ pieces }) => pieces.filter((piece) => isForTwo(piece, rules)).map(({ label }) => label))) : band.stretches.flatMap(({ lengths }) => lengths.filter(({ needsTwo }) => needsTwo).flatMap(({ pieces }) => pieces.map(({ label }) => label)));
  return labels.length === 0 ? [] : [{ kind: 'text', as: 'strong', text: say`Two people: ${sayList(labels)}.` }];
}

function pencilMarks({ lengths: style }: House, band: BandPlan): readonly Block[] {
  if (band.kind !== 'lengths') return [];
  const rows = band.stretches.flatMap(({ marks }) => marks.filter(({ at }) => at.length > 0).map(({ wall, from, distance, at }) => [wall, from === 'floor' ? say`${showLength(distance, style)} up from the floor` : say`${showLength(distance, style)} down from the ceiling`, at.map((one) => showLength(one, style)).join(', ')]));
  return rows.length === 0 ? [] : [{ kind: 'table', heading: say`Pencil marks, half its width below its upper edge`, columns: [{ head: say`Wall` }, { head: say`Height` }, { head: say`From the wall’s left end`, isWide: true }], rows }];
}

function cuts(facts: PaperFacts, room: string): readonly Block[] {
  const hung = facts.plan.rooms.find(({ id }) => id === room);
  // A mural is not cut from rolls, and its labels are read all the same.
  if (!hung || (hung.bands.length === 0 && hung.ceiling === null)) return [];
  const blocks = facts.plan.cuts.flatMap((list) => rollsBlock(facts, list, room));
  return [
    { kind: 'heading', text: say`What is cut for it` },
    { kind: 'ticks', of: [{ text: LABELS_READ }] },
    ...blocks,
    { kind: 'ticks', of: [{ text: say`The first three strips are hung, and were checked in daylight.`, notes: [say`A difference of shade, a fault in the print or a wrong match shows here: go on only when they are right.`] }] },
  ];
}
