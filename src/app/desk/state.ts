/** What a call's state is, and how its parts get at it; made in `create-desk.ts`. */
import type { Accessor } from 'solid-js';
import type { Fragment } from '../../address/fragment.ts';
import type { EditableJourney } from '../../journey/edit.ts';
import type { Trace } from '../../journey/trace.ts';
import type { CallerField } from '../../visit/job.ts';
import type { GraphNode } from '../../guide/types.ts';
import type { CodebookGuide, CodebookNode } from '../../note/codebook.ts';
import type { Note } from '../../note/types.ts';
import type { Facts } from '../../placeholders.ts';
import type { Key } from '../shared/keys.ts';
import type { CallerState } from './caller.ts';
import type { Page } from './page.ts';

/** What stands in the middle: the danger question, a code to type in, or a place of the journey. */
export type View =
  { readonly kind: 'danger' | 'code' } | { readonly kind: 'at'; readonly index: number };

/** A sentence of the page to say, by its key. */
export interface DeskStatus {
  readonly key: Key;
  readonly facts?: Facts;
}

export interface DeskState {
  readonly guide: CodebookGuide;
  /** Which call of this tab it is, from 0. */
  readonly number: Accessor<number>;
  readonly edited: Accessor<EditableJourney>;
  readonly traced: Accessor<Trace<CodebookNode>>;
  readonly fragment: Accessor<Fragment>;
  readonly view: Accessor<View>;
  /** The node in the middle; at the danger question the guide's start. */
  readonly node: Accessor<CodebookNode>;
  /** The answer that stands there now, where the view goes back to one. */
  readonly present: Accessor<string | undefined>;
  /** What to know about how this call was found; shown until it is understood. */
  readonly found: Accessor<readonly Key[]>;
  readonly status: Accessor<DeskStatus | undefined>;
  /** Whether a node's cautions were read out in this call. */
  readonly isRead: (node: GraphNode) => boolean;
  readonly mustRead: Accessor<boolean>;
  readonly caller: CallerState;
  /** The code the caller has read back without a difference. */
  readonly readBack: Accessor<string | undefined>;
  readonly asksNext: Accessor<boolean>;
  /** A code that came with the address, once. */
  readonly brought: () => string | undefined;
  readonly choose: (answer: string) => void;
  readonly press: (key: string) => void;
  readonly tick: () => void;
  readonly go: (index: number) => void;
  readonly show: (view: 'danger' | 'code' | 'now') => void;
  readonly note: (parts: Pick<Fragment, 'details'> | { readonly error: string }) => void;
  readonly resume: (note: Note) => void;
  readonly startTimer: () => void;
  readonly say: (told: DeskStatus | undefined) => void;
  readonly understood: () => void;
  readonly confirmReadBack: (code: string | undefined) => void;
  readonly write: (field: CallerField, text: string) => void;
  readonly clearCaller: () => void;
  /** The next call: asked once, done when asked again. */
  readonly next: (sure: 'ask' | 'yes' | 'no') => void;
}

/** Props of the desk's parts. */
export interface DeskProps {
  readonly page: Page;
  readonly desk: DeskState;
}
