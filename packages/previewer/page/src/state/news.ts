import { countText } from '@edgebite/svg';

/** New findings read out at most; the list has them all. */
const MOST = 3;

/** What a change has brought, in words: of a job that was just opened how many findings it has, then only what is new. */
export function newsOf(before: readonly string[] | null, now: readonly string[]): string {
  if (before === null) return now.length === 0 ? 'Nothing found.' : `${countText(now.length, 'finding')}.`;
  const fresh = now.filter((one) => !before.includes(one));
  const gone = before.filter((one) => !now.includes(one)).length;
  if (fresh.length === 0 && gone === 0) return '';
  const more = fresh.length > MOST ? [`And ${fresh.length - MOST} more.`] : [];
  const left = now.length === 0 ? ['Nothing found any more.'] : [];
  const told = fresh.slice(0, MOST).map((one) => `New ${one}`);
  const ended = gone > 0 && now.length > 0 ? [`${countText(gone, 'finding')} no longer so.`] : [];
  return [...told, ...more, ...ended, ...left].join(' ');
}
