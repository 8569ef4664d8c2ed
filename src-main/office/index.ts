export { newHouse } from '../../shared-core/house/index.ts';
export { demoHouse } from './demo.ts';
export { addRooms, isHouseFile, makeHouseFile, readHouse, readStamped, replaceHouse, type StampedHouse } from './house-files.ts';
export { type Office, type OfficeSettings, openOffice } from './office.ts';
export { defaultFolder, type Surroundings } from './house-folder.ts';
export { ownFolder, type OwnFolderSurroundings } from './own-folder.ts';
export { CONTENT_POLICY, findServedFile, PLAIN_TEXT_TYPE, SECURITY_HEADERS, SERVED_TYPES, type ServedFile } from './window-files.ts';
export { VERSION } from './version.ts';
