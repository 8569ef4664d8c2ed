import type { House } from '../house/index.ts';
import { say } from '../words/index.ts';
import type { HousePlan } from './house-plan.ts';

/**
 * What has to be at hand in a room for the work that is done there by the crew.
 *
 * Source: common practice, no source. Example: a room in which a prepasted paper is hung wants a water trough and no paste
 * brush; one with a border too wants a template for its pencil marks.
 */
export function toolsFor(house: House, plan: HousePlan, room: string): readonly string[] {
  const facts = house.rooms.find(({ id }) => id === room);
  const own = plan.jobs.filter((job) => job.room === room && !job.isOthers);
  const rules = new Set(plan.prep.tasks.filter((task) => own.some(({ id }) => id === task.id)).map(({ rule }) => rule));
  const planned = plan.rooms.find(({ id }) => id === room);
  const hung = [...(planned?.bands ?? []).map(({ covering }) => covering), ...(planned?.ceiling ? [planned.ceiling.covering] : [])].flatMap((id) => house.coverings.find((covering) => covering.id === id) ?? []);
  const isPrepasted = hung.some((covering) => 'paste' in covering && covering.paste !== undefined && /pre-?pasted/i.test(covering.paste));
  const isPasted = hung.some((covering) => !('paste' in covering) || covering.paste === undefined || !/pre-?pasted/i.test(covering.paste));
  const cautions = new Set(plan.prep.cautions.filter((caution) => caution.room === room).map(({ kind }) => kind));
  const has = (...some: readonly string[]) => some.some((rule) => rules.has(rule));
  const tools: readonly (readonly [boolean, string])[] = [
    [own.length > 0, say`dust sheets and tape`],
    [has('strip-overpainted', 'strip-vinyl', 'strip-dry', 'scrape-flaking'), say`scraper, scoring tool, bucket and sponge`],
    [has('strip-overpainted', 'strip-vinyl'), say`steamer`],
    [has('fill-cracks', 'fill-holes', 'fill-texture', 'fill-joints', 'skim-texture', 'skim-tile'), say`filling knives and hawk`],
    [has('sand-filled', 'sand-joints', 'key-gloss', 'sand-wood'), say`sanding block, vacuum with a fine filter`],
    [has('find-damp', 'dry-plaster'), say`moisture meter`],
    [has('loosen-plates') || cautions.has('mains'), say`voltage tester, insulated screwdriver`],
    [cautions.has('silica-dust') || cautions.has('lead-paint') || cautions.has('mould') || cautions.has('asbestos-coating'), say`mask, goggles and gloves as the cautions say`],
    [own.some(({ kind }) => kind === 'painting'), say`brushes, roller, tray and stirring stick`],
    [hung.length > 0, say`tape, spirit level or laser, plumb line, pencil, chalk line that leaves no stain`],
    [hung.length > 0, say`table, shears, knife with new blades, straightedge, smoothing brush or tool, seam roller, sponge and clean water`],
    [isPrepasted, say`water trough`],
    [isPasted, say`paste, bucket and paste brush or roller`],
    [hung.some((covering) => covering.kind === 'wallcovering' && covering.seam === 'double-cut'), say`straightedge and blades for double cutting`],
    [planned?.bands.some(({ kind }) => kind === 'lengths') ?? false, say`template for the height of the pencil marks`],
    [cautions.has('height'), say`ladder or trestle on level ground`],
    [facts?.stairs ?? false, say`boards and a stair scaffold`],
  ];
  return tools.filter(([isWanted]) => isWanted).map(([, words]) => words);
}
