/** This page's name among all pages of this browser, for as long as it is open. */
export const writer = crypto.getRandomValues(new Uint32Array(2)).join('-');

const lockOf = (name: string) => `panewright.page.${name}`;

/** Held until the page is gone, however it goes: so others know whose edits have nobody left to save them. */
if (typeof navigator !== 'undefined' && navigator.locks)
  void navigator.locks.request(lockOf(writer), () => new Promise<never>(() => {}));

/** The other pages that are open now; where a browser has no locks, none is known of. */
export async function otherPages(): Promise<ReadonlySet<string>> {
  if (!navigator.locks) return new Set();
  const prefix = lockOf('');
  const { held = [] } = await navigator.locks.query();
  const names = held.map(({ name = '' }) => name).filter((name) => name.startsWith(prefix));
  return new Set(names.map((name) => name.slice(prefix.length)).filter((name) => name !== writer));
}
