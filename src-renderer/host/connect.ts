// The language is not known before the host has been asked: nothing is loaded here that says something at once.
import { BRIDGE_NAME, type DesktopBridge, type Host, LOOPBACK_CALL_PATH } from '../../shared-core/contract/host.ts';
import type { Argument, Method, OpenedHouse, Replies } from '../../shared-core/contract/index.ts';
import { failure, type Reply } from '../../shared-core/contract/reply.ts';
import { say } from '../../shared-core/words/index.ts';

/** The host behind this window: the desktop app's bridge where there is one, else the loopback server. */
export function connectHost(): Host {
  const bridge = (globalThis as unknown as Record<string, DesktopBridge | undefined>)[BRIDGE_NAME];
  const answered = async <Value>(answer: () => Promise<unknown>): Promise<Reply<Value>> => {
    try {
      return (await answer()) as Reply<Value>;
    } catch {
      return failure('host-failure', say`The program behind this window does not answer. What was saved is in the house file; start Struckline again.`);
    }
  };
  const send = bridge ? (method: string, argument: unknown) => bridge.call(method, argument) : post;
  return {
    call: <Name extends Method>(method: Name, argument: Argument<Name>) => answered<Replies[Name]>(() => send(method, argument)),
    ...(bridge ? { openDropped: (file: unknown) => answered<OpenedHouse>(() => bridge.openDropped(file)) } : {}),
  };
}

/** Browsers carry 64 KB on after a window is closed; a character takes three bytes at most. */
const MOST_CARRIED_ON = 20_000;

async function post(method: string, argument: unknown): Promise<unknown> {
  const body = JSON.stringify(argument);
  const response = await fetch(LOOPBACK_CALL_PATH + method, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body,
    // An edit outlives the window that made it.
    keepalive: body.length <= MOST_CARRIED_ON,
  });
  return response.json();
}
