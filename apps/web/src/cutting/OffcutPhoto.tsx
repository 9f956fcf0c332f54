import { useEffect, useRef, useState } from 'react';
import type { Offcut } from '../contract.ts';
import { useWords } from '../text/useWords.ts';
import { usePhoto } from './usePhoto.ts';

interface Props {
  readonly photo: NonNullable<Offcut['photo']>;
  readonly name: string;
}

/** The photo of an offcut, small; pressed, it is shown large. */
export function OffcutPhoto({ photo, name }: Props) {
  const w = useWords();
  const frame = useRef<HTMLDivElement>(null);
  const [large, setLarge] = useState(false);
  const { url, sentence } = usePhoto(photo.id, frame);
  return (
    <div ref={frame} className="offcut-photo">
      {url ? (
        <button
          type="button"
          className="offcut-thumb"
          aria-label={w.offcut.of(w.offcut.photo.look, name)}
          onClick={() => setLarge(true)}
        >
          <img src={url} alt="" />
        </button>
      ) : (
        <p className="about" role="status">
          {sentence ?? w.offcut.photo.waits}
        </p>
      )}
      {large && url ? <Large url={url} photo={photo} name={name} close={() => setLarge(false)} /> : null}
    </div>
  );
}

interface LargeProps extends Props {
  readonly url: string;
  readonly close: () => void;
}

function Large({ url, photo, name, close }: LargeProps) {
  const w = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current!.showModal(), []);
  const alt = w.offcut.photo.of(name);
  return (
    <dialog ref={dialog} className="sheet-look photo-look" aria-label={alt} onClose={close}>
      <div className="buttons">
        <button type="button" onClick={() => dialog.current?.close()}>
          {w.offcut.photo.close}
        </button>
      </div>
      <img src={url} width={photo.width} height={photo.height} alt={alt} />
    </dialog>
  );
}
