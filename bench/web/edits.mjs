// Edits in the page and how long each takes to be drawn.

/** In the page: notes when a key went down, when the outline changed, and when that was painted. */
function watch() {
  const times = [];
  let down = null;
  const key = (event) => {
    down = event.timeStamp;
    performance.mark('bench-key');
  };
  const seen = () => {
    if (down === null) return;
    performance.mark('bench-drawn');
    const record = { drawn: performance.now() - down };
    const from = down;
    down = null;
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => {
        record.painted = performance.now() - from;
        times.push(record);
      };
      channel.port2.postMessage(null);
    });
  };
  addEventListener('keydown', key, true);
  const observer = new MutationObserver(seen);
  const what = { subtree: true, attributes: true, attributeFilter: ['d'] };
  observer.observe(document.querySelector('main'), what);
  window.benchTimes = times;
  window.benchEnd = () => {
    removeEventListener('keydown', key, true);
    observer.disconnect();
    return times;
  };
}

/** What is left out at the start: code not yet compiled for speed. */
const WARM = 10;

/** Makes edits and says how long each took to be drawn, and what of the page's thread it took. */
async function watched(page, client, count, begin, edit) {
  await page.evaluate(watch);
  await begin();
  await page.waitForTimeout(800);
  const stop = await trace(client);
  const before = await busyTime(client);
  for (let run = 0; run < count; run++) await edit(run);
  await page.waitForTimeout(300);
  const busy = ((await busyTime(client)) - before) / count;
  const marks = await stop();
  const times = await page.evaluate(() => window.benchEnd());
  return { times: times.slice(WARM), busy, spent: spentOf(marks).slice(WARM) };
}

/** Types the last digit of a decimal anew, over and over: with it and without it the entry is a good one. */
export function keys(page, client, runs, field, start, pairs, pause) {
  const begin = async () => {
    await page.getByLabel(field).first().fill(start);
    await page.keyboard.press('End');
  };
  return watched(page, client, 2 * runs, begin, async (run) => {
    await page.keyboard.press(run % 2 === 0 ? 'Backspace' : pairs[(run >> 1) % pairs.length]);
    await page.waitForTimeout(pause);
  });
}

/** Presses two keys in turn on a slider or a list, over and over: each is a change of the plan and a new drawing. */
export function presses(page, client, runs, field, pair, pause) {
  const begin = () => field.focus();
  return watched(page, client, 2 * runs, begin, async (run) => {
    await page.keyboard.press(pair[run % 2]);
    await page.waitForTimeout(pause);
  });
}

/** Begins to note the page's marks with the processor time its thread had used by then. */
async function trace(client) {
  const events = [];
  const take = ({ value }) => events.push(...value);
  client.on('Tracing.dataCollected', take);
  await client.send('Tracing.start', { transferMode: 'ReportEvents', categories: 'blink.user_timing' });
  return async () => {
    const complete = new Promise((then) => client.once('Tracing.tracingComplete', then));
    await client.send('Tracing.end');
    await complete;
    client.off('Tracing.dataCollected', take);
    return events
      .filter(({ name }) => name === 'bench-key' || name === 'bench-drawn')
      .sort((a, b) => a.ts - b.ts);
  };
}

/** Processor time of the page's thread between each key and its drawing, ms: what a loaded machine does not inflate. */
const spentOf = (marks) =>
  marks.flatMap(({ name, tts }, at) =>
    name === 'bench-drawn' && marks[at - 1]?.name === 'bench-key' ? [(tts - marks[at - 1].tts) / 1000] : [],
  );

/** Time the page's own thread has spent on a processor, ms: what a loaded machine does not inflate. */
async function busyTime(client) {
  const { metrics } = await client.send('Performance.getMetrics');
  return 1000 * metrics.find((one) => one.name === 'TaskDuration').value;
}

/** Edits one reading over and over in the page itself, a frame for each; says what memory is held on the way. */
export async function memoryHeld(page, client, edits) {
  const used = async () => {
    await client.send('HeapProfiler.collectGarbage');
    return (await client.send('Runtime.getHeapUsage')).usedSize / 1e6;
  };
  const found = [[0, await used()]];
  for (const until of edits) {
    const count = until - found.at(-1)[0];
    await page.evaluate(typeFor, { label: 'Bottom side', count });
    await page.waitForTimeout(1500);
    found.push([until, await used()]);
  }
  return found;
}

async function typeFor({ label, count }) {
  const field = [...document.querySelectorAll('label')].find((one) =>
    one.textContent.includes(label),
  ).control;
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
  for (let edit = 0; edit < count; edit++) {
    set.call(field, `${36 + (edit % 16) / 16}`);
    field.dispatchEvent(new Event('input', { bubbles: true }));
    if (edit % 10 === 9) field.dispatchEvent(new FocusEvent('focusout', { bubbles: true }));
    await new Promise((then) => requestAnimationFrame(then));
  }
}
