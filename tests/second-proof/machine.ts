/**
 * A guide's files as a flat machine of pages and answers, read anew from the YAML: nothing of
 * `src/guide` or `src/proof` is used, so that a fault there does not repeat itself here. What the
 * files mean is told in DEVELOPERS.md, under Guides.
 */
import { parse } from 'yaml';

type ByTrack = string | Readonly<Record<string, string>>;
interface FileAnswer {
  readonly to: ByTrack;
  readonly track?: ByTrack;
  readonly sets?: readonly string[];
  readonly clears?: readonly string[];
  readonly flag?: string;
}
interface FilePage {
  readonly kind: string;
  readonly text?: string;
  readonly action?: string;
  readonly heat?: boolean;
  readonly urgency?: string;
  readonly call?: readonly string[];
  readonly danger?: string;
  readonly done?: boolean;
  readonly 'breaker-stays-off'?: boolean;
  readonly 'takes-error'?: boolean;
  readonly answers?: Readonly<Record<string, FileAnswer>>;
}
export interface FileRule {
  readonly page?: string;
  readonly answer?: string;
  readonly most?: number;
  readonly needs?: string;
  readonly 'never-after'?: string;
  readonly unless?: string;
  readonly 'ends-at'?: readonly string[];
}
interface File {
  readonly id: string;
  readonly tracks: readonly string[];
  readonly start: string;
  readonly blocks?: Readonly<
    Record<string, Readonly<Record<string, string | Pick<FileAnswer, 'to' | 'track'>>>>
  >;
  readonly optional?: Readonly<Record<string, { pages: readonly string[]; instead: string }>>;
  readonly rules?: readonly FileRule[];
  readonly nodes: Readonly<Record<string, FilePage>>;
}
type BlockFile = Pick<File, 'rules' | 'nodes'>;

/** Files of guides and of blocks, by their names. */
export interface Files {
  readonly guides: ReadonlyMap<string, File>;
  readonly blocks: ReadonlyMap<string, BlockFile>;
}

export function readFiles(
  guides: Iterable<string>,
  blocks: Iterable<readonly [name: string, text: string]>,
): Files {
  const files = [...guides].map((text) => parse(text) as File);
  return {
    guides: new Map(files.map((file) => [file.id, file])),
    blocks: new Map([...blocks].map(([name, text]) => [name, parse(text) as BlockFile])),
  };
}

export interface Arc {
  readonly answer: string;
  /** The page it leads to; -1 where there is none. */
  readonly to: number;
  readonly sets: readonly string[];
  readonly clears: readonly string[];
  readonly flag: string | undefined;
}

/** One page on one track. */
export interface Place extends Omit<FilePage, 'answers'> {
  readonly guide: string;
  /** `guide:text`, by which rules name it. */
  readonly name: string;
  readonly end: boolean;
  /** Its own answers, then the ways out to the dangers' stops. */
  readonly arcs: readonly Arc[];
  readonly own: number;
}

export interface Machine {
  /** The start first. */
  readonly places: readonly Place[];
  /** Rules with `guide:` before each name. */
  readonly rules: readonly FileRule[];
}

const pick = (value: ByTrack | undefined, track: string): string | undefined =>
  typeof value === 'string' ? value : value?.[track];

