import jsqr from 'jsqr';
import { describe, expect, test } from 'vitest';
import { httpAddress, portOf, roomAddress } from '../../../client/host/address.ts';
import { qrPath } from '../../../client/host/parts/qr.tsx';

/** Paints the path's runs into pixels, four to a module, as the browser would. */
function paint(
  path: string,
  side: number,
): { pixels: Uint8ClampedArray; size: number; dark: (x: number, y: number) => boolean } {
  const zoom = 4;
  const size = side * zoom;
  const pixels = new Uint8ClampedArray(size * size * 4).fill(255);
  const modules = new Set<string>();
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)/g)) {
    for (let step = 0; step < Number(run); step += 1) modules.add(`${Number(x) + step} ${y}`);
  }
  for (let y = 0; y < size; y += 1) {
    for (let x = 0; x < size; x += 1) {
      if (!modules.has(`${Math.floor(x / zoom)} ${Math.floor(y / zoom)}`)) continue;
      pixels.fill(0, (y * size + x) * 4, (y * size + x) * 4 + 3);
    }
  }
  return { pixels, size, dark: (x, y) => modules.has(`${x} ${y}`) };
}

// CommonJS: how many defaults stand before the function depends on who imports it.
type Read = typeof jsqr.default;
const module: unknown = jsqr;
const read = typeof module === 'function' ? (module as Read) : jsqr.default;

describe('the code to scan', () => {
  test.each(['http://192.168.4.7:4600/WAKUR', 'http://lesson.local/BOLEN', 'http://10.0.31.112:46001/TAMIR'])(
    'a reader reads exactly %s',
    (text) => {
      const { path, side } = qrPath(text);
      const { pixels, size } = paint(path, side);
      expect(read(pixels, size, size)?.data).toBe(text);
    },
  );

  test('four light modules surround it', () => {
    const { path, side } = qrPath('http://192.168.4.7:4600/WAKUR');
    const { dark } = paint(path, side);
    for (let along = 0; along < side; along += 1) {
      for (const edge of [0, 1, 2, 3, side - 4, side - 3, side - 2, side - 1]) {
        expect(dark(along, edge) || dark(edge, along)).toBe(false);
      }
    }
    expect(dark(4, 4)).toBe(true);
  });
});

describe('addresses', () => {
  test.each([
    ['192.168.4.7:4600', 'http://192.168.4.7:4600'],
    ['http://192.168.4.7:4600/', 'http://192.168.4.7:4600'],
    ['https://class.example', 'https://class.example'],
  ])('%s is shown as %s', (given, shown) => {
    expect(httpAddress(given)).toBe(shown);
    expect(roomAddress(given, 'WAKUR')).toBe(`${shown}/WAKUR`);
  });

  test('the port that a firewall must let through', () => {
    expect(portOf('192.168.4.7:4600')).toBe('4600');
    expect(portOf('class.example')).toBe('80');
  });
});
