import { useId } from 'react';
import { useStore } from 'zustand';
import { useWords } from '../text/useWords.ts';
import type { PhotoWork } from './photoWork.ts';

/** The photos chosen or taken, to be left out again one by one. */
export function PhotoFiles({ work }: { readonly work: PhotoWork }) {
  const w = useWords();
  const id = useId();
  const photos = useStore(work.store, (state) => state.photos);
  return (
    <section>
      <h3>{w.photo.files.title}</h3>
      <p className="about">{w.photo.files.about}</p>
      <p>
        <label htmlFor={id}>{w.photo.files.choose}</label>{' '}
        <input
          id={id}
          type="file"
          accept="image/jpeg,image/*"
          multiple
          onChange={(event) => {
            const { files } = event.target;
            const chosen = files ? [...files] : [];
            event.target.value = '';
            if (chosen.length > 0) void work.choose(chosen);
          }}
        />
      </p>
      {photos.length === 0 ? (
        <p>{w.photo.files.none}</p>
      ) : (
        <ul className="photo-list" aria-label={w.photo.files.chosen(photos.length)}>
          {photos.map(({ name, url }, k) => (
            <li key={url}>
              <img src={url} alt="" />
              <span>{name}</span>
              <button type="button" aria-label={w.photo.files.remove(name)} onClick={() => work.leaveOut(k)}>
                {w.app.remove}
              </button>
            </li>
          ))}
        </ul>
      )}
      <p className="about">{w.photo.files.notKept}</p>
    </section>
  );
}
