export { demoHouse } from './demo.ts';
export { type Office, type OfficeSettings, openOffice } from './office.ts';
export { VERSION } from './version.ts';
