import { describe, expect, test } from 'vitest';
import { explainOrderLine, planDocument, planHouse } from '../../shared-core/plan/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { exampleDocument, exampleHouse, houseOf, type Loose } from '../builders.ts';

const planOf = (change: (document: Loose) => void) => {
  const document = exampleDocument();
  change(document);
  return planHouse(houseOf(document));
};
const saidAt = (list: ReturnType<typeof planHouse>['warnings'], place: string) => list.filter((remark) => remark.place === place).map(({ message }) => message);

test('the same facts give the same plan, and it is plain data', () => {
  const plan = planHouse(demoHouse());
  expect(planHouse(demoHouse())).toEqual(plan);
  expect(structuredClone(plan)).toEqual(plan);
  const document = planDocument(demoHouse(), plan);
  expect(JSON.parse(JSON.stringify(document))).toEqual(document);
});

test('the quick plan is never short of the usual one', () => {
  const house = demoHouse();
  const [quick, usual] = [planHouse(house, 'instant'), planHouse(house, 'usual')];
  quick.order.forEach((line, index) => expect(line.rollsNeeded).toBeGreaterThanOrEqual(usual.order[index]!.rollsNeeded));
});

describe('the demo house', () => {
  const house = demoHouse();
  const plan = planHouse(house);

  test('has what there is to show: seven rooms, shared patterns, a border, paint, every match, both ways of measuring', () => {
    expect(house.rooms.length).toBeGreaterThanOrEqual(6);
    expect(plan.order.filter(({ rooms }) => rooms.length > 1).map(({ covering }) => covering)).toEqual(['fern', 'reed', 'oat', 'ivy']);
    expect(house.coverings.map((covering) => (covering.kind === 'wallcovering' ? covering.match : covering.kind))).toEqual(['straight', 'drop', 'free', 'border', 'paint']);
    const typed = JSON.stringify(house);
    expect(typed).toMatch(/"typed":"12' 4\\""/);
    expect(typed).toMatch(/"typed":"5\.12 m"/);
  });

  test('can be met, closes everywhere, and saves by cutting together', () => {
    expect(plan.problems).toEqual([]);
    expect(saidAt(plan.warnings, 'survey')).toEqual([]);
    const [needed, byRoom] = [plan.order.reduce((sum, line) => sum + line.rollsNeeded, 0), plan.order.reduce((sum, line) => sum + line.rollsByRoom, 0)];
    expect(needed).toBeLessThan(byRoom);
  });
});

describe('remarks', () => {
  test('say what no roll can give', () => {
    const { problems } = planOf((d) => (d.coverings[0].rollLength = '9 ft'));
    expect(problems).toHaveLength(27);
    expect(problems[0]).toEqual({ place: 'coverings', room: 'bed1', message: `Piece A1 in Front bedroom is 8' 4" long; a roll of K-2041 surely gives 7' 3". It can't be cut in one piece.` });
  });

  test('say which rooms no run can hang', () => {
    const { problems } = planOf((d) => (d.offers = [{ covering: 'fern', run: '2214', rolls: 8 }]));
    expect(problems).toEqual([{ place: 'order', room: 'bed1', message: 'No run of K-2041 can hang Front bedroom: 9 rolls of one run wanted; as it is sold, run 2214 has 8. Ask for 1 roll more of run 2214: then every room hangs.' }]);
  });

  test('say what the goods ask for', () => {
    const { warnings } = planOf((d) => {
      d.coverings[0].sequence = 'required';
    });
    expect(saidAt(warnings, 'coverings').slice(0, 1)).toEqual([
      'K-2041 is cut in the sequence of its rolls: hang the strips as they are numbered, the rolls in their order. Seams and steps of shade will show.',
    ]);
  });

  test('say where walls miss each other, where a corner leans, and where seams are too near', () => {
    const { warnings } = planOf((d) => {
      d.rooms[0].walls[3].length = '10 ft';
      d.rooms[0].walls[3].plumbRight = '1/2 in';
      d.rooms[0].walls[0].openings[0].from = '21 in';
    });
    expect(saidAt(warnings, 'survey')).toEqual([
      'The walls of Front bedroom miss each other by 2 in where the last meets the first. Measure again, or leave it if the room is out of square.',
      'The corner at the right of wall D in Front bedroom leans by 1/2 in, more than the wrap of 1/8 in: the plan wraps the strip by that much there. Widths beside it and the mismatch may come out smaller by as much; measure it at top, middle and bottom.',
    ]);
    expect(saidAt(warnings, 'set-out')).toEqual(['Front bedroom has 1 sliver: a seam too near to a corner or an opening. Another start may avoid it.']);
  });

  test('say what came that was not ordered', () => {
    const { warnings } = planOf((d) => (d.deliveries = [{ covering: 'fern', patternNumber: 'K-2014', run: '2214', rolls: 9 }]));
    expect(saidAt(warnings, 'deliveries')).toEqual(['9 rolls labelled K-2014, run 2214, came for pattern K-2041; not counted as in hand.']);
  });
});

test('the working of a line is right arithmetic', () => {
  const house = houseOf({ ...exampleDocument(), stock: [{ covering: 'fern', run: '1', rolls: 4 }], offers: [{ covering: 'fern', run: '1', rolls: 20 }] });
  const [line] = planHouse(house).order;
  const { needed, toBuy, price } = explainOrderLine(house, line!);
  expect(toBuy.map(({ text }) => text)).toEqual(['9 needed + 1 spare - 4 in hand = 6.', 'As sold: 3 × 2 = 6.', 'The supplier calls that 12 single rolls.']);
  expect(price.map(({ text }) => text)).toEqual(['3 × 84.00 = 252.00 USD.']);
  expect(needed.map(({ text }) => text)).toEqual([
    `27 pieces: 27 × 8' 4".`,
    `A roll of 33' may begin anywhere in the repeat of 21 in: from its first cut it surely gives 31' 3".`,
    `A piece every 8' 9" keeps the match: 3 to a roll.`,
    'Cut together: 9 rolls. No way of cutting takes fewer.',
  ]);
});

test('a house with nothing in it has an empty plan', () => {
  const plan = planHouse(houseOf({ format: 'struckline-house', version: 1, name: 'Bare' }));
  expect(plan).toMatchObject({ rooms: [], order: [], cuts: [], runs: [], readiness: [], left: [], problems: [], warnings: [], prep: { tasks: [], cautions: [], materials: [], paints: [] }, jobs: [], calendar: null, cost: { lines: [], missing: [] } });
  expect(planHouse(exampleHouse()).order.map(({ covering }) => covering)).toEqual(['fern', 'ivy']);
});
