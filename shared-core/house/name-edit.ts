import type { Edit } from './edit.ts';
import { nameCovering } from './readings.ts';
import type { House, Photo } from './types.ts';

/**
 * What an edit does, in the words of the undo command: 'change length of wall A in Front bedroom'.
 *
 * Named from the house as it was before the edit.
 */
export function nameEdit(house: House, edit: Edit): string {
  switch (edit.kind) {
    case 'change-house':
      return `change ${keysOf(edit.facts)} of the house`;
    case 'replace-house':
      return `replace the whole house by ${edit.house.name}`;
    case 'add-covering':
      return `add covering ${edit.covering.name ?? edit.covering.patternNumber ?? edit.covering.id}`;
    case 'change-covering':
      return `change ${keysOf(edit.facts)} of ${nameCovering(house, edit.covering)}`;
    case 'remove-covering':
      return `remove covering ${nameCovering(house, edit.covering)}`;
    case 'add-room':
      return `add room ${edit.room.name}`;
    case 'add-rooms':
      return edit.rooms.length === 1 ? `add room ${edit.rooms[0]!.name}` : `add ${edit.rooms.length} rooms`;
    case 'set-suppliers':
      return 'change the suppliers';
    case 'set-stock':
      return 'change the rolls in hand';
    case 'set-offers':
      return 'change what can still be had';
    case 'place-order':
      return `place order ${edit.order.id}`;
    case 'set-orders':
      return 'change the placed orders';
    case 'set-deliveries':
      return nameDeliveries(house, edit.deliveries);
    case 'set-returns':
      return 'change what went back';
    case 'set-leftovers':
      return 'change the leftovers';
    case 'set-matching':
      return 'change which rooms must match';
    case 'set-run-choices':
      return 'change the run of a room';
    case 'set-picture':
      return `${edit.image === null ? 'take away' : 'hang'} the picture of ${nameCovering(house, edit.covering)}`;
    case 'add-photos': {
      const [{ room, wall }] = edit.photos as [Photo];
      return `add ${edit.photos.length === 1 ? 'a photo' : `${edit.photos.length} photos`} of wall ${wall} in ${roomName(house, room)}`;
    }
    case 'change-photo': {
      const { wall } = edit.facts;
      return typeof wall === 'string' ? `move ${photoName(house, edit.photo)} to wall ${wall}` : `change ${keysOf(edit.facts)} of ${photoName(house, edit.photo)}`;
    }
    case 'remove-photo':
      return `take away ${photoName(house, edit.photo)}`;
    default:
      return `${nameRoomEdit(edit)}${roomName(house, edit.room)}`;
  }
}

/** One delivery more is the delivery itself: 'receive 8 of K-2041, run 2214'. */
function nameDeliveries(house: House, deliveries: Extract<Edit, { kind: 'set-deliveries' }>['deliveries']): string {
  const added = deliveries.slice(house.deliveries.length);
  const [one] = added;
  if (!one) return 'change the deliveries';
  return added.length === 1 ? `receive ${one.rolls} of ${one.patternNumber}, run ${one.run}` : `receive ${added.length} packages`;
}

function nameRoomEdit(edit: Extract<Edit, { room: string }>): string {
  switch (edit.kind) {
    case 'change-room':
      return `change ${keysOf(edit.facts)} of `;
    case 'remove-room':
      return 'remove room ';
    case 'add-wall':
      return `add wall ${edit.wall.id} in `;
    case 'add-walls':
      return `add ${edit.walls.length === 1 ? `wall ${edit.walls[0]!.id}` : `${edit.walls.length} walls`} in `;
    case 'replace-walls':
      return 'replace the walls of ';
    case 'change-wall':
      return `change ${keysOf(edit.facts)} of wall ${edit.wall} in `;
    case 'change-walls':
      return `change ${keysOf(edit.facts)} of walls ${edit.walls.join(', ')} in `;
    case 'remove-wall':
      return `remove wall ${edit.wall} in `;
    case 'add-opening':
      return `add ${edit.opening.kind} on wall ${edit.wall} in `;
    case 'change-opening':
      if (isMove(edit.facts)) return `move ${edit.opening} in `;
      return `change ${keysOf(edit.facts, OPENING_WORDS)} of ${edit.opening} on wall ${edit.wall} in `;
    case 'remove-opening':
      return `remove ${edit.opening} on wall ${edit.wall} in `;
    case 'add-band':
      return `hang ${edit.band.covering} in `;
    case 'change-band':
      return `change ${keysOf(edit.facts, BAND_WORDS)} of band ${edit.band} in `;
    case 'remove-band':
      return `take down band ${edit.band} in `;
  }
}

/** Facts whose key is not what one says. */
const WORDS: Readonly<Record<string, string>> = {
  base: 'floor line',
  bookingMinutes: 'booking',
  dropBy: 'drop',
  focalWall: 'wall looked at most',
  lengths: 'unit',
  plumbRight: 'lean',
  orderNote: 'note on the order',
  rollStart: 'where a roll begins',
  runMayChange: 'where the run may change',
  singlesPerRoll: 'singles in a roll',
  soldBy: 'sale by the length',
  soldIn: 'sale units',
  turn: 'corner',
};

const OPENING_WORDS: typeof WORDS = { ...WORDS, from: 'place' };

/** An opening that stands elsewhere and is as large as it was. */
function isMove(facts: object): boolean {
  return 'from' in facts && Object.keys(facts).every((key) => key === 'from' || key === 'sill');
}

const BAND_WORDS: typeof WORDS = { ...WORDS, from: 'lower edge', to: 'upper edge' };

/** 'rollLength, soldIn' as 'roll length and sale units'. */
function keysOf(facts: object, words = WORDS): string {
  return Object.keys(facts)
    .map((key) => words[key] ?? key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`))
    .join(' and ');
}

function roomName(house: House, id: string): string {
  return house.rooms.find((room) => room.id === id)?.name ?? id;
}

function photoName(house: House, id: string): string {
  const photo = house.photos.find((candidate) => candidate.id === id);
  return photo ? `a photo of wall ${photo.wall} in ${roomName(house, photo.room)}` : `photo ${id}`;
}
