/** What is left of the steps a check may take; below 0 it has to be given up as unsettled. */
export interface Steps {
  left: number;
}

/** One step looks at one piece at one place of the tape, to find what a roll's pieces count for at most. */
export const STEPS_OVER_A_ROLL = 500_000_000;

/** One step puts one piece on one roll of a search over demand; much dearer than a step over the bare tape. */
export const STEPS_OF_A_SEARCH = 20_000_000;
