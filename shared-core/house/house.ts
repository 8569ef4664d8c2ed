import { z } from 'zod';
import { facts, id, listOf, measure, nameAndAddress, oneOf, spare, takes, text, wholeNumber } from './accepted.ts';
import { covering } from './covering.ts';
import { delivery, leftover, matching, placedOrder, returned, runChoice, runQuantity, supplier, tax } from './order-facts.ts';
import { MOST_PHOTOS, photo } from './photo.ts';
import { IMAGE_PATTERN, isRasterImage, MOST_PIXELS } from './raster-image.ts';
import { room } from './room.ts';
import { day, expense, ownMaterial, taskChoice, work } from './work-facts.ts';
import { say } from '../words/index.ts';

/** NRM2 (SMM7), DIN 18363 (VOB part C) and IS 1200 part 13. */
export const OPENING_RULES = ['none', 'nrm2', 'din-18363', 'is-1200-13'] as const;

/** Allowances of the trade (common practice, no source), each open to change for a house. */
export const rules = facts(say`the rules`, {
  trim: measure.prefault('2 in'),
  insideWrap: measure.prefault('1/8 in'),
  minOutsideWrap: measure.prefault('1 in'),
  sliver: measure.prefault('2 in'),
  borderAllowance: measure.prefault('1 in'),
  markSpacing: measure.prefault('2 ft'),
  onePersonLength: measure.prefault('12 ft'),
  keptFrom: measure.prefault('1 ft'),
  spareRolls: spare.prefault(1),
  pooling: oneOf(['house', 'room']).prefault('house'),
  /** Which openings are taken off the area that is painted: none, or by a published rule. */
  openings: oneOf(OPENING_RULES).prefault('none'),
});

/** Far more than a house has. */
export const MOST_ROOMS = 2000;

/** A picture 640 px long is far below it; all of them go into one document and through every call. */
export const LONGEST_PICTURE = 400_000;
const pictureTaken = takes(say`a picture as a data URL of image/png, image/jpeg or image/webp in base64, of at most ${LONGEST_PICTURE} characters and ${MOST_PIXELS} pixels each way`);
export const pictureImage = z.string({ error: pictureTaken }).max(LONGEST_PICTURE, { error: pictureTaken, abort: true }).regex(IMAGE_PATTERN, { error: pictureTaken, abort: true }).refine(isRasterImage, { error: pictureTaken });

/** One repeat of a pattern as it is seen, cropped at its edges. */
export const picture = facts(say`a picture`, { covering: id(), image: pictureImage });

const upperCaseLetters = (count: number, example: string) =>
  z
    .string({ error: takes(say`${count} capital letters, such as "${example}"`) })
    .regex(new RegExp(`^[A-Z]{${count}}$`), { error: takes(say`${count} capital letters, such as "${example}"`) });

/** What is true of the house as a whole. */
export const houseFacts = {
  name: text(say`the name of the house`),
  lengths: oneOf(['imperial', 'metric']).prefault('imperial'),
  currency: upperCaseLetters(3, 'USD').prefault('USD'),
  built: wholeNumber(1000, 2200, say`the year the house was built,`).optional(),
  country: upperCaseLetters(2, 'US').optional(),
  rules: rules.prefault({}),
  tax: tax.optional(),
  /** Goes on the order. */
  orderNote: text(say`a note`, 2000).optional(),
  /** Who sends the papers of the house, and who gets them. */
  contractor: nameAndAddress().optional(),
  customer: nameAndAddress().optional(),
  /** Where goods are delivered, and the day by which they are wanted there. */
  deliverTo: nameAndAddress().optional(),
  deliverBy: day.optional(),
  work: work.optional(),
};

/** The lists of a house; each thing in them is kept by itself. */
export const houseLists = {
  coverings: listOf(covering, say`coverings`, 500).prefault([]),
  rooms: listOf(room, say`rooms`, MOST_ROOMS).prefault([]),
  suppliers: listOf(supplier, say`suppliers`, 200).prefault([]),
  stock: listOf(runQuantity, say`stock entries`, 2000).prefault([]),
  offers: listOf(runQuantity, say`offers`, 2000).prefault([]),
  orders: listOf(placedOrder, say`placed orders`, 500).prefault([]),
  deliveries: listOf(delivery, say`deliveries`, 5000).prefault([]),
  returns: listOf(returned, say`returns`, 2000).prefault([]),
  leftovers: listOf(leftover, say`leftovers`, 2000).prefault([]),
  matching: listOf(matching, say`lists of rooms that must match`, 500).prefault([]),
  runChoices: listOf(runChoice, say`choices of run`, 5000).prefault([]),
  pictures: listOf(picture, say`pictures`, 500).prefault([]),
  photos: listOf(photo, say`photos`, MOST_PHOTOS).prefault([]),
  tasks: listOf(taskChoice, say`choices for tasks`, 5000).prefault([]),
  materials: listOf(ownMaterial, say`materials`, 200).prefault([]),
  expenses: listOf(expense, say`expenses`, 2000).prefault([]),
};

export const house = facts(say`a house`, {
  format: z.literal('struckline-house', { error: takes('"struckline-house"') }),
  version: z.literal(1, { error: takes(say`1, the version of the format that this program reads`) }),
  ...houseFacts,
  ...houseLists,
});
