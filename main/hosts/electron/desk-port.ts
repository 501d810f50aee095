import type { AnyRouter } from '@orpc/server';
import { RPCHandler } from '@orpc/server/message-port';
import { type IpcMain, MessageChannelMain, type MessagePortMain, type WebContents } from 'electron';
import type { Intake } from '../intake.ts';
import { isOwnFrame, type Place } from './origin.ts';

/** The one channel between page and main process; the preload script knows it by the same name. */
const portChannel = 'plumbline:desk-port';

/**
 * Hands the page a port to the desk when it asks for one: only the window's own page, in its main frame. A page has one
 * port at a time; a page that was reloaded gets a new one. The answer closes them all.
 */
export function handOutPorts(ipcMain: IpcMain, router: AnyRouter, intake: Intake, place: Place): () => void {
  const handler = new RPCHandler(router, { clientInterceptors: [intake.around] });
  const ports = new Map<WebContents, MessagePortMain>();

  ipcMain.on(portChannel, (event) => {
    const frame = event.senderFrame;
    if (!isOwnFrame(frame, place) || frame !== event.sender.mainFrame) return;
    const { port1, port2 } = new MessageChannelMain();
    ports.get(event.sender)?.close();
    ports.set(event.sender, port1);
    port1.on('close', () => {
      if (ports.get(event.sender) === port1) ports.delete(event.sender);
    });
    handler.upgrade(port1, { context: {} });
    port1.start();
    frame.postMessage(portChannel, null, [port2]);
  });

  return () => {
    ipcMain.removeAllListeners(portChannel);
    for (const port of ports.values()) port.close();
  };
}
