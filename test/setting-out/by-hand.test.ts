import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type BandPlan, type CeilingPlan, planHouse } from '../../shared-core/plan/index.ts';
import { countSlivers, type Mismatch, type Piece } from '../../shared-core/setting-out/index.ts';
import { hungBand, laidWidthOf } from '../../shared-core/house/index.ts';
import { parseLength } from '../../shared-core/units/index.ts';
import { houseOf, type Loose } from '../builders.ts';

const FOLDER = new URL('./by-hand/', import.meta.url);

interface ByHand {
  readonly title: string;
  /** The arithmetic by which the expected values were found, without the program. */
  readonly working: readonly string[];
  readonly house: Loose;
  readonly expected: { readonly bands?: Readonly<Record<string, Loose>>; readonly ceiling?: Loose; readonly order?: readonly Loose[] };
}

const units = (typed: string): number => {
  const read = parseLength(typed);
  if (!read.ok) throw new Error(`${typed} is no length`);
  return read.value;
};

/** So many pieces of one length at one phase. */
function counted(rows: readonly (readonly [count: number, length: number, phase: number])[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const [count, length, phase] of rows) counts.set(`${length} at ${phase}`, (counts.get(`${length} at ${phase}`) ?? 0) + count);
  return counts;
}

const cut = (pieces: readonly Piece[]) => counted(pieces.map(({ length, phase }) => [1, length, phase]));
const written = (rows: readonly [number, string, string][]) => counted(rows.map(([count, length, phase]) => [count, units(length), units(phase)]));

function missed(mismatch: Mismatch | null): readonly [number, string] | null {
  return mismatch && [mismatch.amount, mismatch.side];
}

function asMissed(text: string | null): readonly [number, string] | null {
  if (text === null) return null;
  if (text === 'none') return [0, 'none'];
  const [, amount, side] = /^(.+) (over|short)$/.exec(text) ?? [];
  return [units(amount!), side!];
}

