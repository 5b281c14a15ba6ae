// What a guide's page says of the graph, as read from its HTML and as the compiled model has it.
// The two are written apart: nothing here is what makes the pages.
import { firm } from '../../../src/content/load.ts';
import { mainLanguage } from '../../../src/content/load.ts';
import type { Guide, GuideNode } from '../../../src/guide/types.ts';
import { nodeText } from '../../../src/site/words.ts';
import { attribute, classes, elements, resolve, said, within, type Element } from './html.ts';

export interface GuidePage {
  readonly node: string;
  readonly kind: string;
  readonly urgency: string;
  readonly starts: boolean;
  /** `answer → address` in the order shown, what a tap before the script tells too. */
  readonly answers: readonly string[];
  readonly exits: readonly string[];
  readonly note: readonly string[];
  /** `signal: line | line` of each caution box. */
  readonly cautions: readonly string[];
  readonly calls: readonly string[];
  readonly timers: readonly string[];
  readonly takesError: boolean;
}

const KINDS = ['question', 'step', 'stop', 'finish'];

/** A guide's page as its HTML says; undefined for any other page. */
export function readPage(html: string, address: string): GuidePage | undefined {
  const all = elements(html);
  const article = all.find((one) => attribute(one, 'data-node') !== undefined);
  if (!article) return undefined;
  const inside = within(article);
  const links = (from: readonly Element[], name: string) =>
    from.flatMap((one) => {
      const id = attribute(one, name);
      const to = resolve(address, attribute(one, 'href') ?? '');
      return id === undefined ? [] : [`${id} → ${to}`];
    });
  const kinds = classes(article).filter((one) => KINDS.includes(one));
  return {
    node: `${attribute(article, 'data-guide') ?? ''}/${attribute(article, 'data-node') ?? ''}`,
    kind: kinds.join(' '),
    urgency: classes(article)
      .filter((one) => one !== 'page' && !KINDS.includes(one))
      .join(' '),
    starts: attribute(article, 'data-start') !== undefined,
    answers: links(inside, 'data-answer'),
    exits: links(all, 'data-exit'),
    note: links(inside, 'data-note'),
    cautions: inside
      .filter((one) => one.tagName === 'section' && classes(one).includes('care'))
      .map((box) => {
        const lines = within(box).filter(({ tagName }) => ['p', 'li'].includes(tagName));
        const [signal = ''] = classes(box).filter((one) => one !== 'care');
        return `${signal}: ${lines.map(said).join(' | ')}`;
      }),
    calls: inside.flatMap((one) => {
      const [, number] = /^tel:(.*)$/.exec(attribute(one, 'href') ?? '') ?? [];
      return number === undefined ? [] : [number];
    }),
    timers: inside.flatMap((one) => {
      const kind = attribute(one, 'data-timer');
      const [from, to] = ['data-earliest', 'data-latest'].map((name) => attribute(one, name));
      return kind === undefined ? [] : [`${kind} ${from ?? ''}–${to ?? ''}`];
    }),
    takesError: inside.some((one) => attribute(one, 'data-error-field') !== undefined),
  };
}

export const addressIn = (language: string, path: string): string =>
  language === mainLanguage() ? `/${path}` : `/${language}/${path}`;

/** The page of a node as the compiled guide has it. */
export function modelPage(language: string, guide: Guide, node: GuideNode): GuidePage {
  const text = nodeText(language, guide, node.sentences);
  const { phone, numbers } = firm();
  const pageOf = (to: string) => (to.includes('/') ? to : `${guide.id}/${to}`);
  const isEnd = node.kind === 'stop' || node.kind === 'finish';
  const lines = isEnd
    ? text.never && [...(text.care ?? []), ...text.never]
    : node.caution && text.care;
  return {
    node: `${guide.id}/${node.id}`,
    kind: node.kind,
    urgency: node.urgency,
    starts: node.id === guide.start,
    answers: node.answers.map(({ id, to }) => {
      const over = to.includes('/');
      // The first answer is the whole journey, and names its guide on another guide's page.
      const tap =
        node.id === guide.start
          ? `${over ? `g=${guide.id}&` : ''}j=${node.id}.${id}`
          : `a=${over ? `${guide.id}/` : ''}${node.id}.${id}`;
      return `${id} → ${addressIn(language, `${pageOf(to)}/#${tap}`)}`;
    }),
    exits: guide.exits.map(
      ({ id, to }) => `${id} → ${addressIn(language, `${pageOf(to)}/#j=${guide.start}.${id}`)}`,
    ),
    note: isEnd ? [` → ${addressIn(language, 'note/')}`] : [],
    cautions: lines
      ? [
          `${node.caution ?? 'warning'}: ${lines.map((line) => line.replace(/\s+/g, ' ').trim()).join(' | ')}`,
        ]
      : [],
    calls: node.call.map((helper) => (helper === 'technician' ? phone : numbers[helper]).dial),
    timers: node.timer ? [`${node.timer.kind} ${node.timer.minutes.join('–')}`] : [],
    takesError: node.takesError,
  };
}

/** What differs between a page and its model, each with both sides. */
export function differences(page: GuidePage, model: GuidePage): string[] {
  return (Object.keys(model) as (keyof GuidePage)[]).flatMap((part) => {
    const [found, meant] = [page[part], model[part]].map((one) => JSON.stringify(one));
    return found === meant
      ? []
      : [`${model.node}, ${part}: page ${found ?? ''}, model ${meant ?? ''}`];
  });
}
