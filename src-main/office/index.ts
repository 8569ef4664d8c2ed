export { newHouse } from '../../shared-core/house/index.ts';
export { demoHouse } from './demo.ts';
export { type Desk, exportText, openDesk, schemaText } from './desk.ts';
export { isHouseFile, makeHouseFile, readHouse, replaceHouse } from './house-files.ts';
export { type Office, type OfficeSettings, openOffice } from './office.ts';
export { dataFolder, defaultFolder, rememberedFile, type Surroundings } from './house-folder.ts';
export { CONTENT_POLICY, findServedFile, SECURITY_HEADERS, SERVED_TYPES, type ServedFile } from './window-files.ts';
export { VERSION } from './version.ts';
