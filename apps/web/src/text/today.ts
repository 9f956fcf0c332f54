/** The reader's own day, as ISO has it. */
export function today(): string {
  const now = new Date();
  const two = (value: number) => `${value}`.padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
