import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutSheet } from '../../shared-core/plan/index.ts';
import { documentOf, houseOf, type Loose, wallcovering } from '../builders.ts';
import { hung } from '../setting-out/random-rooms.ts';
import { shareOf } from '../share-of.ts';
import { papersFor } from './paper-house.ts';
import { readPdf } from './read-pdf.ts';

const LETTER = { width: 612, right: 45 };
const A4 = { width: 595.28, right: 45 };
const name = fc.oneof(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 60 }), fc.constantFrom('K'.repeat(60), 'Τραπεζαρία', 'Кухня', '浴室', 'مطبخ', 'a\u202Eb', '👩‍👩‍👧 room')).map((text) => text.trim() || 'x');
const lines = fc.array(name, { minLength: 1, maxLength: 5 }).map((all) => all.join('\n').slice(0, 400));
const work = fc.option(fc.record({ starts: fc.constantFrom('2026-03-02', '2027-12-31'), people: fc.integer({ min: 1, max: 3 }), rate: fc.constant('45.00') }, { requiredKeys: ['starts', 'people'] }), { nil: undefined });
const surface = fc.option(fc.record({ kind: fc.constantFrom('old-plaster', 'paper-vinyl', 'textured', 'wood', 'painted-gloss'), states: fc.subarray(['cracked', 'damp', 'mould', 'holes']) }), { nil: undefined });

const house = fc
  .record({
    rooms: fc.array(fc.tuple(hung, name, surface), { minLength: 1, maxLength: 3 }),
    names: fc.record({ house: name, pattern: name, supplier: name, run: name }),
    lengths: fc.constantFrom('imperial', 'metric'),
    texts: fc.record({ contractor: lines, customer: lines, deliverTo: lines }),
    hasOffer: fc.boolean(),
    isPlaced: fc.boolean(),
    work,
  })
  .map(({ rooms, names, lengths, texts, hasOffer, isPlaced, work: own }): Loose => {
    const [first] = rooms;
    const covering = { ...first![0].covering, ...(first![0].covering.match === 'drop' ? { dropBy: '1/2' } : {}) };
    return documentOf({
      name: names.house,
      lengths,
      ...texts,
      ...(own === undefined ? {} : { work: own }),
      coverings: [
        wallcovering({ ...covering, id: 'paper', name: names.pattern, patternNumber: names.pattern.slice(0, 60), supplier: names.supplier.slice(0, 60), soldIn: [{ rolls: 1, price: '40.00' }] }),
        { id: 'trail', kind: 'border', width: '6 in', rollLength: '15 ft', repeat: '20 in' },
        { id: 'white', kind: 'paint', name: names.pattern, spreadingRate: '12 m2/L' },
      ],
      rooms: rooms.map(([{ walls, layout }, title, on], index) => ({
        id: `r${index}`,
        name: title.slice(0, 80),
        walls: walls.map((wall) => ({ ...wall, ...(on === undefined ? {} : { surface: on }) })),
        bands: [
          { id: 'main', covering: 'paper', walls: walls.map(({ id }) => id), ...(layout === undefined ? {} : { layout }) },
          ...(index % 2 === 0 ? [{ id: 'rail', covering: 'trail', walls: [walls[0]!.id], from: '40 in', to: '46 in' }] : []),
        ],
        ceiling: { covering: 'white' },
      })),
      offers: hasOffer ? [{ covering: 'paper', run: names.run.slice(0, 60), rolls: 5 }] : [],
      orders: isPlaced ? [{ id: '1', placed: '2026-03-02', lines: [{ covering: 'paper', rolls: 3, rooms: ['r0'] }] }] : [],
    });
  });

test('whatever a house is, each of its papers is made, is the same when it is made again and stands within its page', async () => {
  await fc.assert(
    fc.asyncProperty(house, fc.constantFrom('a4', 'letter'), async (document, size) => {
      const one = houseOf(document);
      const [papers, again] = [papersFor(one), papersFor(houseOf(structuredClone(document)))];
      const { width, right } = size === 'a4' ? A4 : LETTER;
      for (const { kind, of, forms, isTogether } of papers.list) {
        if (isTogether) continue;
        for (const form of forms) {
          const made = await papers.make(kind, of, form, size);
          expect(Buffer.compare(made.bytes, (await again.make(kind, of, form, size)).bytes)).toBe(0);
          if (form !== 'pdf') continue;
          const { pages, rightmost } = await readPdf(made.bytes);
          expect([kind, pages.length]).toEqual([kind, made.pages]);
          // A letter that a font lacks is as wide as its mark, which the reader does not know.
          if (made.unset.length === 0) expect([kind, rightmost <= width - right + 3]).toEqual([kind, true]);
          if (kind !== 'job-sheet') continue;
          const text = pages.join(' ');
          for (const list of papers.plan.cuts) {
            cutSheet(one, papers.plan, list).forEach(({ cuts }, roll) => cuts.forEach(({ label }, cut) => {
              if (list.rolls[roll]!.cuts[cut]!.placed.room === of) expect([label, text.includes(label)]).toEqual([label, true]);
            }));
          }
        }
      }
    }),
    { numRuns: shareOf(200, 4) },
  );
}, 600_000);
