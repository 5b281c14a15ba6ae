import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { checkContent } from '../../content/gates.ts';
import { content } from '../../content/load.ts';
import { tellProblems } from '../../content/tell.ts';

/** What is wrong with the content of this copy, in words; undefined where nothing is. */
export function contentTrouble(): string | undefined {
  const problems = checkContent(content());
  return problems.length === 0 ? undefined : tellProblems(problems);
}

/**
 * Stops a build of content that does not pass every gate, before any page is made. While pages are
 * written and looked at (`astro dev`) it only tells, so that they can be put right.
 */
export function contentGates(): AstroIntegration {
  return {
    name: 'content-gates',
    hooks: {
      'astro:config:setup'({ command, config, logger }) {
        process.env['CONTENT_DIR'] ??= fileURLToPath(new URL('content', config.root));
        const trouble = command === 'build' || command === 'dev' ? contentTrouble() : undefined;
        if (trouble === undefined) return;
        if (command === 'dev') logger.error(trouble);
        else throw Object.assign(new Error(trouble), { stack: '' });
      },
    },
  };
}
