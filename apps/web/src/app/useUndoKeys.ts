import { useEffect } from 'react';
import type { AnyDocument } from '../fields/useEntry.ts';

/** Ctrl or Cmd with Z takes back, with Shift (or Ctrl+Y) does again, wherever the cursor is. */
export function useUndoKeys(document: AnyDocument): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const redo = (key === 'z' && event.shiftKey) || (key === 'y' && !event.shiftKey);
      if (!redo && key !== 'z') return;
      event.preventDefault();
      if (redo) document.redo();
      else document.undo();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [document]);
}
