import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import cookies from '@fastify/cookie';
import { type FastifyError, type FastifyReply, type FastifyRequest, fastify } from 'fastify';
import { type ErrorCode, failure, LARGEST_CALL_BYTES, LOOPBACK_CALL_PATH, TOO_LARGE_CALL } from '../../shared-core/contract/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { findServedFile, type Office, PLAIN_TEXT_TYPE, SECURITY_HEADERS } from '../office/index.ts';
import { findForeignness, isSameSecret } from './security.ts';

const SECRET_BYTES = 32;
const REQUEST_MILLISECONDS = 30_000;
const HEADERS_MILLISECONDS = 10_000;

const USED_UP = say`This address of Struckline is used up or incomplete. Start Struckline again and use the address it gives then.\n`;

export interface ServedOffice {
  /** The address to open, good for one window; it holds the token. */
  readonly address: string;
  readonly origin: string;
  /** Whether a window has signed in yet. */
  isSignedIn(): boolean;
  close(): Promise<void>;
}

/** Serves the window and the office behind it to one browser on this machine. */
export async function serveOffice(office: Pick<Office, 'call'>, { rendererFolder }: { readonly rendererFolder: string }): Promise<ServedOffice> {
  const token = randomBytes(SECRET_BYTES).toString('base64url');
  const session = randomBytes(SECRET_BYTES).toString('base64url');
  let isTokenUsed = false;
  let origin = '';
  // Cookies are shared by all ports of a machine; the port in the name keeps two running apps apart.
  let cookieName = '';

  const server = fastify({
    bodyLimit: LARGEST_CALL_BYTES,
    exposeHeadRoutes: false,
    forceCloseConnections: true,
    requestTimeout: REQUEST_MILLISECONDS,
    http: { headersTimeout: HEADERS_MILLISECONDS },
    frameworkErrors: (_error, request, reply) => {
      void refuse(request, reply.headers(SECURITY_HEADERS), 400, say`The address of this request is not understood.`);
    },
  });
  await server.register(cookies);
  // What is left is application/json, which no page of another site can send without being asked about first.
  server.removeContentTypeParser('text/plain');

  const isSignedIn = (request: FastifyRequest) => isSameSecret(request.cookies[cookieName] ?? '', session);

  // Everything that can be judged without the body is judged before the body is read.
  server.addHook('onRequest', async (request, reply) => {
    reply.headers(SECURITY_HEADERS);
    const foreignness = findForeignness(request.method, request.headers, origin);
    if (foreignness) return refuse(request, reply, foreignness.status, foreignness.message);
    if (isSigningIn(request)) return;
    if (!isSignedIn(request)) return refuse(request, reply, 401, USED_UP);
    if (request.method !== (isCall(request) ? 'POST' : 'GET')) return refuse(request, reply, 405, say`Pages are read by GET, calls are made by POST.`);
  });

  server.get('/*', async (request, reply) => {
    if (isSigningIn(request)) {
      const isTokenGood = isSameSecret(tokenOf(request) ?? '', token) && !isTokenUsed;
      if (isTokenGood) {
        isTokenUsed = true;
        reply.setCookie(cookieName, session, { path: '/', httpOnly: true, sameSite: 'strict' });
      } else if (!isSignedIn(request)) {
        return refuse(request, reply, 401, USED_UP);
      }
      return reply.redirect('/', 303);
    }
    const file = findServedFile(pathOf(request));
    const content = file && (await readFile(join(rendererFolder, file.path)).catch(() => null));
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
  return { address: `${origin}/?token=${token}`, origin, isSignedIn: () => isTokenUsed, close: () => server.close() };
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

function tokenOf(request: FastifyRequest): string | null {
  return new URLSearchParams(request.raw.url?.slice(pathOf(request).length)).get('token');
}

function isSigningIn(request: FastifyRequest): boolean {
  return request.method === 'GET' && pathOf(request) === '/' && tokenOf(request) !== null;
}
