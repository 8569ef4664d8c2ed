import { expect, test } from 'vitest';
import { languageOf, speak } from '../../shared-core/words/index.ts';

speak(languageOf('de'));
const { readPackageTable } = await import('../../shared-core/ordering/index.ts');

test.each([
  'Muster-Nr.\tAnfertigung\tRollen\tbeschädigt\tfehlend\tDatum',
  'MUSTERNUMMER\tAnf.-Nr.\tMenge\tBeschädigt\tFehlt\tEingang',
  'Pattern no.\tDye lot\tQuantity\tDamaged\tMissing\tDate',
])('a table is read in German under the headings of either language: %s', (heading) => {
  const row = { patternNumber: 'K-2041', run: '2214', rolls: 8, damaged: 1, short: 2, received: '2026-03-02' };
  expect(readPackageTable(`${heading}\nK-2041\t2214\t8\t1\t2\t2026-03-02`)).toEqual({ ok: true, value: [row] });
});

test('what is wrong with a table is said in German', () => {
  const outcome = readPackageTable('Muster;Anfertigung;Rollen\nK-2041;2214;acht');
  expect(outcome).toMatchObject({ ok: false, faults: [{ path: 'rows[0].rolls', message: expect.stringMatching(/^Zeile 2, Rollen: .acht. ist keine Anzahl; angenommen wird eine ganze Zahl von 0 bis 100000, zum Beispiel 8$/) }] });
});
