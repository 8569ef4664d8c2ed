import { expect, test } from 'vitest';
import { batchesOf, readBatches } from '../../src-renderer/places/coverings/batches.ts';

test('batches of a paint are read as they are shown, what nobody said left out', () => {
  const shown = [{ batch: 'S-0417', litres: '2.5', opened: '2026-03-02', place: 'cellar' }, { batch: ' 9 ', litres: '', opened: '', place: '' }];
  const read = readBatches(shown);
  expect(read).toEqual([{ batch: 'S-0417', litres: 2.5, opened: '2026-03-02', place: 'cellar' }, { batch: '9' }]);
  expect(batchesOf({ batches: read } as never)).toEqual([shown[0], { ...shown[1], batch: '9' }]);
  expect(readBatches([{ ...shown[0]!, litres: '2,5' }])).toEqual([{ batch: 'S-0417', litres: 2.5, opened: '2026-03-02', place: 'cellar' }]);
});

test.each(['0', '-1', 'two', '1 L', 'Infinity x'])('litres of %s are refused', (litres) => {
  expect(readBatches([{ batch: 'S', litres, opened: '', place: '' }])).toBeNull();
});
