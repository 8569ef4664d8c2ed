import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawBorder, drawCeiling, drawElevation, drawPatternTop, drawRoomPlan } from '../../shared-core/drawing/index.ts';
import { decodeHouse } from '../../shared-core/house/index.ts';
import { CEILING, explainOrderLine, explainPiece, explainStrip, planDocument, planHouse, rollsOfBand, sayLayout } from '../../shared-core/plan/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { bandsOf, documentOf, type Loose } from '../builders.ts';
import { shareOf } from '../share-of.ts';

const HOUSES = shareOf(1_500, 120);

const length = (least: number, most: number) => fc.integer({ min: least, max: most }).map((tenths) => `${tenths / 10} mm`);
const turn = fc.oneof({ weight: 3, arbitrary: fc.constant('inside') }, fc.constantFrom('outside', 'straight', '135', '45', '225', '91.5', '300'));
const share = fc.integer({ min: 0, max: 100 });
const reveal = fc.option(fc.record({ depth: length(1, 8_000), sides: fc.subarray(['left', 'right', 'head', 'sill'], { minLength: 1 }) }));
const opening = fc.record({ kind: fc.constantFrom('door', 'window', 'archway', 'fireplace', 'furniture'), entrance: fc.boolean(), left: share, right: share, lower: share, upper: share, reveal });
const wall = fc.record(
  { length: length(1, 90_000), height: fc.oneof(length(5_000, 50_000), fc.tuple(length(5_000, 50_000), length(5_000, 50_000))), base: fc.oneof(length(0, 20_000), fc.tuple(length(0, 20_000), length(0, 20_000))), turn, plumbRight: length(-500, 9_000), openings: fc.array(opening, { maxLength: 1 }) },
  { requiredKeys: ['length', 'height'] },
);
const covering = fc.record(
  { kind: fc.constantFrom('wallcovering', 'border', 'lining', 'mural'), width: length(300, 15_000), rollLength: length(1_000, 200_000), repeat: fc.oneof(fc.constant('0 mm'), length(50, 8_000)), match: fc.constantFrom('free', 'straight', 'drop'), rollStart: fc.constantFrom('anywhere', 'at-repeat'), panels: fc.constantFrom('roll-width', 'equal'), sequence: fc.constantFrom('preferred', 'required'), reverseAlternate: fc.boolean(), byLength: fc.boolean(), material: fc.constantFrom('vinyl', 'paper'), soldIn: fc.array(fc.record({ rolls: fc.integer({ min: 1, max: 6 }), price: fc.constantFrom('3.00', '12.50') }), { maxLength: 2 }) },
  { requiredKeys: ['kind', 'width', 'rollLength'] },
);
const band = fc.record({ covering: fc.nat(1), from: fc.oneof({ weight: 3, arbitrary: fc.constant('floor') }, length(0, 4_000)), to: fc.oneof({ weight: 3, arbitrary: fc.constant('ceiling') }, length(4_100, 5_000)), walls: fc.array(fc.nat(7), { minLength: 1, maxLength: 8 }), extra: fc.record({ position: length(0, 9_000), datum: fc.option(length(0, 40_000)), level: fc.boolean(), firstPanel: fc.constantFrom(1, 2, 3), below: length(0, 20_000), line: length(0, 30_000) }), layout: fc.option(fc.record({ at: fc.integer({ min: 0, max: 100 }), edge: fc.constantFrom('left', 'centre', 'right'), direction: fc.constantFrom('left', 'right', 'both'), kill: fc.option(share) })) });
const house = fc.record({ walls: fc.array(wall, { minLength: 1, maxLength: 8 }), coverings: fc.tuple(covering, covering), bands: fc.array(band, { minLength: 1, maxLength: 2 }), room: fc.record({ rail: fc.option(fc.record({ at: length(100, 4_000), width: length(1, 900) })), furniture: fc.option(fc.record({ share, height: length(1, 30_000) })), ceiling: fc.option(fc.record({ covering: fc.nat(1), along: fc.option(fc.nat(7)), position: length(0, 9_000) })) }), rules: fc.record({ trim: length(0, 1_000), insideWrap: length(0, 300), sliver: length(0, 900) }), offers: fc.array(fc.record({ covering: fc.constantFrom('c0', 'c1'), run: fc.constantFrom('1', '2'), rolls: fc.nat(9) }), { maxLength: 3 }) });

type Facts = typeof house extends fc.Arbitrary<infer Value> ? Value : never;

