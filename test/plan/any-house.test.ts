import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawBorder, drawElevation, drawRoomPlan } from '../../shared-core/drawing/index.ts';
import { decodeHouse } from '../../shared-core/house/index.ts';
import { explainOrderLine, planDocument, planHouse, sayLayout } from '../../shared-core/plan/index.ts';
import { bandsOf, documentOf, type Loose } from '../builders.ts';

const length = (least: number, most: number) => fc.integer({ min: least, max: most }).map((tenths) => `${tenths / 10} mm`);
const turn = fc.oneof({ weight: 3, arbitrary: fc.constant('inside') }, fc.constantFrom('outside', 'straight', '135', '45', '225', '91.5', '300'));
const share = fc.integer({ min: 0, max: 100 });
const opening = fc.record({ kind: fc.constantFrom('door', 'window', 'archway', 'fireplace', 'furniture'), entrance: fc.boolean(), left: share, right: share, lower: share, upper: share });
const wall = fc.record(
  { length: length(1, 90_000), height: fc.oneof(length(5_000, 50_000), fc.tuple(length(5_000, 50_000), length(5_000, 50_000))), base: fc.oneof(length(0, 20_000), fc.tuple(length(0, 20_000), length(0, 20_000))), turn, plumbRight: length(-500, 9_000), openings: fc.array(opening, { maxLength: 1 }) },
  { requiredKeys: ['length', 'height'] },
);
const covering = fc.record(
  { kind: fc.constantFrom('wallcovering', 'border', 'lining', 'mural'), width: length(300, 15_000), rollLength: length(1_000, 200_000), repeat: fc.oneof(fc.constant('0 mm'), length(10, 8_000)), match: fc.constantFrom('free', 'straight', 'drop'), rollStart: fc.constantFrom('anywhere', 'at-repeat'), panels: fc.constantFrom('roll-width', 'equal'), soldIn: fc.array(fc.record({ rolls: fc.integer({ min: 1, max: 6 }), price: fc.constantFrom('3.00', '12.50') }), { maxLength: 2 }) },
  { requiredKeys: ['kind', 'width', 'rollLength'] },
);
const band = fc.record({ covering: fc.nat(1), from: fc.oneof({ weight: 3, arbitrary: fc.constant('floor') }, length(0, 4_000)), to: fc.oneof({ weight: 3, arbitrary: fc.constant('ceiling') }, length(4_100, 5_000)), walls: fc.array(fc.nat(7), { minLength: 1, maxLength: 8 }), layout: fc.option(fc.record({ at: fc.integer({ min: 0, max: 100 }), edge: fc.constantFrom('left', 'centre', 'right'), direction: fc.constantFrom('left', 'right', 'both'), kill: fc.option(share) })) });
const house = fc.record({ walls: fc.array(wall, { minLength: 1, maxLength: 8 }), coverings: fc.tuple(covering, covering), bands: fc.array(band, { minLength: 1, maxLength: 2 }), rules: fc.record({ trim: length(0, 1_000), insideWrap: length(0, 300), sliver: length(0, 900) }), offers: fc.array(fc.record({ covering: fc.constantFrom('c0', 'c1'), run: fc.constantFrom('1', '2'), rolls: fc.nat(9) }), { maxLength: 3 }) });

function openingIn(wall: { readonly length: string; readonly height: Loose }, { left, right, lower, upper, ...facts }: Loose): Loose {
  const most = Number.parseFloat(wall.length);
  const highest = Math.min(...[wall.height].flat().map((height: string) => Number.parseFloat(height)));
  const [from, to] = [Math.min(left, right), Math.max(left, right) + 1].map((part) => Math.floor((most * part) / 101));
  const [sill, head] = [Math.min(lower, upper), Math.max(lower, upper) + 1].map((part) => Math.floor((highest * part) / 101));
  return { ...facts, from: `${from} mm`, width: `${to! - from!} mm`, sill: `${sill} mm`, height: `${head! - sill!} mm` };
}

