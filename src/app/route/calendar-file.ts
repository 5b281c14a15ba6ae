/** The route as a calendar file: its visits in words. Made on the device; nothing is sent. */
import { calendarOf } from '../../route/calendar.ts';
import type { PartsToBring } from '../../route/parts-to-bring.ts';
import { previewLink } from '../shared/job-text.ts';
import { titleOf, told } from './facts.ts';
import type { Page } from './page.ts';
import type { RouteState } from './state.ts';

/** @param day ISO 8601 date of the visits whose time names none */
export function routeCalendar(
  page: Page,
  route: Pick<RouteState, 'visits' | 'callerOf' | 'windowOf'>,
  load: PartsToBring,
  day: string,
): string {
  const { t } = page.words;
  const visits = route.visits().map((visit) => {
    const caller = route.callerOf(visit);
    const { urgency, what, reason, flags, parts } = told(page, visit, load);
    const { code } = visit;
    const link = code && previewLink(code);
    const lines = [
      ...[caller.phone, what, reason, ...flags],
      ...(parts.length > 0 ? [`${t('round:visits.parts')}: ${parts.join('; ')}`] : []),
      ...[caller.access, caller.remark, code, link],
    ];
    return {
      id: code ?? `visit-${String(visit.row)}`,
      day,
      window: route.windowOf(visit),
      title: `${urgency}: ${titleOf(page, visit, caller)}`,
      place: caller.address ?? '',
      text: lines.filter((line) => line).join('\n'),
    };
  });
  return calendarOf(t('round:title'), location.hostname, visits, new Date());
}
