import { randomBytes } from 'node:crypto';
import { readFile, realpath } from 'node:fs/promises';
import type { AddressInfo, Socket } from 'node:net';
import { join } from 'node:path';
import cookies from '@fastify/cookie';
import { type FastifyError, type FastifyReply, type FastifyRequest, fastify } from 'fastify';
import { type ErrorCode, failure, LARGEST_CALL_BYTES, LOOPBACK_CALL_PATH, TOO_LARGE_CALL } from '../../shared-core/contract/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { findServedFile, type Office, PLAIN_TEXT_TYPE, SECURITY_HEADERS } from '../office/index.ts';
import { findForeignness, holdsCookie, isSameSecret, NOT_UNDERSTOOD, type Refusal } from './security.ts';
import { findWireFault, refuseConnection, RETRY_SECONDS, type StrangerLimits, watchStrangers } from './strangers.ts';

const SECRET_BYTES = 32;

export interface Limits {
  /** In which the headers of a request have to come, counted from its connection where it is the first. */
  readonly headersMilliseconds: number;
  /** In which all of a request has to come. */
  readonly requestMilliseconds: number;
  /** Between two looks at who is too slow. */
  readonly lookMilliseconds: number;
  readonly strangers: StrangerLimits;
}

export const USUAL_LIMITS: Limits = {
  headersMilliseconds: 10_000,
  requestMilliseconds: 30_000,
  lookMilliseconds: 1_000,
  strangers: { connections: 1_000, requestsEachSecond: 20 },
};

const USED_UP = say`This address of Struckline is used up or incomplete. Start Struckline again and use the address it gives then.\n`;

export interface ServedOffice {
  /** The address to open, good for one window; it holds the token. */
  readonly address: string;
  readonly origin: string;
  /** Whether a window has signed in yet. */
  isSignedIn(): boolean;
  close(): Promise<void>;
}

export interface ServeSettings {
  readonly rendererFolder: string;
  readonly limits?: Limits;
}

