export { calendarFile } from './calendar-file.ts';
export { type MadePaper, makePaper, type PaperFacts } from './make-paper.ts';
export { orderCsv } from './order-csv.ts';
export { orderText, planText } from './plan-text.ts';
export type { Stamp } from './pdf/sheet.ts';
