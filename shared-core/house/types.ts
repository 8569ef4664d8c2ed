import type { z } from 'zod';
import type * as coverings from './covering.ts';
import type * as houses from './house.ts';
import type * as rooms from './room.ts';

type DeepReadonly<Value> = Value extends string | number | boolean | null | undefined
  ? Value
  : Value extends readonly unknown[]
    ? { readonly [Index in keyof Value]: DeepReadonly<Value[Index]> }
    : { readonly [Key in keyof Value]: DeepReadonly<Value[Key]> };

/** The facts of a house. Nothing in it is computed. */
export type House = DeepReadonly<z.output<typeof houses.house>>;
export type Rules = House['rules'];
export type RunQuantity = House['stock'][number];
export type Delivery = House['deliveries'][number];
export type PlacedOrder = House['orders'][number];
export type PlacedLine = PlacedOrder['lines'][number];
export type Tax = NonNullable<House['tax']>;
export type Spare = Rules['spareRolls'];
/** A photo of a wall. */
export type Photo = House['photos'][number];
/** The picture of one repeat of a covering. */
export type Picture = House['pictures'][number];
export type Covering = House['coverings'][number];
export type Wallcovering = DeepReadonly<z.output<typeof coverings.wallcovering>>;
export type Border = DeepReadonly<z.output<typeof coverings.border>>;
export type Lining = DeepReadonly<z.output<typeof coverings.lining>>;
export type Mural = DeepReadonly<z.output<typeof coverings.mural>>;
export type Room = DeepReadonly<z.output<typeof rooms.room>>;
export type Wall = Room['walls'][number];
export type Opening = Wall['openings'][number];
export type Rail = Room['rails'][number];
export type Furniture = Room['furniture'][number];
export type Ceiling = NonNullable<Room['ceiling']>;
export type Band = Room['bands'][number];
export type Surface = NonNullable<Wall['surface']>;
export type SurfaceKind = Surface['kind'];
export type SurfaceState = Surface['states'][number];
export type Woodwork = NonNullable<Room['woodwork']>;
export type Paint = DeepReadonly<z.output<typeof coverings.paint>>;
/** Who works when, and at what rate. */
export type Work = NonNullable<House['work']>;
export type TaskChoice = House['tasks'][number];
export type OwnMaterial = House['materials'][number];
export type Expense = House['expenses'][number];
export type OpeningRule = Rules['openings'];
export type Layout = DeepReadonly<z.output<typeof rooms.layout>>;
/** The lists of a house that are set as a whole. */
export type HouseList = Exclude<keyof typeof houses.houseLists, 'coverings' | 'rooms' | 'pictures' | 'photos'>;
/** A house as it is written out: the exchange document. */
export type HouseDocument = DeepReadonly<z.input<typeof houses.house>>;