function openingIn(wall: { readonly length: string; readonly height: Loose }, { left, right, lower, upper, reveal: covered, ...facts }: Loose): Loose {
  const most = Number.parseFloat(wall.length);
  const highest = Math.min(...[wall.height].flat().map((height: string) => Number.parseFloat(height)));
  const [from, to] = [Math.min(left, right), Math.max(left, right) + 1].map((part) => Math.floor((most * part) / 101));
  const [sill, head] = [Math.min(lower, upper), Math.max(lower, upper) + 1].map((part) => Math.floor((highest * part) / 101));
  const sides = (covered?.sides ?? []).filter((side: string) => side !== 'sill' || sill! > 0);
  return { ...facts, ...(sides.length > 0 && facts.kind !== 'furniture' ? { reveal: { depth: covered.depth, sides } } : {}), from: `${from} mm`, width: `${to! - from!} mm`, sill: `${sill} mm`, height: `${head! - sill!} mm` };
}

function documentFrom({ walls, coverings, bands, rules, offers, room }: Facts): Loose {
  const ids = walls.map((_, index) => String.fromCharCode(65 + index));
  const place = (wallIndex: number, share: number) => ({ wall: ids[wallIndex]!, at: `${(Number.parseFloat(walls[wallIndex]!.length) * share) / 100} mm` });
  const kindOf = (index: number) => coverings[index]!.kind;
  return documentOf({
    rules,
    offers,
    coverings: coverings.map(({ kind, match, panels, repeat, rollStart, sequence, reverseAlternate, byLength, material, ...rest }, index) => {
      if (kind === 'mural') return { id: `c${index}`, kind, panels: 3, panelWidth: rest.width, panelHeight: rest.rollLength };
      if (kind === 'lining') return { id: `c${index}`, kind, ...rest, direction: match === 'free' ? 'across' : 'up-and-down' };
      const facts = { ...rest, ...(repeat ? { repeat } : {}), ...(rollStart ? { rollStart } : {}) };
      return { id: `c${index}`, kind, ...facts, ...(kind === 'border' ? {} : { panels, sequence, material, ...(byLength ? { rollLength: undefined, soldIn: undefined, soldBy: { length: '1 m', pieceLength: rest.rollLength } } : {}), ...(reverseAlternate && !(facts.repeat && Number.parseFloat(facts.repeat) > 0 && match !== 'free') ? { reverseAlternate } : {}), match: facts.repeat && Number.parseFloat(facts.repeat) > 0 ? match : 'free', ...(match === 'drop' && Number.parseFloat(facts.repeat ?? '0') > 0 ? { dropBy: '2/5' } : {}) }) };
    }),
    rooms: [
      {
        id: 'room',
        name: 'Room',
        ...(room.rail ? { rails: [{ id: 'rail', ...room.rail, walls: [ids[0]] }] } : {}),
        ...(room.furniture ? { furniture: [{ id: 'bed', wall: ids[0], from: '0 mm', width: `${Math.max(1, (Number.parseFloat(walls[0]!.length) * room.furniture.share) / 100)} mm`, height: room.furniture.height }] } : {}),
        ...(room.ceiling && ['wallcovering', 'lining'].includes(coverings[room.ceiling.covering]!.kind) ? { ceiling: { covering: `c${room.ceiling.covering}`, position: room.ceiling.position, ...(room.ceiling.along === null ? {} : { along: ids[room.ceiling.along % ids.length] }) } } : {}),
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
            position: facts.extra.position,
            ...(facts.extra.datum === null ? {} : { datum: facts.extra.datum }),
            ...(kindOf(facts.covering) === 'border' ? { level: facts.extra.level } : {}),
            ...(kindOf(facts.covering) === 'mural' ? { firstPanel: facts.extra.firstPanel, ...(facts.extra.level ? { levelLine: { below: facts.extra.below, at: facts.extra.line } } : {}) } : {}),
            ...(facts.layout ? { layout: { start: { ...place(first, facts.layout.at), edge: facts.layout.edge }, direction: facts.layout.direction, kill: facts.layout.kill === null ? 'start' : place(on.at(-1)!, facts.layout.kill) } } : {}),
          };
        }),
      },
    ],
  });
}

