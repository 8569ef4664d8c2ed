#!/usr/bin/env node
const OLDEST_NODE = 24;

if (Number.parseInt(process.versions.node, 10) < OLDEST_NODE) {
  process.stderr.write(`struckline needs Node ${OLDEST_NODE} or later, this is ${process.versions.node}; npm ci brings one: node_modules/.bin/node\n`);
  process.exitCode = 1;
} else {
  await import('./main.ts');
}