function documentFrom({ walls, coverings, bands, rules, offers }: typeof house extends fc.Arbitrary<infer Value> ? Value : never): Loose {
  const ids = walls.map((_, index) => String.fromCharCode(65 + index));
  const place = (wallIndex: number, share: number) => ({ wall: ids[wallIndex]!, at: `${(Number.parseFloat(walls[wallIndex]!.length) * share) / 100} mm` });
  return documentOf({
    rules,
    offers,
    coverings: coverings.map(({ kind, match, panels, repeat, rollStart, ...rest }, index) => {
      if (kind === 'mural') return { id: `c${index}`, kind, panels: 3, panelWidth: rest.width, panelHeight: rest.rollLength };
      if (kind === 'lining') return { id: `c${index}`, kind, ...rest, direction: match === 'free' ? 'across' : 'up-and-down' };
      const facts = { ...rest, ...(repeat ? { repeat } : {}), ...(rollStart ? { rollStart } : {}) };
      return { id: `c${index}`, kind, ...facts, ...(kind === 'border' ? {} : { panels, match: facts.repeat && Number.parseFloat(facts.repeat) > 0 ? match : 'free', ...(match === 'drop' && Number.parseFloat(facts.repeat ?? '0') > 0 ? { dropBy: '2/5' } : {}) }) };
    }),
    rooms: [
      {
        id: 'room',
        name: 'Room',
        walls: walls.map((facts, index) => ({ id: ids[index], ...facts, openings: (facts.openings ?? []).map((one, at) => ({ id: `o${at}`, ...openingIn(facts, one) })) })),
        bands: bands.map((facts, index) => {
          const on = [...new Set(facts.walls.map((at) => at % walls.length))];
          const first = on[0]!;
          return {
            id: `b${index}`,
            covering: `c${facts.covering}`,
            from: facts.from,
            to: facts.to,
            walls: on.map((at) => ids[at]),
            ...(facts.layout ? { layout: { start: { ...place(first, facts.layout.at), edge: facts.layout.edge }, direction: facts.layout.direction, kill: facts.layout.kill === null ? 'start' : place(on.at(-1)!, facts.layout.kill) } } : {}),
          };
        }),
      },
    ],
  });
}

test('whatever house is good is planned, explained and drawn', () => {
  let planned = 0;
  fc.assert(
    fc.property(house, (facts) => {
      const outcome = decodeHouse(documentFrom(facts));
      if (!outcome.ok) return;
      planned += 1;
      const plan = planHouse(outcome.value);
      expect(JSON.stringify(planDocument(outcome.value, plan))).not.toMatch(/NaN|Infinity/);
      for (const line of plan.order) {
        expect(line.lowerBound).toBeLessThanOrEqual(line.rollsNeeded);
        expect(Object.values(explainOrderLine(outcome.value, line)).flat().length).toBeGreaterThan(0);
      }
      const [room] = outcome.value.rooms;
      const drawings = [drawRoomPlan(room!, plan.rooms[0]!.outline, 'metric')];
      for (const found of plan.rooms[0]!.bands) {
        const own = bandsOf(room).find(({ id }) => id === found.id)!;
        const paper = outcome.value.coverings.find(({ id }) => id === found.covering)!;
        const of = { room: room!, band: own, coveringName: 'paper' };
        if (found.kind === 'strips' && (paper.kind === 'wallcovering' || paper.kind === 'lining' || paper.kind === 'mural')) {
          for (const stretch of found.stretches) {
            drawings.push(drawElevation({ ...of, covering: paper, stretch }, 'imperial'));
            for (const option of stretch.options) expect(sayLayout(option, 'metric').join(' ')).toMatch(/rolls?\./);
          }
        }
        if (found.kind === 'lengths' && (paper.kind === 'border' || paper.kind === 'lining')) for (const stretch of found.stretches) drawings.push(drawBorder({ ...of, covering: paper, stretch }, 'imperial'));
      }
      for (const drawing of drawings) expect(JSON.stringify([drawing.shapes, drawing.bounds])).not.toMatch(/null|NaN|Infinity/);
    }),
    { numRuns: 1_500 },
  );
  expect(planned).toBeGreaterThan(300);
}, 120_000);
