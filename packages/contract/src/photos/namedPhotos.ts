import type { Catalogue } from '@panewright/design';

/** Ids of the photos that a catalogue names: those of its offcuts. */
export const namedPhotos = ({ offcuts = [] }: Pick<Catalogue, 'offcuts'>): readonly string[] =>
  offcuts.flatMap(({ photo }) => (photo ? [photo.id] : []));
