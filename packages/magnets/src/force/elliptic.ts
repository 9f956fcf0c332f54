/**
 * Complete elliptic integrals K and E from one arithmetic-geometric mean, given kc = sqrt(1 - m) in (0, 1].
 * Writes K to out[0], E to out[1]. Relative error below 1e-14. Source: sources.md#dlmf-19-8.
 */
export function completeElliptic(kc: number, out: Float64Array): void {
  let a = 1;
  let b = kc;
  let c = 0;
  let sum = (1 - kc) * (1 + kc);
  let power = 1;
  do {
    c = 0.5 * (a - b);
    const mean = 0.5 * (a + b);
    b = Math.sqrt(a * b);
    a = mean;
    power *= 2;
    sum += power * c * c;
  } while (c > 1e-5 * a);
  out[0] = Math.PI / (a + b);
  out[1] = out[0]! * (1 - 0.5 * sum);
}
