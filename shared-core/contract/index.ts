export { BRIDGE_NAME, DESKTOP_CHANNEL, DESKTOP_DROP_CHANNEL, type DesktopBridge, type Host, LARGEST_CALL_BYTES, LARGEST_HOUSE_FILE_BYTES, LOOPBACK_CALL_PATH } from './host.ts';
export { type Argument, argumentSchemas, type BackUpListing, type BackUps, type HostFacts, type HouseListing, type Method, METHODS, type OpenedHouse, type Replies, type SavedPaper, type WrittenPaper, type WrittenText } from './methods.ts';
export { type Settings, type SettingsRead, settingsSchema, TEXT_SIZES, USUAL_SETTINGS } from './settings.ts';
export { type ErrorCode, failure, type Reply, type ReplyError } from './reply.ts';
export { TOO_LARGE_CALL } from './too-large.ts';
