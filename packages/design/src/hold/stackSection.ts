import type { Fabric, Magnet, Tape, WrapFilm } from '../document/catalogue.ts';
import type { Glazing } from '../document/job.ts';

/** What a section is cut through. */
export interface SectionInput {
  readonly fabric: Pick<Fabric, 'thickness'>;
  readonly wrapFilm: Pick<WrapFilm, 'thickness'>;
  readonly tape: Pick<Tape, 'thickness'>;
  readonly outside: Pick<Magnet, 'shape'>;
  /** A magnet, or a piece of strip. */
  readonly inside: Pick<Magnet, 'shape'>;
  readonly steel?: boolean;
  readonly glazing: Glazing;
  /** From the panel's edge to the middle of the magnet, and to the pocket's inner end, mm. */
  readonly depth: number;
  readonly pocketDepth: number;
}

export type SectionPlace = 'corner' | 'edge';

export interface SectionLayer {
  readonly kind:
    | 'pocketCloth'
    | 'outsideMagnet'
    | 'fabric'
    | 'standOff'
    | Glazing['layers'][number]['kind']
    | 'tape'
    | 'wrapFilm'
    | 'insideMagnet'
    | 'steelStrip';
  readonly thickness: number;
  /** From the outermost face inwards, mm. */
  readonly from: number;
  readonly to: number;
  /** Across the section, mm; null: as wide as the drawing. */
  readonly width: number | null;
  /** True for what lies between the two magnets. */
  readonly between: boolean;
}

/** A section at one hold point, to scale, from the outside in. */
export interface StackSection {
  readonly place: SectionPlace;
  readonly layers: readonly SectionLayer[];
  /** Between the magnets, mm: as drawn, and the least and most it may be (an estimate where the panel rides on a gasket). */
  readonly gap: number;
  readonly gapLow: number;
  readonly gapHigh: number;
  readonly total: number;
  /** The glass is curved: what is drawn flat is not, and magnets touch by their rims or middles. */
  readonly curved: boolean;
}

/**
 * How far the panel stands off the glass over a magnet, where it rides on a gasket at its edge. At mid-edge the cloth falls
 * from the gasket to the glass by the pocket's inner end, in a straight line; at a corner two gaskets carry it, and cloth
 * does not fall in two directions at once: it stays up.
 *
 * @param standOff height of the gasket over the glass, mm
 * @param depth from the panel's edge to the magnet's middle, mm
 * @returns mm; the low end is cloth drawn down flat, the high end cloth that does not fall at all
 * @accuracy an estimate: lay a straightedge and measure one
 * @source sources.md#gasket-stand-off
 */
export function standOffAt(
  place: SectionPlace,
  standOff: number,
  depth: number,
  pocketDepth: number,
): { readonly value: number; readonly low: number; readonly high: number } {
  const fallen = standOff * Math.max(0, 1 - depth / pocketDepth);
  return place === 'corner'
    ? { value: standOff, low: fallen, high: standOff }
    : { value: fallen, low: 0, high: standOff };
}

/**
 * The stack of layers at a hold point as a section: each with its place, its width, and whether it lies between the magnets.
 *
 * @returns layers from the outside in; the sum of those between is the gap
 * @range flat glass; curved glass is drawn flat and flagged
 * @source sum of thicknesses; the stand-off as `standOffAt`
 */
export function stackSection(input: SectionInput, place: SectionPlace): StackSection {
  const { glazing, fabric, wrapFilm, tape } = input;
  const standOff = standOffAt(place, glazing.standOff, input.depth, input.pocketDepth);
  const [outer, inner] = [spanOf(input.outside), spanOf(input.inside)];
  const parts: Omit<SectionLayer, 'from' | 'to'>[] = [
    { kind: 'pocketCloth', thickness: fabric.thickness, width: null, between: false },
    { kind: 'outsideMagnet', thickness: input.outside.shape.thickness, width: outer, between: false },
    { kind: 'fabric', thickness: fabric.thickness, width: null, between: true },
    ...(standOff.value > 0
      ? [{ kind: 'standOff' as const, thickness: standOff.value, width: null, between: true }]
      : []),
    ...glazing.layers.map(({ kind, thickness }) => ({ kind, thickness, width: null, between: true })),
    { kind: 'tape', thickness: tape.thickness, width: inner, between: true },
    ...(wrapFilm.thickness > 0
      ? [{ kind: 'wrapFilm' as const, thickness: wrapFilm.thickness, width: inner, between: true }]
      : []),
    {
      kind: input.steel ? 'steelStrip' : 'insideMagnet',
      thickness: input.inside.shape.thickness,
      width: inner,
      between: false,
    },
  ];
  let at = 0;
  const layers = parts.map((part): SectionLayer => {
    const from = at;
    at += part.thickness;
    return { ...part, from, to: at };
  });
  const gap = layers.reduce((sum, layer) => sum + (layer.between ? layer.thickness : 0), 0);
  return {
    place,
    layers,
    gap,
    gapLow: gap - standOff.value + standOff.low,
    gapHigh: gap - standOff.value + standOff.high,
    total: at,
    curved: glazing.curved,
  };
}

/** Across a magnet as a section shows it: along the edge. */
const spanOf = ({ shape }: Pick<Magnet, 'shape'>): number =>
  shape.kind === 'disc' ? shape.diameter : shape.width;
