import { type House, nameCovering } from '../../shared-core/house/index.ts';
import { asCut, type CutList, isRollGoods } from '../../shared-core/ordering/index.ts';
import { cutSheet, sayPlacesOnRoll, sayUnits, surelyLong } from '../../shared-core/plan/index.ts';
import { showLength } from '../../shared-core/units/index.ts';
import { say } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './paper-facts.ts';
import type { Block, RollOnPaper, Sheet } from './pdf/sheet.ts';

/** The cut list of the whole house for whoever stands at the table: a sheet for each covering, run by run, roll by roll. */
export function cutListSheets(facts: PaperFacts): readonly Sheet[] {
  const { house, plan } = facts;
  const coverings = [...Map.groupBy(plan.cuts.filter(({ rolls }) => rolls.length > 0), ({ covering }) => covering)];
  return coverings.map(([covering, lists]) => ({
    title: say`Cut list`,
    about: nameInFull(house, covering),
    blocks: [{ kind: 'ticks', of: [{ text: LABELS_READ }] }, ...pasteFacts(house, covering), ...lists.flatMap((list) => rollsBlock(facts, list, null))],
  }));
}

export const LABELS_READ = say`Pattern number and run number are read on every label before cutting, and the labels kept.`;

/** A covering by its number and its name. */
export function nameInFull(house: House, id: string): string {
  const covering = house.coverings.find((one) => one.id === id);
  return covering?.patternNumber !== undefined && covering.name !== undefined ? `${covering.patternNumber} ${covering.name}` : nameCovering(house, id);
}

/** How a covering is pasted and how long it is booked, where that is known. */
export function pasteFacts(house: House, id: string): readonly Block[] {
  const covering = house.coverings.find((one) => one.id === id);
  const of = [
    ...(covering && 'paste' in covering && covering.paste !== undefined ? [{ head: say`Paste`, text: covering.paste }] : []),
    ...(covering && 'bookingMinutes' in covering && covering.bookingMinutes !== undefined ? [{ head: say`Booking`, text: say`${covering.bookingMinutes} min, the same for every strip` }] : []),
    ...(covering?.note === undefined ? [] : [{ head: say`Note`, text: covering.note }]),
  ];
  return of.length > 0 ? [{ kind: 'facts', of }] : [];
}

/** The rolls of a run from which anything is cut for a room, or for any where none is named; nothing of what is not cut from rolls. */
export function rollsBlock({ house, plan }: PaperFacts, list: CutList, room: string | null): readonly Block[] {
  const covering = house.coverings.find(({ id }) => id === list.covering);
  const cut = covering && asCut(covering);
  if (!covering || !cut || !isRollGoods(cut)) return [];
  const rollLength = cut.rollLength.length;
  const sheets = cutSheet(house, plan, list);
  const rolls = list.rolls.flatMap((roll, index): readonly RollOnPaper[] => {
    const sheet = sheets[index]!;
    const isFor = roll.cuts.map(({ placed }) => room === null || placed.room === room);
    if (!isFor.includes(true)) return [];
    const left = showLength(surelyLong(sheet.left, house.lengths), house.lengths);
    return [
      {
        number: roll.number,
        rollLength,
        cuts: sheet.cuts.map(({ label, room: name, where, length, from, mark, isOffcut, isTurned }, place) => ({
          label,
          tapeLabel: /\S*\d\S*/.exec(label)?.[0] ?? label,
          goesTo: [room === null || !isFor[place] ? name : null, where === '' ? null : where, isTurned ? say`upside down` : null, isOffcut ? say`from the offcut` : null].filter((part) => part !== null).join(', '),
          length: showLength(length, house.lengths),
          at: showLength(from, house.lengths),
          top: mark === null ? '' : showLength(mark, house.lengths),
          from,
          to: from + length,
          isOffcut,
          isOther: !isFor[place],
        })),
        left: sheet.isKept ? say`left over: ${left}, kept for repairs` : say`left over: ${left}, too short to keep`,
      },
    ];
  });
  if (rolls.length === 0) return [];
  return [
    {
      kind: 'rolls',
      heading: `${nameInFull(house, list.covering)}, ${list.run === null ? say`run not known yet` : say`run ${list.run}`}: ${sayUnits(house, list.covering, rolls.length)}`,
      note: sayPlacesOnRoll(cut),
      heads: { roll: say`Roll`, piece: say`Piece`, goesTo: say`For`, length: say`Length`, at: say`On the roll at`, top: say`Top in the repeat` },
      rolls,
    },
  ];
}
