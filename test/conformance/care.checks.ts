import { isAsbestosExpected, isLeadExpected, LEAD_FEDERAL_AREA, LEAD_LAW_AREA, MOULD_AREA, REACHED_FROM_FLOOR } from '../../shared-core/prep/caution-limits.ts';
import { showArea, UNITS_PER_FOOT } from '../../shared-core/units/index.ts';
import { cautionOf, oneWall, prepared } from '../prep/prepared.ts';
import type { Check, Source } from './figure.ts';

const RENOVATION: Source = { name: 'US 40 CFR 745.83: renovation of housing built before 1978', how: 'read' };
const FEDERAL: Source = { name: 'US 24 CFR 35.1350(d): housing with federal help', how: 'read' };
const MOULD: Source = { name: 'US EPA: mould that a householder takes on', how: 'read' };
const SILICA: Source = { name: 'US 29 CFR 1926.1153: respirable crystalline silica', how: 'read' };
const PATCHING: Source = { name: 'US 16 CFR 1304: patching compounds with asbestos', how: 'read' };
const ASBESTOS: Source = { name: 'Asbestos: mid-1980s in the US, 2000 in the United Kingdom', how: 'memory' };
const LADDERS: Source = { name: 'US 29 CFR 1926.1053: ladders', how: 'memory' };
const HEIGHT: Source = { name: 'Walls above 8 ft are reached from a ladder', how: 'common practice' };

const words = (kind: string, surface: object) => {
  const found = cautionOf(prepared(oneWall(surface, 'paint', { house: { built: 1960 }, wall: { height: '3 m' }, room: { stairs: true } })).cautions, kind);
  return found && `${found.words} ${found.threshold} ${found.source}`;
};
const names = (kind: string, surface: object, ...figures: readonly string[]) => () => figures.filter((figure) => !words(kind, surface)?.includes(figure));
const FILLED = { kind: 'old-plaster', states: ['cracked'] };

export const CARE: readonly Check[] = [
  { id: 'care / lead paint before 1978', source: RENOVATION, expected: [true, false], ours: () => [1977, 1978].map((built) => isLeadExpected({ built, country: 'US' })) },
  { id: 'care / lead paint where the year is not known', source: RENOVATION, expected: true, ours: () => isLeadExpected({ built: undefined, country: 'US' }) },
  { id: 'care / paint disturbed in a room', source: RENOVATION, expected: '6.0 sq ft', ours: () => showArea(LEAD_LAW_AREA, 'imperial') },
  { id: 'care / paint disturbed in a room with federal help', source: FEDERAL, expected: '2.0 sq ft', ours: () => showArea(LEAD_FEDERAL_AREA, 'imperial') },
  { id: 'care / mould', source: MOULD, expected: '10.0 sq ft', ours: () => showArea(MOULD_AREA, 'imperial') },
  { id: 'care / silica dust', source: SILICA, expected: [], ours: names('silica-dust', FILLED, '50 µg/m³', '8 hours', '25') },
  { id: 'care / patching compounds', source: PATCHING, expected: [], ours: names('asbestos-filler', FILLED, '16 CFR 1304', '1978') },
  { id: 'care / asbestos in the US', source: ASBESTOS, expected: [true, true], ours: () => [1975, 1986].map((year) => isAsbestosExpected('US', [year])) },
  { id: 'care / asbestos in the United Kingdom', source: ASBESTOS, expected: [true, false], ours: () => [2000, 2001].map((year) => isAsbestosExpected('GB', [year])) },
  { id: 'care / asbestos of an unknown age', source: ASBESTOS, expected: true, ours: () => isAsbestosExpected('US', [undefined]) },
  { id: 'care / a ladder’s lean and its reach', source: LADDERS, expected: [], ours: names('height', FILLED, '1 out for every 4 up', '3 ft (0.9 m)') },
  { id: 'care / a ladder over stairs', source: LADDERS, expected: [], ours: names('stairs', FILLED, '1 out for every 4 up', '3 ft (0.9 m)') },
  { id: 'care / heights', source: HEIGHT, expected: 8, ours: () => REACHED_FROM_FLOOR / UNITS_PER_FOOT },
];
