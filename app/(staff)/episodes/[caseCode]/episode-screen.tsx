import type { EpisodePage } from '../../../../lib/server/shown-episode';
import { TrendPlot } from '../../../_components/trend-plot';
import { Cautions } from './cautions';
import { ComparePhotos } from './compare-photos';
import { Days } from './days';
import styles from './episode-screen.module.css';
import { Findings } from './findings';
import { PrintButton } from './print-button';
import { SignOff } from './sign-off';
import { Words } from './words';

/** One case on one page. On paper the cautions come first, and what is long stays on the screen. */
export function EpisodeScreen({ page }: { readonly page: EpisodePage }) {
  const { caseCode, clinic, day, procedureAt, closedAt, madeAt, open, plots, raw, events, photos, plan, risks } = page;
  return (
    <main className={styles.episode}>
      <header className={styles.head}>
        <div>
          <h1>
            Case {caseCode} <span className={styles.day}>day {day} since the procedure</span>
          </h1>
          <p>
            {openWords(open.length)} {open.length > 0 ? `Most urgent: ${open[0].level}. ` : ''}
            {closedAt === null ? '' : `The case was closed on ${closedAt}.`}
          </p>
        </div>
        <p className={styles.tools}>
          <PrintButton />
          <a href="#sign-off">Sign-off</a>
          <a href={`/episodes/${encodeURIComponent(caseCode)}/report`}>Report</a>
          <a href={`/episodes/${encodeURIComponent(caseCode)}/sheet`}>Link, card and sheet</a>
          <a href={`/api/episodes/${encodeURIComponent(caseCode)}/csv`} download>
            Numbers as CSV
          </a>
        </p>
        <p className={styles.onPaper}>
          {clinic}, written on {madeAt}
        </p>
      </header>

      <section aria-labelledby="done" className={styles.done}>
        <h2 id="done">What was done</h2>
        <dl className={styles.facts}>
          <Fact name="Procedure" words={procedureAt} />
          {page.facts.map((fact) => (
            <Fact key={fact.name} {...fact} />
          ))}
          <Fact name="At risk" words={risks.length > 0 ? risks.join(', ') : 'nothing recorded'} />
          <Fact name="Plan" words={plan} />
        </dl>
      </section>

      <div className={styles.first}>
        <Findings open={open} closed={page.closed} ruleBookVersion={page.ruleBookVersion} />
        <section aria-labelledby="course" className={styles.course}>
          <h2 id="course">The course</h2>
          <p className={styles.how}>{eventWords(events)}</p>
          <div className={styles.plots}>
            {plots.map((shown) => (
              <TrendPlot key={shown.id} shown={shown} />
            ))}
          </div>
          <p className={styles.how}>
            Across: days since the procedure. Bars: uncertainty, k = 2; an open lower end reaches below zero. Crosses under the line: photos or reports without a value; no line
            is drawn across them. There is no published norm for a toe after this procedure: each toe is its own control.
          </p>
          <ul className={styles.raw}>
            {raw.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      </div>

      <section aria-labelledby="photos" className={styles.section}>
        <h2 id="photos">Photos</h2>
        {photos.length > 0 ? <ComparePhotos photos={photos} mayRedraw={page.mayRedraw} /> : <p>No photo has come yet.</p>}
      </section>
      <Days days={page.days} />
      <SignOff closing={page.closing} isClosed={closedAt !== null} />
      <Words messages={page.messages} resolutions={page.resolutions} />
      <Cautions />
    </main>
  );
}

const openWords = (count: number): string => (count === 0 ? 'No finding is open.' : count === 1 ? 'One finding is open.' : `${count} findings are open.`);

function eventWords(events: EpisodePage['events']): string {
  if (events.length === 0) return 'No antibiotic, call or message is on record.';
  return `Letters: ${events.map(({ letter, words, when }) => `${letter} ${words}, ${when}`).join('; ')}.`;
}

function Fact({ name, words }: { readonly name: string; readonly words: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{words}</dd>
    </div>
  );
}
