/** Two-sided 95 % of the normal distribution. */
const Z = 1.959963984540054;

/**
 * The score interval of a share, lowest and highest, 0 to 1 (Wilson, "Probable inference, the law of succession, and statistical
 * inference", 1927), at 95 %. RangeError unless 0 <= times <= chances and chances > 0.
 */
export function wilsonInterval(times: number, chances: number): readonly [number, number] {
  if (!(chances > 0) || !(times >= 0) || times > chances) {
    throw new RangeError(`a share needs 0 <= times <= chances, not ${times} of ${chances}`);
  }
  const share = times / chances;
  const square = Z ** 2 / chances;
  const middle = share + square / 2;
  const half = Z * Math.sqrt((share * (1 - share)) / chances + square / chances / 4);
  // At none and all the formula gives the limits themselves, but for rounding.
  return [times === 0 ? 0 : (middle - half) / (1 + square), times === chances ? 1 : (middle + half) / (1 + square)];
}
