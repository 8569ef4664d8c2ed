import { assert } from '../../shared-core/base/index.ts';
import { decodeHouse, type House } from '../../shared-core/house/index.ts';
import demoDocument from './demo-house.json' with { type: 'json' };

/** An invented house to look round in: seven rooms, patterns shared between rooms, a border, two ceilings in paint, both ways of measuring. */
export function demoHouse(): House {
  const house = decodeHouse(demoDocument);
  assert(house.ok, `the demo house is good: ${house.ok ? '' : house.faults.map(({ path, message }) => `${path} ${message}`).join('; ')}`);
  return house.value;
}