/** What of a band a file speaks of, each figure computed and expected in units. */
function figuresOf(band: BandPlan | CeilingPlan, expected: Loose, house: ReturnType<typeof houseOf>): { readonly ours: Loose; readonly theirs: Loose } {
  const stretches = 'stretches' in band ? band.stretches : [];
  const strips = 'strips' in band ? band.strips : stretches.flatMap((stretch) => ('strips' in stretch ? stretch.strips : []));
  const lengths = stretches.flatMap((stretch) => ('lengths' in stretch ? stretch.lengths : []));
  const pieces = [...strips, ...lengths].flatMap((one) => one.pieces);
  const [first] = stretches;
  const strip = (number: string) => strips.find((one) => String(one.number) === number)!;
  const widthOf = (number: string) => ('cutWidth' in strip(number) ? (strip(number) as Loose).cutWidth : strip(number).to - strip(number).from);
  const map = (object: Loose, change: (value: Loose, key: string) => Loose) => Object.fromEntries(Object.entries(object ?? {}).map(([key, value]) => [key, change(value, key)]));
  const readings: Record<string, [ours: () => Loose, theirs: (value: Loose) => Loose]> = {
    strips: [() => strips.length, (value) => value],
    lengths: [() => lengths.length, (value) => value],
    pieces: [() => cut(pieces), written],
    mismatch: [() => missed(first && 'mismatch' in first ? first.mismatch : null), asMissed],
    mismatchRange: [() => [missed((first as Loose).mismatch), missed((first as Loose).mismatchUpright)], (value) => value.map(asMissed)],
    vertical: [() => (first as Loose).mismatch.vertical, units],
    slivers: [() => stretches.reduce((sum, stretch) => sum + ('slivers' in stretch ? stretch.slivers.length : 0), 0), (value) => value],
    outsideSeams: [
      () => {
        const covering = house.coverings.find(({ id }) => id === band.covering);
        if (covering?.kind !== 'wallcovering' || !first || !('slivers' in first)) throw new Error('strips of a wallcovering');
        return countSlivers(first.axis, first.grid, laidWidthOf(covering), hungBand(house.rooms[0]!, house.rooms[0]!.bands.find(({ id }) => id === (band as BandPlan).id)!), house.rules).outsideSeams;
      },
      (value) => value,
    ],
    widths: [() => map(expected.widths, (_value, number) => widthOf(number)), (value) => map(value, (width) => units(width))],
    parts: [() => map(expected.parts, (_value, number) => (strip(number) as Loose).parts.map(({ wall, from, to }: Loose) => [wall, from, to])), (value) => map(value, (parts) => parts.map(([wall, from, to]: Loose) => [wall, units(from), units(to)]))],
    phases: [() => map(expected.phases, (_value, number) => strip(number).pieces[0]!.phase), (value) => map(value, (phase) => units(phase))],
    reversed: [() => strips.filter((one) => one.pieces.every(({ isTurned }) => isTurned)).map(({ number }) => number), (value) => value],
    cornerWidths: [
      () => strips.flatMap((one) => ('parts' in one ? one.parts : [])).filter(({ lean }) => lean > 0).map(({ wall, from, to, wrap, lean }) => [wall, to - from + wrap - lean, to - from + wrap]),
      (value) => value.map(([wall, least, most]: Loose) => [wall, units(least), units(most)]),
    ],
    needsTwo: [() => [...lengths, ...strips].filter((one) => 'needsTwo' in one && one.needsTwo).length, (value) => value],
    marks: [() => stretches.flatMap((stretch) => ('marks' in stretch ? stretch.marks : [])).map(({ wall, from, distance, at }) => [wall, from, distance, at.length]), (value) => value.map(([wall, from, distance, count]: Loose) => [wall, from, units(distance), count])],
    taper: [() => stretches.flatMap((stretch) => ('tapers' in stretch ? stretch.tapers : [])).map(({ wall, most }) => [wall, most]), (value) => value.map(([wall, most]: Loose) => [wall, units(most)])],
    clashes: [() => ('clashes' in band ? band.clashes : []).map(({ wall, id, by }) => [wall, id, by]), (value) => value.map(([wall, id, by]: Loose) => [wall, id, units(by)])],
    leftOut: [() => (first as Loose).leftOut, (value) => value],
    offTop: [() => (first as Loose).offTop, units],
    offFoot: [() => (first as Loose).offFoot, units],
    shortage: [() => [(first as Loose).shortage.width, (first as Loose).shortage.height], (value) => value.map(units)],
  };
  const keys = Object.keys(expected);
  const reading = (key: string) => {
    if (!readings[key]) throw new Error(`${key} is not read`);
    return readings[key];
  };
  return { ours: Object.fromEntries(keys.map((key) => [key, reading(key)[0]()])), theirs: Object.fromEntries(keys.map((key) => [key, reading(key)[1](expected[key])])) };
}

const files = readdirSync(FOLDER).sort();

test('there are more than twenty rooms worked by hand, each with its arithmetic', () => {
  expect(files.length).toBeGreaterThan(20);
  for (const file of files) expect((JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as ByHand).working.length, file).toBeGreaterThan(1);
});

describe.each(files)('%s', (file) => {
  const { title, house: document, expected } = JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as ByHand;
  const house = houseOf(document);
  const plan = planHouse(house);
  const [room] = plan.rooms;
  const cases = [...Object.entries(expected.bands ?? {}), ...(expected.ceiling ? [['the ceiling', expected.ceiling] as const] : [])];

  test.each(cases)(`${title}: %s comes out as by hand, to the unit`, (id, wanted) => {
    const found = id === 'the ceiling' ? room!.ceiling : room!.bands.find((band) => band.id === id);
    const { ours, theirs } = figuresOf(found!, wanted, house);
    expect(Object.keys(theirs).length).toBeGreaterThan(0);
    expect(ours).toEqual(theirs);
  });

  if (expected.order) {
    test(`${title}: the order comes out as by hand`, () => {
      const ours = plan.order.map(({ covering, running, price }) => ({ covering, length: running?.toBuy, price }));
      expect(ours).toEqual(expected.order!.map(({ covering, length, price }) => ({ covering, length: units(length), price: Number(price) * 100 })));
    });
  }
});
