import { createServer } from 'node:http';
import { Socket } from 'node:net';
import { expect, test } from 'vitest';
import { watchStrangers } from '../../src-main/loopback/strangers.ts';

test('a second has room for so many strangers, and the next one has it again', () => {
  let now = 100.2;
  const server = createServer();
  const strangers = watchStrangers(server, { connections: 1, requestsEachSecond: 2 }, () => now);
  const deserved = { status: 401, message: 'who are you' };
  const ask = () => strangers.refuse(deserved).status;
  expect([ask(), ask(), ask(), ask()]).toEqual([401, 401, 429, 429]);
  now = 100.99;
  expect(ask()).toBe(429);
  now = 101;
  expect([ask(), ask(), ask()]).toEqual([401, 401, 429]);
});

test('each connection that is too many costs another one its place, even where all come in one breath', () => {
  const server = createServer();
  watchStrangers(server, { connections: 2, requestsEachSecond: 1 });
  const sockets = Array.from({ length: 5 }, () => new Socket());
  for (const socket of sockets) server.emit('connection', socket);
  expect(sockets.map(({ writable }) => writable)).toEqual([false, false, false, true, true]);
  for (const socket of sockets) socket.destroy();
});
