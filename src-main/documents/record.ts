import { type House, nameCovering, nameSupplier, type Paint } from '../../shared-core/house/index.ts';
import { type HousePlan, nameRoom, sayLeft, sayUnits } from '../../shared-core/plan/index.ts';
import type { SurfaceOf } from '../../shared-core/prep/index.ts';
import { say, sayDay, sayDecimal, sayList } from '../../shared-core/words/index.ts';
import { nameInFull } from './cut-list.ts';
import { plannedRuns } from './orders.ts';
import type { PaperFacts } from './paper-facts.ts';
import type { Block, Cell, Sheet } from './pdf/sheet.ts';

/** What is to be known of the house in three years: what hangs where, of which run, what is left of it, paints and their batches. */
export function recordSheets(facts: PaperFacts): readonly Sheet[] {
  const { house, plan } = facts;
  return [
    {
      title: say`House record`,
      about: null,
      blocks: [
        { kind: 'text', text: house.built === undefined ? house.name : say`${house.name}, built ${house.built}` },
        { kind: 'text', as: 'soft', text: say`Keep it with the labels and the leftovers. Two runs of one pattern differ in shade: what is repaired is repaired from the run that hangs there.` },
        {
          kind: 'table',
          heading: say`What hangs where`,
          columns: [{ head: say`Room`, width: 84 }, { head: say`Where`, width: 84 }, { head: say`Pattern`, isWide: true }, { head: say`Run number`, width: 104 }, { head: say`Hung on`, width: 64 }],
          rows: house.rooms.flatMap((room) => roomRows(house, plan, room.id)),
        },
        ...leftoverBlocks(house, plan),
        ...paintBlocks(house, plan),
        ...orderBlocks(house),
        ...supplierBlocks(house),
      ],
    },
  ];
}

function roomRows(house: House, plan: HousePlan, id: string): readonly (readonly Cell[])[] {
  const room = house.rooms.find((one) => one.id === id)!;
  const hung = [...room.bands.map((band) => ({ covering: band.covering, on: band.walls.length === room.walls.length ? say`all walls` : band.walls.length === 1 ? say`wall ${band.walls[0]!}` : say`walls ${sayList(band.walls)}` })), ...(room.ceiling ? [{ covering: room.ceiling.covering, on: say`ceiling` }] : []), ...(room.woodwork ? [{ covering: room.woodwork.covering, on: say`woodwork` }] : [])];
  return hung.map(({ covering, on }, index) => {
    const choices = house.runChoices.filter((choice) => choice.room === id && choice.covering === covering);
    const days = [...new Set(choices.flatMap(({ day }) => day ?? []))];
    return [{ text: index === 0 ? nameRoom(house, id) : '', isStrong: true }, on, nameInFull(house, covering), sayRuns(house, plan, id, covering), days.map(sayDay).join(', ')];
  });
}

/** The run that hangs, or the one that is to. */
function sayRuns(house: House, plan: HousePlan, room: string, covering: string): string {
  if (house.coverings.find(({ id }) => id === covering)?.kind === 'paint') return '';
  const hung = house.runChoices.filter((choice) => choice.room === room && choice.covering === covering && choice.hung).map(({ run }) => run);
  if (hung.length > 0) return sayList([...new Set(hung)]);
  const planned = plannedRuns(plan, room, covering);
  return planned.length > 0 ? say`${sayList(planned)}, planned` : say`not known yet`;
}

function leftoverBlocks(house: House, plan: HousePlan): readonly Block[] {
  if (house.leftovers.length > 0) {
    const rows = house.leftovers.map(({ covering, run, length, count, place }) => [nameInFull(house, covering), run ?? '', say`${count} of ${sayDecimal(length.typed)}`, place ?? '']);
    return [{ kind: 'table', heading: say`What is left and where it is kept`, columns: [{ head: say`Pattern`, isWide: true }, { head: say`Run number`, width: 104 }, { head: say`Left`, width: 110 }, { head: say`Kept`, width: 130 }], rows }];
  }
  if (plan.left.length === 0) return [];
  const rows = plan.left.map((left) => [nameInFull(house, left.covering), left.run ?? say`not known yet`, sayLeft(house, left).join(', '), '']);
  return [{ kind: 'table', heading: say`What will be left when all is hung`, columns: [{ head: say`Pattern`, width: 110 }, { head: say`Run number`, width: 104 }, { head: say`Left`, isWide: true }, { head: say`Kept`, width: 90 }], rows }];
}

function paintBlocks(house: House, plan: HousePlan): readonly Block[] {
  const paints = house.coverings.filter((covering): covering is Paint => covering.kind === 'paint');
  const rows = paints.flatMap((paint): readonly (readonly Cell[])[] => {
    const where = sayList([...new Set(plan.prep.paints.filter(({ covering }) => covering === paint.id).flatMap(({ surfaces }) => surfaces.map(({ room, surface }) => `${nameRoom(house, room)}: ${saySurface(surface)}`)))]);
    const batches = paint.batches ?? [];
    if (batches.length === 0) return [[{ text: nameInFull(house, paint.id), isStrong: true }, where, say`not recorded`, '']];
    return batches.map(({ batch, litres, opened, place }, index) => [
      { text: index === 0 ? nameInFull(house, paint.id) : '', isStrong: true },
      index === 0 ? where : '',
      litres === undefined ? batch : say`${batch}, ${sayDecimal(String(litres))} L`,
      [...(opened === undefined ? [] : [say`opened ${sayDay(opened)}`]), ...(place === undefined ? [] : [place])].join(', '),
    ]);
  });
  return rows.length === 0 ? [] : [{ kind: 'table', heading: say`Paints and their batches`, columns: [{ head: say`Colour`, width: 110 }, { head: say`Where`, isWide: true }, { head: say`Batch`, width: 84 }, { head: say`Opened, kept`, width: 110 }], rows }];
}

function saySurface(surface: SurfaceOf): string {
  return surface.kind === 'wall' ? say`wall ${surface.wall}` : surface.kind === 'ceiling' ? say`ceiling` : say`woodwork`;
}

function orderBlocks(house: House): readonly Block[] {
  const ordered = house.orders.flatMap(({ id, placed, supplier, lines }) => lines.map((line): readonly Cell[] => [sayDay(placed), say`order ${id}`, `${nameInFull(house, line.covering)}${line.run === undefined ? '' : say`, run ${line.run}`}: ${sayUnits(house, line.covering, line.rolls)}`, supplier === undefined ? '' : nameSupplier(house, supplier)]));
  const came = house.deliveries.map(({ covering, run, rolls, damaged, received }): readonly Cell[] => [received === undefined ? '' : sayDay(received), say`came`, `${nameCovering(house, covering)}${say`, run ${run}`}: ${sayUnits(house, covering, rolls)}${damaged > 0 ? say`, ${damaged} damaged` : ''}`, '']);
  return ordered.length + came.length === 0 ? [] : [{ kind: 'table', heading: say`Orders and deliveries`, columns: [{ head: say`Day`, width: 72 }, { head: '', width: 60 }, { head: say`What`, isWide: true }, { head: say`Supplier`, width: 110 }], rows: [...ordered, ...came] }];
}

function supplierBlocks(house: House): readonly Block[] {
  const known = house.suppliers.filter(({ address }) => address !== undefined);
  return known.length === 0 ? [] : [{ kind: 'heading', text: say`Suppliers` }, { kind: 'facts', of: known.map(({ id, address }) => ({ head: nameSupplier(house, id), text: address! })) }];
}
