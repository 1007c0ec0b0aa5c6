import type { EpisodePage } from '../../../../lib/server/shown-episode';
import { Cautions } from './cautions';
import { ComparePhotos } from './compare-photos';
import { Course } from './course';
import { Days } from './days';
import styles from './episode-screen.module.css';
import { Findings } from './findings';
import { Newest } from './newest';
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
        <Newest photos={photos} days={page.days} />
        <Course plots={plots} events={events} raw={raw} />
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

function Fact({ name, words }: { readonly name: string; readonly words: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{words}</dd>
    </div>
  );
}
