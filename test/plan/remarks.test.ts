import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { documentOf, exampleDocument, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const planOf = (document: Loose) => planHouse(houseOf(document));
const changed = (change: (document: Loose) => void) => {
  const document = exampleDocument();
  change(document);
  return planOf(document);
};
const plain = (roomFacts: Loose, covering: Loose = {}, facts: Loose = {}) => planOf(documentOf({ coverings: [wallcovering({ repeat: '0 in', ...covering })], rooms: [roomFacts], ...facts }));

describe('what the survey says', () => {
  const square = (last: string, turn = 'inside') => plain(room(['4 m', '3 m', '4 m', last], {}, [{ turn }]), {}, { lengths: 'metric' }).warnings.filter(({ place }) => place === 'survey');

  test('of walls that miss each other by 25 mm is nothing, of more a warning that says by how much', () => {
    expect(square('3.025 m')).toEqual([]);
    expect(square('3.026 m')).toEqual([{ place: 'survey', room: 'room', message: 'The walls of Room miss each other by 2.6 cm where the last meets the first. Measure again, or leave it if the room is out of square.' }]);
  });

  test('of walls that do not go all round is nothing', () => {
    expect(square('1 m', 'outside')).toEqual([]);
    expect(plain(room(['4 m', '3 m'])).warnings).toEqual([]);
  });

  test('of each corner that leans by more than the wrap is a warning of its own', () => {
    const leaning = room(['100 in', '80 in', '100 in', '80 in'], {}, [{ plumbRight: '3/16 in' }, { plumbRight: '1/8 in' }, { plumbRight: '1/4 in' }]);
    const warned = (rules: Loose) => plain(leaning, {}, { rules }).warnings.flatMap(({ message }) => /right of wall (\w)/.exec(message)?.[1] ?? []);
    expect(warned({})).toEqual(['A', 'C']);
    expect(warned({ insideWrap: '1/4 in' })).toEqual([]);
  });
});

describe('what cannot be cut', () => {
  test('is named piece by piece with what a roll gives', () => {
    const { problems } = plain(room(['40 in']), { rollLength: '99 in', name: 'Oat', patternNumber: undefined });
    expect(problems).toEqual(['A1', 'A2'].map((label) => ({ place: 'coverings', room: 'room', message: `Piece ${label} in Room is 8' 4" long; a roll of Oat surely gives 8' 3". It can't be cut in one piece.` })));
  });

  test('of rolls that begin at their repeat counts from where the piece begins in it', () => {
    // A piece of 100 in that begins 18 in into the repeat of 20 in ends 118 in on.
    const of = (rollLength: string) => plain(room(['20 in']), { rollLength, repeat: '20 in', rollStart: 'at-repeat' }).problems.map(({ message }) => message);
    expect(of('118 in')).toEqual([]);
    expect(of('117 in')).toEqual([`Piece A1 in Room is 8' 4" long; a roll of P-1 surely gives 8' 3" from where its pattern begins. It can't be cut in one piece.`]);
  });

  test('is no border that can be joined, wherever its spools begin', () => {
    const border = (rollStart: string) => {
      const facts = room(['170 in'], { bands: [{ id: 'top', covering: 'paper', walls: ['A'], from: '90 in' }] });
      return planOf(documentOf({ coverings: [{ id: 'paper', kind: 'border', width: '6 in', rollLength: '180 in', repeat: '20 in', rollStart }], rooms: [facts] }));
    };
    for (const rollStart of ['anywhere', 'at-repeat']) expect(border(rollStart)).toMatchObject({ problems: [], order: [{ rollsNeeded: 2 }] });
  });

  test('leaves the rest of the order standing', () => {
    const tall = room(['20 in', '40 in'], {}, [{ height: '40 ft' }]);
    const plan = plain({ ...tall, bands: [{ id: 'main', covering: 'paper', walls: ['A'] }, { id: 'other', covering: 'paper', walls: ['B'] }] });
    expect(plan.problems.map(({ message }) => message)).toEqual([`Piece A1 in Room is 40' 4" long; a roll of P-1 surely gives 30'. It can't be cut in one piece.`]);
    expect(plan.order).toMatchObject([{ rollsNeeded: 1 }]);
  });
});

describe('what runs cannot give', () => {
  test('names every room and every run, in one problem for the pattern', () => {
    const rooms = ['Bath', 'Study'].map((name) => ({ ...room(['180 in']), id: name, name }));
    const { problems } = planOf(documentOf({ coverings: [wallcovering({ repeat: '0 in' })], rooms, offers: [{ covering: 'paper', run: '7', rolls: 2 }], stock: [{ covering: 'paper', run: '8', rolls: 1 }] }));
    // Nine strips a room, three to a roll: 3 rolls each, 6 together.
    expect(problems).toEqual([{ place: 'order', room: 'Bath', message: 'No run of P-1 can hang Bath, Study: 6 rolls of one run wanted; as it is sold, run 8 has 1, run 7 has 2. Ask for 4 rolls more of run 7: then every room hangs.' }]);
  });

  test('of the spare is a warning only', () => {
    const plan = changed((d) => (d.offers = [{ covering: 'fern', run: '2214', rolls: 9 }]));
    expect(plan.problems).toEqual([]);
    expect(plan.warnings.filter(({ place }) => place === 'order')).toEqual([{ place: 'order', room: null, message: 'Run 2214 of K-2041 has no rolls left for 1 of the spare.' }]);
  });

  test('because the label was wrong is said in rolls or spools, one or many', () => {
    const messages = (covering: string, rolls: number) => changed((d) => (d.deliveries = [{ covering, patternNumber: 'X-1', run: '5', rolls }])).warnings.filter(({ place }) => place === 'deliveries').map(({ message }) => message);
    expect(messages('fern', 1)).toEqual(['1 roll labelled X-1, run 5, came for pattern K-2041; not counted as in hand.']);
    expect(messages('fern', 2)).toEqual(['2 rolls labelled X-1, run 5, came for pattern K-2041; not counted as in hand.']);
    expect(messages('ivy', 3)).toEqual(['3 spools labelled X-1, run 5, came for pattern K-2099; not counted as in hand.']);
  });
});

describe('what is recorded and not in the plan', () => {
  const said = (document: Loose) => planOf(document).warnings.filter(({ place }) => place === 'coverings').map(({ message }) => message);

  test('a ceiling whose walls do not go all the way round, whether or not its covering hangs on walls too', () => {
    const ceiling = (bands: Loose) => documentOf({ coverings: [wallcovering()], rooms: [{ ...room(['100 in']), ...bands, ceiling: { covering: 'paper' } }] });
    const words = ['P-1 on the ceiling of Room is recorded but not in the plan: its walls do not go all the way round, so nothing is known of its outline.'];
    expect(said(ceiling({ bands: [] }))).toEqual(words);
    expect(said(ceiling({}))).toEqual(words);
    expect(planOf(ceiling({})).rooms[0]!.ceiling).toBeNull();
  });

  test('a paint on walls and a ceiling is in the plan, with its surfaces', () => {
    const facts = documentOf({ coverings: [{ id: 'paper', kind: 'paint', name: 'Chalk' }], rooms: [room(['100 in'], { ceiling: { covering: 'paper' } })] });
    expect(said(facts)).toEqual([]);
    expect(planHouse(houseOf(facts)).prep.paints).toMatchObject([{ covering: 'paper', surfaces: [{ surface: { kind: 'wall', wall: 'A' } }, { surface: { kind: 'ceiling' } }], millilitres: null }]);
  });
});

test('slivers are counted over all stretches of a band, in the word for one or for more', () => {
  const slivers = (lengths: readonly string[], walls: readonly string[]) => plain(room(lengths, { bands: [{ id: 'main', covering: 'paper', walls }] })).warnings.filter(({ place }) => place === 'set-out').map(({ message }) => message);
  // A fixed start, because the search would avoid them: each wall of 101 in ends in a part of 1 in.
  const facts = room(['101 in', '80 in', '101 in', '80 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'C'] }] });
  const quick = planHouse(houseOf(documentOf({ coverings: [wallcovering({ repeat: '0 in' })], rooms: [facts] })), 'instant');
  expect(quick.warnings.map(({ message }) => message)).toEqual(['Room has 2 slivers: a seam too near to a corner or an opening. Another start may avoid it.']);
  expect(slivers(['100 in'], ['A'])).toEqual([]);
});

describe('what goods ask for', () => {
  const said = (coverings: readonly Loose[], facts: Loose = {}) => planOf(documentOf({ coverings, rooms: [room(['100 in', '90 in', '100 in', '90 in'], facts)] })).warnings.map(({ message }) => message);
  const ivy = { id: 'ivy', kind: 'border', patternNumber: 'B-1', width: '6 in', rollLength: '15 ft' };
  const bands = [{ id: 'main', covering: 'paper', walls: ['A', 'B', 'C', 'D'] }, { id: 'top', covering: 'ivy', walls: ['A'], from: '90 in' }];

  test('vinyl lapped in corners, and a border over it', () => {
    expect(said([wallcovering({ material: 'Expanded vinyl' }), ivy], { bands })).toEqual([
      'P-1 is vinyl and laps on itself in corners: have vinyl-to-vinyl adhesive for the laps.',
      'The border B-1 goes over vinyl in Room: it wants vinyl-to-vinyl adhesive, and the vinyl hung before it, dry.',
    ]);
    expect(said([wallcovering({ material: 'vinyl' })], { bands: [{ ...bands[0], walls: ['A'] }] })).toEqual([]);
  });

  test('a border over new paper waits until that is dry', () => {
    expect(said([wallcovering(), ivy], { bands })).toEqual(['The border B-1 goes over new paper in Room: hang it only once that is dry.']);
    expect(said([wallcovering(), ivy], { bands: [bands[1]] })).toEqual([]);
  });

  test('every other strip upside down', () => {
    expect(said([wallcovering({ match: 'free', reverseAlternate: true })])).toEqual(['P-1 is hung with every other strip upside down; the cut list marks them.']);
  });

  test('a border that furniture hides, and one level under a ceiling that is not', () => {
    const furniture = [{ id: 'bed', name: 'headboard', wall: 'A', from: '10 in', width: '60 in', height: '92 in' }];
    expect(said([ivy], { bands: [bands[1]], furniture })).toEqual(['The border B-1 in Room does not clear the headboard on wall A: 2 in of it would be hidden. Hang it higher or lower.']);
    const sloped = room(['100 in', '90 in', '100 in', '90 in'], { bands: [{ ...bands[1], from: '80 in', level: true }] }, [{ height: ['96 in', '93 in'] }]);
    expect(planOf(documentOf({ coverings: [ivy], rooms: [sloped] })).warnings.map(({ message }) => message)).toEqual(['The border B-1 in Room is level and the ceiling is not: up to 3 in on wall A shows over it. Along the ceiling it would show nothing.']);
  });

  test('a ceiling whose last strip is a sliver', () => {
    // 101 in from strips of 20 in leave 1 in.
    const facts = room(['100 in', '101 in', '100 in', '101 in'], { bands: [], ceiling: { covering: 'paper', along: 'A' } });
    expect(planOf(documentOf({ coverings: [wallcovering()], rooms: [facts] })).warnings.map(({ message }) => message)).toEqual(['The last strip of the ceiling of Room is a sliver. Running the strips along another wall may avoid it.']);
  });
});

describe('coverings of one pattern number', () => {
  const said = (...coverings: readonly Loose[]) => planOf(documentOf({ coverings: coverings.map((covering, index) => wallcovering({ id: `c${index}`, ...covering })) })).warnings.map(({ message }) => message);

  test('are named where one supplier would know both by it', () => {
    const message = 'Pattern number k-7 stands for two coverings, Fern and number 2 of the list. Each is ordered by itself: keep one of them, or give them the numbers on their labels.';
    expect(said({ patternNumber: 'K-7', name: 'Fern', supplier: 'One' }, { patternNumber: 'k-7', name: undefined })).toEqual([message]);
    expect(said({ patternNumber: 'K-7', name: 'Fern', supplier: 'One' }, { patternNumber: 'k-7', name: undefined, supplier: 'One' })).toEqual([message]);
  });

  test('are two where their suppliers differ, or they have none', () => {
    expect(said({ patternNumber: 'K-7', supplier: 'One' }, { patternNumber: 'K-7', supplier: 'Other' })).toEqual([]);
    expect(said({ patternNumber: undefined }, { patternNumber: undefined })).toEqual([]);
  });
});
