import { createServer } from 'node:http';
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
