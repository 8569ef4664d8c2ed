import { nameCovering, type House } from '../../shared-core/house/index.ts';
import { CEILING, type HousePlan, isOffcut, nameRoom } from '../../shared-core/plan/index.ts';
import { type Caution, sayAmount, type Task } from '../../shared-core/prep/index.ts';
import { showArea, showLength, sayTime, sayWait } from '../../shared-core/units/index.ts';
import { say } from '../../shared-core/words/index.ts';

/**
 * A sheet for each room in which something is done, as plain text: what to heed, what to do in order, what to cut.
 *
 * Every caution of the room stands in full at its head, and its words again beside each task that calls for it, also where
 * a task is done by others: nothing that can hurt somebody is left out for being said already.
 */
export function jobSheets(house: House, plan: HousePlan): string {
  const sheets = house.rooms.flatMap(({ id }) => {
    const body = [...cautionsOf(plan, id), ...jobsIn(house, plan, id), ...cutsOf(house, plan, id)];
    return body.length === 0 ? [] : [[say`${nameRoom(house, id)}, ${house.name}`, ...body, ''].join('\n')];
  });
  return sheets.length === 0 ? say`Nothing to do yet: say what is on the walls, or hang something in a room.\n` : sheets.join('\n');
}

function cautionsOf({ prep }: HousePlan, room: string): readonly string[] {
  const cautions = prep.cautions.filter((caution) => caution.room === room);
  if (cautions.length === 0) return [];
  return ['', say`Before anybody begins`, ...cautions.flatMap((caution) => [`! ${caution.words}`, ...indented(particularsOf(caution))]), say`The usual cautions, not advice for this house: local codes and licensed practice come first.`];
}

function particularsOf({ threshold, ask, source }: Caution): readonly string[] {
  return [...(threshold === null ? [] : [threshold]), ask, source];
}

function jobsIn(house: House, plan: HousePlan, room: string): readonly string[] {
  const jobs = plan.jobs.filter((job) => job.room === room);
  if (jobs.length === 0) return [];
  const lines = jobs.flatMap((job, index) => {
    const task = plan.prep.tasks.find(({ id }) => id === job.id);
    const facts = [
      ...(task && task.area > 0 ? [showArea(task.area, house.lengths)] : []),
      ...(task ? materialsOf(plan, task) : []),
      ...(job.isOthers ? [say`done by others`] : job.minutes > 0 ? [sayTime(job.minutes)] : []),
      ...(job.people === 2 ? [say`two people`] : []),
      ...(job.waitMinutes > 0 ? [say`then ${sayWait(job.waitMinutes)} before what follows`] : []),
    ];
    const cautions = plan.prep.cautions.filter(({ id }) => task?.cautions.includes(id)).map(({ words }) => `! ${words}`);
    return [`[ ] ${index + 1}. ${job.words}`, ...indented([...(task?.checks ?? []), ...cautions, facts.join(' · '), ...(task ? [task.source] : [])])];
  });
  return ['', say`What is to be done, in order`, ...lines];
}

function materialsOf({ prep }: HousePlan, { materials }: Task): readonly string[] {
  return materials.map(({ material, amount }) => {
    const need = prep.materials.find((one) => one.material === material);
    return `${need?.words ?? material} ${sayAmount(amount, need?.unit ?? 'pieces')}`;
  });
}

/** What is cut for the room, roll by roll; before the first cut every label is looked at. */
function cutsOf(house: House, plan: HousePlan, room: string): readonly string[] {
  const rows = plan.cuts.flatMap(({ covering, run, rolls }) =>
    rolls.flatMap((roll) => {
      const cuts = roll.cuts.flatMap(({ placed, from }, index) => {
        if (placed.room !== room) return [];
        const { label, length } = placed.piece;
        const where = placed.band === CEILING ? say`, ceiling` : '';
        return [say`${label}${where}: ${showLength(length, house.lengths)} from ${showLength(from, house.lengths)}${isOffcut(roll, index) ? say`, of an offcut` : ''}`];
      });
      return cuts.length === 0 ? [] : [say`${nameCovering(house, covering)}, ${run === null ? say`run not known yet` : say`run ${run}`}, roll ${roll.number}`, ...indented(cuts)];
    }),
  );
  if (rows.length === 0) return [];
  return ['', say`What is cut for it`, say`[ ] Pattern number and run number read on every label before cutting; labels kept`, ...rows, say`[ ] The first three strips hung, and looked at in daylight`];
}

function indented(lines: readonly string[]): readonly string[] {
  return lines.filter((line) => line !== '').map((line) => `    ${line}`);
}
