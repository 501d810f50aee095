import './parts/look/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { connect } from './link/link.ts';
import { codeIn, isPadPage } from './link/pad/entry.ts';
import { applyRememberedLook } from './parts/shell/theme.ts';

applyRememberedLook();
const root = document.getElementById('root');
if (root === null) throw new Error('the page has no root element');
const screens = isPadPage(location) ? padScreens() : deskScreens();
void screens.then((shown) => createRoot(root).render(<StrictMode>{shown}</StrictMode>));

/** A phone need not load the desk's screens, nor the desk a pad's. */
async function padScreens() {
  const { PadScreens } = await import('./parts/pad/pad-screens.tsx');
  return <PadScreens base={new URL('.', location.href).href} code={codeIn(location.hash)} />;
}

async function deskScreens() {
  const { App } = await import('./app.tsx');
  return <App link={connect()} />;
}
