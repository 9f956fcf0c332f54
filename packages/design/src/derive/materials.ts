import type { Binding, Catalogue, Fabric, Magnet, Tape, Thread, WrapFilm } from '../document/catalogue.ts';
import type { Choices, Job, Opening } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';

/** The catalogue's entries that one opening's choices name. */
export interface Materials {
  readonly fabric: Fabric;
  /** null where the edge is not bound. */
  readonly binding: Binding | null;
  readonly outside: Magnet;
  readonly inside: Magnet;
  readonly wrapFilm: WrapFilm;
  readonly tape: Tape;
  readonly thread: Thread;
}

/** The job's choices with this opening's own over them. */
export function choicesOf(job: Job, opening: Opening): Choices {
  const own = opening.choices;
  const base = job.choices;
  return {
    fabric: own.fabric ?? base.fabric,
    grain: own.grain ?? base.grain,
    fit: own.fit ?? base.fit,
    finish: own.finish ?? base.finish,
    hold: {
      spacing: own.hold?.spacing ?? base.hold.spacing,
      upTo: own.hold?.upTo ?? base.hold.upTo,
      pocket: own.hold?.pocket ?? base.hold.pocket,
      outside: own.hold?.outside ?? base.hold.outside,
      inside: own.hold?.inside ?? base.hold.inside,
      poleOut: own.hold?.poleOut ?? base.hold.poleOut,
    },
    wrapFilm: own.wrapFilm ?? base.wrapFilm,
    tape: own.tape ?? base.tape,
    thread: own.thread ?? base.thread,
    weather: base.weather,
  };
}

/** Looks the choices up; every id that the catalogue lacks is a `stop`, and then there are no materials. */
export function materialsOf(
  choices: Choices,
  catalogue: Catalogue,
  opening: string,
  find: Find,
): Materials | null {
  const look = <T extends { readonly id: string }>(
    list: readonly T[],
    id: string,
    kind: string,
  ): T | null => {
    const entry = list.find((item) => item.id === id);
    if (entry) return entry;
    find({
      severity: 'stop',
      code: 'ITEM_NOT_IN_CATALOGUE',
      where: { opening, item: id },
      numbers: { kind, id },
    });
    return null;
  };
  const fabric = look(catalogue.fabrics, choices.fabric, 'fabric');
  const bound = choices.finish.kind === 'binding' ? choices.finish.binding : null;
  const binding = bound === null ? null : look(catalogue.bindings, bound, 'binding');
  const outside = look(catalogue.magnets, choices.hold.outside, 'magnet');
  const inside =
    choices.hold.inside === choices.hold.outside
      ? outside
      : look(catalogue.magnets, choices.hold.inside, 'magnet');
  const wrapFilm = look(catalogue.wrapFilms, choices.wrapFilm, 'wrapFilm');
  const tape = look(catalogue.tapes, choices.tape, 'tape');
  const thread = look(catalogue.threads, choices.thread, 'thread');
  if (!fabric || (bound !== null && !binding) || !outside || !inside || !wrapFilm || !tape || !thread)
    return null;
  return { fabric, binding, outside, inside, wrapFilm, tape, thread };
}
