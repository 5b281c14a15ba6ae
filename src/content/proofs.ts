/** The published guides proved over every journey, with their English sentences. */
import type { Guide, Journey } from '../guide/types.ts';
import { prove } from '../proof/prove.ts';
import type { Proof } from '../proof/prove.ts';
import type { GuideSentences } from '../proof/sentences.ts';
import { ok } from '../result.ts';
import { spoken } from '../placeholders.ts';
import { gradeOf } from '../text/readability.ts';
import type { Content, Checked } from './content.ts';
import { readTexts } from './language-report.ts';
import { BLOCKS, SOURCE, joinedText } from './texts.ts';

export interface Proved {
  /** The guide's graph, as problems name it. */
  readonly file: string;
  readonly guide: Guide;
  readonly sentences: GuideSentences;
  readonly proof: Proof;
}

/** Reading grade of English passages with their placeholders read as words. */
export function spokenGrade(passages: readonly string[]): number {
  return gradeOf(passages.map((passage) => spoken(passage)));
}

/** A journey as a reader would tell it: each question's title and the answer's label. */
export function tellJourney(
  { guide, sentences }: Pick<Proved, 'guide' | 'sentences'>,
  journey: Journey,
): string[] {
  return journey.map(({ at, answer }) => {
    const node = guide.nodes.get(at);
    const own = node && sentences[node.sentences];
    // A danger answer given on a later page has its label at the start.
    const label = own?.answers?.[answer] ?? sentences[guide.start]?.answers?.[answer];
    return `${own?.title ?? at} → ${label ?? answer}`;
  });
}

function proved(content: Content, guides: readonly Guide[]): Checked<readonly Proved[]> {
  const texts = readTexts(content, SOURCE, [BLOCKS, ...guides.map(({ id }) => id)]);
  if (!texts.ok) return texts;
  const read = (name: string) => (texts.value.get(name) ?? {}) as GuideSentences;
  return ok(
    guides.map((guide) => {
      const sentences = joinedText(guide, read(BLOCKS), read);
      return {
        file: content.shown(`guides/${guide.id}/graph.yaml`),
        guide,
        sentences,
        proof: prove(guide, { sentences, grade: spokenGrade }),
      };
    }),
  );
}

const known = new WeakMap<readonly Guide[], Checked<readonly Proved[]>>();

/**
 * Every guide proved, once a reading of the content: some seconds for all of them.
 * @param guides those of this copy, or of another with other switches off
 */
export function provedGuides(
  content: Content,
  guides = content.guides(),
): Checked<readonly Proved[]> {
  if (!guides.ok) return guides;
  const proofs = known.get(guides.value) ?? proved(content, guides.value);
  known.set(guides.value, proofs);
  return proofs;
}
