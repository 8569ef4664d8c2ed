import type { PageCalls, SessionCalls } from './electron-calls.ts';
import { isAllowedRequest, isGranted, isOwnBlob, isOwnPage } from './security.ts';

/** Nothing but the app's own page is opened, and that by the shell itself, in a window with every protection. */
export function confinePage(page: PageCalls, open: (address: string) => void): void {
  for (const event of ['will-navigate', 'will-redirect', 'will-frame-navigate'] as const) {
    page.on(event, (navigation) => {
      if (!isOwnPage(navigation.url)) navigation.preventDefault();
    });
  }
  page.on('will-attach-webview', (event) => event.preventDefault());
  page.setWindowOpenHandler(({ url }) => {
    if (isOwnPage(url)) open(url);
    return { action: 'deny' };
  });
}

/** What the pages ask of the machine and of the network. */
export function confineSession(session: SessionCalls): void {
  session.setPermissionRequestHandler((_page, permission, decide, asker) => decide(isGranted(permission, asker)));
  session.setPermissionCheckHandler((_page, permission, _origin, asker) => isGranted(permission, asker));
  session.setDevicePermissionHandler(() => false);
  // Electron fetches its dictionaries from outside.
  session.setSpellCheckerEnabled(false);
  session.webRequest.onBeforeRequest(({ url }, decide) => decide({ cancel: !isAllowedRequest(url) }));
  session.on('will-download', (event, item) => {
    if (!isOwnBlob(item.getURL())) event.preventDefault();
  });
}
