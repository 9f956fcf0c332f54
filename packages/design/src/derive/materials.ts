import type {
  Binding,
  Catalogue,
  Fabric,
  Fastener,
  Magnet,
  SteelStrip,
  Tape,
  Thread,
  WrapFilm,
} from '../document/catalogue.ts';
import type { Choices, HoldBy, Job, Opening } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';

/** What stands at each hold point. */
export type Holder =
  | { readonly kind: 'magnets' }
  /** The outside magnet draws to a piece of this strip behind the glass. */
  | { readonly kind: 'steel'; readonly strip: SteelStrip }
  | { readonly kind: 'fastener'; readonly fastener: Fastener };

/** The catalogue's entries that one opening's choices name. */
export interface Materials {
  readonly fabric: Fabric;
  /** null where the edge is not bound. */
  readonly binding: Binding | null;
  readonly holder: Holder;
  /** Used where the holder has them: both by a pair, the outside one with steel. */
  readonly outside: Magnet;
  readonly inside: Magnet;
  readonly wrapFilm: WrapFilm;
  readonly tape: Tape;
  readonly thread: Thread;
}

/**
 * The job's choices with this opening's own over them. A fastener has its own spacing and its own allowance, which stand
 * unless the opening itself says otherwise.
 */
export function choicesOf(job: Job, opening: Opening, catalogue: Catalogue): Choices {
  const own = opening.choices;
  const base = job.choices;
  const by = own.hold?.by ?? base.hold.by;
  const fastener =
    by?.kind === 'fastener' ? catalogue.fasteners?.find(({ id }) => id === by.fastener) : undefined;
  const poles = own.hold?.poles ?? base.hold.poles;
  const points = own.hold?.points ?? base.hold.points;
  const fit = fastener ? { all: fastener.beyond, edges: base.fit.edges } : base.fit;
  return {
    fabric: own.fabric ?? base.fabric,
    grain: own.grain ?? base.grain,
    fit: own.fit ?? fit,
    finish: own.finish ?? base.finish,
    hold: {
      spacing: own.hold?.spacing ?? fastener?.spacing ?? base.hold.spacing,
      upTo: own.hold?.upTo ?? fastener?.spacing ?? base.hold.upTo,
      pocket: own.hold?.pocket ?? base.hold.pocket,
      outside: own.hold?.outside ?? base.hold.outside,
      inside: own.hold?.inside ?? base.hold.inside,
      poleOut: own.hold?.poleOut ?? base.hold.poleOut,
      ...(by === undefined ? {} : { by }),
      ...(poles === undefined ? {} : { poles }),
      ...(points === undefined ? {} : { points }),
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
  const holder = holderOf(choices.hold.by, catalogue, look);
  const wrapFilm = look(catalogue.wrapFilms, choices.wrapFilm, 'wrapFilm');
  const tape = look(catalogue.tapes, choices.tape, 'tape');
  const thread = look(catalogue.threads, choices.thread, 'thread');
  if (
    !fabric ||
    (bound !== null && !binding) ||
    !holder ||
    !outside ||
    !inside ||
    !wrapFilm ||
    !tape ||
    !thread
  )
    return null;
  return { fabric, binding, holder, outside, inside, wrapFilm, tape, thread };
}

type Look = <T extends { readonly id: string }>(list: readonly T[], id: string, kind: string) => T | null;

/** Always the same object, so that what hangs on it is not worked out again. */
const MAGNETS: Holder = { kind: 'magnets' };

function holderOf(by: HoldBy | undefined, catalogue: Catalogue, look: Look): Holder | null {
  if (by?.kind === 'steel') {
    const strip = look(catalogue.steelStrips ?? [], by.strip, 'steelStrip');
    return strip && { kind: 'steel', strip };
  }
  if (by?.kind === 'fastener') {
    const fastener = look(catalogue.fasteners ?? [], by.fastener, 'fastener');
    return fastener && { kind: 'fastener', fastener };
  }
  return MAGNETS;
}

/** Two holders that hold alike. */
export const sameHolder = (a: Holder, b: Holder): boolean =>
  a.kind === b.kind &&
  (a.kind !== 'steel' || b.kind !== 'steel' || a.strip === b.strip) &&
  (a.kind !== 'fastener' || b.kind !== 'fastener' || a.fastener === b.fastener);
