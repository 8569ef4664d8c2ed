import type { Mark, PictureTile } from '../../shared-core/drawing/index.ts';

type PictureMark = Extract<Mark, { kind: 'picture' }>;

/** Half a pixel's hundredth: tiles nearer to each other than that are the same to the eye. */
const ROUNDING = 200;

/** The tilings that a drawing's marks take, each once: strips whose repeats stand at one height share theirs. */
export function tilingsOf(marks: readonly Mark[]): ReadonlyMap<string, PictureTile> {
  return new Map(marks.filter((mark) => mark.kind === 'picture').map((mark) => [tilingKey(mark), mark]));
}

/** Alike for tiles that lie on one grid. */
export function tilingKey({ picture, x, y, width, height, fall, isTurned }: PictureMark | PictureTile): string {
  const slope = fall / width;
  const within = (position: number, period: number) => {
    const rounded = Math.round((position - Math.floor(position / period) * period) * ROUNDING);
    return rounded === Math.round(period * ROUNDING) ? 0 : rounded;
  };
  return [picture, within(x, width), within(y - x * slope, height), Math.round(width * ROUNDING), Math.round(fall * ROUNDING), isTurned ? 'turned' : ''].join(' ');
}

/** The transform that puts a tile drawn from 0, 0 in its place, sheared where it follows a slope. */
export function tileTransform({ x, y, width, fall }: PictureTile): string {
  const round = (value: number, digits: number) => String(Math.round(value * 10 ** digits) / 10 ** digits);
  return `matrix(${[1, round(fall / width, 6), 0, 1, round(x, 3), round(y, 3)].join(' ')})`;
}
