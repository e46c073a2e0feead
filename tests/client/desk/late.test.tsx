import { render } from 'preact';
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { DeskPage } from '../../../client/desk/screens/desk-page.tsx';
import { deskOf, deskView } from './fixtures.ts';

const root = document.createElement('div');
document.body.append(root);

test('a leaf that has not been fetched says so until it is there', async () => {
  const { desk } = deskOf(deskView(), { leaf: 'roll' });
  void act(() => render(<DeskPage desk={desk} />, root));
  expect(root.querySelector('.desk-body [role=status]')?.textContent).toBe('One moment.');
  await expect.poll(() => root.querySelector('.roll li'), { timeout: 20_000 }).not.toBeNull();
  expect(root.querySelector('.desk-body [role=status]')).toBeNull();
});
