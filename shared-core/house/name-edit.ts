import type { Edit } from './edit.ts';
import type { houseFacts } from './house.ts';
import { OPENING_WORDS } from './kind-words.ts';
import { nameCovering } from './readings.ts';
import type { Band, Covering, House, Opening, Photo, Room, Wall } from './types.ts';
import { say, sayList } from '../words/index.ts';

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
    case 'add-rooms':
      return edit.rooms.length === 1 ? say`add room ${edit.rooms[0]!.name}` : say`add ${edit.rooms.length} rooms`;
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
    case 'set-tasks':
      return say`change what is said of the tasks`;
    case 'set-materials':
      return say`change what materials are sold in`;
    case 'set-expenses':
      return say`change what was spent`;
    case 'set-picture':
      return edit.image === null ? say`take away the picture of ${nameCovering(house, edit.covering)}` : say`hang the picture of ${nameCovering(house, edit.covering)}`;
    case 'add-photos': {
      const [{ room, wall }] = edit.photos as [Photo];
      const { length } = edit.photos;
      return length === 1 ? say`add a photo of wall ${wall} in ${roomName(house, room)}` : say`add ${length} photos of wall ${wall} in ${roomName(house, room)}`;
    }
    case 'change-photo': {
      const { wall } = edit.facts;
      return typeof wall === 'string' ? say`move ${photoName(house, edit.photo)} to wall ${wall}` : say`change ${keysOf(edit.facts)} of ${photoName(house, edit.photo)}`;
    }
    case 'remove-photo':
      return say`take away ${photoName(house, edit.photo)}`;
    default:
      return nameRoomEdit(edit, roomName(house, edit.room));
  }
}

/** One delivery more is the delivery itself: 'receive 8 of K-2041, run 2214'. */
function nameDeliveries(house: House, deliveries: Extract<Edit, { kind: 'set-deliveries' }>['deliveries']): string {
  const added = deliveries.slice(house.deliveries.length);
  const [one] = added;
  if (!one) return say`change the deliveries`;
  return added.length === 1 ? say`receive ${one.rolls} of ${one.patternNumber}, run ${one.run}` : say`receive ${added.length} packages`;
}

function nameRoomEdit(edit: Extract<Edit, { room: string }>, room: string): string {
  switch (edit.kind) {
    case 'change-room':
      return say`change ${keysOf(edit.facts)} of ${room}`;
    case 'remove-room':
      return say`remove room ${room}`;
    case 'set-surfaces':
      return say`change the surface of ${sayList(edit.surfaces.map(({ of }) => (typeof of === 'object' ? say`wall ${of.wall}` : of === 'ceiling' ? say`ceiling` : say`woodwork`)))} in ${room}`;
    case 'add-wall':
      return say`add wall ${edit.wall.id} in ${room}`;
    case 'add-walls':
      return edit.walls.length === 1 ? say`add wall ${edit.walls[0]!.id} in ${room}` : say`add ${edit.walls.length} walls in ${room}`;
    case 'replace-walls':
      return say`replace the walls of ${room}`;
    case 'change-wall':
      return say`change ${keysOf(edit.facts)} of wall ${edit.wall} in ${room}`;
    case 'change-walls':
      return say`change ${keysOf(edit.facts)} of walls ${edit.walls.join(', ')} in ${room}`;
    case 'remove-wall':
      return say`remove wall ${edit.wall} in ${room}`;
    case 'add-opening':
      return say`add ${OPENING_WORDS[edit.opening.kind]} on wall ${edit.wall} in ${room}`;
    case 'change-opening':
      if (isMove(edit.facts)) return say`move ${edit.opening} in ${room}`;
      return say`change ${keysOf(edit.facts, PLACED_WORDS)} of ${edit.opening} on wall ${edit.wall} in ${room}`;
    case 'remove-opening':
      return say`remove ${edit.opening} on wall ${edit.wall} in ${room}`;
    case 'add-band':
      return say`hang ${edit.band.covering} in ${room}`;
    case 'change-band':
      return say`change ${keysOf(edit.facts, BAND_WORDS)} of band ${edit.band} in ${room}`;
    case 'remove-band':
      return say`take down band ${edit.band} in ${room}`;
  }
}

