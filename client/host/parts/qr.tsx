import { encode } from 'uqr';

/** Light modules around the code: readers need four. */
const QUIET_ZONE = 4;

/** The code of a text as one path in module units, with its side length, quiet zone included. */
export function qrPath(text: string): { readonly path: string; readonly side: number } {
  const { data, size } = encode(text, { ecc: 'M', border: QUIET_ZONE });
  let path = '';
  data.forEach((row, y) => {
    for (let x = 0; x < row.length; x += 1) {
      if (!row[x]) continue;
      let run = 1;
      while (row[x + run]) run += 1;
      path += `M${x} ${y}h${run}v1h-${run}z`;
      x += run;
    }
  });
  return { path, side: size };
}

/** A QR code on its light plate; dark on light in every variant, or phones cannot read it. `size` in drawing units. */
export function Qr({ text, size, label }: { readonly text: string; readonly size: number; readonly label: string }) {
  const { path, side } = qrPath(text);
  return (
    <svg
      class="qr"
      role="img"
      aria-label={label}
      viewBox={`0 0 ${side} ${side}`}
      width={`${size / 16}rem`}
      height={`${size / 16}rem`}
      shape-rendering="crispEdges"
    >
      <rect class="qr-plate" width={side} height={side} />
      <path class="qr-modules" d={path} />
    </svg>
  );
}
