import { say, sayDay } from '../../shared-core/words/index.ts';
import type { Stamp } from './pdf/sheet.ts';

/** From which state of the facts a paper is, as its foot says it: 'as of 27 Nov 2026 · revision 184 · 3F9A-C21B'. */
export function sayStamp({ changed, revision, mark }: Stamp): string {
  return [...(changed === null ? [] : [say`as of ${sayDay(localDay(changed))}`]), ...(revision === null ? [] : [say`revision ${revision}`]), mark].join(' · ');
}

/** The day of a moment where this machine is. */
function localDay(moment: string): string {
  const date = new Date(moment);
  return [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}
