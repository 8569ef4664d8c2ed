export { HouseStore, type StoredHouse, type StoreFailure } from './house-store.ts';
export { APPLICATION_ID, SCHEMA_VERSION } from './migrations.ts';
