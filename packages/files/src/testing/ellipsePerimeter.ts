/** Perimeter of an ellipse by the arithmetic-geometric mean (Gauss; Abramowitz and Stegun 17.6, from memory). */
export function ellipsePerimeter(a: number, b: number): number {
  let [x, y, power] = [a, b, 1];
  let sum = (a * a - b * b) / 2;
  while (Math.abs(x - y) > 1e-14 * a) {
    const c = (x - y) / 2;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
    sum += power * c * c;
    power *= 2;
  }
  return (2 * Math.PI * (a * a - sum)) / x;
}
