import {
  type Argument,
  BRIDGE_NAME,
  type DesktopBridge,
  failure,
  type Host,
  LOOPBACK_CALL_PATH,
  type Method,
  type Replies,
  type Reply,
} from '../../shared-core/contract/index.ts';

/** The host behind this window: the desktop app's bridge where there is one, else the loopback server. */
export function connectHost(): Host {
  const bridge = (globalThis as unknown as Record<string, DesktopBridge | undefined>)[BRIDGE_NAME];
  const send = bridge ? (method: string, argument: unknown) => bridge.call(method, argument) : post;
  return {
    async call<Name extends Method>(method: Name, argument: Argument<Name>): Promise<Reply<Replies[Name]>> {
      try {
        return (await send(method, argument)) as Reply<Replies[Name]>;
      } catch {
        return failure('host-failure', 'The program behind this window does not answer. What was saved is in the house file; start Struckline again.');
      }
    },
  };
}

async function post(method: string, argument: unknown): Promise<unknown> {
  const response = await fetch(LOOPBACK_CALL_PATH + method, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(argument),
  });
  return response.json();
}
