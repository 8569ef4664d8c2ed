import type { Words } from '../say.ts';

/** The German of what `src-renderer/drawing` says. */
export const WINDOW_DRAWING: Words = {
  'drawing, left and right go from mark to mark, up and down from one kind to another': 'Zeichnung, Pfeile links und rechts gehen von Marke zu Marke, auf und ab von einer Art zur anderen',
  'Size of the drawing': 'Größe der Zeichnung',
  Smaller: 'Kleiner',
  'Fit the drawing in': 'Zeichnung einpassen',
  fit: 'einpassen',
  Larger: 'Größer',

  Rooms: 'Räume',

};
