import type { Trace } from '../../journey/trace.ts';
import type { BookGuide, BookNode } from '../../note/library.ts';

/** What the note page shows: a journey of its guide, and the guide. */
export type Traced = Trace<BookNode> & { readonly guide: BookGuide };
