export { calendarFile } from './calendar-file.ts';
export { jobSheets } from './job-sheets.ts';
export { orderCsv } from './order-csv.ts';
export { orderText, planText } from './plan-text.ts';
