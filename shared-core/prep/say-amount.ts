import { sayDecimal } from '../words/index.ts';
import type { MaterialNeed } from './prep-plan.ts';

/** An amount of a material in its unit for reading: '1.2 L', '350 ml', '4 kg', '12'. */
export function sayAmount(amount: number, unit: MaterialNeed['unit']): string {
  if (unit === 'pieces') return String(amount);
  const [large, small] = unit === 'ml' ? ['L', 'ml'] : ['kg', 'g'];
  return amount < 1000 ? `${amount} ${small}` : `${sayDecimal(String(Math.round(amount / 10) / 100))} ${large}`;
}
