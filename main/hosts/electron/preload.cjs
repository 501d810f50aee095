// Runs in the sandbox beside the page. It exposes nothing: on the page's request it fetches one port to the desk and
// hands it over by a message on the window, and that is all.

const { ipcRenderer } = require('electron');

if (!process.contextIsolated || !process.sandboxed) throw new Error('Plumbline runs only isolated and in the sandbox.');

const channel = 'plumbline:desk-port';

window.addEventListener('message', (event) => {
  if (event.source !== window || event.origin !== window.location.origin || event.data !== `${channel}?`) return;
  ipcRenderer.send(channel);
});

ipcRenderer.on(channel, (event) => {
  window.postMessage(channel, window.location.origin, event.ports);
});
