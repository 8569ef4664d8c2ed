export { calendarFile } from './calendar-file.ts';
export { type MadePaper, makePaper } from './make-paper.ts';
export type { PaperFacts } from './paper-facts.ts';
export { orderCsv } from './order-csv.ts';
export { orderText, planText } from './plan-text.ts';
export type { Stamp } from './pdf/sheet.ts';
