import { z } from 'zod';
import { facts, listOf, oneOf, percent, price, takes, text, wholeNumber, yesOrNo } from './accepted.ts';
import { say } from '../words/index.ts';

export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

export const day = z.iso.date({ error: takes(say`a date such as "2026-03-02"`) });

/** A week of work, for one task. */
const MOST_MINUTES = 100_000;
const minutes = wholeNumber(0, MOST_MINUTES, say`minutes`);
const amount = z.number({ error: takes(say`an amount above 0`) }).positive({ error: takes(say`an amount above 0`) }).max(1_000_000, { error: takes(say`an amount of at most 1000000`) });

/** How many minutes of one person something takes where the house's own figure stands for ours. */
const ownRate = facts(say`a rate of work`, { of: text(say`what it is the rate of`, 60), minutes });

/** Who works when, and what an hour of it costs the customer. */
export const work = facts(say`the work`, {
  starts: day.optional(),
  people: wholeNumber(1, 50, say`a number of people`).prefault(1),
  hours: wholeNumber(1, 16, say`hours of a working day`).prefault(8),
  days: listOf(oneOf(WEEKDAYS), say`days of the week`, 7).min(1, { error: say`names no day; it takes one or more of the week` }).prefault(['mon', 'tue', 'wed', 'thu', 'fri']),
  holidays: listOf(day, say`holidays`, 400).prefault([]),
  rates: listOf(ownRate, say`rates of work`, 200).refine((rates) => new Set(rates.map(({ of }) => of)).size === rates.length, { error: say`names one rate twice` }).optional(),
  /** Of one person's hour. */
  rate: price.optional(),
  /** On materials. */
  markup: percent.optional(),
  /** On the price to the customer. */
  tax: percent.optional(),
  /** The price is rounded up to a multiple of it. */
  rounding: price.optional(),
});

/** The work of a house of which nothing is said yet. */
export const USUAL_WORK = work.parse({});

/** What the user says of one task: the day it begins, how long it takes one person, that somebody else does it, that it is done, what it took. */
export const taskChoice = facts(say`a choice for a task`, {
  task: text(say`the id of a task`, 200),
  day: day.optional(),
  minutes: minutes.optional(),
  isOthers: yesOrNo().optional(),
  done: yesOrNo().optional(),
  spent: minutes.optional(),
});

/** What a material of the preparation is sold in where the house buys it: so much of its own unit, and the price. */
export const ownMaterial = facts(say`a material`, {
  material: text(say`the id of a material`, 60),
  supplier: text(say`a supplier`, 60).optional(),
  packs: listOf(facts(say`a pack`, { amount, price: price.optional() }), say`packs`, 20).min(1, { error: say`is empty; a material has one pack or more` }),
});

/** Money that was spent: on what, how much, when. */
export const expense = facts(say`an expense`, { what: text(say`what it was spent on`, 120), cost: price, day: day.optional() });
