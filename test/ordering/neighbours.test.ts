import { describe, expect, test } from 'vitest';
import { cutPieces, isRollGoods, type PlacedPiece } from '../../shared-core/ordering/index.ts';
import { rowsOfNeighbours } from '../../shared-core/ordering/neighbours.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, wallcovering } from '../builders.ts';

/** `3 below` of a room: a piece of strip 3. */
function placed(name: string, length = 100, room = 'bed', band = 'main'): PlacedPiece {
  const [strip, part = 'full'] = name.split(' ') as [string, PlacedPiece['piece']['part']?];
  return { room, band, piece: { label: name, strip: Number(strip), part, length: inches(length), phase: inches(0), top: inches(length), bottom: inches(0), upperEdge: inches(length) } };
}

const rowsOf = (pieces: readonly PlacedPiece[]) => rowsOfNeighbours(pieces).map((row) => row.map(({ piece }) => piece.label));

describe('rows of neighbours', () => {
  test('run on over a window, and the pieces under it are a row of their own', () => {
    expect(rowsOf(['1', '2 above', '2 below', '3 above', '3 below', '4'].map((name) => placed(name)))).toEqual([
      ['1', '2 above', '3 above', '4'],
      ['2 below', '3 below'],
    ]);
  });

  test('end where a strip has no such piece, and begin anew behind it', () => {
    expect(rowsOf(['0 above', '0 below', '1', '2 above', '2 below'].map((name) => placed(name)))).toEqual([['0 above', '1', '2 above'], ['0 below'], ['2 below']]);
  });

  test('keep what lines a reveal apart from what hangs under a window', () => {
    expect(rowsOf(['-1', '-1 side', '0 above', '0 below'].map((name) => placed(name)))).toEqual([['-1', '0 above'], ['-1 side'], ['0 below']]);
  });

  test('end with the room, with the band, and where strips are not consecutive', () => {
    const pieces = [placed('1'), placed('2', 100, 'bed', 'rail'), placed('3', 100, 'hall', 'rail'), placed('5', 100, 'hall', 'rail')];
    expect(rowsOf(pieces)).toEqual([['1'], ['2'], ['3'], ['5']]);
  });
});

test('rolls are cut along the wall, found once, and the pieces under the window come from the end of a roll beside it', () => {
  const [covering] = houseOf(documentOf({ coverings: [wallcovering({ match: 'free', rollLength: '330 in' })] })).coverings;
  if (!covering || !isRollGoods(covering)) throw new Error('goods in rolls');
  const pieces = ['1', '2', '3', '4 above', '4 below', '5', '6', '7'].map((name) => placed(name, name === '4 above' ? 20 : name === '4 below' ? 30 : 100));
  const cutting = cutPieces(covering, pieces, 'usual');
  expect(cutting.rolls().map(({ number, cuts }) => [number, ...cuts.map((cut) => cut.placed.piece.label)])).toEqual([
    [1, '1', '2', '3', '4 above'],
    [2, '5', '6', '7', '4 below'],
  ]);
  expect(cutting.rolls()).toBe(cutting.rolls());
});
