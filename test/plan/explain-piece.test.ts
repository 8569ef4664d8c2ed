import { describe, expect, test } from 'vitest';
import { laidWidthOf } from '../../shared-core/house/index.ts';
import { explainPiece, explainStrip, planHouse, rollsOfBand } from '../../shared-core/plan/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

function workingOf(roomFacts: Loose, covering: Loose, label: string): readonly string[] {
  const house = houseOf(documentOf({ coverings: [wallcovering(covering)], rooms: [roomFacts] }));
  const plan = planHouse(house);
  const [bandPlan] = plan.rooms[0]!.bands;
  const [paper] = house.coverings;
  if (bandPlan?.kind !== 'strips' || paper?.kind !== 'wallcovering') throw new Error('strips');
  const [stretch] = bandPlan.stretches;
  const strip = stretch!.strips.find(({ pieces }) => pieces.some((piece) => piece.label === label))!;
  const piece = strip.pieces.find((one) => one.label === label)!;
  const roll = rollsOfBand(plan, 'room', 'main').get(label);
  const [band] = bandsOf(house.rooms[0]);
  return [...explainStrip(strip, laidWidthOf(paper), 'imperial'), ...explainPiece({ piece, covering: paper, band: band!, rules: house.rules, datum: stretch!.datum, roll, style: 'imperial' })].map(({ text }) => text);
}

const hung = (lengths: readonly string[], wallFacts: readonly Loose[] = [], layout: Loose = { start: { wall: 'A', at: '0 in' } }) =>
  room(lengths, { bands: [{ id: 'main', covering: 'paper', walls: lengths.map((_, index) => String.fromCharCode(65 + index)), layout }] }, wallFacts);
const WORKED = ['148 in', '122 in', '148 in', '122 in'];
const FERN = { width: '20.5 in', rollLength: '33 ft', repeat: '21 in' };

describe('the working of a strip', () => {
  test('says its width, its length, its place in the pattern and its roll', () => {
    expect(workingOf(hung(WORKED), FERN, 'A1')).toEqual([
      `1' 8 1/2" wide: a whole strip.`,
      `8' of wall + 2 × 2 in of trim = 8' 4".`,
      `Its top edge stands 2 in above the datum of 8': 0 in − 2 in, less whole repeats, = 1' 7" into the repeat of 21 in.`,
      expect.stringMatching(/^It comes from roll \d+, .* along\.$/),
    ]);
  });

  test('says why the last is narrower and cut wider again', () => {
    expect(workingOf(hung(WORKED), FERN, 'D6').slice(0, 2)).toEqual([`7 3/8 in wide: cut from a whole strip of 1' 8 1/2" where the wall ends.`, `7 3/8 in + 1/8 in to lap in the corner = 7 1/2 in to cut.`]);
  });

  test('says how it is split at an inside corner, as a range where that leans', () => {
    expect(workingOf(hung(WORKED), FERN, 'A8')).toContain(`Round the corner at the right of wall A: 4 1/2 in + 1/8 in = 4 5/8 in; the rest hangs from a new plumb line, over the wrap.`);
    expect(workingOf(hung(['100 in', '80 in', '100 in', '80 in'], [{ plumbRight: '1/2 in' }]), FERN, 'A5')).toContain(`Round the corner at the right of wall A: 1' 6 1/8" to 1' 6 1/2", as the corner leans; the rest hangs from a new plumb line, over the wrap.`);
  });

  test('says how it goes round an outside corner, plumb or leaning', () => {
    expect(workingOf(hung(['70 in', '60 in'], [{ turn: 'outside' }]), {}, 'A4').some((text) => text.startsWith('It wraps round the corner of walls A and B'))).toBe(true);
    expect(workingOf(hung(['70 in', '60 in'], [{ turn: 'outside', plumbRight: '1/2 in' }]), {}, 'A4')).toContain('The outside corner at the right of wall A leans: cut the strip after it has gone round, hang the rest plumb over it, lapped by 1/2 in.');
  });

  const reveal = { depth: '6 in', sides: ['left', 'right', 'head'] };
  const window = { openings: [{ id: 'win', kind: 'window', from: '33 in', width: '30 in', sill: '30 in', height: '46 in', reveal }] };

  test('says what an opening makes of it, and its reveal', () => {
    expect(workingOf(hung(['100 in'], [window]), {}, 'A3 above').slice(1)).toEqual([
      `1' 8" of wall + 6 in into the reveal + 2 × 2 in of trim = 2' 6".`,
      expect.stringContaining('Its top edge stands 2 in above the datum'),
      'The opening takes the whole width of the strip, so what is over it is a piece of its own.',
      expect.stringMatching(/offcut|roll/),
    ]);
    expect(workingOf(hung(['100 in'], [window]), {}, 'A4 win right')).toContain('Too little of the strip reaches past the opening’s edge to turn in, so the side takes a matched piece of its own.');
    const patch = workingOf(hung(['100 in'], [window]), {}, 'A2 patch win head');
    expect(patch).toContain('6 in into the reveal + 2 × 2 in of trim = 10 in.');
    expect(patch).toContain('It is 7 in wide.');
  });

  test('says the drop of a drop match', () => {
    expect(workingOf(hung(['100 in']), { ...FERN, match: 'drop', dropBy: '1/2' }, 'A2')).toContain(`Its top edge stands 2 in above the datum of 8': 0 in − 2 in + 10 1/2 in of drop = 8 1/2 in into the repeat of 21 in.`);
  });

  test('says which hang upside down, and nothing of a pattern where there is none', () => {
    const plain = workingOf(hung(['100 in']), { match: 'free', repeat: '0 in', reverseAlternate: true }, 'A2');
    expect(plain).toContain('It hangs upside down.');
    expect(plain.some((text) => text.includes('repeat'))).toBe(false);
  });
});

test('a piece cut from what the longest leave is an offcut', () => {
  const door = { openings: [{ id: 'door', kind: 'door', from: '20 in', width: '20 in', height: '80 in' }] };
  const house = houseOf(documentOf({ coverings: [wallcovering({ match: 'free', rollLength: '220 in' })], rooms: [hung(['60 in'], [door])] }));
  const rolls = rollsOfBand(planHouse(house), 'room', 'main');
  // Two strips of 100 in and, over the door, one of 20: all three from a roll of 220 in.
  expect([...rolls].map(([label, { number, isOffcut, run }]) => [label, number, isOffcut, run]).sort()).toEqual([
    ['A1', 1, false, null],
    ['A2 above', 1, true, null],
    ['A3', 1, false, null],
  ]);
});