type KeyOf<Facts> = Facts extends unknown ? Exclude<keyof Facts, 'id'> : never;
type ChangedKey = keyof typeof houseFacts | KeyOf<Covering> | KeyOf<Room> | KeyOf<Wall> | KeyOf<Opening> | KeyOf<Band> | KeyOf<Photo>;

/** What one says for the facts that an edit can change. */
const WORDS: Readonly<Record<ChangedKey, string>> = {
  name: say`name`,
  lengths: say`unit`,
  currency: say`currency`,
  built: say`built`,
  country: say`country`,
  rules: say`rules`,
  tax: say`tax`,
  orderNote: say`note on the order`,
  contractor: say`who sends the papers`,
  customer: say`customer`,
  deliverTo: say`where goods are delivered`,
  deliverBy: say`the day by which goods are wanted`,
  work: say`work`,
  kind: say`kind`,
  patternNumber: say`pattern number`,
  supplier: say`supplier`,
  material: say`material`,
  note: say`note`,
  width: say`width`,
  rollLength: say`roll length`,
  singlesPerRoll: say`singles in a roll`,
  repeat: say`repeat`,
  match: say`match`,
  dropBy: say`drop`,
  horizontalRepeat: say`horizontal repeat`,
  rollStart: say`where a roll begins`,
  reverseAlternate: say`reverse alternate`,
  sequence: say`sequence`,
  panels: say`panels`,
  selvedge: say`selvedge`,
  seam: say`seam`,
  seamOverlap: say`seam overlap`,
  paste: say`paste`,
  bookingMinutes: say`booking`,
  spareRolls: say`spare rolls`,
  soldIn: say`sale units`,
  soldBy: say`sale by the length`,
  direction: say`direction`,
  panelWidth: say`panel width`,
  panelHeight: say`panel height`,
  spreadingRate: say`spreading rate`,
  coats: say`coats`,
  solids: say`solids`,
  film: say`dry film`,
  batches: say`batches`,
  storey: say`storey`,
  walls: say`walls`,
  focalWall: say`wall looked at most`,
  rails: say`rails`,
  furniture: say`furniture`,
  bands: say`bands`,
  ceiling: say`ceiling`,
  length: say`length`,
  height: say`height`,
  base: say`floor line`,
  turn: say`corner`,
  plumbRight: say`lean`,
  openings: say`openings`,
  surface: say`surface`,
  ceilingSurface: say`surface of the ceiling`,
  woodwork: say`woodwork`,
  stairs: say`stair tower`,
  keptUsable: say`whether it stays usable`,
  entrance: say`entrance`,
  from: say`from`,
  sill: say`sill`,
  reveal: say`reveal`,
  covering: say`covering`,
  to: say`upper edge`,
  position: say`position`,
  datum: say`datum`,
  level: say`level`,
  firstPanel: say`first panel`,
  levelLine: say`level line`,
  runMayChange: say`where the run may change`,
  layout: say`layout`,
  room: say`room`,
  wall: say`wall`,
  caption: say`caption`,
  image: say`image`,
};

const PLACED_WORDS: typeof WORDS = { ...WORDS, from: say`place` };
const BAND_WORDS: typeof WORDS = { ...WORDS, from: say`lower edge` };

/** An opening that stands elsewhere and is as large as it was. */
function isMove(facts: object): boolean {
  return 'from' in facts && Object.keys(facts).every((key) => key === 'from' || key === 'sill');
}

/** 'rollLength, soldIn' as 'roll length and sale units'. */
function keysOf(facts: object, words = WORDS): string {
  return Object.keys(facts)
    .map((key) => words[key as ChangedKey] ?? key)
    .join(say` and `);
}

function roomName(house: House, id: string): string {
  return house.rooms.find((room) => room.id === id)?.name ?? id;
}

function photoName(house: House, id: string): string {
  const photo = house.photos.find((candidate) => candidate.id === id);
  return photo ? say`a photo of wall ${photo.wall} in ${roomName(house, photo.room)}` : say`photo ${id}`;
}
