import { planCalendar } from '../../shared-core/calendar/index.ts';
import { houseOfJobs } from '../calendar/houses-of-jobs.ts';

/*
 * How long a calendar takes as the house grows: milliseconds of the middle one of five houses, what that is of the time of
 * ten rooms with as many people at the same effort, and the days of the first house beside the fewest that any calendar
 * could take.
 *
 *   npm run bench:calendar
 */
const ROOMS = [10, 40, 100, 300];
const HOUSES = 5;

console.log(`${'people'.padStart(6)} ${'rooms'.padStart(6)} ${'jobs'.padStart(6)} ${'effort'.padStart(8)} ${'ms'.padStart(8)} ${'ratio'.padStart(7)} ${'days'.padStart(6)} ${'bound'.padStart(6)}`);
for (let seed = 0; seed < HOUSES; seed += 1) planCalendar(houseOfJobs(40, 2, seed));
for (const effort of ['instant', 'usual'] as const) {
  for (const people of [1, 2, 6]) {
    let unit = 0;
    for (const rooms of ROOMS) {
      const asked = Array.from({ length: HOUSES }, (_, seed) => ({ ...houseOfJobs(rooms, people, 10 * rooms + seed), effort }));
      const took = asked.map((question) => {
        const began = performance.now();
        planCalendar(question);
        return performance.now() - began;
      });
      const middle = took.toSorted((one, other) => one - other)[Math.floor(HOUSES / 2)]!;
      unit ||= middle;
      const { jobs, workingDays, lowerBound } = planCalendar(asked[0]!);
      const cells = [[people, 6], [rooms, 6], [jobs.length, 6], [effort, 8], [middle.toFixed(1), 8], [(middle / unit).toFixed(1), 7], [workingDays, 6], [lowerBound, 6]] as const;
      console.log(cells.map(([cell, width]) => String(cell).padStart(width)).join(' '));
    }
  }
}
