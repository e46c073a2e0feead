import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright-core';

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/microsoft-edge',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** Path of a Chromium-like browser: `CHROMIUM_PATH`, the usual places, or Debian's package where a root shell lacks one. */
function chromiumPath(): string {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROMIUM_PATH names ${named}, which does not exist.`);
    return named;
  }
  const found = PLACES.find((place) => existsSync(place));
  if (found) return found;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'ignore' });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { stdio: 'ignore' });
    if (existsSync('/usr/bin/chromium')) return '/usr/bin/chromium';
  }
  throw new Error('The browser tests need Chromium, Chrome or Edge: install one, or name it in CHROMIUM_PATH.');
}

/**
 * A real browser with the autoplay rule of real browsers. `hosts` maps names to loopback, so that a page can be opened on
 * an insecure origin without any traffic leaving the machine.
 */
export function launchChromium(hosts: readonly string[] = []): Promise<Browser> {
  const rules = hosts.map((host) => `MAP ${host} 127.0.0.1`).join(',');
  return chromium.launch({
    executablePath: chromiumPath(),
    // The driver's own default lifts the autoplay rule; a test of the sound would then prove nothing.
    ignoreDefaultArgs: ['--autoplay-policy=no-user-gesture-required'],
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--autoplay-policy=document-user-activation-required',
      ...(rules ? [`--host-resolver-rules=${rules}`] : []),
    ],
  });
}
