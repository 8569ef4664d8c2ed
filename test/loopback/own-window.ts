import { Agent } from 'node:http';
import { expect } from 'vitest';
import type { OpenedHouse, Reply } from '../../shared-core/contract/index.ts';
import { type Answer, ask, callHeaders, type Serving, signIn } from './serving.ts';

/** The signed-in user's window over a real house, beside which the attacks go on. */
export class OwnWindow {
  readonly file = 'Home.struckline';
  readonly cookie: string;
  revision = 0;
  readonly #serving: Serving;
  readonly #kept = new Agent({ keepAlive: true, maxSockets: 1 });

  private constructor(serving: Serving, cookie: string) {
    this.#serving = serving;
    this.cookie = cookie;
  }

  static async open(serving: Serving): Promise<OwnWindow> {
    const own = new OwnWindow(serving, await signIn(serving.served));
    const created = await own.call('create-house', '{"name":"Home","lengths":"metric","currency":"EUR"}', {}, own.#kept);
    own.revision = openedIn(created).revision;
    own.forgetCalls();
    return own;
  }

  headers(): Record<string, string> {
    return callHeaders(this.#serving.served, this.cookie);
  }

  /** A call as the window sends it, but for these headers; undefined leaves one out. */
  call(method: string, body: string | Buffer, changes: Readonly<Record<string, string | undefined>> = {}, agent?: Agent): Promise<Answer> {
    const headers: Record<string, string> = {};
    for (const [name, value] of Object.entries({ ...this.headers(), ...changes })) if (value !== undefined) headers[name] = value;
    return ask(this.#serving.served.origin, { method: 'POST', path: `/call/${method}`, headers, body, ...(agent ? { agent } : {}) });
  }

  /** For what was let through to the office and refused there. */
  forgetCalls(): void {
    this.#serving.calls.length = 0;
  }

  /**
   * Nothing but the window has reached the office; the window still shows its page on a connection of its own and saves
   * an edit on the one it has kept since it began, to a house that nobody else has changed.
   */
  async worksOn(): Promise<void> {
    expect(this.#serving.calls).toEqual([]);
    const { host } = new URL(this.#serving.served.origin);
    const page = await ask(this.#serving.served.origin, { headers: { host, cookie: this.cookie } });
    expect([page.status, page.text]).toEqual([200, '<!doctype html><title>window</title>']);
    await this.edit();
    this.forgetCalls();
  }

  async edit(): Promise<void> {
    const name = `Home after ${this.revision}`;
    const edit = { kind: 'change-house', facts: { name } };
    const answer = await this.call('edit-house', JSON.stringify({ file: this.file, revision: this.revision, edit }), {}, this.#kept);
    expect([answer.status, answer.isReused]).toEqual([200, true]);
    const { revision, house } = openedIn(answer);
    expect([revision, house.name]).toEqual([this.revision + 1, name]);
    this.revision = revision;
  }
}

function openedIn({ text }: Answer): OpenedHouse {
  const reply = JSON.parse(text) as Reply<OpenedHouse>;
  if (!reply.ok) throw new Error(text);
  return reply.value;
}
