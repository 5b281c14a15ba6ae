import { createSignal, type JSX } from 'solid-js';
import { localDay } from '../note/code.ts';
import { routeJson } from '../../route/json.ts';
import { AskTwice } from '../shared/AskTwice.tsx';
import { download } from '../shared/download.ts';
import { sayer } from '../shared/words.ts';
import type { LoadProps } from './props.ts';

/** The next day: whoever plans in the evening plans tomorrow. */
const tomorrow = (): string => localDay(new Date(Date.now() + 24 * 3600_000));

interface Props extends LoadProps {
  /** Print a page a visit. */
  readonly onSheets: () => void;
}

/** Paper, files, and an empty list again. */
export function Out(props: Props): JSX.Element {
  const t = sayer(props);
  const count = () => props.route.visits().length;
  const [day, setDay] = createSignal(tomorrow());
  const saved = (): void => {
    props.route.saved();
    props.say(t('round:said.saved'));
  };
  const csv = async (): Promise<void> => {
    const writer = await import('./file.ts').catch(() => undefined);
    if (!writer) {
      props.say(t('round:problem.unloaded'));
      return;
    }
    // Spreadsheets take a file for UTF-8 by this mark (Unicode, byte order mark).
    download(
      'round.csv',
      `\ufeff${writer.routeTable(props.page, props.route, props.load)}`,
      'text/csv',
    );
    saved();
  };
  const json = (): void => {
    const { columns, visits, unread } = props.route;
    const route = { columns: columns(), visits: visits(), unread: unread() };
    const text = JSON.stringify(routeJson(route, new Date()), undefined, 2);
    download('round.json', text, 'application/json');
    saved();
  };
  const calendar = async (): Promise<void> => {
    const file = await import('./calendar-file.ts').catch(() => undefined);
    if (file) {
      const text = file.routeCalendar(props.page, props.route, props.load, day() || tomorrow());
      download('route.ics', text, 'text/calendar');
    }
    props.say(t(file ? 'round:said.saved' : 'round:problem.unloaded'));
  };
  return (
    <section class="card out">
      <h2>{t('round:out.title')}</h2>
      <div class="ways">
        <button type="button" onClick={() => print()}>
          {t('round:out.print')}
        </button>
        <button type="button" class="plain" onClick={() => props.onSheets()}>
          {t('round:out.sheets')}
        </button>
        <button type="button" class="plain" onClick={() => void csv()}>
          {t('round:out.csv')}
        </button>
        <button type="button" class="plain" onClick={json}>
          {t('round:out.json')}
        </button>
        <AskTwice
          label={t('round:out.clear')}
          sure={t('round:out.clearSure', { count: count() })}
          keep={t('round:out.keep')}
          onYes={() => {
            props.route.clear();
            props.say(t('round:said.cleared'));
            document.getElementById('codes')?.focus();
          }}
        />
      </div>
      <p class="ways">
        <label for="route-day">{t('round:out.day')}</label>
        <input
          id="route-day"
          type="date"
          value={day()}
          onInput={({ currentTarget }) => setDay(currentTarget.value)}
        />
        <button type="button" class="plain" onClick={() => void calendar()}>
          {t('round:out.calendar')}
        </button>
      </p>
      <p class="quiet">{t('round:out.note')}</p>
    </section>
  );
}
