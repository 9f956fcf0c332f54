import type {
  Binding,
  Catalogue,
  Choices,
  Fabric,
  Fastener,
  Magnet,
  SteelStrip,
  Tape,
  Thread,
  WrapFilm,
} from '@panewright/design';

/** The catalogue's entries a set of choices names. An entry that is gone is left undefined: the plan says so. */
export interface Named {
  readonly fabric: Fabric | undefined;
  readonly binding: Binding | undefined;
  readonly outside: Magnet | undefined;
  readonly inside: Magnet | undefined;
  /** A steel strip in place of the inside magnets, or a fastener in place of both. */
  readonly strip: SteelStrip | undefined;
  readonly fastener: Fastener | undefined;
  readonly wrapFilm: WrapFilm | undefined;
  readonly tape: Tape | undefined;
  readonly thread: Thread | undefined;
}

export function materialsNamed(choices: Choices, catalogue: Catalogue): Named {
  const find = <T extends { readonly id: string }>(list: readonly T[], id: string | undefined) =>
    list.find((one) => one.id === id);
  const { finish, hold } = choices;
  return {
    fabric: find(catalogue.fabrics, choices.fabric),
    binding: find(catalogue.bindings, finish.kind === 'binding' ? finish.binding : undefined),
    outside: find(catalogue.magnets, hold.outside),
    inside: find(catalogue.magnets, hold.inside),
    strip: find(catalogue.steelStrips ?? [], hold.by?.kind === 'steel' ? hold.by.strip : undefined),
    fastener: find(catalogue.fasteners ?? [], hold.by?.kind === 'fastener' ? hold.by.fastener : undefined),
    wrapFilm: find(catalogue.wrapFilms, choices.wrapFilm),
    tape: find(catalogue.tapes, choices.tape),
    thread: find(catalogue.threads, choices.thread),
  };
}
