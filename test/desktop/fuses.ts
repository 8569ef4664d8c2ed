import { writeFileSync } from 'node:fs';
import { FuseV1Options, getCurrentFuseWire } from '@electron/fuses';

/** Every fuse that the packing knows, as it has to be in a packed app. */
export const EXPECTED_FUSES = {
  RunAsNode: 'off',
  EnableCookieEncryption: 'on',
  EnableNodeOptionsEnvironmentVariable: 'off',
  EnableNodeCliInspectArguments: 'off',
  EnableEmbeddedAsarIntegrityValidation: 'on',
  OnlyLoadAppFromAsar: 'on',
  LoadBrowserProcessSpecificV8Snapshot: 'off',
  GrantFileProtocolExtraPrivileges: 'off',
};

const [OFF, ON] = [0x30, 0x31];

/** The fuses in a program of Electron's, by their names. */
export async function readFuses(program: string): Promise<Readonly<Record<string, string>>> {
  const wire = await getCurrentFuseWire(program);
  const names = Object.values(FuseV1Options).filter((name) => typeof name === 'string');
  return Object.fromEntries(
    names.map((name) => {
      const state = Number(wire[FuseV1Options[name as keyof typeof FuseV1Options]]);
      return [name, state === ON ? 'on' : state === OFF ? 'off' : `${state}`];
    }),
  );
}

/** What marks the fuses in the program; the version of their layout, their number and a digit for each follow. */
const SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
/** As Electron ships them, with the ninth, which the packing does not know yet and leaves as it is. */
const AS_SHIPPED = '101100011';

/** Stands in for the program of Electron's runtime, which is never run: it holds the fuses alone. */
export function makeProgram(path: string): void {
  writeFileSync(path, Buffer.concat([Buffer.from(`no program ${SENTINEL}`), Buffer.from([1, AS_SHIPPED.length]), Buffer.from(`${AS_SHIPPED} at all`)]), { mode: 0o755 });
}
