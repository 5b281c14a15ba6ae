/** What the journeys need of a browser, whatever protocol drives it. */
export interface Tab {
  goto(url: string): Promise<void>;
  url(): Promise<string>;
  /** Clicks the first element of the selector once it is there. */
  click(selector: string): Promise<void>;
  /** Types into the first element of the selector once it is there. */
  type(selector: string, text: string): Promise<void>;
  /** The texts of all elements of the selector, once there is one. */
  texts(selector: string): Promise<string[]>;
  /** Whether an element of the selector is there and has a size. */
  sees(selector: string): Promise<boolean>;
  back(): Promise<void>;
  /** Whether the page and all it asks for have come. */
  loaded(): Promise<boolean>;
  /** CSS pixels by which the page is wider than its window. */
  sideways(): Promise<number>;
  /** What an expression comes to in the page. */
  run<T>(expression: string): Promise<T>;
  /** What the window shows, as PNG. */
  picture(): Promise<Uint8Array>;
  /** Errors the page reported since it was opened. */
  problems(): Promise<string[]>;
  /** Another tab of the same reader, at the size of this one; closed with it. */
  beside(): Promise<Tab>;
  close(): Promise<void>;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Engine {
  readonly name: string;
  readonly version: string;
  open(size: Size): Promise<Tab>;
  close(): Promise<void>;
}

/** How long an element may take to come, in milliseconds: a guard against a hang, no measure. */
export const PATIENCE = 30_000;

/** Asks again until the answer is there. */
export async function until<T>(ask: () => Promise<T | undefined>, what: string): Promise<T> {
  const deadline = Date.now() + PATIENCE;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined) return answer;
    if (Date.now() > deadline) throw new Error(`waited in vain: ${what}`);
    await new Promise((done) => setTimeout(done, 50));
  }
}

/** A driver that answers no more. What a page leaves undone is told sooner, by `until`. */
export class Silent extends Error {}

/** The answer, or `Silent` where none comes in twice the time that anything may take. */
export async function answered<T>(answer: Promise<T>, what: string): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const silence = new Promise<never>((_, fail) => {
    timer = setTimeout(() => {
      fail(new Silent(`no answer: ${what}`));
    }, 2 * PATIENCE);
  });
  try {
    return await Promise.race([answer, silence]);
  } finally {
    clearTimeout(timer);
  }
}

/** A tab whose driver may fall silent, but is not waited for without end. */
export function heard(tab: Tab): Tab {
  return {
    goto: (url) => answered(tab.goto(url), url),
    url: () => answered(tab.url(), 'url'),
    click: (selector) => answered(tab.click(selector), selector),
    type: (selector, text) => answered(tab.type(selector, text), selector),
    texts: (selector) => answered(tab.texts(selector), selector),
    sees: (selector) => answered(tab.sees(selector), selector),
    back: () => answered(tab.back(), 'back'),
    loaded: () => answered(tab.loaded(), 'loaded'),
    sideways: () => answered(tab.sideways(), 'sideways'),
    run: (expression) => answered(tab.run(expression), expression),
    picture: () => answered(tab.picture(), 'picture'),
    problems: () => answered(tab.problems(), 'problems'),
    beside: async () => heard(await answered(tab.beside(), 'beside')),
    close: () => answered(tab.close(), 'close'),
  };
}
