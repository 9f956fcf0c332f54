/** The highest value of a smooth function on [from, to]: a grid, then golden section about its best cell. */
export function peakOf(
  f: (x: number) => number,
  from: number,
  to: number,
  cells = 48,
): { readonly at: number; readonly value: number } {
  let best = from;
  let value = f(from);
  const step = (to - from) / cells;
  for (let i = 1; i <= cells; i++) {
    const here = f(from + i * step);
    if (here > value) {
      value = here;
      best = from + i * step;
    }
  }
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = Math.max(from, best - step);
  let high = Math.min(to, best + step);
  let left = high - golden * (high - low);
  let right = low + golden * (high - low);
  let atLeft = f(left);
  let atRight = f(right);
  while (high - low > 1e-7 * (to - from)) {
    if (atLeft > atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - golden * (high - low);
      atLeft = f(left);
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + golden * (high - low);
      atRight = f(right);
    }
  }
  const middle = 0.5 * (low + high);
  const found = f(middle);
  return found - value > 1e-8 * Math.abs(value) ? { at: middle, value: found } : { at: best, value };
}
