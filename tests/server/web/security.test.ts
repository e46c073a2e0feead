import { describe, expect, test } from 'vitest';
import type { IncomingMessage } from 'node:http';
import { hostNames, sameOrigin } from '../../../server/web/security.ts';

const request = (headers: Readonly<Record<string, string>>) => ({ headers }) as unknown as IncomingMessage;

describe('names of this server', () => {
  const { allows } = hostNames(['school.example', 'House.Test'], 'Annes-Laptop');
  test.each([
    ['192.168.1.23:4600', true],
    ['192.168.1.23', true],
    ['[::1]:4600', true],
    ['[2001:db8::5]', true],
    ['localhost:4600', true],
    ['annes-laptop:4600', true],
    ['ANNES-LAPTOP.local:4600', true],
    ['other.local', true],
    ['laptop.local.:4600', true],
    ['school.example', true],
    ['house.test:80', true],
    ['evil.test', false],
    ['school.example.evil.test', false],
    ['192.168.1.23.evil.test', false],
    ['localhost.evil.test', false],
    ['evil.test:4600@localhost', false],
    ['evil.test/.local', false],
    ['localhost:99999', false],
    ['localhost:65535', true],
    ['1.2.3.999', false],
    ['[::::]', false],
    ['', false],
  ])('%s: %s', (host, allowed) => expect(allows(host)).toBe(allowed));
  test('a request without a Host header is none of ours', () => expect(allows(undefined)).toBe(false));
});

describe('where a request comes from', () => {
  test.each([
    ['http://192.168.1.5:4600', '192.168.1.5:4600', true],
    ['http://laptop.local:4600', 'LAPTOP.local:4600', true],
    ['http://192.168.1.5', '192.168.1.5:80', true],
    ['https://school.example', 'school.example', true],
    ['http://evil.test', '192.168.1.5:4600', false],
    ['http://192.168.1.5:4601', '192.168.1.5:4600', false],
    ['http://192.168.1.50:4600', '192.168.1.5:4600', false],
    ['null', '192.168.1.5:4600', false],
    ['file://', '192.168.1.5:4600', false],
    ['', '192.168.1.5:4600', false],
    ['http://localhost', 'localhost:99999', false],
    ['http://localhost', '%', false],
  ])('%s at %s: %s', (origin, host, same) => expect(sameOrigin(request({ origin, host }))).toBe(same));
  test('no Origin: no page of another site', () =>
    expect(sameOrigin(request({ host: '192.168.1.5:4600' }))).toBe(true));
});
