import type { Edit, House } from '../../shared-core/house/index.ts';

/** What is recorded of a supplier; null takes it away. */
interface SupplierChange {
  readonly tax?: { readonly rate: string; readonly included: boolean } | null;
  readonly note?: string | null;
  readonly address?: string | null;
}

/** The edit that changes what is recorded of one supplier, the others staying as they are. */
export function changeSupplier(suppliers: House['suppliers'], id: string, change: SupplierChange): Edit {
  const before = suppliers.find((one) => one.id === id) ?? { id };
  const facts = Object.fromEntries(Object.entries({ ...before, ...change }).filter(([, value]) => value !== null && value !== undefined)) as { id: string };
  const others = suppliers.map((one) => ({ ...one, ...(one.tax ? { tax: { ...one.tax } } : {}) }));
  return { kind: 'set-suppliers', suppliers: suppliers.some((one) => one.id === id) ? others.map((one) => (one.id === id ? facts : one)) : [...others, facts] };
}
