/** The list of all that belongs to the built page, written when it is built. */
const list = '/parts.json';
const quietMs = 3000;

/**
 * Fetches all parts of the page into the browser's own store, one after the other, once the first view stands and nothing
 * else is to be done: a screen that is opened while the server is away is then there all the same.
 */
export const fetchAhead = (): void => {
  const begin = (): void => void setTimeout(() => void fetchAll(), quietMs);
  if (document.readyState === 'complete') begin();
  else addEventListener('load', begin, { once: true });
};

const fetchAll = async (): Promise<void> => {
  try {
    const listed = await fetch(list);
    if (!listed.ok) return;
    const parts = (await listed.json()) as readonly string[];
    for (const part of parts) {
      await idle();
      const response = await fetch(part, { priority: 'low' });
      await response.arrayBuffer();
    }
  } catch {
    // The server went away meanwhile. What is missing is fetched when it is needed.
  }
};

/** Until the page has nothing better to do, two seconds at most. Not every browser tells. */
const idle = (): Promise<void> =>
  new Promise((resolve) => {
    if ('requestIdleCallback' in globalThis)
      requestIdleCallback(() => resolve(), { timeout: 2000 });
    else setTimeout(resolve, 50);
  });
