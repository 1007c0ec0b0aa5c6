import type { EpisodePage, ShownPlot } from '../../../../lib/server/shown-episode';
import { TrendPlot } from '../../../_components/trend-plot';
import styles from './episode-screen.module.css';

/** How it went: a plot for every series that has a value, and a line of words for those that have none. */
export function Course({ plots, events, raw }: Pick<EpisodePage, 'plots' | 'events' | 'raw'>) {
  const drawn = plots.filter(hasValue);
  return (
    <section aria-labelledby="course" className={styles.course}>
      <h2 id="course">The course</h2>
      <p className={styles.how}>{eventWords(events)}</p>
      {withoutValue(plots).map(({ titles, words }) => (
        <p key={titles} className={styles.without}>
          <strong>{titles}:</strong> {words}
        </p>
      ))}
      <div className={styles.plots}>
        {drawn.map((shown) => (
          <TrendPlot key={shown.id} shown={shown} />
        ))}
      </div>
      {drawn.length === 0 ? null : (
        <p className={styles.how}>
          Across: days since the procedure. Bars: uncertainty, k = 2; an open lower end reaches below zero. Crosses under the line: photos or reports without a value; no line is drawn
          across them. There is no published norm for a toe after this procedure: each toe is its own control.
        </p>
      )}
      <ul className={styles.raw}>
        {raw.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}

const hasValue = ({ plot }: ShownPlot): boolean => plot.points.length > 0;

/** Series without a value say the same, photo by photo, mostly: once is enough. */
function withoutValue(plots: readonly ShownPlot[]): { readonly titles: string; readonly words: string }[] {
  const titlesOf = new Map<string, string[]>();
  for (const { title, sentences } of plots.filter((shown) => !hasValue(shown))) {
    const words = sentences.join(' ');
    titlesOf.set(words, [...(titlesOf.get(words) ?? []), title]);
  }
  return [...titlesOf].map(([words, titles]) => ({ titles: titles.join('; '), words }));
}

function eventWords(events: EpisodePage['events']): string {
  if (events.length === 0) return 'No antibiotic, call or message is on record.';
  return `Letters: ${events.map(({ letter, words, when }) => `${letter} ${words}, ${when}`).join('; ')}.`;
}
