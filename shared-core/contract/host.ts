import type { Argument, Method, Replies } from './methods.ts';
import type { Reply } from './reply.ts';

/** The far side of the contract, as the window sees it over either transport. */
export interface Host {
  call<Name extends Method>(method: Name, argument: Argument<Name>): Promise<Reply<Replies[Name]>>;
}

/** What the sandboxed preload puts into the desktop window: one function, plain data both ways. */
export interface DesktopBridge {
  call(method: string, argument: unknown): Promise<unknown>;
}

export const DESKTOP_CHANNEL = 'struckline-call';
export const BRIDGE_NAME = 'strucklineHost';
/** Calls over the loopback transport are posted to this path and the method's name. */
export const LOOPBACK_CALL_PATH = '/call/';
/** A document of the largest size as the argument of a call. */
export const LARGEST_CALL_BYTES = 24_000_000;
