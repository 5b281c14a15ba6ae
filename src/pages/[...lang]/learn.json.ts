import { staffParams } from '../../site/addresses.ts';
import { learnPart } from '../../site/data/learn-part.ts';

export const getStaticPaths = staffParams;

/** Loaded by the learning page alone, and not kept offline. */
export function GET({ props: { language } }: { props: { language: string } }): Response {
  return new Response(JSON.stringify(learnPart(language)));
}