/** The smallest repeat that is taken: a roll has thousands of places to cut at, on walls that rake. */
const SMALLEST_REPEAT: Facts = {
  walls: [
    { length: '6965.4 mm', height: '2970.8 mm', base: ['1237.8 mm', '227.5 mm'] },
    { length: '3894.2 mm', height: '1157.8 mm', base: ['1228.4 mm', '258.7 mm'], plumbRight: '825.5 mm' },
    { length: '2473.6 mm', height: ['4696.6 mm', '4485.9 mm'], base: ['1211 mm', '628.1 mm'] },
    { length: '2252.9 mm', height: '2115.9 mm', plumbRight: '-26.1 mm' },
  ],
  coverings: [
    { kind: 'wallcovering', width: '921.2 mm', rollLength: '20000 mm', repeat: '5 mm', match: 'drop', rollStart: 'at-repeat' },
    { kind: 'wallcovering', width: '50 mm', rollLength: '100 mm' },
  ],
  bands: [{ covering: 0, from: 'floor', to: 'ceiling', walls: [3, 0, 2, 1], extra: { position: '0 mm', datum: null, level: false, firstPanel: 1, below: '0 mm', line: '0 mm' }, layout: null }],
  room: { rail: null, furniture: null, ceiling: null },
  rules: { trim: '0.9 mm', insideWrap: '6.6 mm', sliver: '83.5 mm' },
  offers: [],
};

/** A pattern whose repeat is longer than the roll, so that the one piece lies beyond the roll's end. */
const REPEAT_BEYOND_THE_ROLL: Facts = {
  walls: [{ length: '0.1 mm', height: '500 mm' }],
  coverings: [
    { kind: 'wallcovering', width: '50 mm', rollLength: '100 mm' },
    { kind: 'wallcovering', width: '50 mm', rollLength: '100 mm', repeat: '100.1 mm', rollStart: 'at-repeat', byLength: true },
  ],
  bands: [{ covering: 1, from: 'floor', to: 'ceiling', walls: [0], extra: { position: '0 mm', datum: null, level: false, firstPanel: 1, below: '0 mm', line: '0 mm' }, layout: null }],
  room: { rail: null, furniture: null, ceiling: null },
  rules: { trim: '0.1 mm', insideWrap: '0 mm', sliver: '0 mm' },
  offers: [],
};

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
      const { ceiling, outline } = plan.rooms[0]!;
      if (ceiling) drawings.push(drawCeiling({ room: room!, outline, layout: ceiling, coveringName: 'paper', rolls: rollsOfBand(plan, 'room', CEILING) }, 'metric'));
      for (const found of plan.rooms[0]!.bands) {
        const own = bandsOf(room).find(({ id }) => id === found.id)!;
        const paper = outcome.value.coverings.find(({ id }) => id === found.covering)!;
        const of = { room: room!, band: own, coveringName: 'paper' };
        if (found.kind === 'strips' && (paper.kind === 'wallcovering' || paper.kind === 'lining' || paper.kind === 'mural')) {
          for (const stretch of found.stretches) {
            const rolls = rollsOfBand(plan, 'room', own.id);
            drawings.push(drawElevation({ ...of, covering: paper, stretch, rolls }, 'imperial'));
            const top = paper.kind === 'wallcovering' ? drawPatternTop({ covering: paper, band: own, stretch, rules: outcome.value.rules, hasPicture: false }) : null;
            if (top) drawings.push(top);
            const facts = { covering: paper, band: own, rules: outcome.value.rules, datum: stretch.datum, style: 'metric' as const };
            for (const strip of stretch.strips.slice(0, 40)) {
              const working = [...explainStrip(strip, inches(20), 'metric'), ...strip.pieces.flatMap((piece) => explainPiece({ ...facts, piece, roll: rolls.get(piece.label) }))];
              expect(working.map(({ text }) => text).join(' ')).not.toMatch(/NaN|undefined/);
            }
            for (const option of stretch.options) expect(sayLayout(option, 'metric').join(' ')).toMatch(/rolls?\./);
          }
        }
        if (found.kind === 'lengths' && (paper.kind === 'border' || paper.kind === 'lining')) for (const stretch of found.stretches) drawings.push(drawBorder({ ...of, covering: paper, stretch }, 'imperial'));
      }
      for (const drawing of drawings) expect(JSON.stringify([drawing.shapes, drawing.bounds])).not.toMatch(/null|NaN|Infinity/);
    }),
    { numRuns: HOUSES, examples: [[REPEAT_BEYOND_THE_ROLL], [SMALLEST_REPEAT]] },
  );
  expect(planned).toBeGreaterThan(HOUSES / 5);
});
