import type { Argument, Method, OpenedHouse, Replies } from './methods.ts';
import type { Reply } from './reply.ts';

/** The far side of the contract, as the window sees it over either transport. */
export interface Host {
  /** Opens a house file that was dropped on the window where it lies; only where the shell can know its path. */
  readonly openDropped?: (file: unknown) => Promise<Reply<OpenedHouse>>;
  call<Name extends Method>(method: Name, argument: Argument<Name>): Promise<Reply<Replies[Name]>>;
}

/** What the sandboxed preload puts into the desktop window: plain data both ways; a path is never the page's to name. */
export interface DesktopBridge {
  call(method: string, argument: unknown): Promise<unknown>;
  /** Takes the file that the user dropped on the page. */
  openDropped(file: unknown): Promise<unknown>;
}

export const DESKTOP_CHANNEL = 'struckline-call';
export const DESKTOP_DROP_CHANNEL = 'struckline-drop';
export const BRIDGE_NAME = 'strucklineHost';
/** Calls over the loopback transport are posted to this path and the method's name. */
export const LOOPBACK_CALL_PATH = '/call/';
/** A document of the largest size as the argument of a call. */
export const LARGEST_CALL_BYTES = 24_000_000;
/** Of a house file that is sent in one call, which takes four characters for three bytes. */
export const LARGEST_HOUSE_FILE_BYTES = 17_000_000;
