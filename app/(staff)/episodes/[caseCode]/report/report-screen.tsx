import { type ReactNode, Suspense } from 'react';
import { type EpisodeReport, REPORT_CAUTIONS, REPORT_MEASURED, REPORT_METHOD } from '@/lib/server/shown-report';
import type { ShownFinding } from '@/lib/server/shown-episode';
import { DataTable } from '../../../../_components/data-table';
import { PhotoWithLines } from '../../../../_components/photo-with-lines';
import { TrendPlot } from '../../../../_components/trend-plot';
import { cardWindow } from '../card-window';
import { drawnOn } from '../drawn-on';
import { PrintButton } from '../print-button';
import styles from './report-screen.module.css';

const COLUMNS = ['Day', 'When', 'Photo', ...REPORT_MEASURED.map(([, name, unit]) => `${name}, ${unit}`), 'Pain', 'Signs'];

/** The whole follow-up of one case, to read, to print and to file. */
export function ReportScreen({ report, method }: { readonly report: EpisodeReport; readonly method: ReactNode }) {
  const { page, visits, redrawn, pictures, methodVersions } = report;
  const { caseCode, clinic, day, madeAt, procedureAt, facts, risks, plan, plots, events, raw } = page;
  const place = encodeURIComponent(caseCode);
  return (
    <main className={styles.report}>
      <header className={styles.head}>
        <h1>Report of case {caseCode}</h1>
        <p>
          {clinic}. Written on {madeAt}, day {day} since the procedure. {page.closedAt === null ? 'The follow-up goes on.' : `The follow-up was closed on ${page.closedAt}.`}
        </p>
        <p>
          Rule book {page.ruleBookVersion}. {methodVersions.length > 0 ? `Measured with method ${methodVersions.join(' and ')}.` : 'No photo has been measured yet.'}
        </p>
        <p className={styles.tools}>
          <PrintButton words="Print" />
          <a href={`/api/episodes/${place}/report`} download>
            As PDF
          </a>
          <a href={`/api/episodes/${place}/fhir`} download>
            As FHIR
          </a>
          <a href={`/episodes/${place}`}>The case</a>
        </p>
      </header>

      <section aria-labelledby="cautions" className={styles.cautions}>
        <h2 id="cautions">Before you rely on this report</h2>
        <ul>
          {REPORT_CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>

      <section aria-labelledby="done">
        <h2 id="done">What was done</h2>
        <dl className={styles.facts}>
          {[{ name: 'Procedure', words: procedureAt }, ...facts, { name: 'At risk', words: risks.length > 0 ? risks.join(', ') : 'nothing recorded' }, { name: 'Plan', words: plan }].map(({ name, words }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </section>

      <Closings record={page.closing.record} />

      <section aria-labelledby="findings">
        <h2 id="findings">Findings</h2>
        {page.open.length + page.closed.length === 0 ? <p>None was raised. Photos and answers raise findings; that there is none says no more than that.</p> : null}
        <FindingList title="Open" findings={page.open} />
        <FindingList title="Closed" findings={page.closed} />
      </section>

      <section aria-labelledby="course">
        <h2 id="course">The course</h2>
        <div className={styles.plots}>
          {plots.map((shown) => (
            <TrendPlot key={shown.id} shown={shown} />
          ))}
        </div>
        <p className={styles.small}>
          Across: days since the procedure. Bars: uncertainty, k = 2. Crosses under the line: photos or reports without a value; no line is drawn across them. There is no published
          norm for a toe after this procedure: each toe is its own control.{' '}
          {events.length === 0 ? '' : `Letters: ${events.map(({ letter, words, when }) => `${letter} ${words}, ${when}`).join('; ')}.`}
        </p>
        <ul className={styles.small}>
          {raw.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </section>

      <section aria-labelledby="pictures">
        <h2 id="pictures">Pictures</h2>
        {pictures.length === 0 ? <p>There is no picture on which the card was found.</p> : null}
        <div className={styles.pictures}>
          {pictures.map(({ title, photo }) => (
            <figure key={photo.id}>
              <PhotoWithLines eager photo={photo} window={cardWindow([photo])} drawn={[drawnOn(photo)]} />
              <figcaption>
                <strong>{title}</strong>: {photo.date}, day {photo.day}. {photo.versions[0].numbers.join('; ')}
              </figcaption>
            </figure>
          ))}
        </div>
        <p className={styles.small}>Full line: edge of the redness. Dashes: nail-fold margin. Dashes and dots: raw area.</p>
      </section>

      <section aria-labelledby="visits">
        <h2 id="visits">Every visit</h2>
        <DataTable
          caption="Messages and photos, oldest first, each number ± its uncertainty (k = 2)"
          columns={COLUMNS}
          rows={visits.map((visit) => ({ key: visit.key, cells: [visit.day, visit.at, visit.photo, ...visit.numbers, visit.pain, visit.signs] }))}
        />
      </section>

      <section aria-labelledby="outlines">
        <h2 id="outlines">Outlines drawn by people</h2>
        {redrawn.length === 0 ? <p>None: all outlines are the program’s own.</p> : null}
        <ul className={styles.list}>
          {redrawn.map(({ key, photo, words, numbers }) => (
            <li key={key}>
              Photo of {photo}. {words} {numbers}
            </li>
          ))}
        </ul>
      </section>

      <section aria-labelledby="words">
        <h2 id="words">Calls and decisions</h2>
        {page.resolutions.length === 0 ? <p>None is on record.</p> : null}
        <ul className={styles.list}>
          {page.resolutions.map(({ at, by, rule, action, reason }, place) => (
            <li key={`${at} ${place}`}>
              {at}, {by}: {rule}, {action}. {reason}
            </li>
          ))}
        </ul>
      </section>

      <section aria-labelledby="how">
        <h2 id="how">How this was measured</h2>
        {REPORT_METHOD.map((words) => (
          <p key={words}>{words}</p>
        ))}
        <p>
          Definitions, an error budget worked through, and accuracy by skin and light are on the page <a href="/method">How it is measured</a>.
        </p>
        <details>
          <summary className={styles.summary}>How it is measured, in full</summary>
          <Suspense fallback={<p>The example is being worked out …</p>}>{method}</Suspense>
        </details>
      </section>
    </main>
  );
}

function Closings({ record }: { readonly record: EpisodeReport['page']['closing']['record'] }) {
  return (
    <section aria-labelledby="sign-off">
      <h2 id="sign-off">Sign-off</h2>
      {record.length === 0 ? <p>This follow-up has not been closed.</p> : null}
      <ul className={styles.list}>
        {record.map(({ key, closed, at, by, words, leftOpen }) => (
          <li key={key}>
            <strong>{closed ? 'Closed' : 'Opened again'}</strong> on {at} by {by}. {words} {closed ? (leftOpen.length > 0 ? `Left open: ${leftOpen.join('; ')}` : 'Nothing was left open.') : ''}
          </li>
        ))}
      </ul>
    </section>
  );
}

function FindingList({ title, findings }: { readonly title: string; readonly findings: readonly ShownFinding[] }) {
  if (findings.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul className={styles.list}>
        {findings.map(({ key, name, level, sentence, since, limits, ruleBookVersion, closed }) => (
          <li key={key}>
            <strong>{name}</strong> ({level}). {sentence}{' '}
            <span className={styles.small}>
              Since {since}. {limits.length > 0 ? `It rests on: ${limits.join('; ')}; rule book ${ruleBookVersion}.` : 'It rests on the file itself, on no limit.'}
              {closed === null ? '' : ` Closed ${closed}`}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
