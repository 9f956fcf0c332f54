import { useRef, useState } from 'react';
import { newId } from '../app/newId.ts';
import { sentenceOf } from '../app/useAsk.ts';
import { base64, type Offcut } from '../contract.ts';
import { useWork } from '../job/work.ts';
import { keepPhotoCopy } from '../offline/keptPhotos.ts';
import { useWords } from '../text/useWords.ts';
import { smallPhoto } from './smallPhoto.ts';

interface Props {
  readonly offcut: Offcut;
  readonly set: (photo: Offcut['photo']) => Promise<void>;
}

/** A photo for an offcut, from a file or the camera; another one; none. */
export function PhotoButtons({ offcut: { name, photo }, set }: Props) {
  const w = useWords();
  const { server } = useWork();
  const input = useRef<HTMLInputElement>(null);
  const [making, setMaking] = useState(false);
  const [sentence, setSentence] = useState<string | null>(null);
  const keep = async (file: File): Promise<string | null> => {
    const small = await smallPhoto(file);
    if (!small) return w.offcut.photo.unreadable(file.name);
    try {
      const id = newId('photo');
      const { width, height } = await server.keepPhoto(id, base64(new Uint8Array(await small.arrayBuffer())));
      await keepPhotoCopy(id, small);
      await set({ id, width, height });
      return null;
    } catch (error) {
      return sentenceOf(error);
    }
  };
  const take = async (file: File | undefined) => {
    if (!file) return;
    setMaking(true);
    setSentence(w.offcut.photo.making);
    setSentence(await keep(file));
    setMaking(false);
  };
  const choose = photo ? w.offcut.photo.replace : w.offcut.photo.add;
  return (
    <>
      <input
        ref={input}
        hidden
        type="file"
        accept="image/jpeg,image/png,image/webp"
        aria-label={w.offcut.of(choose, name)}
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          void take(file);
          event.target.value = '';
        }}
      />
      <button
        type="button"
        aria-disabled={making}
        aria-label={w.offcut.of(choose, name)}
        onClick={() => making || input.current?.click()}
      >
        {choose}
      </button>
      {photo ? (
        <button
          type="button"
          aria-label={w.offcut.of(w.offcut.photo.remove, name)}
          onClick={() => void set(undefined)}
        >
          {w.offcut.photo.remove}
        </button>
      ) : null}
      <span aria-live="polite" className={`photo-said ${making ? 'about' : 'field-sentence'}`}>
        {sentence}
      </span>
    </>
  );
}
