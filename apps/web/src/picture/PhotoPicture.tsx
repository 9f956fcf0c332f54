import { useEffect, useId, useMemo, useState } from 'react';
import { useCurrent } from '../app/useCurrent.ts';
import {
  type Corners,
  finishedPanel,
  inPhoto,
  perspectiveBetween,
  photoCorners,
  type SeenPart,
} from '../contract.ts';
import { CheckField } from '../fields/fields.tsx';
import { useCatalogue, usePlan } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { CornerHandles } from './CornerHandles.tsx';
import { lineOf, pathOf, savePicture } from './pictureFile.ts';

export interface Photo {
  readonly url: string;
  readonly width: number;
  readonly height: number;
  readonly name: string;
}

/** The finished panel in a photo of its window: choose the photo, drag the corners, save the picture. The photo stays here. */
export function PhotoPicture() {
  const w = useWords();
  const { opening } = useCurrent();
  const [photo, setPhoto] = useState<Photo | null>(null);
  const [sentence, setSentence] = useState<string | null>(null);
  const id = useId();
  useEffect(() => () => void (photo && URL.revokeObjectURL(photo.url)), [photo]);
  const take = async (file: File | undefined) => {
    if (!file) return;
    const read = await readPhoto(file);
    setSentence(read ? null : w.picture.unreadable(file.name));
    if (read) setPhoto(read);
  };
  if (!opening) return null;
  return (
    <details className="photo-picture">
      <summary>{w.picture.title}</summary>
      <p className="about">{w.picture.about}</p>
      <div className={`field${sentence ? ' field-wrong' : ''}`}>
        <label htmlFor={id}>{w.picture.choose}</label>
        <span className="field-line">
          <input
            id={id}
            type="file"
            accept="image/jpeg,image/png,image/webp"
            onChange={(event) => void take(event.target.files?.[0])}
          />
        </span>
        {sentence ? (
          <p className="field-sentence" role="alert">
            {sentence}
          </p>
        ) : null}
      </div>
      {photo ? <InPhoto key={photo.url} photo={photo} opening={opening.id} name={opening.name} /> : null}
    </details>
  );
}

/** Null where the browser cannot show it. */
async function readPhoto(file: File): Promise<Photo | null> {
  const url = URL.createObjectURL(file);
  const image = new Image();
  image.src = url;
  try {
    await image.decode();
    return { url, width: image.naturalWidth, height: image.naturalHeight, name: file.name };
  } catch {
    URL.revokeObjectURL(url);
    return null;
  }
}

/** Where the corners begin: some way in from the photo's own, from the bottom left anticlockwise as the photo shows them. */
const firstCorners = ({ width, height }: Photo): Corners =>
  [
    [0.25, 0.75],
    [0.75, 0.75],
    [0.75, 0.25],
    [0.25, 0.25],
  ].map(([x, y]) => ({ x: x! * width, y: y! * height })) as unknown as Corners;

const isPanel = ({ part }: SeenPart): boolean => part !== 'opening';

interface Props {
  readonly photo: Photo;
  readonly opening: string;
  readonly name: string;
}

function InPhoto({ photo, opening, name }: Props) {
  const w = useWords();
  const plan = usePlan((state) => state.plan);
  const fabrics = useCatalogue(({ fabrics: all }) => all);
  const [corners, setCorners] = useState<Corners>(() => firstCorners(photo));
  const [inside, setInside] = useState(false);
  const seen = useMemo(() => {
    const parts = plan && finishedPanel(plan, fabrics, opening);
    const from = plan && photoCorners(plan, opening);
    if (!parts || !from) return 'none' as const;
    const [a, b, c, d] = corners;
    const map = perspectiveBetween(from, inside ? [b, a, d, c] : corners);
    return map.ok ? inPhoto(parts, map.value) : ('dent' as const);
  }, [plan, fabrics, opening, corners, inside]);
  if (seen === 'none') return <p className="empty">{w.panels.none}</p>;
  // The opening's own edge lies over all of it, to be laid on the window's; the saved picture is without it.
  const parts = seen === 'dent' ? [] : [...seen.filter(isPanel), ...seen.filter((one) => !isPanel(one))];
  const line = lineOf(photo.width);
  return (
    <>
      <CheckField label={w.picture.inside} value={inside} set={setInside} />
      <p>{w.picture.drag}</p>
      <div className="photo-sheet">
        <img src={photo.url} alt={w.picture.photoOf(name)} draggable={false} />
        <svg viewBox={`0 0 ${photo.width} ${photo.height}`}>
          <title>{w.picture.panelIn(name)}</title>
          {parts.map((part, index) => (
            <path
              // Parts are told apart by their place in the list.
              key={index}
              d={pathOf(part.rings)}
              fillRule="evenodd"
              fill={part.fill?.colour ?? 'none'}
              fillOpacity={part.fill?.share}
              stroke={part.line?.colour}
              strokeWidth={line.weight}
              strokeDasharray={part.line?.dashed ? line.dashes.join(' ') : undefined}
            />
          ))}
          <CornerHandles corners={corners} width={photo.width} height={photo.height} set={setCorners} />
        </svg>
      </div>
      {seen === 'dent' ? (
        <p className="field-sentence" role="alert">
          {w.picture.dent}
        </p>
      ) : (
        <button
          type="button"
          className="main-button"
          onClick={() => void savePicture(photo, seen.filter(isPanel), w.picture.fileName(name))}
        >
          {w.picture.save}
        </button>
      )}
    </>
  );
}
