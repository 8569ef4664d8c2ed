import { say } from '../../shared-core/words/index.ts';

export const RATE_TAKES = say`A tax is from 0 to 100 %, such as 7.25. Nothing was changed.`;

/** A tax as it was typed, in percent, with or without its mark: '7.25 %' is '7.25'; null where it is no rate from 0 to 100. */
export function readRate(typed: string): string | null {
  const rate = typed.trim().replace(/\s*%$/, '');
  return /^\d{1,3}([.,]\d{1,3})?$/.test(rate) && Number(rate.replace(',', '.')) <= 100 ? rate : null;
}
