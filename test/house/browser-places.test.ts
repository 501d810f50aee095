import { afterEach, describe, expect, test } from 'vitest';
import { browserVariable, findOrInstallBrowser, usualPlaces } from '../browser.ts';

describe('the usual places of a browser', () => {
  test('on Linux are the search path, /usr/bin, and where snaps and vendors install', () => {
    const places = usualPlaces('linux', {});
    expect(places).toContain('/usr/bin/chromium');
    expect(places).toContain('/usr/bin/google-chrome');
    expect(places).toContain('/opt/microsoft/msedge/msedge');
    expect(places.indexOf('/usr/bin/chromium')).toBeLessThan(places.indexOf('/usr/bin/google-chrome'));
  });

  test('on macOS are the applications of the machine and of the user', () => {
    const places = usualPlaces('darwin', {});
    expect(places).toContain('/Applications/Google Chrome.app/Contents/MacOS/Google Chrome');
    expect(places).toHaveLength(6);
  });

  test('on Windows are the program folders that there are', () => {
    const places = usualPlaces('win32', {
      ProgramFiles: 'C:\\Program Files',
      LOCALAPPDATA: 'C:\\Users\\a\\AppData\\Local',
    });
    expect(places).toContain('C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe');
    expect(places).toContain('C:\\Users\\a\\AppData\\Local\\Google\\Chrome\\Application\\chrome.exe');
    expect(places).toHaveLength(6);
  });
});

describe('a browser named in the environment', () => {
  const before = process.env[browserVariable];
  afterEach(() => {
    if (before === undefined) delete process.env[browserVariable];
    else process.env[browserVariable] = before;
  });

  test('is not passed over in silence where it does not start', async () => {
    process.env[browserVariable] = '/nowhere/chromium';
    await expect(findOrInstallBrowser()).rejects.toThrow(
      'PLUMBLINE_BROWSER names /nowhere/chromium, which does not start as a browser.',
    );
  });
});
