import './parts/look/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { connect } from './link/link.ts';
import { applyRememberedLook } from './parts/shell/theme.ts';

applyRememberedLook();
const root = document.getElementById('root');
if (root === null) throw new Error('the page has no root element');
createRoot(root).render(
  <StrictMode>
    <App link={connect()} />
  </StrictMode>,
);
