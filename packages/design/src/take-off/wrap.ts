import type { Magnet, Tape, WrapFilm } from '../document/catalogue.ts';

/** Sizes for covering one inside magnet, mm. */
export interface WrapSize {
  /** Across the strip of film, and the finished wrap's width. */
  readonly stripWidth: number;
  /** Cut from the strip; folded in two over the magnet. */
  readonly cutLength: number;
  readonly finishedWidth: number;
  readonly finishedLength: number;
}

/** Longer and shorter side of the magnet's face, mm. */
export function faceOf(magnet: Pick<Magnet, 'shape'>): { readonly long: number; readonly short: number } {
  const { shape } = magnet;
  if (shape.kind === 'disc') return { long: shape.diameter, short: shape.diameter };
  return { long: Math.max(shape.width, shape.height), short: Math.min(shape.width, shape.height) };
}

/**
 * Film folded once over a magnet, with the film's margin left all round and half the magnet's thickness taken up by each side.
 *
 * @source common practice, no source (a margin of about 1/4 in)
 */
export function wrapSize(magnet: Magnet, film: WrapFilm): WrapSize {
  const { long, short } = faceOf(magnet);
  const extra = magnet.shape.thickness + 2 * film.margin;
  return {
    stripWidth: short + extra,
    cutLength: 2 * (long + extra),
    finishedWidth: short + extra,
    finishedLength: long + extra,
  };
}

/**
 * Pieces of mounting tape behind one wrapped magnet: as long as the face, side by side until its width is covered.
 *
 * @source common practice, no source
 */
export function tapePieces(
  magnet: Pick<Magnet, 'shape'>,
  tape: Tape,
): { readonly count: number; readonly length: number } {
  const { long, short } = faceOf(magnet);
  return { count: Math.max(1, Math.ceil((short - 1e-9) / tape.width)), length: long };
}
