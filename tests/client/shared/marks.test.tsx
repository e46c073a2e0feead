import { render, type ComponentChildren } from 'preact';
import { expect, test } from 'vitest';
import { SvgChord } from '../../../client/shared/chord-text.tsx';
import { DashedRing, Mark, PencilRing, Wordmark } from '../../../client/shared/marks.tsx';
import {
  Accent,
  BarsToClose,
  DownBow,
  HatchPatterns,
  Lens,
  RepeatBars,
  Slash,
  Tally,
  UpBow,
  XHead,
} from '../../../client/shared/music-marks.tsx';

function draw(children: ComponentChildren, label?: string): SVGSVGElement {
  const place = document.createElement('div');
  render(
    <Mark width={100} height={100} {...(label && { label })}>
      {children}
    </Mark>,
    place,
  );
  const svg = place.querySelector('svg');
  if (!svg) throw new Error('nothing drawn');
  return svg;
}

test('a mark is silent unless it has a name', () => {
  expect(draw(<Slash x={50} y={50} height={40} />).getAttribute('aria-hidden')).toBe('true');
  const named = draw(<Slash x={50} y={50} height={40} />, 'beat');
  expect(named.getAttribute('role')).toBe('img');
  expect(named.getAttribute('aria-label')).toBe('beat');
});

test('ink is what was said, brass what sounded', () => {
  for (const said of [<PencilRing x={50} y={50} rx={30} ry={20} />, <Slash x={50} y={50} height={40} />]) {
    expect(draw(said).querySelector('[class*=brass]')).toBeNull();
  }
  expect(draw(<Lens from={[0, 50]} to={[100, 50]} amplitude={8} />).querySelectorAll('.line-brass')).toHaveLength(1);
});

test('what did not count is told by dashes, not by colour', () => {
  const dashed = draw(<DashedRing x={50} y={50} rx={30} ry={20} />).querySelector('path');
  const whole = draw(<PencilRing x={50} y={50} rx={30} ry={20} still />).querySelector('path');
  expect(dashed?.getAttribute('d')).toBe(whole?.getAttribute('d'));
  expect(dashed?.hasAttribute('stroke-dasharray')).toBe(true);
  expect(whole?.hasAttribute('stroke-dasharray')).toBe(false);
});

test('a hollow slash has not been heard yet', () => {
  expect(draw(<Slash x={50} y={50} height={40} hollow />).querySelector('.fill-ink')).toBeNull();
});

test.each([
  [17, 24, 17, 7],
  [0, 5, 0, 5],
  [60, 60, 60, 0],
  // Above sixty a stroke stands for ten hands.
  [61, 61, 6, 1],
  [95, 300, 9, 21],
])('%i of %i hands are %i strokes and %i dots', (hands, of, strokes, dots) => {
  const svg = draw(<Tally x={0} y={0} hands={hands} of={of} gap={4} height={30} />);
  expect(svg.querySelectorAll('path')).toHaveLength(strokes);
  expect(svg.querySelectorAll('circle')).toHaveLength(dots);
});

test('bars to the close: past bars slashed, a double bar at the end', () => {
  const svg = draw(<BarsToClose x={0} y={0} bars={6} past={2} cell={16} height={24} />);
  expect(svg.querySelectorAll('path.fill-ink')).toHaveLength(2);
  expect(svg.querySelectorAll('rect')).toHaveLength(1);
});

test('down-bow, up-bow, x head and accent are four different shapes', () => {
  const shapes = [DownBow, UpBow, XHead, Accent].map((Sign) => draw(<Sign x={50} y={50} size={40} />).innerHTML);
  expect(new Set(shapes).size).toBe(4);
});

test('a repeat sign turns its dots inward', () => {
  const at = (side: 'open' | 'close'): number =>
    Number(
      draw(<RepeatBars x={50} y={10} height={60} size={20} side={side} />)
        .querySelector('circle')
        ?.getAttribute('cx'),
    );
  expect(at('open')).toBeGreaterThan(50);
  expect(at('close')).toBeLessThan(50);
});

test('hatch grows denser by steps', () => {
  const widths = Array.from(draw(<HatchPatterns id="h" />).querySelectorAll('pattern'), (pattern) =>
    Number(pattern.getAttribute('width')),
  );
  expect(widths.slice(0, 4)).toEqual([14, 9, 6, 4]);
});

test.each([
  ['F#m', 'F♯m'],
  ['Bb', 'B♭'],
  ['C', 'C'],
  ['Bdim', 'B°'],
])('%s is set as %s', (symbol, text) => {
  expect(draw(<SvgChord symbol={symbol} x={0} y={0} size={20} />).textContent).toBe(text);
});

test('the wordmark is read as one word', () => {
  const place = document.createElement('div');
  render(<Wordmark />, place);
  expect(place.firstElementChild?.getAttribute('aria-label')).toBe('Hearsay');
});
