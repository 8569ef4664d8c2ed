import { type Server, STATUS_CODES } from 'node:http';
import type { Socket } from 'node:net';
import { say } from '../../shared-core/words/index.ts';
import { PLAIN_TEXT_TYPE, SECURITY_HEADERS } from '../office/index.ts';
import { NOT_UNDERSTOOD, type Refusal } from './security.ts';

export interface StrangerLimits {
  /** Connections on which the window has not spoken yet; its own are not counted. */
  readonly connections: number;
  readonly requestsEachSecond: number;
}

export interface Strangers {
  /** The connection is the window's and counts no longer. */
  know(socket: Socket): void;
  /** How a stranger is refused: as it deserves, or as one of too many. */
  refuse(deserved: Refusal): Refusal;
}

const TOO_MANY = say`Too many programs that are not Struckline's window ask this server at once. Try again in a second.`;
export const RETRY_SECONDS = '1';

/**
 * Keeps those who are not the window from taking the server from it. Its own requests are never counted, on whatever
 * connection they come.
 *
 * With a limit of 1,000 connections the 1,001st stranger is let in and the oldest has to go: one who only holds
 * connections can't keep the window out, whose request follows its connection at once.
 */
export function watchStrangers(server: Server, limits: StrangerLimits, secondsNow: () => number = () => performance.now() / 1000): Strangers {
  // In the order in which they came.
  const unknown = new Set<Socket>();
  let second = 0;
  let asked = 0;
  server.on('connection', (socket) => {
    unknown.add(socket);
    socket.once('close', () => unknown.delete(socket));
    const [oldest] = unknown;
    if (!oldest || unknown.size <= limits.connections) return;
    unknown.delete(oldest);
    refuseConnection(oldest, { status: 503, message: TOO_MANY });
  });
  return {
    know: (socket) => void unknown.delete(socket),
    refuse(deserved) {
      const now = Math.floor(secondsNow());
      if (now !== second) [second, asked] = [now, 0];
      asked += 1;
      return asked > limits.requestsEachSecond ? { status: 429, message: TOO_MANY } : deserved;
    },
  };
}

/** What is wrong with bytes that are no whole request. */
export function findWireFault(code: string | undefined): Refusal {
  if (code === 'ERR_HTTP_REQUEST_TIMEOUT') return { status: 408, message: say`This request came too slowly and was given up. Send it again.` };
  if (code === 'HPE_HEADER_OVERFLOW') return { status: 431, message: say`The address or the headers of this request are too long. Together they may have 16 KB.` };
  return { status: 400, message: NOT_UNDERSTOOD };
}

/** Answers where there is no request that could be answered, and ends the connection. */
export function refuseConnection(socket: Socket, { status, message }: Refusal): void {
  if (!socket.writable) return void socket.destroy();
  const headers = {
    ...SECURITY_HEADERS,
    'Content-Type': PLAIN_TEXT_TYPE,
    'Content-Length': Buffer.byteLength(message),
    'Connection': 'close',
    ...(status === 503 ? { 'Retry-After': RETRY_SECONDS } : {}),
  };
  const lines = [['HTTP/1.1', status, STATUS_CODES[status]].join(' '), ...Object.entries(headers).map(([name, value]) => `${name}: ${value}`), '', message];
  socket.write(lines.join('\r\n'));
  socket.destroySoon();
}
