import type { OpeningRule } from '../house/index.ts';
import { say } from '../words/index.ts';

/** A step of a rule: of openings up to a size, the share that is taken off, and whether their covered reveals are added. */
interface RuleStep {
  /** In hundredths of a square metre, the bound itself among them; null for all that are larger. */
  readonly upTo: number | null;
  /** In percent of the opening. */
  readonly deducted: 0 | 50 | 100;
  readonly addsReveals: boolean;
}

/** How openings are taken off a painted surface by a published rule. */
export interface DeductionRule {
  readonly steps: readonly RuleStep[];
  readonly words: string;
  readonly source: string;
}

const NOTHING = { deducted: 0, addsReveals: false } as const;
const ALL = { upTo: null, deducted: 100, addsReveals: true } as const;

/**
 * The rules for openings, each from small to large.
 *
 * IS 1200-13 takes off one face of the two where both are treated alike, and half on each where their reveals are as
 * deep. A room has one of an opening's two faces, and what the other is painted with is not known in it: half is taken
 * off, so that both rooms together take off one face.
 * NRM2: the bound was read, the clause for decoration was not; that reveals count beside a void that is taken off is our
 * reading. DIN 18363: the bound was read in decorators' digests; those of its editions differ on the reveals of openings
 * up to 2.5 m², and here they do not count.
 */
export const DEDUCTION_RULES: Readonly<Record<OpeningRule, DeductionRule>> = {
  none: { steps: [{ upTo: null, ...NOTHING }], words: say`no opening is taken off; their reveals are not added`, source: say`common practice, no source` },
  nrm2: {
    steps: [{ upTo: 50, ...NOTHING }, ALL],
    words: say`openings up to 0.5 m² are not taken off, larger ones are, and their covered reveals added`,
    source: say`NRM2 (as SMM7): voids up to 0.5 m²; its clause for decoration was not read, the reveals are our reading`,
  },
  'din-18363': {
    steps: [{ upTo: 250, ...NOTHING }, ALL],
    words: say`openings up to 2.5 m² are measured over, larger ones taken off, and their covered reveals added`,
    source: say`DIN 18363 (VOB part C), read in digests; older editions add the reveals of smaller openings too`,
  },
  'is-1200-13': {
    steps: [{ upTo: 50, ...NOTHING }, { upTo: 300, deducted: 50, addsReveals: false }, ALL],
    words: say`openings up to 0.5 m² are not taken off; up to 3 m² one face of two is, so half of each; larger ones are, and their covered reveals added`,
    source: say`IS 1200 part 13:1994, clause 3.2; one face of two alike is read as half on each`,
  },
};

const SQUARE_UNITS_PER_HUNDREDTH_SQUARE_METRE = 32_000n ** 2n;

/**
 * What a rule does with an opening of so many square units, given as an exact fraction.
 *
 * Example: by DIN 18363 an opening of exactly 2.5 m² is measured over, one that is larger by the least is taken off.
 */
export function stepFor(rule: OpeningRule, { numerator, denominator }: { readonly numerator: bigint; readonly denominator: bigint }): RuleStep {
  const { steps } = DEDUCTION_RULES[rule];
  return steps.find(({ upTo }) => upTo === null || numerator <= BigInt(upTo) * SQUARE_UNITS_PER_HUNDREDTH_SQUARE_METRE * denominator) ?? ALL;
}
