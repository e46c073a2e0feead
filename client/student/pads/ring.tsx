import { DashedRing, PencilRing } from '../../shared/marks.tsx';

/** The ring of one's own answer: dashed where it did not count. */
export function Ring(props: {
  readonly x: number;
  readonly y: number;
  readonly rx: number;
  readonly ry: number;
  readonly dashed: boolean;
}) {
  const { dashed, ...place } = props;
  return dashed ? <DashedRing {...place} /> : <PencilRing {...place} />;
}
