import { whenDrawn } from '../job/whenDrawn.ts';

/** Has the browser keep the page itself, and asks it not to throw away what is kept when its disk is full. */
export function keepPage(): void {
  // Browsers offer both only over https or from this machine; while developing, the page is served from memory.
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  whenDrawn(() => {
    navigator.serviceWorker.register('/sw.js').catch(() => {});
    navigator.storage?.persist?.().catch(() => {});
  });
}
