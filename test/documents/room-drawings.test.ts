import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../shared-core/drawing/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { spell } from '../../src-main/documents/pdf/fonts.ts';
import { paintDrawing } from '../../src-main/documents/pdf/paint-drawing.ts';
import { textArea } from '../../src-main/documents/pdf/sheet.ts';
import { drawingsOfRoom, OVER_DRAWING } from '../../src-main/documents/room-drawings.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import type { Loose } from '../builders.ts';
import { houseAtWork, papersFor } from './paper-house.ts';
import { readPdf } from './read-pdf.ts';

const house = demoHouse();
const plan = planHouse(house);
const drawnOf = (room: string, size: 'a4' | 'letter') => drawingsOfRoom(house, plan, room, textArea(size), 9.5);
const sizes = ['a4', 'letter'] as const;
const all = sizes.flatMap((size) => house.rooms.map(({ id }) => ({ size, id, drawn: drawnOf(id, size) })));

/** What is left of a picture's tags when each is closed in turn. */
function openTags(svg: string): readonly string[] {
  const open: string[] = [];
  for (const [, slash, name, own] of svg.matchAll(/<(\/?)([a-z]+)(?: [a-zA-Z-]+="[^"<>&]*")*(\/?)>/g)) {
    if (slash === '/') expect(open.pop()).toBe(name);
    else if (own === '') open.push(name!);
  }
  return open;
}

describe('the drawings of a room', () => {
  test('are its plan and every stretch that hangs there, none larger than the page', () => {
    for (const { size, drawn, id } of all) {
      expect(drawn[0]!.title).toBe('Plan');
      for (const { view, title } of drawn) {
        expect([id, title, view.width <= textArea(size).width, view.height + OVER_DRAWING <= textArea(size).height]).toEqual([id, title, true, true]);
      }
      const bands = plan.rooms.find((room) => room.id === id)!.bands;
      const numbers = new Set(drawn.slice(1).flatMap(({ drawing }) => drawing.shapes.flatMap((shape) => (shape.kind === 'ring' ? [shape.number] : []))));
      for (const band of bands) if (band.kind === 'strips') for (const { strips } of band.stretches) for (const { number } of strips) expect(numbers).toContain(number);
    }
  });

  test('are to a standard scale, each row of a stretch to the same', () => {
    for (const { drawn } of all) {
      expect(drawn.every(({ scale }) => /^[\d/ ]+ in = 1 ft \(1 : \d+\)$/.test(scale))).toBe(true);
      for (const rows of Map.groupBy(drawn.slice(1), ({ title }) => title.split(',')[0]).values()) expect(new Set(rows.map(({ scale }) => scale)).size).toBe(1);
    }
  });

  test('of a room whose ceiling is papered show it too; of a house without that room there are none', () => {
    const papered = papersFor(houseAtWork(({ rooms }: Loose) => Object.assign(rooms.find(({ id }: Loose) => id === 'study'), { ceiling: { covering: 'fern' } })));
    const drawn = drawingsOfRoom(papered.house, papered.plan, 'study', textArea('a4'), 9.5);
    expect(drawn.at(-1)!.title).toMatch(/, ceiling from above$/);
    expect(drawn.at(-1)!.view.height).toBeLessThanOrEqual(textArea('a4').height / 2);
    expect(drawingsOfRoom(papered.house, papered.plan, 'nowhere', textArea('a4'), 9.5)).toEqual([]);
  });
});

describe('a drawing painted for paper', () => {
  test('is well formed, without colour, and no text in it is smaller than 9 points', () => {
    for (const { drawn } of all) {
      for (const { drawing, view } of drawn) {
        const { svg, width, height } = paintDrawing(drawing, view, spell);
        expect(openTags(svg)).toEqual([]);
        expect(svg).toContain(`viewBox="0 0 ${width} ${height}"`);
        expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        for (const [, colour] of svg.matchAll(/(?:fill|stroke)="(?!none)([^"]*)"/g)) expect(colour).toMatch(/^#(..)\1\1$/);
        const heights = [...svg.matchAll(/font-size="([^"]*)"/g)].map(([, size]) => Number(size));
        expect(heights.length).toBeGreaterThan(3);
        expect(Math.min(...heights)).toBeGreaterThanOrEqual(9);
      }
    }
  });

  test('spells words in the fonts that have their letters, and writes no sign of markup as one', () => {
    const drawing: Drawing = {
      shapes: [{ kind: 'text', at: { x: 50, y: 50 }, anchor: 'middle', height: 'mark', text: 'A<b> & Кухня', pen: 'thin' }],
      bounds: { left: 0, top: 0, right: 100, bottom: 100 },
      margin: { left: 0, top: 0, right: 0, bottom: 0 },
      scaleBar: null,
      description: '',
    };
    const { svg } = paintDrawing(drawing, { width: 200, height: 200, textHeight: 9, zoom: 1, panX: 0, panY: 0 }, spell);
    expect(svg).toContain('<tspan font-family="AtkinsonHyperlegibleNext">A&lt;b&gt; &amp; </tspan><tspan font-family="NotoSans">Кухня</tspan>');
    expect(openTags(svg)).toEqual([]);
  });

  test('stands in the job sheet with its scale, its words once each', async () => {
    const { make } = papersFor(house);
    const { pages } = await readPdf((await make('job-sheet', 'bed1', 'pdf', 'a4')).bytes);
    const words = pages.join(' ');
    for (const { title, scale } of drawnOf('bed1', 'a4')) {
      expect(words).toContain(title);
      expect(words).toContain(scale);
    }
    expect(words.split('sliver 5/8 in').length - 1).toBe(1);
  });
});
