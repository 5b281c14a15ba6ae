import { details, flags, guides } from '../../../src/content/load.ts';
import type { GuideId } from '../../../src/guide/types.ts';
import { freeze } from '../../../src/note/freeze.ts';
import { makeCodebooks } from '../../../src/note/codebook.ts';
import type { Codebook, CodebookGuide, Codebooks } from '../../../src/note/codebook.ts';
import type { Release, ReleaseAnswer, ReleaseNode } from '../../../src/note/release.ts';
import type { Note } from '../../../src/note/types.ts';
import { unrank } from '../../../src/note/edges.ts';

/** The working guides frozen in memory as a release. */
export function workingRelease(release = 1): Release {
  return freeze(guides(), details(), release, '2026-11-25');
}

/** A small release made up for tests: two guides, two details. */
export function smallRelease(release: number): Release {
  const stop = (id: string): ReleaseNode => ({ id, kind: 'stop', urgency: 'soon' });
  const ask = (id: string, ...answers: ReleaseAnswer[]): ReleaseNode => ({
    id,
    kind: 'question',
    answers,
  });
  return {
    release,
    published: '2026-01-01',
    details: [
      { id: 'fuel', answers: ['gas', 'electric'] },
      { id: 'age', answers: ['young', 'old', 'ancient'] },
    ],
    guides: [
      {
        id: 'small',
        start: 'first',
        nodes: [
          ask('first', ['danger', 'help'], ['fine', 'second'], ['unsure', 'third']),
          ask('second', ['yes', 'third'], ['no', 'done']),
          { id: 'third', kind: 'step', answers: [['ok', 'done']] },
          { id: 'done', kind: 'finish', urgency: 'none' },
          stop('help'),
        ],
        exits: [['danger', 'help']],
      },
      {
        id: 'tiny',
        start: 'only',
        nodes: [ask('only', ['a', 'end'], ['b', 'end']), stop('end')],
        exits: [],
      },
    ],
  };
}

export function codebookOf(codebooks: Codebooks, release = 1): Codebook {
  const codebook = codebooks.get(release);
  if (!codebook) throw new Error(`no release ${release}`);
  return codebook;
}

/** A guide of a book, by its place; left out, the locked door's, or the first where it has none. */
export function guideOf(codebooks: Codebooks, release = 1, index?: number): CodebookGuide {
  const { guides } = codebookOf(codebooks, release);
  const door = guides.find(({ id }) => (id as string) === 'door-locked');
  const guide = index === undefined ? (door ?? guides[0]) : guides[index];
  if (!guide) throw new Error(`no guide ${index}`);
  return guide;
}

export const working = makeCodebooks([workingRelease()], flags());

/** A note of the working guides with the journey of a rank and nothing else. */
export function plainNote(rank: bigint, day = 0, codebooks = working): Note {
  const guide = guideOf(codebooks);
  const journey = unrank(guide, rank);
  if (!journey) throw new Error(`no journey ${rank}`);
  return { release: 1, guide: guide.id, journey, day, details: {}, error: '' };
}

/** Every detail of a book with its last answer: the largest digits. */
export function allDetails(codebook: Codebook): Record<string, string> {
  return Object.fromEntries(codebook.details.map(({ id, answers }) => [id, answers.at(-1) ?? '']));
}

export const asGuideId = (id: string): GuideId => id as GuideId;
