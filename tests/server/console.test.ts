import { describe, expect, test } from 'vitest';
import { greeting, qrBlock } from '../../server/console.ts';
import { readQr } from '../support/read-qr.ts';

/** Paints block characters as a light-on-dark terminal shows them, and reads the square as a phone does. */
function scan(block: string, scale = 6): { readonly text: string | undefined; readonly quiet: number } {
  const halves: Readonly<Record<string, readonly [boolean, boolean]>> = {
    '█': [true, true],
    '▀': [true, false],
    '▄': [false, true],
    ' ': [false, false],
  };
  const rows = block.split('\n').flatMap((line) => {
    const cells = Array.from(line).map((sign) => halves[sign] ?? [false, false]);
    return [cells.map(([top]) => top), cells.map(([, bottom]) => bottom)];
  });
  const [width, height] = [(rows[0]?.length ?? 0) * scale, rows.length * scale];
  const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const light = rows[Math.floor(y / scale)]?.[Math.floor(x / scale)] ?? false;
      pixels.fill(light ? 255 : 0, (y * width + x) * 4, (y * width + x) * 4 + 3);
    }
  }
  const quiet = rows.findIndex((row) => row.includes(false));
  return { text: readQr(pixels, width, height), quiet };
}

const details = {
  teacherLink: 'http://localhost:4600/teacher?key=abc',
  phones: ['http://192.168.1.23:4600', 'http://10.20.3.4:4600'],
  more: ['http://172.17.0.1:4600'],
  showMore: false,
  folder: '/home/zoë/.local/share/hearsay',
  terminal: false,
};

describe('the square code', () => {
  test.each(['http://192.168.1.23:4600', 'http://10.0.0.1:80', 'http://a-very-long-name-of-a-laptop.local:65535'])(
    'of %s reads as exactly that, dark on light with a quiet zone of four',
    (url) => expect(scan(qrBlock(url, false))).toEqual({ text: url, quiet: 4 }),
  );
  test('has its own colours in a terminal of any theme', () => {
    const [line = ''] = qrBlock('http://192.168.1.23:4600', true).split('\n');
    expect(line.startsWith('\u001b[38;5;231;48;5;16m') && line.endsWith('\u001b[0m')).toBe(true);
  });
});

describe('what the server says', () => {
  test('the teacher link, the best address with its code, where data lies, how to stop', () => {
    const text = greeting(details);
    const block = text
      .split('\n')
      .filter((line) => /^[█▀▄ ]{20,}$/.test(line))
      .join('\n');
    expect(scan(block).text).toBe('http://192.168.1.23:4600');
    for (const part of [details.teacherLink, details.folder, 'Ctrl-C', '--addresses']) expect(text).toContain(part);
    expect(text).not.toContain('172.17.0.1');
  });
  test('all addresses when asked', () => {
    expect(greeting({ ...details, showMore: true })).toMatch(/10\.20\.3\.4[\s\S]*172\.17\.0\.1/);
  });
  test('says so where there is no network, and shows no code', () => {
    const text = greeting({ ...details, phones: [], more: [] });
    expect(text).toContain('no network');
    expect(text).not.toMatch(/[█▀▄]/);
  });
});
