import { describe, expect, test } from 'vitest';
import { readSettings, StartError } from '../../server/settings.ts';

const read = (
  environment: Record<string, string> = {},
  options: readonly string[] = [],
  platform: NodeJS.Platform = 'linux',
) => readSettings(environment, options, platform, '/home/zoë');

describe('settings', () => {
  test('have defaults that need no thought', () => {
    const { port, host, hosts, client, allAddresses } = read();
    expect({ port, host, hosts, client, allAddresses }).toEqual({
      port: 4600,
      host: undefined,
      hosts: [],
      client: undefined,
      allAddresses: false,
    });
  });
  // Ports that systems or common programs take, and those that need rights.
  test.each([5000, 7000, 8080, 3000])('the default port is not %d', (port) => {
    expect(read().port).not.toBe(port);
    expect(read().port).toBeGreaterThan(1023);
  });
  test.each([
    ['4601', 4601],
    [' 80 ', 80],
    ['', 4600],
    ['0', 0],
  ])('PORT=%j is %d', (text, port) => expect(read({ PORT: text }).port).toBe(port));
  test.each(['abc', '-1', '65536', '4600.5', '0x10', '99999999'])('PORT=%s is refused with what was found', (text) => {
    expect(() => read({ PORT: text })).toThrow(StartError);
    expect(() => read({ PORT: text })).toThrow(text);
  });
  // XDG Base Directory Specification 0.8: unset, empty or relative means ~/.local/share. macOS and Windows: common practice.
  test.each<[NodeJS.Platform, Record<string, string>, string]>([
    ['linux', {}, '/home/zoë/.local/share/hearsay'],
    ['linux', { XDG_DATA_HOME: '/data/share' }, '/data/share/hearsay'],
    ['linux', { XDG_DATA_HOME: 'share' }, '/home/zoë/.local/share/hearsay'],
    ['linux', { XDG_DATA_HOME: '' }, '/home/zoë/.local/share/hearsay'],
    ['darwin', {}, '/home/zoë/Library/Application Support/Hearsay'],
    ['linux', { HEARSAY_DATA: '/srv/Übungs Räume ♭' }, '/srv/Übungs Räume ♭'],
  ])('on %s with %j data lies in %s', (platform, environment, folder) => {
    expect(read(environment, [], platform).data).toBe(folder);
  });
  test('on Windows data lies in the local application data', () => {
    expect(read({ LOCALAPPDATA: 'C:\\Users\\Zoë\\AppData\\Local' }, [], 'win32').data).toMatch(
      /AppData\\Local.Hearsay$/,
    );
  });
  test('a fixed address is one of the names of the server', () => {
    const { host, hosts } = read({ HEARSAY_HOST: 'music.school.example', HEARSAY_HOSTS: 'a.test, b.test,' });
    expect(host).toBe('music.school.example');
    expect(hosts).toEqual(['a.test', 'b.test', 'music.school.example']);
    expect(() => read({ HEARSAY_HOST: 'http://x/' })).toThrow(StartError);
  });
  test('options are read, and an unknown one is named', () => {
    expect(read({}, ['--addresses']).allAddresses).toBe(true);
    expect(() => read({}, ['--adresses'])).toThrow('--adresses');
  });
});
