import { render } from 'preact';
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { DeskPage } from '../../../client/desk/screens/desk-page.tsx';
import { answers } from '../../../client/desk/screens/late.tsx';
import { deskOf, deskView, fallenView } from './fixtures.ts';

const root = document.createElement('div');
document.body.append(root);

test('a leaf that has not been fetched says so until it is there', async () => {
  const { desk } = deskOf(deskView(), { leaf: 'roll' });
  void act(() => render(<DeskPage desk={desk} />, root));
  expect(root.querySelector('.desk-body [role=status]')?.textContent).toBe('One moment.');
  await expect.poll(() => root.querySelector('.roll li'), { timeout: 20_000 }).not.toBeNull();
  expect(root.querySelector('.desk-body [role=status]')).toBeNull();
});

test('what answers bring is fetched as the page stands, before any has come', async () => {
  void act(() => render(null, root));
  void act(() => render(<DeskPage desk={deskOf(deskView()).desk} />, root));
  const fallen = deskOf(fallenView('direction-1', 'closed', { up: 1, down: 3 }, 'down')).desk;
  // Drawn by itself the fallen answers would fetch it: here it is only waited for.
  await expect.poll(() => answers.here(), { timeout: 20_000 }).toBe(true);
  void act(() => render(<DeskPage desk={fallen} />, root));
  expect(root.querySelector('.fallen')).not.toBeNull();
});
