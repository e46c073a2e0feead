/** The value below which a share (0 to 1) of the numbers lies, between neighbours in a straight line; NaN of none. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = Float64Array.from(numbers).toSorted();
  const place = share * (sorted.length - 1);
  const low = sorted[Math.floor(place)] ?? Number.NaN;
  return low + ((sorted[Math.ceil(place)] ?? low) - low) * (place % 1);
}

export function median(numbers: readonly number[]): number {
  return quantile(numbers, 1 / 2);
}

export function sum(numbers: readonly number[]): number {
  let total = 0;
  for (const number of numbers) total += number;
  return total;
}

export function mean(numbers: readonly number[]): number {
  return sum(numbers) / numbers.length;
}

/** Standard deviation of a sample around its own mean; 0 of fewer than two. */
export function deviation(numbers: readonly number[]): number {
  if (numbers.length < 2) return 0;
  const middle = mean(numbers);
  return Math.sqrt(sum(numbers.map((number) => (number - middle) ** 2)) / (numbers.length - 1));
}
