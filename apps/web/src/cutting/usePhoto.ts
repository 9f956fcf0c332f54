import { type RefObject, useEffect, useState } from 'react';
import { useWork } from '../job/work.ts';
import { keepPhotoCopy, photoCopy } from '../offline/keptPhotos.ts';
import { Refused, type Server } from '../server/server.ts';
import { bytesOf } from '../sheets/saveFile.ts';
import { useWords } from '../text/useWords.ts';

export interface ShownPhoto {
  /** Null until it is there. */
  readonly url: string | null;
  /** Why it is not there. */
  readonly sentence: string | null;
}

/** A photo from this browser's copies or else from the server; fetched once what it is shown in comes into view. */
export function usePhoto(id: string, shownIn: RefObject<Element | null>): ShownPhoto {
  const w = useWords();
  const { server } = useWork();
  const [photo, setPhoto] = useState<ShownPhoto>({ url: null, sentence: null });
  useEffect(() => {
    let url: string | null = null;
    let gone = false;
    const fetchIt = async () => {
      try {
        const blob = await photoOf(id, server);
        if (gone) return;
        url = URL.createObjectURL(blob);
        setPhoto({ url, sentence: null });
      } catch (error) {
        const sentence = error instanceof Refused ? w.offcut.photo.gone : w.offcut.photo.notHere;
        if (!gone) setPhoto({ url: null, sentence });
      }
    };
    const seen = new IntersectionObserver((entries) => {
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
      seen.disconnect();
      void fetchIt();
    });
    setPhoto({ url: null, sentence: null });
    seen.observe(shownIn.current!);
    return () => {
      gone = true;
      seen.disconnect();
      if (url) URL.revokeObjectURL(url);
    };
  }, [id, server, w, shownIn]);
  return photo;
}

async function photoOf(id: string, server: Server): Promise<Blob> {
  const copy = await photoCopy(id);
  if (copy) return copy;
  const { mediaType, base64 } = await server.openPhoto(id);
  const photo = new Blob([bytesOf({ path: id, mediaType, base64 })], { type: mediaType });
  await keepPhotoCopy(id, photo);
  return photo;
}
