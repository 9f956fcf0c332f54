/** Natural logarithm of the gamma function, a > 0, to 1e-13 relative. @source sources.md#lanczos-1964 */
function logGamma(a: number): number {
  const terms = [
    676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
    -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
  ];
  if (a < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * a)) - logGamma(1 - a);
  const z = a - 1;
  const sum = terms.reduce((total, term, i) => total + term / (z + i + 1), 0.9999999999998099);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Q(a, x), the upper regularised incomplete gamma function. @source sources.md#dlmf-8 (8.7.1, 8.9.2) */
function upperGamma(a: number, x: number): number {
  if (x <= 0) return 1;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < 1000 && term > sum * 1e-17; n++) sum += term *= x / (a + n);
    return 1 - front * sum;
  }
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < 1000; n++) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / (an * d + b);
    c = b + an / c;
    h *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return front * h;
}

/**
 * Probability that chi-square with `freedom` degrees exceeds `value`: how likely pure chance is to do worse.
 *
 * @range value >= 0, freedom >= 1
 * @accuracy 1e-12 absolute
 * @source sources.md#dlmf-8
 */
export function chiSquareExceeded(value: number, freedom: number): number {
  return upperGamma(freedom / 2, value / 2);
}

/**
 * The value that chi-square with `freedom` degrees stays below with the given probability.
 *
 * @range 0 < probability < 1, freedom >= 1
 * @accuracy 1e-10 relative
 * @source sources.md#dlmf-8, inverted by bisection
 */
export function chiSquareQuantile(probability: number, freedom: number): number {
  let low = 0;
  let high = freedom + 10;
  while (chiSquareExceeded(high, freedom) > 1 - probability) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-12 * high; i++) {
    const middle = (low + high) / 2;
    if (chiSquareExceeded(middle, freedom) > 1 - probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
