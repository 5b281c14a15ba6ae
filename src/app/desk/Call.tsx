import { onMount } from 'solid-js';
import type { CodebookGuide } from '../../note/codebook.ts';
import type { NoteCode } from '../../note/types.ts';
import { Desk } from './Desk.tsx';
import type { OtherCalls } from './Choose.tsx';
import type { CallRecord } from './calls.ts';
import type { CallerState } from './caller.ts';
import { createClocks } from './clocks.ts';
import { onDanger } from './danger.ts';
import { createOutcome } from './outcome.ts';
import type { Page } from './page.ts';
import { createDesk, type Around, type DeskState, type Found } from './state.ts';

/** What is done once a guide's desk stands: a note taken over, a danger told. */
export type Then = (desk: DeskState) => void;

export interface CallProps {
  readonly page: Page;
  readonly guide: CodebookGuide;
  readonly how: Found;
  readonly record?: CallRecord | undefined;
  readonly then?: Then | undefined;
  readonly caller: CallerState;
  readonly around: Around;
  readonly calls: OtherCalls;
  /** Milliseconds since 1970. */
  readonly began: number;
  /** Codes of the same caller's problems told before, for the same visit. */
  readonly also: readonly NoteCode[];
  readonly onLive: (desk: DeskState) => void;
}

/** A call in its guide; loaded with the first one. */
export function Call(props: CallProps) {
  /* eslint-disable solid/reactivity -- made once for each call */
  const { page, guide, how, record, then, began, also } = props;
  const desk = createDesk(page, guide, props.caller, props.around, { how, record, began, also });
  props.onLive(desk);
  onDanger((answer) => {
    desk.journey.show('danger');
    desk.journey.choose(answer);
  });
  const outcome = createOutcome(page, desk);
  const clocks = createClocks(desk);
  onMount(() => then?.(desk));
  return <Desk page={page} desk={desk} outcome={outcome} clocks={clocks} calls={props.calls} />;
  /* eslint-enable solid/reactivity */
}
