import type { House } from '../house/index.ts';
import type { Mismatch, WallPlace } from '../setting-out/index.ts';
import { type Length, printLength, printMoney } from '../units/index.ts';
import type { BandPlan, CeilingPlan, HousePlan, PlannedStretch } from './house-plan.ts';
import { piecesOf } from './hangings.ts';

/** A plan as plain JSON for scripts: lengths as texts with their unit, money as decimal texts. */
export function planDocument(house: House, plan: HousePlan) {
  const print = (length: Length) => printLength(length, house.lengths);
  const place = ({ wall, at }: WallPlace) => ({ wall, at: print(at) });
  return {
    rooms: plan.rooms.map((room) => ({
      id: room.id,
      closingError: print(room.outline.closingError),
      bands: room.bands.map((band) => {
        const stretches = band.stretches.map((stretch) => ({
          walls: stretch.axis.walls.map(({ wall }) => wall.id),
          closed: stretch.axis.isClosed,
          start: place(stretch.start),
          kill: stretch.kill && place(stretch.kill),
          mismatch: stretch.mismatch && print(stretch.mismatch.amount),
          ...printVertical(stretch.mismatch, print),
          ...('mismatchUpright' in stretch && stretch.mismatchUpright ? { mismatchUpright: print(stretch.mismatchUpright.amount) } : {}),
          ...('shortage' in stretch ? printMural(stretch, print) : {}),
          ...('marks' in stretch ? { marks: stretch.marks.map(({ wall, from, distance, at }) => ({ wall, from, distance: print(distance), count: at.length })) } : {}),
        }));
        const [first] = stretches;
        return {
          id: band.id,
          covering: band.covering,
          strips: countStrips(band),
          pieces: piecesOf(band).length,
          start: first?.start ?? null,
          kill: first?.kill ?? null,
          mismatch: first?.mismatch ?? null,
          ...(band.kind === 'strips' ? { slivers: band.stretches.reduce((sum, stretch) => sum + stretch.slivers.length, 0) } : {}),
          rollsAlone: band.rollsAlone,
          ...(band.kind === 'lengths' && band.clashes.length > 0 ? { clashes: band.clashes.map(({ wall, id, by }) => ({ wall, with: id, by: print(by) })) } : {}),
          stretches,
        };
      }),
      ...(room.ceiling ? { ceiling: printCeiling(room.ceiling) } : {}),
    })),
    order: plan.order.map((line) => ({
      covering: line.covering,
      patternNumber: line.patternNumber,
      run: line.run,
      rooms: line.rooms,
      rollsNeeded: line.rollsNeeded,
      provenMinimum: line.isProvenMinimum,
      lowerBound: line.lowerBound,
      rollsByRoom: line.rollsByRoom,
      spare: line.spare,
      inHand: line.inHand,
      ...(line.onOrder > 0 ? { onOrder: line.onOrder } : {}),
      toBuy: line.toBuy,
      packs: line.packs.map(({ rolls, count }) => ({ rolls, count })),
      price: line.price === null ? null : printMoney(line.price, house.currency),
      ...(line.running ? { length: print(line.running.toBuy) } : {}),
      ...(line.shortfall > 0 ? { shortfall: line.shortfall } : {}),
      ...(line.spareLacking > 0 ? { spareLacking: line.spareLacking } : {}),
    })),
    cuts: plan.cuts.map((list) => ({
      covering: list.covering,
      run: list.run,
      rolls: list.rolls.map((roll) => ({
        number: roll.number,
        pieces: roll.cuts.map(({ placed, from }) => ({
          room: placed.room,
          band: placed.band,
          piece: placed.piece.label,
          from: print(from),
          length: print(placed.piece.length),
          ...(placed.piece.isTurned ? { upsideDown: true } : {}),
        })),
      })),
    })),
    ...printRuns(plan),
    problems: plan.problems,
    warnings: plan.warnings,
  };
}

/** What follows from orders, deliveries and runs; keys only where there is something to say. */
function printRuns({ runs, readiness }: HousePlan) {
  const waysOut = runs.flatMap(({ covering, waysOut: ways }) => ways.map((way) => ({ covering, ...way })));
  const difference = runs.flatMap((one) => one.difference);
  const returns = runs.flatMap((one) => one.returns);
  const isUnderWay = runs.some(({ ledger }) => ledger.lines.length + ledger.deliveries.length > 0);
  return {
    ...(waysOut.length > 0 ? { waysOut } : {}),
    ...(difference.length > 0 ? { difference } : {}),
    ...(returns.length > 0 ? { returns } : {}),
    ...(isUnderWay ? { readiness } : {}),
  };
}

function printCeiling({ covering, along, strips, slivers, rollsAlone }: CeilingPlan) {
  return { covering, along, strips: strips.length, pieces: strips.reduce((sum, { pieces }) => sum + pieces.length, 0), slivers, rollsAlone };
}

function printMural({ shortage, leftOut = [], offTop, offFoot }: Pick<PlannedStretch, 'shortage' | 'leftOut' | 'offTop' | 'offFoot'>, print: (length: Length) => string) {
  return {
    ...(leftOut.length > 0 ? { panelsLeftOut: leftOut } : {}),
    ...(shortage && shortage.width > 0 ? { tooNarrowBy: print(shortage.width) } : {}),
    ...(shortage && shortage.height > 0 ? { tooLowBy: print(shortage.height) } : {}),
    ...(offTop ? { cutOffTop: print(offTop) } : {}),
    ...(offFoot ? { cutOffFoot: print(offFoot) } : {}),
  };
}

export function countStrips(band: BandPlan): number {
  return band.kind === 'strips'
    ? band.stretches.reduce((sum, { strips }) => sum + strips.length, 0)
    : band.stretches.reduce((sum, { lengths }) => sum + lengths.length, 0);
}

function printVertical(mismatch: Mismatch | null, print: (length: Length) => string) {
  return mismatch && mismatch.vertical > 0 ? { verticalMismatch: print(mismatch.vertical) } : {};
}
