import { rollCounter } from '../../shared-core/cutting/index.ts';
import { drawElevation, layOut } from '../../shared-core/drawing/index.ts';
import { hungBand } from '../../shared-core/house/index.ts';
import { isRollGoods, rollOf } from '../../shared-core/ordering/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { findStretches, searchLayouts, setOutBorder, setOutStrips, sightOf } from '../../shared-core/setting-out/index.ts';
import { lengthOf, type Measure } from '../../shared-core/units/index.ts';
import { benchHouse } from './houses.ts';

/** Milliseconds of the middle and the slowest of so many runs, the first few left out. */
function measure(times: number, run: (time: number) => unknown): { readonly median: number; readonly worst: number } {
  for (let time = 0; time < 3; time += 1) run(time);
  const took = Array.from({ length: times }, (_, time) => {
    const began = performance.now();
    run(time);
    return performance.now() - began;
  }).toSorted((one, other) => one - other);
  return { median: took[Math.floor(times / 2)]!, worst: took.at(-1)! };
}

const row = (what: string, { median, worst }: { readonly median: number; readonly worst: number }, unit: number) =>
  console.log(`${what.padEnd(46)} ${median.toFixed(2).padStart(9)} ${worst.toFixed(2).padStart(9)} ${(median / unit).toFixed(1).padStart(9)}`);

console.log(`${''.padEnd(46)} ${'median ms'.padStart(9)} ${'worst ms'.padStart(9)} ${'ratio'.padStart(9)}`);
let unit = 0;
for (const walls of [4, 8, 12, 16, 24]) {
  const house = benchHouse(1, walls, walls);
  const [room] = house.rooms;
  const [covering, drop, border] = house.coverings;
  const [main, rail] = room!.bands.map((band) => hungBand(room!, band));
  if (covering?.kind !== 'wallcovering' || drop?.kind !== 'wallcovering' || border?.kind !== 'border' || !isRollGoods(covering) || !isRollGoods(drop)) throw new Error('two wallcoverings and a border');
  const [stretch] = findStretches(room!, main!);
  const one = measure(200, () => setOutStrips(stretch!, main!, covering, house.rules));
  unit ||= one.median;
  row(`one layout of a room of ${walls} walls`, one, unit);
  const search = (band: typeof main, paper: typeof covering) =>
    searchLayouts({ stretch: stretch!, band: band!, covering: paper, rules: house.rules, sight: sightOf(room!), grain: lengthOf(3_200), countRolls: rollCounter(rollOf(paper), Infinity) });
  row(`the search in a room of ${walls} walls`, measure(30, () => search(main, covering)), unit);
  // A dado of one pattern under a filling of another, and a border between them.
  const [dado, filling] = [{ ...main!, to: rail!.from as Measure }, { ...main!, from: rail!.to as Measure }];
  row(`the search, 3 bands on ${walls} walls`, measure(20, () => [search(dado, covering), search(filling, drop), setOutBorder(stretch!, rail!, border, house.rules)]), unit);
  const view = { width: 1200, height: 400, textHeight: 14, zoom: 1, panX: 0, panY: 0 };
  const long = stretch!.walls.reduce((best, wall) => (wall.length > best.length ? wall : best));
  row(
    `a start dragged on ${walls} walls, drawn`,
    measure(60, (time) => {
      const layout = setOutStrips(stretch!, main!, covering, house.rules, { start: { wall: long.id, at: lengthOf(40_000 + 3_000 * time) }, edge: 'left', direction: 'right', kill: 'start' });
      return layOut(drawElevation({ room: room!, band: main!, covering, coveringName: 'straight', stretch: layout }, 'metric'), view);
    }),
    unit,
  );
}
for (const rooms of [3, 10, 40]) {
  const houses = Array.from({ length: 8 }, (_, seed) => benchHouse(rooms, 4 + 4 * (seed % 2), 100 * rooms + seed));
  row(`a plan of ${rooms} rooms, quick`, measure(16, (time) => planHouse(houses[time % 8]!, 'instant')), unit);
  let fresh = 1_000 * rooms;
  row(`a plan of ${rooms} rooms never seen`, measure(6, () => planHouse(benchHouse(rooms, 4 + 4 * (fresh % 2), (fresh += 1)))), unit);
  row(`a plan of ${rooms} rooms after an edit of one`, measure(16, (time) => planHouse(editOne(houses[0]!, time))), unit);
}

/** The same house with its first room a little longer each time, as somebody types. */
function editOne(house: ReturnType<typeof benchHouse>, time: number) {
  const [first, ...rest] = house.rooms;
  const walls = first!.walls.map((wall) => ({ ...wall, height: { length: (800_000 + 320 * time) as typeof wall.length.length, typed: 'typed' } }));
  return { ...house, rooms: [{ ...first!, walls }, ...rest] };
}
