import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** The width of an element in CSS dots, kept up to date. */
export function useWidth<E extends HTMLElement>(
  guess: number,
): { readonly ref: RefObject<E | null>; readonly width: number } {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(guess);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    setWidth(Math.max(1, element.clientWidth));
    const observer = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.max(1, entry.contentRect.width));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}
