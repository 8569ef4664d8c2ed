import { z } from 'zod';
import { facts, id, listOf, measure, oneOf, takes, text, wholeNumber } from './accepted.ts';
import { covering } from './covering.ts';
import { room } from './room.ts';

/** Allowances of the trade (common practice, no source), each open to change for a house. */
export const rules = facts('the rules', {
  trim: measure.prefault('2 in'),
  insideWrap: measure.prefault('1/8 in'),
  minOutsideWrap: measure.prefault('1 in'),
  sliver: measure.prefault('2 in'),
  borderAllowance: measure.prefault('1 in'),
  markSpacing: measure.prefault('2 ft'),
  onePersonLength: measure.prefault('12 ft'),
  spareRolls: wholeNumber(0, 1000).prefault(1),
  pooling: oneOf(['house', 'room']).prefault('house'),
});

const run = text('a run number', 60);

/** Rolls of one run: in hand before this order, or to be had from the supplier. */
export const runQuantity = facts('rolls of a run', { covering: id(), run, rolls: wholeNumber(0, 100_000) });

export const delivery = facts('a delivery', {
  covering: id(),
  patternNumber: text('the pattern number on the label', 60),
  run,
  rolls: wholeNumber(0, 100_000),
  damaged: wholeNumber(0, 100_000).prefault(0),
  received: z.iso.date({ error: takes('a date such as "2026-03-02"') }).optional(),
});

const PICTURE_PATTERN = /^data:image\/(?:png|jpeg|webp);base64,[A-Za-z0-9+/]+={0,2}$/;
/** A picture 640 px long is far below it; all of them go into one document and through every call. */
export const LONGEST_PICTURE = 400_000;
const pictureTaken = takes(`a picture as a data URL of image/png, image/jpeg or image/webp in base64, of at most ${LONGEST_PICTURE} characters`);
/** The picture's own text. No SVG: it could hold more than a picture. */
export const pictureImage = z.string({ error: pictureTaken }).max(LONGEST_PICTURE, { error: pictureTaken }).regex(PICTURE_PATTERN, { error: pictureTaken });

/** One repeat of a pattern as it is seen, cropped at its edges. */
export const picture = facts('a picture', { covering: id(), image: pictureImage });

const upperCaseLetters = (count: number, example: string) =>
  z
    .string({ error: takes(`${count} capital letters, such as "${example}"`) })
    .regex(new RegExp(`^[A-Z]{${count}}$`), { error: takes(`${count} capital letters, such as "${example}"`) });

/** What is true of the house as a whole. */
export const houseFacts = {
  name: text('the name of the house'),
  lengths: oneOf(['imperial', 'metric']).prefault('imperial'),
  currency: upperCaseLetters(3, 'USD').prefault('USD'),
  built: wholeNumber(1000, 2200, 'the year the house was built,').optional(),
  country: upperCaseLetters(2, 'US').optional(),
  rules: rules.prefault({}),
};

export const house = facts('a house', {
  format: z.literal('struckline-house', { error: takes('"struckline-house"') }),
  version: z.literal(1, { error: takes('1, the version of the format that this program reads') }),
  ...houseFacts,
  coverings: listOf(covering, 'coverings', 500).prefault([]),
  rooms: listOf(room, 'rooms', 2000).prefault([]),
  stock: listOf(runQuantity, 'stock entries', 2000).prefault([]),
  offers: listOf(runQuantity, 'offers', 2000).prefault([]),
  deliveries: listOf(delivery, 'deliveries', 5000).prefault([]),
  pictures: listOf(picture, 'pictures', 500).prefault([]),
});
