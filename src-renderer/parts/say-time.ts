import { say } from '../../shared-core/words/index.ts';

/** '45 min', '2 h', '2 h 30 min'. */
export function sayTime(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return say`${rest} min`;
  return rest === 0 ? say`${hours} h` : say`${hours} h ${rest} min`;
}
