import { describe, expect, test } from 'vitest';
import {
  isLoopback,
  pageUrl,
  plainAddress,
  rankAddresses,
  splitAddresses,
  type Interfaces,
} from '../../../server/web/addresses.ts';

const of = (address: string, family: string | number = 'IPv4', internal = false) => [{ address, family, internal }];

describe('addresses of this machine', () => {
  test('wired and wireless first, then larger private ranges, virtual ones under more', () => {
    const interfaces: Interfaces = {
      lo: of('127.0.0.1', 'IPv4', true),
      docker0: of('172.17.0.1'),
      utun3: of('100.101.1.2'),
      'vEthernet (WSL)': of('172.28.16.1'),
      en0: of('10.20.3.4'),
      'Wi-Fi': of('192.168.1.23'),
    };
    const { likely, more } = splitAddresses(rankAddresses(interfaces));
    expect(likely).toEqual(['192.168.1.23', '10.20.3.4']);
    expect(more.toSorted()).toEqual(['100.101.1.2', '172.17.0.1', '172.28.16.1']);
  });

  test.each([
    ['docker0', '172.17.0.1'],
    ['br-1f2e3d', '192.168.80.1'],
    ['veth12ab', '192.168.81.1'],
    ['vmnet8', '192.168.82.1'],
    ['VirtualBox Host-Only Network', '192.168.56.1'],
    ['vboxnet0', '192.168.56.1'],
    ['utun0', '10.8.0.2'],
    ['tun0', '10.8.0.2'],
    ['tailscale0', '100.90.1.2'],
    ['ztabcdef', '10.147.17.5'],
    ['wg0', '10.0.0.2'],
    ['virbr0', '192.168.122.1'],
  ])('%s comes after a plain interface of any range', (name, address) => {
    const ranked = rankAddresses({ [name]: of(address), eth0: of('172.20.1.5') });
    expect(ranked.map((each) => each.address)).toEqual(['172.20.1.5', address]);
    expect(splitAddresses(ranked).more).toEqual([address]);
  });

  test('leaves out loopback, self-given addresses and IPv6, and reads both ways of writing the family', () => {
    const interfaces: Interfaces = {
      lo: of('127.0.0.1', 4, true),
      en1: [...of('169.254.10.3'), ...of('fe80::1', 'IPv6'), ...of('2001:db8::5', 6)],
      en0: of('192.168.0.7', 4),
      gone: undefined,
    };
    expect(rankAddresses(interfaces).map((each) => each.address)).toEqual(['192.168.0.7']);
  });

  test('no network gives nothing; a virtual address alone must do; a fixed address stands first', () => {
    expect(splitAddresses(rankAddresses({}))).toEqual({ likely: [], more: [] });
    expect(splitAddresses(rankAddresses({ docker0: of('172.17.0.1') }))).toEqual({ likely: ['172.17.0.1'], more: [] });
    const ranked = rankAddresses({ en0: of('192.168.0.7'), en1: of('10.0.0.7') });
    expect(splitAddresses(ranked, '10.0.0.7').likely).toEqual(['10.0.0.7', '192.168.0.7']);
    expect(splitAddresses(ranked, 'laptop.local').likely[0]).toBe('laptop.local');
  });

  test.each([
    ['192.168.1.23', '/', 'http://192.168.1.23:4600/'],
    ['192.168.1.23', '', 'http://192.168.1.23:4600'],
    ['2001:db8::5', '/', 'http://[2001:db8::5]:4600/'],
    ['laptop.local', '/WAKUR', 'http://laptop.local:4600/WAKUR'],
  ])('%s and %j make %s', (host, path, url) => expect(pageUrl(host, 4600, path)).toBe(url));

  test('a peer of a socket for both families is shown as IPv4', () => {
    expect(plainAddress('::ffff:192.168.1.7')).toBe('192.168.1.7');
    expect(plainAddress('2001:db8::5')).toBe('2001:db8::5');
    expect(['127.0.0.1', '::1', '::ffff:127.0.0.1', '192.168.1.7', '::ffff:10.0.0.1'].map(isLoopback)).toEqual([
      true, true, true, false, false,
    ]); // prettier-ignore
  });
});
