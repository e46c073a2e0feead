import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { hex } from 'wcag-contrast';

const css = readFileSync(join(import.meta.dirname, '../../../client/shared/style.css'), 'utf8');

/** Colours of the tokens in the block that begins with the selector; the paper's where it names none. */
function tokens(selector: string): Readonly<Record<string, string>> {
  const start = css.indexOf(`${selector} {`);
  const block = css.slice(start, css.indexOf('}', start));
  return Object.fromEntries(
    Array.from(block.matchAll(/--(\w+): (#[0-9a-f]+)/g), ([, name = '', colour = '']) => [name, colour]),
  );
}

const paper = tokens(':root');
const variants = {
  paper,
  stage: { ...paper, ...tokens(":root[data-stage='dark']") },
  'high contrast': { ...paper, ...tokens(":root[data-contrast='more']") },
  'asked for by the system': { ...paper, ...tokens(":root:not([data-contrast='standard'])") },
};

const contrast = (colours: Readonly<Record<string, string>>, one: string, other: string): number =>
  hex(colours[one] ?? '', colours[other] ?? '');

// WCAG 2.2: 1.4.3 text 4.5, large text 3; 1.4.11 graphics 3. Formula outside: wcag-contrast.
test.each(Object.entries(variants))('%s: small text reads on paper and on shade', (_, colours) => {
  for (const ground of ['paper', 'shade']) {
    expect(contrast(colours, 'ink', ground)).toBeGreaterThanOrEqual(7);
    expect(contrast(colours, 'ink2', ground)).toBeGreaterThanOrEqual(4.5);
  }
});

test.each(Object.entries(variants))('%s: lines, brass and the letters on brass are seen', (_, colours) => {
  for (const ground of ['paper', 'shade']) {
    expect(contrast(colours, 'string', ground)).toBeGreaterThanOrEqual(3);
    expect(contrast(colours, 'brass', ground)).toBeGreaterThanOrEqual(3);
  }
  expect(contrast(colours, 'onbrass', 'brass')).toBeGreaterThanOrEqual(3);
});

test.each(Object.entries(variants))('%s: the code to scan is dark on a light plate', (_, colours) => {
  expect(contrast(colours, 'qrink', 'qrpaper')).toBeGreaterThanOrEqual(10);
});

test('both ways to high contrast name the same colours', () => {
  expect(variants['asked for by the system']).toEqual(variants['high contrast']);
});
