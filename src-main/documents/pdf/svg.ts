import type { Run } from './fonts.ts';

/** How a path is painted; what is left out is not. */
export interface Paint {
  readonly fill?: string;
  readonly stroke?: string;
  /** Of the line, in points. */
  readonly width?: number;
  /** Lengths of strokes and gaps in turn, in points. */
  readonly dash?: string;
}

/** A picture of that size in points; its shapes are measured in points too. */
export function svgOf(width: number, height: number, shapes: readonly string[]): string {
  return `<svg viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">${shapes.join('')}</svg>`;
}

export function svgPath(d: string, { fill = 'none', stroke = 'none', width = 0, dash }: Paint): string {
  return `<path d="${d}" fill="${fill}" stroke="${stroke}" stroke-width="${width}"${dash === undefined ? '' : ` stroke-dasharray="${dash}"`}/>`;
}

/** Words with their middle, left or right end at a place, on a line; each part in the font that has its letters. */
export function svgText(runs: readonly Run[], { x, y, size, anchor }: { readonly x: number; readonly y: number; readonly size: number; readonly anchor: 'start' | 'middle' | 'end' }): string {
  return `<text x="${x}" y="${y}" font-size="${size}" text-anchor="${anchor}">${runs.map(({ font, text }) => `<tspan font-family="${font}">${escaped(text)}</tspan>`).join('')}</text>`;
}

export function svgCircle({ x, y, radius }: { readonly x: number; readonly y: number; readonly radius: number }, { fill = 'none', stroke = 'none', width = 0 }: Paint): string {
  return `<circle cx="${x}" cy="${y}" r="${radius}" fill="${fill}" stroke="${stroke}" stroke-width="${width}"/>`;
}

/** A ground without an edge. */
export function svgGround({ x, y, width, height }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }, fill: string): string {
  return `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"/>`;
}

/** Shapes turned about a place, by degrees clockwise. */
export function svgTurned(shapes: readonly string[], turn: number, { x, y }: { readonly x: number; readonly y: number }): string {
  return `<g transform="rotate(${turn} ${x} ${y})">${shapes.join('')}</g>`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** The words of such a picture. */
export function wordsOf(svg: string): string {
  return svg.replaceAll(/<[^>]*>/g, ' ').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
}
