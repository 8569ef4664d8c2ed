/** Numbers that window and worker both see: up to which request the window has seen enough, and which it has dropped. */
export type StopFlag = SharedArrayBuffer;

const STOPPED = 0;
const DROPPED = 1;

/** Null where the browser shares no memory between window and worker. */
export function newStopFlag(isShared: boolean): StopFlag | null {
  return isShared ? new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT) : null;
}

/** The best that is found so far is wanted of this request and of all before it. */
export function stopUpTo(flag: StopFlag, number: number): void {
  Atomics.store(new Int32Array(flag), STOPPED, number);
}

/** Nothing is wanted of this request any more, nor of those before it. */
export function dropUpTo(flag: StopFlag, number: number): void {
  stopUpTo(flag, number);
  Atomics.store(new Int32Array(flag), DROPPED, number);
}

export function isStopped(flag: StopFlag | null, number: number): boolean {
  return flag !== null && Atomics.load(new Int32Array(flag), STOPPED) >= number;
}

export function isDropped(flag: StopFlag | null, number: number): boolean {
  return flag !== null && Atomics.load(new Int32Array(flag), DROPPED) >= number;
}
