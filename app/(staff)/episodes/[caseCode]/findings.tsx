import type { ShownFinding } from '../../../../lib/server/shown-episode';
import styles from './episode-screen.module.css';

interface FindingsProps {
  readonly open: readonly ShownFinding[];
  readonly closed: readonly ShownFinding[];
  readonly ruleBookVersion: string;
}

/** What is wrong: each finding with its sentence, its rule's limits and where they come from. */
export function Findings({ open, closed, ruleBookVersion }: FindingsProps) {
  return (
    <section aria-labelledby="findings" className={styles.findings}>
      <h2 id="findings">Open findings</h2>
      {open.length === 0 ? <p>None. Photos and answers raise findings; that none is open says no more than that.</p> : null}
      <ul className={styles.list}>
        {open.map((finding) => (
          <Finding key={finding.key} finding={finding} />
        ))}
      </ul>
      <p className={styles.how}>Rule book {ruleBookVersion}.</p>
      {closed.length > 0 ? (
        <details className={styles.closed}>
          <summary>
            {closed.length} closed {closed.length === 1 ? 'finding' : 'findings'}
          </summary>
          <ul className={styles.list}>
            {closed.map((finding) => (
              <Finding key={finding.key} finding={finding} />
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  );
}

function Finding({ finding }: { readonly finding: ShownFinding }) {
  const { name, level, sentence, limits, since, raisedForRisk, closed, ruleBookVersion } = finding;
  return (
    <li className={styles.finding}>
      <h3>
        {name} <span className={styles.level}>{level}</span>
      </h3>
      <p>{sentence}</p>
      <p className={styles.source}>
        Since {since}.{raisedForRisk ? ' One level higher, for the foot is at risk.' : ''} {limits.length > 0 ? `It rests on: ${limits.join('; ')}; rule book ${ruleBookVersion}.` : 'It rests on the file itself, on no limit.'}
      </p>
      {closed === null ? null : <p className={styles.source}>Closed {closed}</p>}
    </li>
  );
}
