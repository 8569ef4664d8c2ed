export type { Booking, CalendarPlan, CalendarQuestion, Job, WorkTime } from './calendar-plan.ts';
export { type CalendarFault, checkCalendar } from './check-calendar.ts';
export { civilDay, dayNumberOf, weekdayOf } from './civil-day.ts';
export { calendarWords, type CalendarWords } from './explain-calendar.ts';
export type { HouseJob, JobKind, JobWorking } from './house-job.ts';
export { jobsOf } from './jobs.ts';
export { planCalendar } from './plan-calendar.ts';
export { WORK_RATES } from './work-rates.ts';
export { START_MINUTE } from './working-time.ts';