/** Serves the window and the office behind it to one browser on this machine. */
export async function serveOffice(office: Pick<Office, 'call'>, { rendererFolder, limits = USUAL_LIMITS }: ServeSettings): Promise<ServedOffice> {
  const trueToken = randomBytes(SECRET_BYTES).toString('base64url');
  const session = randomBytes(SECRET_BYTES).toString('base64url');
  let isTokenUsed = false;
  let origin = '';
  // Cookies are shared by all ports of a machine; the port in the name keeps two running apps apart.
  let cookieName = '';

  const server = fastify({
    bodyLimit: LARGEST_CALL_BYTES,
    exposeHeadRoutes: false,
    forceCloseConnections: true,
    requestTimeout: limits.requestMilliseconds,
    // A request without a host is refused in our words.
    http: { headersTimeout: limits.headersMilliseconds, connectionsCheckingInterval: limits.lookMilliseconds, requireHostHeader: false },
    clientErrorHandler: (error, socket) => refuseConnection(socket as Socket, findWireFault(error.code)),
    // An address that is not spelled right comes past the hook below.
    frameworkErrors: (_error, request, reply) => void (admit(request, reply) ?? refuse(request, reply, 400, NOT_UNDERSTOOD)),
  });
  await server.register(cookies, { hook: false });
  const strangers = watchStrangers(server.server, limits.strangers);
  // No body is invited before its request is judged; who waits for that is refused.
  for (const event of ['checkContinue', 'checkExpectation']) server.server.on(event, (...asked) => server.server.emit('request', ...asked));
  // What is left is application/json, which no page of another site can send without being asked about first.
  server.removeContentTypeParser('text/plain');

  const isSignedIn = (request: FastifyRequest) => holdsCookie(request.headers.cookie, cookieName, session);

  const findStrangeness = (request: FastifyRequest): Refusal | null => {
    const foreignness = findForeignness(request.raw, origin);
    if (foreignness || isSignedIn(request)) return foreignness;
    const [token, ...others] = isSigningIn(request) ? offeredTokens(request) : [];
    if (isTokenUsed || token === undefined || others.length > 0 || !isSameSecret(token, trueToken)) return { status: 401, message: USED_UP };
    // Used up here, where nothing can come between: two requests that were sent at once would both find it good later.
    isTokenUsed = true;
    return null;
  };

  /** Judges a request by its headers, before anything of its body is read; answers it where it is a stranger's. */
  const admit = (request: FastifyRequest, reply: FastifyReply): FastifyReply | null => {
    reply.headers(SECURITY_HEADERS);
    const strangeness = findStrangeness(request);
    if (!strangeness) {
      strangers.know(request.raw.socket);
      return null;
    }
    const { status, message } = strangers.refuse(strangeness);
    if (status === 429) reply.header('Retry-After', RETRY_SECONDS);
    return refuse(request, reply.header('Connection', 'close'), status, message);
  };

  server.addHook('onRequest', async (request, reply) => {
    const refused = admit(request, reply);
    if (refused) return refused;
    if (request.method !== (isCall(request) ? 'POST' : 'GET')) return refuse(request, reply, 405, say`Pages are read by GET, calls are made by POST.`);
  });

  server.get('/*', async (request, reply) => {
    if (isSigningIn(request)) {
      if (!isSignedIn(request)) reply.setCookie(cookieName, session, { path: '/', httpOnly: true, sameSite: 'strict' });
      return reply.redirect('/', 303);
    }
    const file = findServedFile(pathOf(request));
    const content = file && (await readBelow(rendererFolder, file.path));
    if (!content) return refuse(request, reply, 404, say`There is nothing at this address.`);
    if (file.isImmutable) reply.header('Cache-Control', 'private, max-age=31536000, immutable');
    return reply.type(file.type).send(content);
  });

  server.post<{ Params: { method: string } }>(`${LOOPBACK_CALL_PATH}:method`, async (request, reply) =>
    reply.send(await office.call(request.params.method, request.body)),
  );

  server.setNotFoundHandler((request, reply) =>
    refuse(request, reply, 404, say`There is nothing at this address; calls are posted to ${LOOPBACK_CALL_PATH} and the name of a method.`),
  );

  server.setErrorHandler((error: FastifyError, request, reply) => {
    if (error.statusCode === 413) return refuse(request, reply, 413, TOO_LARGE_CALL, 'too-large');
    const status = error.statusCode ?? 500;
    return status < 500
      ? refuse(request, reply, status, say`The call was not understood: ${error.message}.`)
      : refuse(request, reply, 500, say`Struckline met a fault of its own and did not do this. Close the window and start Struckline again.`, 'host-failure');
  });

  await server.listen({ host: '127.0.0.1', port: 0 });
  const { port } = server.server.address() as AddressInfo;
  origin = `http://127.0.0.1:${port}`;
  cookieName = `struckline-${port}`;
  return { address: `${origin}/?token=${trueToken}`, origin, isSignedIn: () => isTokenUsed, close: () => server.close() };
}

/** A call is refused as a reply of the contract, a page as a line of plain text. */
function refuse(request: FastifyRequest, reply: FastifyReply, status: number, message: string, code: ErrorCode = 'bad-argument'): FastifyReply {
  reply.code(status);
  return isCall(request) ? reply.send(failure(code, message.trim())) : reply.type(PLAIN_TEXT_TYPE).send(message);
}

function pathOf(request: FastifyRequest): string {
  return request.raw.url?.split('?', 1)[0] ?? '';
}

function isCall(request: FastifyRequest): boolean {
  return pathOf(request).startsWith(LOOPBACK_CALL_PATH);
}

function offeredTokens(request: FastifyRequest): readonly string[] {
  return new URLSearchParams(request.raw.url?.slice(pathOf(request).length)).getAll('token');
}

function isSigningIn(request: FastifyRequest): boolean {
  return request.method === 'GET' && pathOf(request) === '/' && offeredTokens(request).length > 0;
}

/** A file that really lies there: what a link leads to may lie anywhere. Null where there is none. */
async function readBelow(folder: string, path: string): Promise<Buffer | null> {
  try {
    const file = await realpath(join(folder, path));
    return file === join(await realpath(folder), path) ? await readFile(file) : null;
  } catch {
    return null;
  }
}
