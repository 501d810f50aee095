import type { App, WebContents } from 'electron';
import { isPage, type Place } from './origin.ts';

/** Whatever web contents come to be: they stay on the page, open no window and attach nothing. */
export function guardContents(app: App, place: Place): void {
  app.on('web-contents-created', (_event, contents) => guard(contents, place));
}

function guard(contents: WebContents, place: Place): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('will-attach-webview', (event) => event.preventDefault());
  // The page may load itself again, and nothing else; frames may load nothing.
  contents.on('will-navigate', (event) => {
    if (!event.isMainFrame || !isPage(event.url, place)) event.preventDefault();
  });
  contents.on('will-frame-navigate', (event) => {
    if (!event.isMainFrame || !isPage(event.url, place)) event.preventDefault();
  });
  contents.on('will-redirect', (event) => event.preventDefault());
}
