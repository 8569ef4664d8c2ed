import { PHASES, type Rule } from './rule.ts';
import { RULES_OF_MAKING_GOOD } from './rules-of-making-good.ts';
import { RULES_OF_TAKING_OFF } from './rules-of-taking-off.ts';

/** The whole table in the order of the work: phase by phase, within a phase as the table has it. */
export const RULES: readonly Rule[] = [...RULES_OF_TAKING_OFF, ...RULES_OF_MAKING_GOOD].toSorted((one, other) => PHASES.indexOf(one.phase) - PHASES.indexOf(other.phase));
