import { purchase } from '@panewright/costing';
import { length } from '@panewright/geometry';
import { money } from '@panewright/quantity';
import type { Catalogue, Operation } from '../document/catalogue.ts';
import { type Figure, figure, type OriginCode } from '../plan/figure.ts';
import type { CuttingPlan, LabourLine, TakeOffLine, TakeOffPlan } from '../plan/plan.ts';
import {
  fastenerNeeds,
  type Made,
  magnetNeeds,
  type Need,
  type Needs,
  need,
  seamLength,
  steelNeeds,
  tapeNeeds,
  threadLength,
  wrapCuts,
} from './needs.ts';

/**
 * All that the job uses and buys, and the minutes it takes.
 *
 * @source sources.md#job-costing
 */
export function takeOffPlan(made: readonly Made[], cutting: CuttingPlan, catalogue: Catalogue): TakeOffPlan {
  const { habits } = catalogue;
  const threads: Needs = new Map();
  for (const one of made) {
    const seam = seamLength(one, habits.backTack) * one.pattern.members.length;
    need(
      threads,
      one.materials.thread.id,
      threadLength(seam, habits.threadRatio, habits.threadWaste),
      `panels.${one.pattern.pattern}.stitch`,
    );
  }
  const materials = [
    ...fabricLines(cutting, catalogue),
    ...lines('binding', catalogue.bindings, bindingNeeds(made), 'bindingLength', 'mm', stockOf(cutting)),
    ...lines('magnet', catalogue.magnets, magnetNeeds(made), 'count', 'count'),
    ...lines('steel', catalogue.steelStrips ?? [], steelNeeds(made), 'stripLength', 'mm'),
    ...fastenerLines(made, catalogue),
    ...lines('wrapFilm', catalogue.wrapFilms, filmNeeds(made, catalogue), 'wrapSize', 'mm'),
    ...lines('tape', catalogue.tapes, tapeNeeds(made), 'tapeLength', 'mm'),
    ...lines('thread', catalogue.threads, threads, 'threadLength', 'mm'),
  ];
  const labour = labourLines(made, cutting, catalogue.operations);
  const minutes = labour.reduce((sum, line) => sum + line.minutes.value, 0);
  return {
    materials,
    labour,
    minutes: figure(minutes, 'min', 'estimate', 'standardMinutes', ['catalogue.operations']),
  };
}

/** Strips of hook and loop by length, all others by the set. */
function fastenerLines(made: readonly Made[], { fasteners = [] }: Catalogue): TakeOffLine[] {
  const needs = fastenerNeeds(made);
  const strips = fasteners.filter(({ kind }) => kind === 'hookAndLoop');
  const sets = fasteners.filter(({ kind }) => kind !== 'hookAndLoop');
  return [
    ...lines('fastener', strips, needs, 'stripLength', 'mm'),
    ...lines('fastener', sets, needs, 'count', 'count'),
  ];
}

interface Bought {
  readonly id: string;
  readonly name: string;
  readonly supplier: string;
  readonly pack: { readonly quantity: number; readonly price: number };
}

/** `stocks`: whole rolls that a strip cutting plan needs, where joins are not allowed and a roll's rest may be too short. */
function lines(
  kind: TakeOffLine['kind'],
  list: readonly Bought[],
  needs: Needs,
  by: OriginCode,
  unit: 'mm' | 'count',
  stocks: ReadonlyMap<string, number> = new Map(),
): TakeOffLine[] {
  return list.flatMap((item) => {
    const entry = needs.get(item.id);
    return entry ? [line(kind, item, entry, by, unit, stocks.get(item.id) ?? 0)] : [];
  });
}

function line(
  kind: TakeOffLine['kind'],
  item: Bought,
  entry: Need,
  by: OriginCode,
  unit: 'mm' | 'count',
  leastPacks: number,
): TakeOffLine {
  const bought = purchase(entry.amount, { quantity: item.pack.quantity, price: money(item.pack.price) });
  if (!bought.ok) throw new Error(`take-off of ${item.id}: ${bought.refusal.code}`);
  const packs = Math.max(bought.value.packs, leastPacks);
  const price = [`catalogue.${kind}.${item.id}.pack`];
  const cost = (value: number): Figure => figure(value, 'money', 'computed', 'wholePacks', price);
  const used = cost(bought.value.costUsed);
  return {
    item: item.id,
    name: item.name,
    supplier: item.supplier,
    kind,
    used: figure(entry.amount, unit, 'computed', by, entry.inputs),
    packs: figure(packs, 'count', 'computed', 'wholePacks', price),
    pack: item.pack,
    left: packs * item.pack.quantity - entry.amount,
    costUsed: used,
    costBought: cost(packs * item.pack.price),
    costCharged: used,
  };
}