/** A guide and all that its journeys reach in others, with these switches off. */
export function machineOf(files: Files, id: string, off: readonly string[]): Machine {
  const { guides, blocks } = files;
  const blockOf = new Map(
    [...blocks].flatMap(([block, { nodes }]) => Object.keys(nodes).map((page) => [page, block])),
  );
  const numbers = new Map<string, number>();
  const found: { guide: File; name: string; track: string; page: FilePage }[] = [];

  const lead = ({ optional = {} }: File, name: string): string =>
    off.map((key) => optional[key]).find((one) => one?.pages.includes(name))?.instead ?? name;

  function enter(guide: File | undefined, asked: string | undefined, track: string): number {
    if (!guide || asked === undefined) return -1;
    const name = lead(guide, asked);
    const page = guide.nodes[name] ?? blocks.get(blockOf.get(name) ?? '')?.nodes[name];
    if (!page) return -1;
    const key = [guide.id, name, ...(page.answers ? [track] : [])].join(' ');
    const known = numbers.get(key) ?? found.push({ guide, name, track, page }) - 1;
    numbers.set(key, known);
    return known;
  }

  function arcOf(guide: File, name: string, track: string, answer: string, raw: FileAnswer): Arc {
    const exit = /^exit\/(.*)/.exec(typeof raw.to === 'string' ? raw.to : '')?.[1];
    const wired = exit === undefined ? raw : guide.blocks?.[blockOf.get(name) ?? '']?.[exit];
    const given = { ...raw, ...(typeof wired === 'string' ? { to: wired } : wired) };
    const { sets = [], clears = [], flag } = given;
    const [other = '', entry] = pick(given.to, track)?.split('/') ?? [];
    const moved = pick(given.track, track);
    const there = guides.get(other);
    const to =
      entry === undefined
        ? enter(guide, pick(given.to, moved ?? track), moved ?? track)
        : enter(there, entry, moved ?? there?.tracks[0] ?? '');
    return { answer, to, sets, clears, flag };
  }

  const first = guides.get(id);
  enter(first, first?.start, first?.tracks[0] ?? '');
  const arcs: Arc[][] = [];
  // The list grows while it is walked.
  for (const { guide, name, track, page } of found)
    arcs.push(
      Object.entries(page.answers ?? {}).map(([answer, raw]) =>
        arcOf(guide, name, track, answer, raw),
      ),
    );
  const exits = (arcs[0] ?? []).filter(
    ({ answer, to }) => answer !== 'unsure' && found[to]?.page.kind === 'stop',
  );
  const places = found.map(({ guide, name, page }, index): Place => {
    const own = arcs[index] ?? [];
    const shown = exits.filter(({ answer }) => own.every((one) => one.answer !== answer));
    const end = page.kind === 'stop' || page.kind === 'finish';
    const all = own.length > 0 ? [...own, ...shown] : [];
    const { answers: _, ...rest } = page;
    const called = `${guide.id}:${page.text ?? name}`;
    return { ...rest, guide: guide.id, name: called, end, arcs: all, own: own.length };
  });

  const rules = [...new Set(places.map(({ guide }) => guide))].flatMap((guide) => {
    const file = guides.get(guide);
    const called = (name: string): string => `${guide}:${name}`;
    const ofGuide = ({ page, answer, ...rule }: FileRule): FileRule => ({
      ...rule,
      ...(page === undefined ? {} : { page: called(page) }),
      ...(answer === undefined ? {} : { answer: called(answer) }),
      ...(rule.needs === undefined ? {} : { needs: called(rule.needs) }),
      ...(rule['never-after'] === undefined ? {} : { 'never-after': called(rule['never-after']) }),
      ...(rule.unless === undefined ? {} : { unless: called(rule.unless) }),
      ...(rule['ends-at'] && file
        ? { 'ends-at': rule['ends-at'].map((end) => called(lead(file, end))) }
        : {}),
    });
    // A block's rules hold in every guide that has the pages and answers they name, wherever in it
    // this machine comes in.
    const all = guide === id ? places : machineOf(files, guide, off).places;
    const names = new Set(
      all.flatMap(({ name, arcs: own }) => [name, ...own.map(({ answer }) => `${name}.${answer}`)]),
    );
    const shared = [...blocks.values()]
      .flatMap((block) => block.rules ?? [])
      .map(ofGuide)
      .filter(({ page, answer, needs, 'never-after': despite }) =>
        [page, answer, needs, despite].every((name) => name === undefined || names.has(name)),
      );
    return [...(file?.rules ?? []).map(ofGuide), ...shared];
  });
  return { places, rules };
}
