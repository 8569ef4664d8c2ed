export { type BackUp, backUpFolder, listBackUps, moveToDisk, restoreBackUp } from './back-ups.ts';
export { HouseStore, type StoredHouse, type StoreFailure } from './house-store.ts';
export { APPLICATION_ID, SCHEMA_VERSION } from './migrations.ts';
export { saySqliteError } from './say-sqlite-error.ts';
