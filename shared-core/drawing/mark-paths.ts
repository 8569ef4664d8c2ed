import type { DrawnPoint, SignShape } from './shapes.ts';

/** Straight lines from point to point, to a tenth of a pixel. */
export function pathOf(points: readonly DrawnPoint[]): string {
  return points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${fixed(x)} ${fixed(y)}`).join('');
}

export function fixed(value: number): string {
  return String(Math.round(value * 10) / 10);
}

/** The two strokes of an arrow's head. */
export function arrowHead(from: DrawnPoint, to: DrawnPoint, size: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [ax, ay] = [((to.x - from.x) / length) * size, ((to.y - from.y) / length) * size];
  return pathOf([{ x: to.x - ax * 1.6 - ay * 0.7, y: to.y - ay * 1.6 + ax * 0.7 }, to, { x: to.x - ax * 1.6 + ay * 0.7, y: to.y - ay * 1.6 - ax * 0.7 }]);
}

/** One of our own signs in parts, its size by a height of text, turned by degrees clockwise. */
export function signOf(sign: SignShape['sign'], { x, y }: DrawnPoint, h: number, turn: number): readonly { readonly d: string; readonly isSolid: boolean }[] {
  const radians = (turn * Math.PI) / 180;
  const at = (right: number, down: number) => ({ x: x + (right * Math.cos(radians) - down * Math.sin(radians)) * h, y: y + (right * Math.sin(radians) + down * Math.cos(radians)) * h });
  const closed = (...points: (readonly [number, number])[]) => `${pathOf(points.map(([right, down]) => at(right, down)))}Z`;
  switch (sign) {
    case 'bob':
      // A collar, a round shoulder, a point: unlike an arrow's head.
      return [{ d: closed([-0.13, -0.1], [0.13, -0.1], [0.13, 0.12], [0.34, 0.27], [0.36, 0.42], [0.2, 0.7], [0, 1.1], [-0.2, 0.7], [-0.36, 0.42], [-0.34, 0.27], [-0.13, 0.12]), isSolid: true }];
    case 'lozenge':
      // Broken where the joint runs through it.
      return [
        { d: closed([-0.12, -0.85], [-0.7, 0], [-0.12, 0.85]), isSolid: false },
        { d: closed([0.12, -0.85], [0.7, 0], [0.12, 0.85]), isSolid: false },
      ];
    case 'entrance':
      return [{ d: closed([-0.45, -0.8], [0.45, -0.8], [0, 0]), isSolid: true }];
    case 'sight':
      return [{ d: `${pathOf([at(-0.6, -0.5), at(0, 0), at(0.6, -0.5)])}`, isSolid: false }];
  }
}
