import { type Host, LOOPBACK_CALL_PATH } from '../../shared-core/contract/index.ts';
import { serveOffice } from '../../src-main/loopback/serve-office.ts';
import { openOffice } from '../../src-main/office/index.ts';
import { ask, callHeaders, signIn } from '../loopback/serving.ts';
import { type Connection, describeContract, ownFolderBeside } from './contract-suite.ts';
import { describeKeeping } from './keeping-suite.ts';
import { describePapers } from './papers-suite.ts';

const connect = async (folder: string): Promise<Connection> => {
  const office = openOffice({ shell: 'loopback', folder, ownFolder: ownFolderBeside(folder) });
  const served = await serveOffice(office, { rendererFolder: folder });
  const cookie = await signIn(served);
  const host: Host = {
    async call(method, argument) {
      const path = LOOPBACK_CALL_PATH + encodeURIComponent(method);
      const answer = await ask(served.origin, { method: 'POST', path, headers: callHeaders(served, cookie), body: JSON.stringify(argument) });
      return JSON.parse(answer.text);
    },
  };
  return {
    host,
    openPath: office.openPath,
    close: async () => {
      await served.close();
      await office.close();
    },
  };
};

describeContract('loopback', connect);
describeKeeping('loopback', connect);
describePapers('loopback', connect);
