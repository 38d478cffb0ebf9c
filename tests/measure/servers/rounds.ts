import { type Open, pause, type Server, Session } from './session.js';
import type { Subject } from './subjects.js';

/** What one run of a server took; ms, and MB of memory. */
export interface Round {
  readonly start: number;
  readonly open: number;
  readonly keys: readonly number[];
  /** Processor time of a key with all that follows from it. */
  readonly processor: number;
  readonly burst: number;
  readonly hover: readonly number[];
  /** Hover asked for at once after a key. */
  readonly hoverAfter: readonly number[];
  readonly completion: readonly number[];
  readonly memory: number;
}

const KEYS = 12;
const LOOKS = 10;
const BURST = 20;
const BETWEEN_KEYS = 40;

/** Opens the file, types letters that break a name and takes them out again, and looks around. */
export async function round({ server, root, file, type, hover, complete }: Subject): Promise<Round> {
  const [session, start] = await timed(() => Session.start(server, root));
  try {
    const [{ open, found }, opened] = await timed(() => session.open(root, file, 1));
    await pause(600);
    const places = spreadOver(open, type, KEYS).map(([, end]) => end);
    // One that does not count: the first key warms up what runs for the first time.
    await key(session, open, places[0] ?? 0, found);
    const before = session.processor;
    const keys: number[] = [];
    for (const place of places) keys.push(...(await key(session, open, place, found)));
    await pause(200);
    const processor = (session.processor - before) / keys.length;
    const burst = await burstAt(session, open, places[KEYS / 2] ?? 0, found);
    const at = (offset: number) => ({ textDocument: { uri: open.uri }, position: open.position(offset) });
    const asked = async (method: string, offset: number, more: object = {}) => {
      const [answer, took] = await timed(() => session.request(method, { ...at(offset), ...more }));
      if (answer === null || answer === undefined) throw new Error(`${server.name}: no answer to ${method}`);
      return took;
    };
    const hovers: number[] = [];
    for (const [from] of hover ? spreadOver(open, hover, LOOKS) : [])
      hovers.push(await asked('textDocument/hover', from + 1));
    const completions: number[] = [];
    const context = { context: { triggerKind: 1 } };
    for (const [, end] of spreadOver(open, complete, LOOKS))
      completions.push(await asked('textDocument/completion', end, context));
    const after: number[] = [];
    for (const [from] of hover ? spreadOver(open, hover, LOOKS) : []) {
      const place = places[0] ?? 0;
      const told = session.told(open, (count) => count > found);
      await session.change(open, place, place, 'z');
      after.push(await asked('textDocument/hover', from + 1 + (from >= place ? 1 : 0)));
      await told;
      const mended = session.told(open, (count) => count === found);
      await session.change(open, place, place + 1, '');
      await mended;
    }
    return {
      start,
      open: opened,
      keys,
      processor,
      burst,
      hover: hovers,
      hoverAfter: after,
      completion: completions,
      memory: session.memory,
    };
  } finally {
    await session.stop();
  }
}

/** A letter typed and taken out again: how long until each is told. */
async function key(session: Session, open: Open, place: number, found: number): Promise<readonly [number, number]> {
  const typed = await untilTold(
    session,
    open,
    (count) => count > found,
    () => session.change(open, place, place, 'z'),
  );
  await pause(30);
  const mended = await untilTold(
    session,
    open,
    (count) => count === found,
    () => session.change(open, place, place + 1, ''),
  );
  await pause(30);
  return [typed, mended];
}

/** Fast typing: from the last key until what it makes is told. */
async function burstAt(session: Session, open: Open, place: number, found: number): Promise<number> {
  for (let i = 0; i < BURST - 1; i++) {
    await session.change(open, place + i, place + i, ' ');
    await pause(BETWEEN_KEYS);
  }
  const took = await untilTold(
    session,
    open,
    (count) => count > found,
    () => session.change(open, place, place, 'z'),
  );
  await untilTold(
    session,
    open,
    (count) => count === found,
    () => session.change(open, place, place + BURST, ''),
  );
  return took;
}

/** A shop that many cabinets import is edited: until one of the open cabinets' files says what that did to it. */
export async function hubRound(server: Server, root: string): Promise<readonly number[]> {
  const session = await Session.start(server, root);
  try {
    const { open: cabinets, found } = await session.open(root, 'cabinets3.joinery', 1);
    const { open: shop } = await session.open(root, 'shop.joinery', 0);
    await pause(3000);
    const place = shop.text.indexOf('pattern deep5') + 'pattern deep5'.length;
    const took: number[] = [];
    for (let i = 0; i < 4; i++) {
      const told = (wanted: (count: number) => boolean, edit: () => Promise<void>) =>
        untilTold(session, cabinets, wanted, edit);
      took.push(
        await told(
          (count) => count > found,
          () => session.change(shop, place, place, 'z'),
        ),
      );
      await pause(2000);
      took.push(
        await told(
          (count) => count === found,
          () => session.change(shop, place, place + 1, ''),
        ),
      );
      await pause(2000);
    }
    // The first pair warms up.
    return took.slice(2);
  } finally {
    await session.stop();
  }
}

async function untilTold(
  session: Session,
  open: Open,
  wanted: (count: number) => boolean,
  edit: () => Promise<void>,
): Promise<number> {
  const started = performance.now();
  const told = session.told(open, wanted);
  await edit();
  await told;
  return performance.now() - started;
}

/** So many of the places that a pattern finds, evenly through the text: where each starts and ends. */
function spreadOver(open: Open, pattern: RegExp, count: number): readonly (readonly [number, number])[] {
  const all = [...open.text.matchAll(pattern)].map((match) => [match.index, match.index + match[0].length] as const);
  if (all.length === 0) throw new Error(`${open.uri} has no ${pattern}`);
  return Array.from({ length: count }, (_, i) => all[Math.floor(((i + 0.5) * all.length) / count)] ?? [0, 0]);
}

async function timed<T>(run: () => Promise<T>): Promise<[T, number]> {
  const started = performance.now();
  const value = await run();
  return [value, performance.now() - started];
}
