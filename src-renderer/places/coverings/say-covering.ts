import { type Covering, matchOf } from '../../../shared-core/house/index.ts';
import { say } from '../../../shared-core/words/index.ts';

interface NewWords {
  readonly title: string;
  readonly add: string;
  /** The second of its measures. */
  readonly length: string;
  readonly lacks: (missing: string) => string;
}

interface SoldWords {
  readonly head: string;
  readonly inUnit: (number: number) => string;
  readonly spare: string;
}

/** What is said where a covering of a kind is typed in. */
export const NEW_WORDS: Readonly<Record<Covering['kind'], NewWords>> = {
  wallcovering: { title: say`A new wallcovering`, add: say`Add this wallcovering`, length: say`Length of a roll`, lacks: (missing) => say`The wallcovering wants ${missing}.` },
  border: { title: say`A new border`, add: say`Add this border`, length: say`Length of a spool`, lacks: (missing) => say`The border wants ${missing}.` },
  lining: { title: say`A new lining`, add: say`Add this lining`, length: say`Length of a roll`, lacks: (missing) => say`The lining wants ${missing}.` },
  paint: { title: say`A new paint`, add: say`Add this paint`, length: '', lacks: (missing) => say`The paint wants ${missing}.` },
  mural: { title: say`A new mural`, add: say`Add this mural`, length: say`Height of the panels`, lacks: (missing) => say`The mural wants ${missing}.` },
};

const ROLLS: SoldWords = { head: say`Sold in rolls of`, inUnit: (number) => say`rolls in sale unit ${number}`, spare: say`Spare rolls` };

/** What is said of what a covering of a kind is sold in. */
export const SOLD_WORDS: Readonly<Record<Exclude<Covering['kind'], 'paint'>, SoldWords>> = {
  wallcovering: ROLLS,
  lining: ROLLS,
  border: { head: say`Sold in spools of`, inUnit: (number) => say`spools in sale unit ${number}`, spare: say`Spare spools` },
  mural: { head: say`Sold in murals of`, inUnit: (number) => say`murals in sale unit ${number}`, spare: say`Spare murals` },
};

const MATCHES: Readonly<Record<ReturnType<typeof matchOf>, string>> = { free: say`free match`, straight: say`straight match`, drop: say`drop match` };

/** A covering in a line under its name: '20 1/2" wide, straight match of 21"'. */
export function sayCovering(covering: Covering): string {
  switch (covering.kind) {
    case 'wallcovering': {
      const match = MATCHES[matchOf(covering)];
      return covering.repeat.length > 0 ? say`${covering.width.typed} wide, ${match} of ${covering.repeat.typed}` : say`${covering.width.typed} wide, ${match}`;
    }
    case 'border':
      return say`border, ${covering.width.typed} high`;
    case 'lining':
      return covering.direction === 'across' ? say`lining, ${covering.width.typed} wide, hung across` : say`lining, ${covering.width.typed} wide, hung up and down`;
    case 'mural':
      return covering.panels === 1 ? say`mural, ${covering.panels} panel of ${covering.panelWidth.typed}` : say`mural, ${covering.panels} panels of ${covering.panelWidth.typed}`;
    case 'paint':
      return say`paint`;
  }
}
