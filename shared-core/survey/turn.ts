export type CornerKind = 'inside' | 'outside' | 'straight';

export interface Corner {
  readonly kind: CornerKind;
  /** Interior angle in hundredths of a degree. */
  readonly interiorAngle: number;
}

const HUNDREDTHS_PER_DEGREE = 100;

/**
 * Reads a wall's turn: a word, or the interior angle in degrees with up to two decimals.
 *
 * Under 180 degrees the corner is an inside one, over it an outside one.
 * Example: `readTurn('135')` is an inside corner of 13500 hundredths of a degree; `readTurn('outside')` one of 27000.
 */
export function readTurn(turn: string): Corner {
  if (turn === 'inside') return { kind: 'inside', interiorAngle: 90 * HUNDREDTHS_PER_DEGREE };
  if (turn === 'outside') return { kind: 'outside', interiorAngle: 270 * HUNDREDTHS_PER_DEGREE };
  if (turn === 'straight') return { kind: 'straight', interiorAngle: 180 * HUNDREDTHS_PER_DEGREE };
  const [whole = '0', decimals = ''] = turn.split('.');
  const interiorAngle = Number(whole) * HUNDREDTHS_PER_DEGREE + Number(decimals.padEnd(2, '0'));
  const straight = 180 * HUNDREDTHS_PER_DEGREE;
  return { kind: interiorAngle < straight ? 'inside' : interiorAngle > straight ? 'outside' : 'straight', interiorAngle };
}