function bindingNeeds(made: readonly Made[]): Needs {
  const needs: Needs = new Map();
  for (const { pattern, panel } of made)
    if (panel.edging.kind === 'binding')
      need(
        needs,
        panel.edging.binding,
        panel.edging.cutLength.value * pattern.members.length,
        `panels.${pattern.pattern}.edging`,
      );
  return needs;
}

function stockOf(cutting: CuttingPlan): ReadonlyMap<string, number> {
  return new Map(cutting.strips.map((strip) => [strip.material, strip.stocks.length]));
}

/** Film is bought by length; strips are cut across its width and each strip gives whole wraps. */
function filmNeeds(made: readonly Made[], catalogue: Catalogue): Needs {
  const needs: Needs = new Map();
  for (const cut of wrapCuts(made)) {
    const film = catalogue.wrapFilms.find(({ id }) => id === cut.film)!;
    const perStrip = Math.max(1, Math.floor((film.width + 1e-9) / cut.cutLength));
    need(needs, cut.film, Math.ceil(cut.count / perStrip) * cut.stripWidth, `magnets.${cut.magnet}`);
  }
  return needs;
}

function fabricLines(cutting: CuttingPlan, catalogue: Catalogue): TakeOffLine[] {
  return cutting.lays.flatMap((lay) => {
    // An offcut was paid for by the job that left it.
    if (lay.offcut) return [];
    const fabric = catalogue.fabrics.find(({ id }) => id === lay.fabric)!;
    const roll = fabric.rolls.find(({ width }) => width === lay.rollWidth)!;
    const bought: Bought = {
      id: fabric.id,
      name: fabric.name,
      supplier: fabric.supplier,
      pack: { quantity: roll.step, price: roll.price },
    };
    const one = line(
      'fabric',
      bought,
      { amount: lay.length.value, inputs: [`cutting.lays.${lay.lay}`] },
      'lay',
      'mm',
      0,
    );
    return [{ ...one, costCharged: one.costBought }];
  });
}

function labourLines(
  made: readonly Made[],
  cutting: CuttingPlan,
  operations: readonly Operation[],
): LabourLine[] {
  const times = driverCounts(made, cutting);
  return operations.flatMap((operation) => {
    const count = times[operation.per];
    if (count === 0) return [];
    return [
      {
        operation: operation.id,
        name: operation.name,
        times: count,
        minutes: figure(count * operation.minutes, 'min', 'estimate', 'standardMinutes', [
          `catalogue.operations.${operation.id}`,
        ]),
      },
    ];
  });
}

function driverCounts(made: readonly Made[], cutting: CuttingPlan): Record<Operation['per'], number> {
  const sum = (value: (one: Made) => number) => made.reduce((total, one) => total + value(one), 0);
  const panels = sum(({ pattern }) => pattern.members.length);
  const pointsBy = (...kinds: readonly string[]) =>
    sum(({ pattern, materials, hold }) =>
      kinds.includes(materials.holder.kind) ? pattern.members.length * hold.points.length : 0,
    );
  const metres = (mm: number) => mm / 1000;
  return {
    job: panels > 0 ? 1 : 0,
    opening: panels,
    pattern: made.length,
    panel: panels,
    panelMetre: metres(sum(({ pattern, panel }) => pattern.members.length * length(panel.finished))),
    cutMetre: metres(cutting.pieces.reduce((total, piece) => total + piece.count * length(piece.outline), 0)),
    holdPoint: pointsBy('magnets'),
    pocket: pointsBy('magnets', 'steel'),
    stripPoint: pointsBy('steel'),
    fastenerPoint: pointsBy('fastener'),
    lay: cutting.lays.length,
  };
}
