import type { Edit } from './edit.ts';
import { nameCovering } from './readings.ts';
import type { House } from './types.ts';
import { say } from '../words/index.ts';

/**
 * What an edit does, in the words of the undo command: 'change length of wall A in Front bedroom'.
 *
 * Named from the house as it was before the edit.
 */
export function nameEdit(house: House, edit: Edit): string {
  switch (edit.kind) {
    case 'change-house':
      return say`change ${keysOf(edit.facts)} of the house`;
    case 'replace-house':
      return say`replace the whole house by ${edit.house.name}`;
    case 'add-covering':
      return say`add covering ${edit.covering.name ?? edit.covering.patternNumber ?? edit.covering.id}`;
    case 'change-covering':
      return say`change ${keysOf(edit.facts)} of ${nameCovering(house, edit.covering)}`;
    case 'remove-covering':
      return say`remove covering ${nameCovering(house, edit.covering)}`;
    case 'add-room':
      return say`add room ${edit.room.name}`;
    case 'set-suppliers':
      return say`change the suppliers`;
    case 'set-stock':
      return say`change the rolls in hand`;
    case 'set-offers':
      return say`change what can still be had`;
    case 'place-order':
      return say`place order ${edit.order.id}`;
    case 'set-orders':
      return say`change the placed orders`;
    case 'set-deliveries':
      return nameDeliveries(house, edit.deliveries);
    case 'set-returns':
      return say`change what went back`;
    case 'set-leftovers':
      return say`change the leftovers`;
    case 'set-matching':
      return say`change which rooms must match`;
    case 'set-run-choices':
      return say`change the run of a room`;
    case 'set-picture':
      return say`${edit.image === null ? say`take away` : 'hang'} the picture of ${nameCovering(house, edit.covering)}`;
    default:
      return `${nameRoomEdit(edit)}${roomName(house, edit.room)}`;
  }
}

/** One delivery more is the delivery itself: 'receive 8 of K-2041, run 2214'. */
function nameDeliveries(house: House, deliveries: Extract<Edit, { kind: 'set-deliveries' }>['deliveries']): string {
  const added = deliveries.slice(house.deliveries.length);
  const [one] = added;
  if (!one) return say`change the deliveries`;
  return added.length === 1 ? say`receive ${one.rolls} of ${one.patternNumber}, run ${one.run}` : say`receive ${added.length} packages`;
}

function nameRoomEdit(edit: Extract<Edit, { room: string }>): string {
  switch (edit.kind) {
    case 'change-room':
      return say`change ${keysOf(edit.facts)} of `;
    case 'remove-room':
      return say`remove room `;
    case 'add-wall':
      return say`add wall ${edit.wall.id} in `;
    case 'change-wall':
      return say`change ${keysOf(edit.facts)} of wall ${edit.wall} in `;
    case 'change-walls':
      return say`change ${keysOf(edit.facts)} of walls ${edit.walls.join(', ')} in `;
    case 'remove-wall':
      return say`remove wall ${edit.wall} in `;
    case 'add-opening':
      return say`add ${edit.opening.kind} on wall ${edit.wall} in `;
    case 'change-opening':
      return say`change ${keysOf(edit.facts)} of ${edit.opening} on wall ${edit.wall} in `;
    case 'remove-opening':
      return say`remove ${edit.opening} on wall ${edit.wall} in `;
    case 'add-band':
      return say`hang ${edit.band.covering} in `;
    case 'change-band':
      return say`change ${keysOf(edit.facts, BAND_WORDS)} of band ${edit.band} in `;
    case 'remove-band':
      return say`take down band ${edit.band} in `;
  }
}

/** Facts whose key is not what one says. */
const WORDS: Readonly<Record<string, string>> = {
  base: say`floor line`,
  bookingMinutes: 'booking',
  dropBy: 'drop',
  focalWall: say`wall looked at most`,
  lengths: 'unit',
  plumbRight: 'lean',
  orderNote: say`note on the order`,
  rollStart: say`where a roll begins`,
  runMayChange: say`where the run may change`,
  singlesPerRoll: say`singles in a roll`,
  soldBy: say`sale by the length`,
  soldIn: say`sale units`,
  turn: 'corner',
};

const BAND_WORDS: typeof WORDS = { ...WORDS, from: say`lower edge`, to: say`upper edge` };

/** 'rollLength, soldIn' as 'roll length and sale units'. */
function keysOf(facts: object, words = WORDS): string {
  return Object.keys(facts)
    .map((key) => words[key] ?? key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`))
    .join(' and ');
}

function roomName(house: House, id: string): string {
  return house.rooms.find((room) => room.id === id)?.name ?? id;
}
