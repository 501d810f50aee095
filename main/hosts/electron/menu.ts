import { Menu, type MenuItemConstructorOptions } from 'electron';

/** The menu: editing, viewing and window roles of the platform; a developer's tools only where they are wanted. */
export function setMenu(isMac: boolean, forDevelopers: boolean): void {
  const view: MenuItemConstructorOptions[] = [
    { role: 'reload' },
    { type: 'separator' },
    { role: 'resetZoom' },
    { role: 'zoomIn' },
    { role: 'zoomOut' },
    { type: 'separator' },
    { role: 'togglefullscreen' },
  ];
  if (forDevelopers) view.push({ type: 'separator' }, { role: 'toggleDevTools' });
  const template: MenuItemConstructorOptions[] = [
    ...(isMac ? [{ role: 'appMenu' } as const] : [{ label: '&File', submenu: [{ role: 'quit' } as const] }]),
    { role: 'editMenu' },
    { label: '&View', submenu: view },
    { role: 'windowMenu' },
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}
