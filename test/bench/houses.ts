import { decodeHouse, type House } from '../../shared-core/house/index.ts';

/** A generator of numbers from 0 up to 1 that a seed decides, so that every run measures the same houses. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A house of rooms with so many walls, each hung with one of two patterns from floor to ceiling and a border. */
export function benchHouse(rooms: number, walls: number, seed: number): House {
  const next = seededNumbers(seed);
  const between = (least: number, most: number) => Math.round(least + next() * (most - least));
  const outcome = decodeHouse({
    format: 'struckline-house',
    version: 1,
    name: `Bench ${rooms} × ${walls}`,
    lengths: 'metric',
    coverings: [
      { id: 'straight', kind: 'wallcovering', width: '53 cm', rollLength: '10.05 m', repeat: '64 cm' },
      { id: 'drop', kind: 'wallcovering', width: '53 cm', rollLength: '10.05 m', repeat: '53 cm', match: 'drop', dropBy: '1/2' },
      { id: 'border', kind: 'border', width: '17 cm', rollLength: '5 m', repeat: '52 cm' },
    ],
    rooms: Array.from({ length: rooms }, (_, index) => benchRoom(index, walls, between)),
  });
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('; '));
  return outcome.value;
}

/** A rectangle, its first wall broken by as many chimney breasts as its number of walls asks for. */
function benchRoom(index: number, walls: number, between: (least: number, most: number) => number) {
  const height = `${between(2_300, 2_900)} mm`;
  const breasts = Math.max(0, Math.floor((walls - 4) / 4));
  const [deep, proud, step] = [between(2_600, 4_600), between(1_100, 1_700), between(250, 420)];
  const plain = breasts === 0 ? between(2_800, 4_800) : between(800, 1_500);
  const across = plain * (breasts + 1) + proud * breasts;
  const front = Array.from({ length: breasts }, (): readonly (readonly [number, string])[] => [
    [plain, 'inside'],
    [step, 'outside'],
    [proud, 'outside'],
    [step, 'inside'],
  ]).flat();
  const outline = [...front, [plain, 'inside'], [deep, 'inside'], [across, 'inside'], [deep, 'inside']] as const;
  const list = outline.map(([length, turn], at) => {
    const isLong = at === outline.length - 2;
    const openings = isLong
      ? [{ id: 'door', kind: 'door', entrance: true, from: '300 mm', width: '800 mm', height: '2030 mm' }]
      : at === outline.length - 1
        ? [{ id: 'window', kind: 'window', from: `${between(400, 900)} mm`, width: '1200 mm', sill: '850 mm', height: '1250 mm' }]
        : [];
    return { id: `W${at}`, length: `${length} mm`, height, turn, openings };
  });
  const ids = list.map(({ id }) => id);
  return {
    id: `r${index}`,
    name: `Room ${index + 1}`,
    walls: list,
    focalWall: ids[0],
    bands: [
      { id: 'main', covering: index % 2 === 0 ? 'straight' : 'drop', walls: ids },
      { id: 'rail', covering: 'border', walls: ids, from: '900 mm', to: '1070 mm' },
    ],
  };
}
