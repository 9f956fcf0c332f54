import type { Catalogue, Plan } from '@panewright/design';
import { joinWords, type Show, showMoney } from './answers/show.ts';

const many = (count: number, one: string, more = `${one}s`) => `${count} ${count === 1 ? one : more}`;

/** What a plan comes to, in a few lines. */
export function summaryLines(plan: Plan, catalogue: Catalogue, show: Show): string[] {
  const { openings, patterns, hold, cutting, price, findings } = plan;
  const lines = [
    `${plan.job.name}: ${many(openings.length, 'opening')}, ${many(patterns.length, 'pattern')}.`,
  ];
  for (const { pattern, members } of patterns) {
    const names = (turned: boolean) =>
      members.filter((m) => m.turnedOver === turned).map((m) => show.opening(m.opening));
    const turned = names(true);
    const points = hold.find((one) => one.pattern === pattern)?.points.length ?? 0;
    const over = turned.length === 0 ? '' : ` and, turned over, ${joinWords(turned)}`;
    lines.push(`  ${pattern} serves ${joinWords(names(false))}${over}; ${many(points, 'hold point')}.`);
  }
  for (const lay of cutting?.lays ?? []) {
    const cloth = catalogue.fabrics.find(({ id }) => id === lay.fabric)?.name ?? lay.fabric;
    const wide = show.length(lay.rollWidth);
    if (lay.offcut)
      lines.push(
        `Cloth: ${many(lay.placements.length, 'piece')} of ${cloth} on the offcut “${lay.offcut.name}”.`,
      );
    else
      lines.push(
        `Cloth: ${show.length(lay.length.value)} of ${cloth}, ${wide} wide; ${show.percent(lay.density)} used.`,
      );
  }
  if (price)
    lines.push(
      `Price: ${showMoney(price.total.value, price.currency)} with tax (${showMoney(price.price.value, price.currency)} without).`,
    );
  const count = (severity: string) => findings.filter((finding) => finding.severity === severity).length;
  lines.push(
    `${many(count('stop'), 'stop')}, ${many(count('doubt'), 'doubt')}, ${many(count('caution'), 'caution')}.`,
  );
  return lines;
}
